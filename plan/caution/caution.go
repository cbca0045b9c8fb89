// Package caution has the cautions that stand beside everything a plan is printed in: in
// plain words, chosen by what matters for the race, and by an ID that stays the same in
// every language and version.
//
// They defer to the race's medical team, local rules and a doctor, and replace none of
// them. What they say is common practice; drinking to thirst, and a gain of weight as a
// warning sign, are the consensus of Hew-Butler et al. 2015, Clin J Sport Med 25:303.
package caution

import (
	"time"

	"isoeffort.example/plan"
)

// An ID names a caution.
type ID string

// The cautions, in the order in which they are shown.
const (
	First        ID = "first"
	Stop         ID = "stop"
	Illness      ID = "illness"
	Doctor       ID = "doctor"
	Drink        ID = "drink"
	Carbohydrate ID = "carbohydrate"
	Painkillers  ID = "painkillers"
	Weather      ID = "weather"    // of a plan that knows no weather
	HeatKnown    ID = "heat-known" // of one that does
	Chase        ID = "chase"
	Night        ID = "night"
	Sleep        ID = "sleep"
	Driving      ID = "driving"
)

// English returns the texts by ID, for the caller to keep or change.
func English() map[ID]string {
	return map[ID]string{
		First:        "This plan is arithmetic about effort. The race's medical team, local rules and your doctor come before it.",
		Stop:         "Stop and seek help for chest pain, collapse, confusion, dark urine or repeated vomiting.",
		Illness:      "Do not start with a fever or a recent illness.",
		Doctor:       "With heart disease, with diabetes, in pregnancy, or as a minor: ask a doctor first.",
		Drink:        "Drink to thirst, never a fixed large amount. Gaining weight on the way is a warning sign.",
		Carbohydrate: "Take carbohydrate only as you have rehearsed it.",
		Painkillers:  "Take no anti-inflammatory painkillers before or in the race.",
		Weather:      "In heat or cold follow the race's orders, kit rules and medical team. The plan knows nothing of what is safe.",
		HeatKnown:    "The plan estimates what the weather costs in time. It was not validated in heat or cold, and knows nothing of what is safe. Follow the race's orders, kit rules and medical team. Whoever is dizzy, confused, or cold and shivering in the heat must stop and be helped at once.",
		Chase:        "Never chase a lost minute or a cutoff. Go by effort, and trust the course markers over a watch.",
		Night:        "In the dark slow down where you cannot see, and do as the race says about lamps and clothing.",
		Sleep:        "If you see things that are not there, or fall asleep on your feet, stop at the next station and tell someone.",
		Driving:      "Do not drive after a race through the night, or before you have slept.",
	}
}

const (
	fuelFrom  = 75 * time.Minute // from which eating in the race is usual; common practice, no source
	longFrom  = 12 * time.Hour   // from which sleep is short whenever the race starts [Our own]
	nightFrom = 22 * time.Hour   // time of day
	nightTo   = 5 * time.Hour
)

// For returns the cautions that matter for a plan, in order.
func For(p *plan.Plan) (ids []ID) {
	weather, night := p.Race.Surroundings.Day != nil, throughNight(p)
	for _, c := range []struct {
		id   ID
		when bool
	}{
		{First, true},
		{Stop, true},
		{Illness, true},
		{Doctor, true},
		{Drink, true},
		{Carbohydrate, p.Gun >= fuelFrom},
		{Painkillers, true},
		{HeatKnown, weather},
		{Weather, !weather},
		{Chase, true},
		{Night, night},
		{Sleep, p.Gun >= 2*longFrom},
		{Driving, night || p.Gun >= longFrom},
	} {
		if c.when {
			ids = append(ids, c.id)
		}
	}
	return ids
}

// Texts returns the English texts of the cautions for a plan.
func Texts(p *plan.Plan) (texts []string) {
	english := English()
	for _, id := range For(p) {
		texts = append(texts, english[id])
	}
	return texts
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
