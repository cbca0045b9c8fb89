package brief

import (
	"cmp"
	"math"
	"slices"

	"isoeffort.example/course"
)

// A course is run on laps if its landmarks come again by name within samePlace on every
// lap, and if the heights there are within sameHeight metres of those of the first. [Our
// own; heights alone would make laps of any rollers, names alone of two like names.]
const sameHeight = 8.0

// lapsOf is the greatest number of laps as which a course can be told, or 1.
func lapsOf(c *course.Course) int {
	var inner []course.Landmark
	names := map[string]int{}
	for _, l := range c.Landmarks() {
		if l.Distance > samePlace && l.Distance < c.Length()-samePlace && l.Name != "" {
			inner = append(inner, l)
			names[l.Name]++
		}
	}
	most := 0
	for _, n := range names {
		most = max(most, n)
	}
	if most < 2 {
		return 1
	}
	// A landmark where laps meet is passed once less than there are laps.
	for n := min(most+1, mostLaps); n > 1; n-- {
		if isLaps(c, inner, n) {
			return n
		}
	}
	return 1
}

// isLaps reports whether a course is the same lap n times over.
func isLaps(c *course.Course, inner []course.Landmark, n int) bool {
	lap := c.Length() / float64(n)
	if lap < 4*samePlace {
		return false
	}
	for _, l := range inner {
		first := math.Mod(l.Distance, lap)
		from := 0
		if first < samePlace || first > lap-samePlace {
			first, from = 0, 1 // where laps meet
		}
		for k := from; k < n; k++ {
			if !again(inner, l.Name, first+float64(k)*lap) {
				return false
			}
		}
	}
	const looks = 50
	for k := 1; k < n; k++ {
		for i := range looks + 1 {
			x := lap * float64(i) / looks
			if math.Abs(c.Elevation(x+float64(k)*lap)-c.Elevation(x)) > sameHeight+driftOf(c, lap, k) {
				return false
			}
		}
	}
	return true
}

// driftOf is by how much the start of a lap may have moved, as course.Laps moves it.
func driftOf(c *course.Course, lap float64, k int) float64 {
	return math.Abs(c.Elevation(float64(k)*lap) - c.Elevation(0))
}

func again(landmarks []course.Landmark, name string, distance float64) bool {
	return slices.ContainsFunc(landmarks, func(l course.Landmark) bool {
		return l.Name == name && math.Abs(l.Distance-distance) <= samePlace
	})
}

// lap is the length of a lap, the whole course where it is one way.
func (t *teller) lap() float64 { return t.length / float64(max(t.laps, 1)) }

// full is the distance up to which everything is told one by one.
func (t *teller) full() float64 {
	if t.laps > 1 {
		return t.lap()
	}
	return t.length
}

// lapOf is on which lap a place is, counted from 1.
func (t *teller) lapOf(distance float64) int {
	return min(int((distance+samePlace)/t.lap()), t.laps-1) + 1
}

// gatherLaps tells what changes from lap to lap.
func (t *teller) gatherLaps() {
	if t.laps < 2 {
		return
	}
	t.open(must, Line{Kind: Laps, Count: t.laps, Length: t.lap()})
	lap := t.lap()
	if t.laps > 2 {
		l := Line{Kind: LapTimes, From: lap, To: t.length - lap, Count: t.laps - 2, Pausing: len(t.plan.Stops) > 0}
		for k := 1; k < t.laps-1; k++ {
			took := t.elapsed(float64(k+1)*lap) - t.elapsed(float64(k)*lap)
			if l.Took == 0 || took < l.Took {
				l.Took = took
			}
			l.Slowest = max(l.Slowest, took)
		}
		t.tell(must, l)
	}
	t.tell(must, Line{Kind: FinalLap, From: t.length - lap, To: t.length, Took: t.plan.Gun - t.elapsed(t.length-lap), Pausing: len(t.plan.Stops) > 0})
	t.gatherLapClimbs()
}

// gatherLapClimbs tells of the climbs after the first lap, each but once.
func (t *teller) gatherLapClimbs() {
	var same [][]Climb
	lap := t.lap()
	for _, c := range t.climbs {
		if c.Start < t.full() {
			continue
		}
		i := slices.IndexFunc(same, func(s []Climb) bool {
			off := math.Mod(c.Start-s[0].Start+lap/2, lap) - lap/2
			return math.Abs(off) <= 3*samePlace && math.Abs(c.Rise-s[0].Rise) <= sameHeight
		})
		if i < 0 {
			same = append(same, []Climb{c})
		} else {
			same[i] = append(same[i], c)
		}
	}
	slices.SortStableFunc(same, func(a, b []Climb) int { return -cmp.Compare(hardest(a), hardest(b)) })
	most := climbsTold(t.length)
	var rest []Climb
	for i, s := range same {
		if i >= most {
			rest = append(rest, s...)
			continue
		}
		t.tell(weightOf(hardest(s)), Line{Kind: LapClimb, From: s[0].Start, To: s[len(s)-1].Top, Name: s[0].Name, Climbs: s, Count: t.walkedFrom(s), Whole: t.whole})
	}
	if len(rest) > 0 {
		slices.SortFunc(rest, func(a, b Climb) int { return cmp.Compare(a.Start, b.Start) })
		t.tell(weightOf(hardest(rest)), Line{Kind: SmallClimbs, From: rest[0].Start, To: rest[len(rest)-1].Top, Climbs: rest, Count: len(rest), Whole: t.whole})
	}
}

// walkedFrom is the lap from which a climb is mostly walked, where it was run before; or 0.
func (t *teller) walkedFrom(same []Climb) int {
	from := 0
	for i := len(same) - 1; i >= 0 && same[i].Walked > 0.5; i-- {
		from = t.lapOf(same[i].Start)
	}
	return from
}

// hardest is the greatest rating.
func hardest(climbs []Climb) (rating float64) {
	for _, c := range climbs {
		rating = max(rating, c.Rating)
	}
	return rating
}
