package brief

import (
	"fmt"
	"time"

	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

var placeWords = map[Kind]func(Line, Measure) string{
	Check:   check,
	Cutoff:  cutoff,
	Stop:    stop,
	Halfway: halfway,
	ToGo: func(l Line, m Measure) string {
		name := m.Stretch(l.Length)
		switch {
		case l.Length > 42_000:
			name = "a marathon"
		case l.Length > 21_000:
			name = "half a marathon"
		}
		s := say.Capital(name) + " to go at " + m.place(l.From) + ": about " + m.around(l.Took)
		if l.Ascent >= 10*l.Length/1000 {
			s += ", with " + m.Height(l.Ascent) + " of climbing"
		}
		return s + "."
	},
}

// check is what to look at and what to do about it.
func check(l Line, m Measure) string {
	place := where(l, m)
	if l.Name != "" && l.Lap > 0 {
		place = fmt.Sprintf("%s on lap %d", l.Name, l.Lap)
	}
	switch l.Ask {
	case Pacing:
		return "Check your pacing at " + place + ". The plan is there " + when(l, m) + ". Early? You are too fast: ease off. Late? Do not chase it."
	case Drinking:
		return "At " + place + " ask yourself: am I drinking to thirst, and eating as rehearsed? The plan is there " + when(l, m) + "."
	case Schedule:
		s := "Look at the time at " + place + ": the plan is there " + when(l, m) + "."
		if l.AtRisk {
			return s + " Later? Keep your effort, and waste no time standing."
		}
		return s + " A few minutes either way mean nothing."
	}
	return "At " + place + " shake out your arms and loosen your shoulders. The plan is there " + when(l, m) + "."
}

// cutoff is when to be where, and what to do where that is in doubt.
func cutoff(l Line, m Measure) string {
	place := "at " + where(l, m)
	if l.Name != "" && l.Lap > 0 {
		place = fmt.Sprintf("at %s on lap %d", l.Name, l.Lap)
	}
	if l.Finish {
		place = "at the finish"
	}
	// A limit is never rounded up: who believes it would be late.
	limit := l.Limit.Truncate(time.Minute)
	by := "within " + m.minutes(limit) + " of the gun"
	if !l.LimitAt.IsZero() {
		by = "by " + timeOfDay(l.LimitAt.Add(limit-l.Limit), limit)
	}
	if l.Departure {
		by = "leave " + by
	} else {
		by = "be there " + by
	}
	first := "The cutoff " + place + ": " + by
	switch {
	case l.InHand < 0:
		return first + ". The plan misses it by " + m.minutes(max(-l.InHand, 60e9)) + turn(l, ". Do not chase it: the officials and the medical team decide who goes on.", ".")
	case l.AtRisk && l.Nth == 0:
		s := first + ". You have " + m.minutes(l.InHand) + " in hand, which is little. Do not chase it with effort."
		if l.Pausing {
			return s + " Be quick at the stops."
		}
		return s
	case l.AtRisk:
		return first + ", " + m.minutes(l.InHand) + " in hand. That is little, too."
	}
	return first + ". You have " + m.around(l.InHand) + " in hand."
}

// stop is where to halt.
func stop(l Line, m Measure) string {
	if l.Count > 1 {
		return fmt.Sprintf("%s stops from %s to %s, %s in all.", say.Capital(numeral(l.Count)), m.place(l.From), m.place(l.To), m.about(l.Took))
	}
	what := "Stop"
	switch l.StopKind {
	case plan.DropBag:
		what = "Your drop bag is"
	case plan.Sleep:
		what = "Sleep"
	}
	s := what + " at " + where(l, m) + " for " + m.about(l.Took)
	if l.StopKind == plan.DropBag {
		s = what + " at " + where(l, m) + ": " + m.about(l.Took)
	}
	return s + "." + noted(l.Note)
}

// halfway is half the distance.
func halfway(l Line, m Measure) string {
	s := "Half the distance at " + m.place(l.From) + ", " + after(l, m) + "."
	switch {
	case l.Level:
		return s + " From here it feels harder. Stay calm, and hold the effort."
	case l.Share > 0.5+unequal:
		return s + " More than half the work is still to come."
	case l.Share < 0.5-unequal:
		return s + " More than half the work is done."
	}
	return s + " Half the work is done, too."
}
