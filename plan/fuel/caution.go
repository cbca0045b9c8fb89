package fuel

import (
	"slices"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// A Caution is a sentence for the runner, with an identity that stays the same so that a
// program can show its own translation.
type Caution struct {
	ID   string `json:"id"`
	Text string `json:"text"`
}

// general are the plan's cautions that a page about food and drink repeats: all about the
// body. Those about the way, night and sleep stand beside the plan.
var general = [...]caution.ID{
	caution.First, caution.Stop, caution.Illness, caution.Doctor, caution.Drink, caution.Carbohydrate,
	caution.Painkillers, caution.Weather, caution.HeatKnown,
}

// cautions stand beside every table: what is said of drinking first, then the plan's, then those
// of food and drink alone.
func cautions(p *plan.Plan) []Caution {
	list := []Caution{{"overdrinking", "Never drink to reach a figure: drinking too much can kill. If your weight goes up during the race, or you feel bloated, " +
		"or your head aches and you feel sick, stop drinking and see the medical team."}}
	english := caution.English()
	for _, id := range caution.For(p) {
		if slices.Contains(general[:], id) {
			list = append(list, Caution{string(id), english[id]})
		}
	}
	return append(
		list,
		Caution{"medicines", "With any other illness, or if you take medicines, ask a doctor about eating and drinking in the race too."},
		Caution{"sickness", "If your stomach turns, slow down, and take small sips and bites until it settles."},
		Caution{"untested", "These figures are not tested in heat or cold."},
	)
}

// notes say what the figures rest on, or lack.
func (m *maker) notes() []Caution {
	var n []Caution
	add := func(when bool, id, text string) {
		if when {
			n = append(n, Caution{id, text})
		}
	}
	d, t := m.table.Duration, m.table
	add(d < 45*time.Minute, "none", "You need no food in a race this short.")
	add(d >= 45*time.Minute && d <= shortRace, "rinse", "You need little or no food. Rinsing your mouth with a sweet drink may help.")
	add(d > 24*time.Hour, "long", "There is little evidence for races of over 24 hours. Take the ranges as a first guess.")
	add(t.Rate.High > 60, "mixed", "More than 60 g an hour takes glucose and fructose together, and practice.")
	add(m.o.Rehearsed > MostRate, "capped", "The plan stays at 90 g an hour, the most with good evidence, though you have rehearsed more.")
	add(m.reduced, "slower", "The range is lower than usual, as you burn less at this effort.")
	add(m.slow, "at-once", "The plan stays at 30 g at a time. To eat more in an hour, eat more often.")
	add(m.unknownAir, "air", "The weather is not known. The drink ranges are for a mild day.")
	add(t.Total.Short > 0, "carry", "Some stations are too far apart for the food you can carry. The table says where it is left out.")
	add(m.dry, "water", "Some stations are too far apart for the drink you can carry. Before the race, find out where there is water on the way.")
	return n
}
