package fuel

import "time"

// A Caution is a sentence for the runner, with an identity that stays the same so that a
// program can show its own translation.
type Caution struct {
	ID   string `json:"id"`
	Text string `json:"text"`
}

// cautions stand beside every table.
func cautions() []Caution {
	return []Caution{
		{"thirst", "Drink to thirst. Less is fine if you are not thirsty. Never drink to reach a figure: " +
			"drinking too much can kill. If your weight goes up during the race, or you feel bloated, or your head aches and you feel sick, " +
			"stop drinking and see the medical team."},
		{"rehearsed", "Eat only what you have rehearsed in training, at the amounts you have rehearsed."},
		{"doctor", "If you have diabetes or another illness, take medicines, are pregnant or under 18, ask a doctor first."},
		{"weather", "In heat and cold follow the race's orders, its kit list and its medical team. " +
			"These figures are not tested there."},
	}
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
	add(d >= 45*time.Minute && d <= 75*time.Minute, "rinse", "You need little or no food. Rinsing your mouth with a sweet drink may help.")
	add(d > 24*time.Hour, "long", "There is little evidence for races of over 24 hours. Take the ranges as a first guess.")
	add(t.Rate.High > 60, "mixed", "More than 60 g an hour takes glucose and fructose together, and practice.")
	add(m.o.Rehearsed > MostRate, "capped", "The plan stays at 90 g an hour, the most with good evidence, though you have rehearsed more.")
	add(m.reduced, "slower", "The range is lower than usual, as you burn less at this effort.")
	add(m.unknownAir, "air", "The weather is not known. The drink ranges are for a mild day.")
	add(t.Total.Short > 0, "carry", "Some stations are too far apart for what you can carry. The table says where food is left out.")
	add(m.dry, "water", "Some stations are too far apart for the drink you can carry. Plan for more, or ask the race for water there.")
	return n
}
