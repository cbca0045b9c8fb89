package brief

import (
	"fmt"
	"strings"

	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

var groundWords = map[Kind]func(Line, Measure) string{
	Ground: ground,
	Flat: func(l Line, m Measure) string {
		return "The level ground to " + m.place(l.To) + " tempts you to hurry. The climbing is still to come."
	},
	Drop: func(l Line, m Measure) string {
		at, much := "From "+m.place(l.From)+" ", "for "+m.Stretch(l.Length)
		if l.Descent >= deepDrop {
			much = m.Height(l.Descent) + " in " + m.Stretch(l.Length)
		}
		if l.Gait == plan.Walk {
			return turn(l,
				at+"it goes down "+much+". Walk it with short steps, and do not hurry: it tempts everyone.",
				at+"down again "+much+". Same rule: short steps, no hurry.",
				at+"the next descent tempts you, "+much+". Leave it alone.")
		}
		return turn(l,
			at+"it goes down "+much+". Let the ground carry you, and do not push: it tempts everyone.",
			at+"down again "+much+". Same rule: loose legs, no pushing.",
			at+"the next descent tempts you, "+much+". Leave it alone.")
	},
	Descent: func(l Line, m Measure) string {
		s := "From " + m.place(l.From) + " it drops " + m.Height(l.Descent) + " in " + m.Stretch(l.Length) + "."
		return s + turn(l, " Short, quick steps, soft knees. Speed here costs your legs later.", " Again short steps, and no heavy braking.", " Steady feet, eyes ahead.")
	},
	MakeUp:     makeUp,
	WalkPlaces: walkPlaces,
	LastWalk: func(l Line, m Measure) string {
		return "From " + m.place(l.From) + " you walk, to the end: " + m.Stretch(l.To-l.From) + ", about " + m.around(l.Took) + "."
	},
	Mark: func(l Line, m Measure) string {
		s := "From " + m.place(l.From) + " to " + m.place(l.To) + " "
		switch l.MarkKind {
		case story.Exposed:
			s += "there is no shelter from " + map[bool]string{true: "wind and cold.", false: "sun or wind."}[l.Night]
		case story.Shaded:
			s += map[bool]string{true: "you are sheltered.", false: "you are in the shade."}[l.Night]
		case story.Surface:
			s += "the ground is soft, rough or slippery: watch your feet."
		default:
			s += "it is narrow or crowded: be patient."
		}
		return s + noted(l.Note)
	},
	Dark: func(l Line, m Measure) string {
		if l.From < samePlace {
			return "You start in the dark: slow down wherever you cannot see your feet."
		}
		return "It gets dark around " + m.place(l.From) + ". Have your lamp on before, and slow down where you cannot see."
	},
	Light: func(l Line, m Measure) string {
		return "It gets light around " + m.place(l.From) + ". Spirits rise then: keep the effort where it was."
	},
	Now: func(l Line, _ Measure) string {
		return turn(l,
			fmt.Sprintf("By now it feels like %d of 10. That is as it should be.", l.Feel.At(l.Share)),
			fmt.Sprintf("Expect %d of 10 for the same effort.", l.Feel.At(l.Share)))
	},
}

// ground is what a section is.
func ground(l Line, m Measure) string {
	up, down := l.Ascent, l.Descent
	var s string
	switch perKm := (up + down) / l.Length * 1000; {
	case l.Level && l.EarlyPace > 0:
		s = turn(l, "Level ground, at about "+m.Pace(l.EarlyPace)+" a "+m.name()+".", "About "+m.Pace(l.EarlyPace)+" a "+m.name()+" here.")
	case perKm < 8 || up < 15 && down < 15:
		s = "Level ground, about " + m.around(l.Took) + "."
	case up > 4*down:
		s = way(l, "Mostly up: ", "Uphill for the most part: ", "Partly up, the rest about level: ") + m.Height(up) + " in about " + m.around(l.Took) + "."
	case down > 4*up:
		s = way(l, "Mostly down: ", "Downhill for the most part: ", "Partly down, the rest about level: ") + m.Height(down) + " in about " + m.around(l.Took) + "."
	default:
		s = turn(l, m.Height(up)+" up and "+m.Height(down)+" down, in about "+m.around(l.Took)+".",
			"Then "+m.Stretch(l.Length)+" in about "+m.around(l.Took)+", with "+m.Height(up)+" up and "+m.Height(down)+" down.",
			"Now "+m.Height(up)+" up and "+m.Height(down)+" down, about "+m.around(l.Took)+".")
	}
	switch {
	case l.Whole && l.Gait != plan.Mixed:
		return s
	case l.Gait == plan.Run:
		return s + turn(l, " Run all of it.", " All of it is run.")
	case l.Gait == plan.Walk:
		return s + turn(l, " Walk all of it.", " All of it is walked.")
	}
	return s + " You walk " + part(l.Share) + " of that."
}

// way is how a section that goes one way is called: by the first or the second where most
// of it does, or else by the third.
func way(l Line, first, second, partly string) string {
	if l.Sloping < 0.5 {
		return partly
	}
	return turn(l, first, second)
}

// makeUp is ground that gives time back. Level with a little of a fall is called easy.
func makeUp(l Line, m Measure) string {
	from, long := "From "+m.place(l.From)+" ", " for "+m.Stretch(l.Length)+"."
	const gently = 0.015 // fall over run
	falls := l.Descent >= gently*l.Length
	switch {
	case l.Gait == plan.Walk && falls:
		return from + turn(l, "it falls gently"+long+" Walk on with short steps, no harder.", "gently down again,"+long)
	case l.Gait == plan.Walk:
		return from + turn(l, "the ground is easy"+long+" Walk on at the same effort.", "easy ground again,"+long)
	case falls:
		return from + turn(l, "it falls gently"+long+" Time comes back here by itself, at the same effort.",
			"gently down again,"+long+" Go with the ground, no harder.", "the ground helps once more,"+long)
	}
	return from + turn(l, "the ground is easy"+long+" Time comes back here by itself, at the same effort.",
		"easy ground again,"+long+" Keep the effort, take the time it gives.")
}

// mostPlaces is how many planned walks of a section are told one by one. [Our own]
const mostPlaces = 12

// walkPlaces tells where to take the planned walks, to the tenth of a unit.
func walkPlaces(l Line, m Measure) string {
	if n := len(l.Places); n > mostPlaces {
		return fmt.Sprintf("Take %d planned walks of %s here, the first at %s, then one about every %s.",
			n, m.minutes(l.Took), m.exactPlace(l.From), m.Stretch((l.Places[n-1]-l.From)/float64(n-1)))
	}
	var at []string
	for _, p := range l.Places {
		at = append(at, m.exactPlace(p))
	}
	last := at[len(at)-1]
	for i := range at {
		at[i], _, _ = strings.Cut(at[i], " ") // the unit is said once
	}
	if len(at) > 1 {
		last = strings.Join(at[:len(at)-1], ", ") + " and " + last
	}
	return "Walk " + m.minutes(l.Took) + " at " + last + "."
}
