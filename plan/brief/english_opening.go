package brief

import (
	"fmt"
	"time"

	"isoeffort.example/plan"
)

var openingWords = map[Kind]func(Line, Measure) string{
	Overview: overview,
	Beyond: func(l Line, m Measure) string {
		return "NOT ADVISED: this goal asks more than one race lets you give. Whoever goes for it will most likely slow down badly, or not finish. " +
			"Choose a slower goal before the start. The fastest that makes sense is " + finishTime(l.Took, m) + ", and what follows is for that."
	},
	Effort: effortWords,
	Late: func(l Line, _ Measure) string {
		return fmt.Sprintf("The same effort feels harder as the race goes on: about %d half way, about %d near the finish. That is normal, and no reason to push.", l.Feel.At(0.5), l.Feel.Last)
	},
	Hills: func(l Line, _ Measure) string {
		if l.Gait == plan.Walk {
			return "Keep the effort even, not the pace. Shorter steps uphill, the same breathing everywhere."
		}
		return "Keep the effort even, not the pace. Slower uphill, faster downhill, the same breathing everywhere."
	},
	Pace:    pace,
	Walking: walking,
	Walks: func(l Line, m Measure) string {
		if l.Count == 1 {
			return "One walk of " + m.minutes(l.Took) + " is planned. Take it where it is due, even if you feel fresh."
		}
		return fmt.Sprintf("There are %s planned walks of %s each, told below. Take each one where it is due, the early ones too.", numeral(l.Count), m.minutes(l.Took))
	},
	Pauses: func(l Line, m Measure) string {
		return fmt.Sprintf("The %s stops take %s in all. They are in the plan: no need to make them up.", numeral(l.Count), m.about(l.Took))
	},
	Harder: func(l Line, _ Measure) string {
		if l.Share > 0.5 {
			return "The second half is the harder one, so save something for it."
		}
		return "The first half is the harder one. Do not answer it with more effort."
	},
	Wind: func(Line, Measure) string {
		return "Into a wind keep the effort and let the pace go. Stay behind others if you can."
	},
	Start: start,
	Patch: func(Line, Measure) string {
		return "Bad patches come, and most of them pass. Ease off or walk for some minutes. Eat and drink as you have rehearsed, then go on."
	},
	Weather: weatherWords,
	Sleepless: func(l Line, _ Measure) string {
		s := "You will be short of sleep. If your eyes fall shut, lie down for 15 to 20 minutes at a station, and have somebody wake you. Never lie down alone in the cold."
		if l.Count > 0 {
			s = "Take the sleep that is planned. " + s
		}
		return s
	},
	Home: home,
	After: func(Line, Measure) string {
		return "After the line keep walking for some minutes. Then get into dry clothes."
	},
}

// overview is the race in two sentences.
func overview(l Line, m Measure) string {
	course := "The course"
	if l.Name != "" {
		course = l.Name
	}
	s := course + " is " + m.Exactly(l.Length) + " long, "
	switch {
	case l.Level:
		s += "with hardly a hill."
	case l.Ascent < 10:
		s += "and goes down: " + m.Height(l.Descent) + " in all."
	case l.Descent < 10:
		s += "and goes up: " + m.Height(l.Ascent) + " in all."
	default:
		s += "with " + m.Height(l.Ascent) + " up and " + m.Height(l.Descent) + " down."
	}
	has := "The plan has you at the finish"
	if l.OverGoal {
		has = "At the most that you can hold you finish"
	}
	s += " " + has + " after " + finishTime(l.Took, m)
	if l.Delayed {
		s += ", counted from the gun"
	}
	if !l.Clock.IsZero() {
		s += ", " + at(l.Clock, l.Took) + " by the clock"
	}
	if l.EarlyPace > 0 {
		s += ". That is about " + m.Pace(l.EarlyPace) + " a " + m.name() + " on average"
	}
	return s + "."
}

// finishTime is to the second in short races.
func finishTime(d time.Duration, m Measure) string {
	if s := d.Round(time.Second); s < 2*time.Hour && s%time.Minute != 0 {
		seconds := count(int64(s%time.Minute/time.Second), "second")
		if s < time.Minute {
			return seconds
		}
		return m.minutes(s.Truncate(time.Minute)) + " " + seconds
	}
	return m.minutes(d)
}

// effortWords say how the effort should feel.
func effortWords(l Line, _ Measure) string {
	var talk string
	switch l.Feel.Talk {
	case WholeSentences:
		talk = "speak in whole sentences all the time"
	case ShortSentences:
		talk = "speak in short sentences"
	default:
		talk = "say a few words at a time"
	}
	if !l.Level && l.Feel.Talk != FewWords {
		talk += ", uphill too"
	}
	lead := "You should be able to "
	if l.OverGoal {
		lead = "Whatever the goal, you should be able to "
	}
	return fmt.Sprintf("%s%s. If you cannot, ease off. Where 0 is nothing and 10 is all you have, it feels like %d at first.", lead, talk, l.Feel.First)
}

func pace(l Line, m Measure) string {
	early, late := m.Pace(l.EarlyPace), m.Pace(l.LatePace)
	if l.Gait == plan.Walk {
		return fmt.Sprintf("The pace is about %s a %s early on, running, and %s near the end, walking.", early, m.name(), late)
	}
	if d := l.LatePace - l.EarlyPace; early == late || d.Abs() < 3*time.Second {
		return "The pace is about " + early + " a " + m.name() + " from start to finish."
	}
	if l.LatePace > l.EarlyPace {
		return fmt.Sprintf("The pace is about %s a %s early on, and %s near the end. Let it slow that much: the effort stays the same.", early, m.name(), late)
	}
	return fmt.Sprintf("The pace is about %s a %s early on, and %s near the end, at the same effort.", early, m.name(), late)
}

func walking(l Line, m Measure) string {
	if l.Share >= 0.95 {
		return "All of it is walked. A steady walk goes far: keep it easy and even."
	}
	if l.From > 0 {
		return "You run to " + m.place(l.From) + " and walk from there to the finish, about " + m.around(l.Took) + "."
	}
	s := "You walk for " + part(l.Share) + " of the time."
	if l.Pausing || !l.Early {
		return s
	}
	return s + " Walking early is not weakness: it saves your legs for later."
}

// start is what to do at the start.
func start(l Line, m Measure) string {
	var s string
	switch {
	case l.Took >= time.Second && l.Crowd >= time.Second:
		s = "You cross the line " + m.span(l.Took) + " after the gun. The crowd takes another " + m.about(l.Crowd) + "."
	case l.Took >= time.Second:
		s = "You cross the line " + m.span(l.Took) + " after the gun."
	case l.Crowd >= time.Second:
		s = "The crowd at the start takes " + m.about(l.Crowd) + "."
	case l.Gait == plan.Walk:
		return "Start at an easy walk. Let the others go."
	default:
		return "Let the fast starters go. The first " + m.name() + " should feel as if you were holding back."
	}
	s += " Do not chase it, and do not weave through the field."
	if !l.Returns {
		return s + " It does not come back, and that is all right."
	}
	if l.Behind >= 2*time.Second {
		return s + " Even effort brings it back little by little: you are still " + m.about(l.Behind) + " behind half way."
	}
	return s + " Even effort brings it back by itself."
}

func home(l Line, m Measure) string {
	last := "The last " + m.Stretch(l.Length) + " are"
	if l.Length == m.unit() {
		last = "The last " + m.name() + " is"
	}
	return last + " hard for everyone. Hold your effort to the line: it is enough."
}
