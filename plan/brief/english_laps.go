package brief

import (
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/plan"
)

var lapWords = map[Kind]func(Line, Measure) string{
	Laps: func(l Line, m Measure) string {
		return "It is " + numeral(l.Count) + " laps of " + m.Exactly(l.Length) + " each. First one lap in full, then what changes."
	},
	LapTimes: func(l Line, m Measure) string {
		with := ""
		if l.Pausing {
			with = ", stops included"
		}
		if l.Count == 1 {
			return "The second lap takes about " + m.minutes(l.Took) + with + ". Nothing is new but tired legs."
		}
		if m.minutes(l.Slowest) == m.minutes(l.Took) {
			return "These laps take about " + m.minutes(l.Slowest) + " each" + with + ". Make them as like as you can."
		}
		from := m.minutes(l.Took)
		if l.Slowest < 59*time.Minute {
			from, _, _ = strings.Cut(from, " ") // the unit is said once
		}
		return "These laps take " + from + " to " + m.minutes(l.Slowest) + with + ", at the same effort. Let them grow longer."
	},
	LapClimb: lapClimb,
	FinalLap: func(l Line, m Measure) string {
		return "The last lap takes about " + m.minutes(l.Took) + ". Take it like the one before: no harder."
	},
}

// lapClimb is how one climb changes from lap to lap.
func lapClimb(l Line, m Measure) string {
	first, last := l.Climbs[0], l.Climbs[len(l.Climbs)-1]
	name := "The climb at " + m.place(first.Start)
	if l.Name != "" {
		name = l.Name
	}
	low, high := math.Round(first.Rating), math.Round(last.Rating)
	s := fmt.Sprintf("%s is rated %.0f here.", name, high)
	if len(l.Climbs) > 1 {
		s = fmt.Sprintf("%s is rated %.0f on the second lap and %.0f on the last", name, low, high) + turn(l, ", though the hill stays the same.", ".")
		if low == high {
			s = fmt.Sprintf("%s stays at %.0f to the last lap.", name, low)
		}
	}
	switch {
	case len(l.Climbs) == 1:
		return joined(s, onClimb(first, l, m))
	case l.Count > 0 && first.Walked <= 0.5:
		return s + fmt.Sprintf(" From lap %d on, walk it.", l.Count)
	case first.Gait == plan.Walk && last.Gait == plan.Walk:
		return joined(s, unless(l.Whole, "Walk it every time."))
	case first.Gait == plan.Run && last.Gait == plan.Run:
		return joined(s, unless(l.Whole, "Run it every time, no harder."))
	}
	return s
}

// unless leaves a sentence out.
func unless(out bool, sentence string) string {
	if out {
		return ""
	}
	return sentence
}
