package brief

import (
	"cmp"
	"math"
	"slices"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// realClimb is the rating from which a climb is always told of. [Our own]
const realClimb = 4.0

// climbsTold is how many climbs are told one by one on a course of a length in metres: two
// on 10 km, six on 85 km, nine on 170 km. [Our own]
func climbsTold(length float64) int {
	return min(max(int(math.Round(0.69*math.Sqrt(length/1000))), 1), 9)
}

func weightOf(rating float64) int {
	if rating >= realClimb {
		return must
	}
	return spare + int(100*rating)
}

// climbsOf are the climbs of a plan.
func climbsOf(p *plan.Plan) (climbs []Climb) {
	for _, c := range p.Climbs {
		climb := Climb{
			Start: c.Climb.Start, Top: c.Climb.Top, Rise: c.Rise, Name: page.Plain(c.Name), Rating: c.Rating.Value,
			Gait: mostly(c.WalkingShare), Walked: c.WalkingShare,
		}
		// A few metres of the other gait at an end are left out.
		bouts := slices.DeleteFunc(slices.Clone(c.Bouts), func(b plan.Bout) bool { return b.To-b.From < 60 && len(c.Bouts) > 1 })
		if climb.Gait == plan.Run && len(bouts) > 1 {
			climb.Gait = plan.Mixed
		}
		if climb.Gait == plan.Mixed && len(bouts) == 2 && bouts[0].Gait != bouts[1].Gait {
			climb.Change, climb.WalkFirst = bouts[1].From-c.Climb.Start, bouts[0].Gait == plan.Walk
		}
		climbs = append(climbs, climb)
	}
	return climbs
}

// decoysTold is how many decoys are told at most: one on 10 km, three on 85 km. [Our own]
func decoysTold(length float64) int { return min(1+int(length/30_000), 3) }

// gatherClimbs tells of the climbs: decoys, the hardest one by one, and the others between
// them in groups.
func (t *teller) gatherClimbs() {
	var climbs []Climb
	for _, c := range t.climbs {
		if c.Start < t.full() {
			climbs = append(climbs, c)
		}
	}
	told := t.gatherDecoys(climbs)
	order := slices.Clone(climbs)
	slices.SortStableFunc(order, func(a, b Climb) int { return -cmp.Compare(a.Rating, b.Rating) })
	for i, c := range order {
		if i < climbsTold(t.length) && !told[c.Start] && !oneOfMany(climbs, c) {
			told[c.Start] = true
			l := Line{Kind: OneClimb, From: c.Start, To: c.Top, Name: c.Name, Climbs: []Climb{c}, Length: c.Top - c.Start, Ascent: c.Rise, Whole: t.oneGait(c.Start)}
			if l.Hardest = i == 0 && len(climbs) > 1 && t.laps < 2; l.Hardest {
				l.Tied = math.Round(order[1].Rating) == math.Round(c.Rating)
			}
			weight := weightOf(c.Rating) + 1
			if t.laps > 1 {
				weight = must // the first lap is told in full
			}
			t.tell(weight, l)
		}
	}
	var group []Climb
	for _, c := range climbs {
		if len(group) > 0 && (told[c.Start] || t.sectionAt(c.Start) != t.sectionAt(group[0].Start)) {
			t.tellGroup(group)
			group = nil
		}
		if !told[c.Start] {
			group = append(group, c)
		}
	}
	t.tellGroup(group)
}

// Climbs are told together, however they are rated, where on both sides there is another
// within nearby metres, none of them higher than lowRise and than alike times another.
// [Our own]
const (
	nearby  = 3000.0
	lowRise = 100.0
	alike   = 1.3
)

// oneOfMany reports whether a climb has like ones near it, three of them in all.
func oneOfMany(climbs []Climb, c Climb) bool {
	n := 0
	for _, other := range climbs {
		near := other.Start-c.Top < nearby && c.Start-other.Top < nearby
		if near && max(c.Rise, other.Rise) < min(lowRise, alike*min(c.Rise, other.Rise)) {
			n++
		}
	}
	return n >= 3
}

// tellGroup tells of climbs that follow each other.
func (t *teller) tellGroup(group []Climb) {
	switch len(group) {
	case 0:
	case 1:
		c := group[0]
		t.tell(weightOf(c.Rating)-20, Line{Kind: OneClimb, From: c.Start, To: c.Top, Name: c.Name, Climbs: group, Length: c.Top - c.Start, Ascent: c.Rise, Whole: t.oneGait(c.Start)})
	default:
		l := Line{Kind: SmallClimbs, From: group[0].Start, To: group[len(group)-1].Top, Climbs: group, Count: len(group), Whole: t.oneGait(group[0].Start)}
		t.tell(weightOf(hardest(group))+50, l)
	}
}

// gatherDecoys tells of the decoys that hide most, and returns where those start.
func (t *teller) gatherDecoys(climbs []Climb) map[float64]bool {
	told := map[float64]bool{}
	decoys := slices.Clone(t.story.Decoys)
	slices.SortStableFunc(decoys, func(a, b story.Decoy) int {
		return -cmp.Compare(a.Real.Value-a.Climb.Value, b.Real.Value-b.Climb.Value)
	})
	for _, d := range decoys {
		i := slices.IndexFunc(climbs, func(c Climb) bool { return c.Start == d.Climb.Start })
		j := slices.IndexFunc(climbs, func(c Climb) bool { return c.Start == d.Real.Start })
		if i < 0 || j < 0 || len(told) == decoysTold(t.length) || d.Real.Value < realClimb {
			continue
		}
		c := climbs[i]
		told[c.Start] = true
		t.tell(must, Line{Kind: Decoy, From: c.Start, To: climbs[j].Start, Name: c.Name, Climbs: []Climb{c, climbs[j]}, Length: d.Gap, Ascent: c.Rise, Whole: t.oneGait(c.Start)})
	}
	return told
}
