package brief

import (
	"time"

	"isoeffort.example/plan"
)

// A Caution is to be shown with a briefing. Its ID stays the same in every language and
// version.
type Caution struct {
	ID   string `json:"id"`
	Text string `json:"text"`
}

// cautionWords are the cautions by ID. Where printed plans have the same caution they say
// the same.
var cautionWords = map[string]string{
	"first":        "This plan is arithmetic about effort. The race's medical team, local rules and your doctor come before it.",
	"stop":         "Stop and seek help for chest pain, collapse, confusion, dark urine or repeated vomiting.",
	"illness":      "Do not start with a fever or a recent illness.",
	"doctor":       "With heart disease, with diabetes, in pregnancy, or as a minor: ask a doctor first.",
	"drink":        "Drink to thirst, never a fixed large amount. Gaining weight on the way is a warning sign.",
	"carbohydrate": "Take carbohydrate only as you have rehearsed it.",
	"painkillers":  "Take no anti-inflammatory painkillers before or in the race.",
	"weather":      "In heat or cold follow the race's orders, kit rules and medical team. The plan knows nothing of what is safe.",
	"heat-known":   "The plan estimates what the weather costs in time. It was not validated in heat or cold, and knows nothing of what is safe. Follow the race's orders, kit rules and medical team.",
	"chase":        "Never chase a lost minute or a cutoff. Go by effort, and trust the course markers over a watch.",
	"night":        "In the dark slow down where you cannot see, and do as the race says about lamps and clothing.",
	"sleep":        "If you see things that are not there, or fall asleep on your feet, stop at the next station and tell someone.",
	"driving":      "Do not drive after a race through the night, or before you have slept.",
}

const (
	fuelFrom  = 75 * time.Minute // from which eating in the race is usual; common practice
	longFrom  = 12 * time.Hour   // from which sleep is short whenever the race starts [our own]
	nightFrom = 22 * time.Hour   // time of day
	nightTo   = 5 * time.Hour
)

// cautions are those that matter for a plan, in order.
func cautions(p *plan.Plan, words Words) (list []Caution) {
	add := func(id string, when bool) {
		if text := words.Cautions[id]; when && text != "" {
			list = append(list, Caution{id, text})
		}
	}
	weather := p.Race.Surroundings.Day != nil
	night := throughNight(p)
	add("first", true)
	add("stop", true)
	add("illness", true)
	add("doctor", true)
	add("drink", true)
	add("carbohydrate", p.Gun >= fuelFrom)
	add("painkillers", true)
	add("heat-known", weather)
	add("weather", !weather)
	add("chase", true)
	add("night", night)
	add("sleep", p.Gun >= 2*longFrom)
	add("driving", night || p.Gun >= longFrom)
	return list
}

// throughNight reports whether the race goes into the night, as far as is known: with a
// start time by the clock, otherwise when it lasts so long that it must.
func throughNight(p *plan.Plan) bool {
	start := p.Race.Start
	if start.IsZero() {
		return p.Gun >= longFrom
	}
	for at := time.Duration(0); at < p.Gun; at += 10 * time.Minute {
		if night(start.Add(at)) {
			return true
		}
	}
	return night(start.Add(p.Gun))
}

func night(t time.Time) bool {
	h, m, _ := t.Clock()
	of := time.Duration(h)*time.Hour + time.Duration(m)*time.Minute
	return of >= nightFrom || of < nightTo
}
