package brief

import (
	"fmt"

	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

var groundWords = map[Kind]func(Line, Measure) string{
	Ground: ground,
	Flat: func(l Line, m Measure) string {
		return "The level ground to " + m.place(l.To) + " tempts you to hurry. The climbing is still to come."
	},
	Drop: func(l Line, m Measure) string {
		at := "From " + m.place(l.From) + " "
		return turn(l,
			at+"it goes down for "+m.Stretch(l.Length)+". Let the ground carry you, and do not push: it tempts everyone.",
			at+"down again, for "+m.Stretch(l.Length)+". Same rule: loose legs, no pushing.",
			at+"the next descent tempts you, for "+m.Stretch(l.Length)+". Leave it alone.")
	},
	Descent: func(l Line, m Measure) string {
		s := "From " + m.place(l.From) + " it drops " + m.Height(l.Descent) + " in " + m.Stretch(l.Length) + "."
		return s + turn(l, " Short, quick steps, soft knees. Speed here costs your legs later.", " Again short steps, and no heavy braking.", " Steady feet, eyes ahead.")
	},
	MakeUp: func(l Line, m Measure) string {
		at := "From " + m.place(l.From) + " "
		if l.Descent < 0.005*l.Length {
			return turn(l,
				at+"the ground is easy for "+m.Stretch(l.Length)+". Time comes back here by itself, at the same effort.",
				at+"easy ground again, for "+m.Stretch(l.Length)+". Keep the effort, take the time it gives.")
		}
		return turn(l,
			at+"it falls gently for "+m.Stretch(l.Length)+". Time comes back here by itself, at the same effort.",
			at+"gently down again, for "+m.Stretch(l.Length)+". Go with the ground, no harder.",
			at+"the ground helps once more, for "+m.Stretch(l.Length)+".")
	},
	Mark: func(l Line, m Measure) string {
		s := "From " + m.place(l.From) + " to " + m.place(l.To) + " "
		switch l.MarkKind {
		case story.Exposed:
			s += "there is no shelter from sun or wind."
		case story.Shaded:
			s += "you are in the shade."
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
		s = turn(l, "Mostly up: ", "Uphill for the most part: ") + m.Height(up) + " in about " + m.around(l.Took) + "."
	case down > 4*up:
		s = turn(l, "Mostly down: ", "Downhill for the most part: ") + m.Height(down) + " in about " + m.around(l.Took) + "."
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
