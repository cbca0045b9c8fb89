package brief

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

var climbWords = map[Kind]func(Line, Measure) string{
	OneClimb:    oneClimb,
	SmallClimbs: smallClimbs,
	Decoy:       decoy,
	LastClimb:   lastClimb,
}

// oneClimb tells of one climb and what to do on it.
func oneClimb(l Line, m Measure) string {
	c := l.Climbs[0]
	size := m.Height(c.Rise) + " up in " + m.Stretch(c.Top-c.Start)
	rated := fmt.Sprintf(", rated %.0f.", c.Rating)
	if l.Nth == 0 {
		rated = fmt.Sprintf(", rated %.0f of 10 for how hard it is there.", c.Rating)
	}
	s := "At " + m.place(c.Start) + " " + turn(l, "starts a climb", "comes a climb", "there is a climb") + ": " + size + rated
	if c.Name != "" {
		s = turn(l, c.Name+" starts at "+m.place(c.Start)+": ", "At "+m.place(c.Start)+" comes "+c.Name+": ", "Then "+c.Name+", from "+m.place(c.Start)+": ") + size + rated
	}
	if c.Start < samePlace {
		s = "It starts uphill: " + size + rated
	}
	switch {
	case l.Tied && l.Hardest:
		s += " It is one of the hardest of the course."
	case l.Hardest:
		s += " It is the hardest climb of the course."
	}
	return joined(s, onClimb(c, l, m))
}

// onClimb is what to do on a climb, in one sentence or two.
func onClimb(c Climb, l Line, m Measure) string {
	n := 0
	if l.Nth > 0 {
		n = 1 + (l.Nth-1)%2
	}
	switch {
	case l.Whole && c.Gait == plan.Walk:
		return [...]string{"Short steps, and let others pass.", "", "Short steps, easy breathing."}[n]
	case l.Whole && c.Gait == plan.Run:
		return [...]string{"Short steps, and no harder than on the flat.", "", "The same breathing, shorter steps."}[n]
	case c.Gait == plan.Walk:
		return [...]string{"Walk all of it, and let others pass.", "Walk all of it.", "This one is walked, all of it."}[n]
	case c.Gait == plan.Run:
		return [...]string{"Run it with short steps, no harder than on the flat.", "Run it, no harder than on the flat.", "Run it, and keep your breathing as it was."}[n]
	case c.Change > 0 && c.WalkFirst:
		return "Walk the first " + m.Stretch(c.Change) + ", then run to the top."
	case c.Change > 0:
		return "Run the first " + m.Stretch(c.Change) + ", then walk to the top."
	case c.Walked > 0.85:
		return [...]string{"Walk nearly all of it.", "Walk most of it, and run only where it eases.", "Walk it, but for the easiest bits."}[n]
	case c.Walked > 0.4:
		return [...]string{"Walk the steep parts and run where it eases.", "Walk and run by turns, by how steep it is.", "Walk where it is steep, run where it is not."}[n]
	}
	return [...]string{"Run most of it, and walk where it is steepest.", "Run it, but walk the steepest part.", "Mostly running. Walk the steepest part."}[n]
}

// smallClimbs tells of climbs that follow each other.
func smallClimbs(l Line, m Measure) string {
	what := numeral(len(l.Climbs)) + " climbs"
	low, high := math.Inf(1), 0.0
	for _, c := range l.Climbs {
		low, high = min(low, c.Rise), max(high, c.Rise)
	}
	if high <= alike*low {
		what += " of about " + m.Height((low+high)/2)
	}
	s := "From " + m.place(l.From) + turn(l, " come ", " there are ", " come ") + what + ", up to " + m.place(l.To) + ", " + ratings(l.Climbs) + "."
	return joined(s, onClimbs(l))
}

// ratings are those of several climbs.
func ratings(climbs []Climb) string {
	low, high := math.Inf(1), 0.0
	for _, c := range climbs {
		low, high = min(low, math.Round(c.Rating)), max(high, math.Round(c.Rating))
	}
	switch {
	case high < realClimb:
		return fmt.Sprintf("none rated over %.0f", max(high, 1))
	case low == high:
		return fmt.Sprintf("all rated %.0f", high)
	}
	return fmt.Sprintf("rated %.0f to %.0f", low, high)
}

// onClimbs is what to do on several climbs.
func onClimbs(l Line) string {
	run, walk := true, true
	for _, c := range l.Climbs {
		run, walk = run && c.Gait == plan.Run, walk && c.Gait == plan.Walk
	}
	switch {
	case l.Whole && (run || walk):
		return ""
	case run:
		return turn(l, "Run them all, with short steps.", "All are run.")
	case walk:
		return turn(l, "Walk them all.", "All are walked.")
	}
	return turn(l, "Walk where it is steep, run the rest.", "Run and walk by how steep it is.", "Walk the steep parts.")
}

// decoy warns of a climb taken for another.
func decoy(l Line, m Measure) string {
	c, real := l.Climbs[0], l.Climbs[1]
	first, next := "the climb at "+m.place(c.Start), "a harder one"
	if c.Name != "" {
		first = c.Name + " at " + m.place(c.Start)
	}
	if real.Name != "" {
		next = real.Name
	}
	gap := "follows " + m.Stretch(l.Length) + " after its top"
	if l.Length < 100 {
		gap = "follows right after its top"
	}
	if real.Name != "" {
		gap += ", and is harder"
	}
	lead := turn(l, "Do not take "+first+" for the hard one.", "Beware of "+first+".", "Save yourself on "+first+".")
	return joined(lead, say.Capital(next)+" "+gap+".", onClimb(c, l, m))
}

// joined puts sentences together, but for empty ones.
func joined(sentences ...string) string {
	return strings.Join(slices.DeleteFunc(sentences, func(s string) bool { return s == "" }), " ")
}

// lastClimb is what is left after the last real one.
func lastClimb(l Line, m Measure) string {
	last := "last real"
	if l.Only {
		last = "only"
	}
	if l.Length < samePlace {
		return "The finish is at the top of the " + last + " climb."
	}
	s := "At " + m.place(l.From) + " the " + last + " climb is done. From there"
	if l.Name != "" {
		s = l.Name + " is the " + last + " climb. From its top at " + m.place(l.From)
	}
	s += " it is " + m.Stretch(l.Length) + " to the finish, about " + m.around(l.Took)
	switch up, down := 1000*l.Ascent/l.Length, 1000*l.Descent/l.Length; {
	case down > 3*up && down > 10:
		s += ", mostly downhill."
	case up+down < 8:
		s += ", on the level."
	case down > 3*up:
		s += ", level or gently down."
	default:
		s += ", up and down."
	}
	switch l.Count {
	case 0:
		return s
	case 1:
		return s + " One smaller climb still comes."
	}
	return s + " " + say.Capital(numeral(l.Count)) + " smaller climbs still come."
}
