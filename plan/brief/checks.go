package brief

import (
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/internal/page"
)

// checkEvery is how long one check lies from the next, and mostChecks how many there are
// at most. [Our own]
const (
	checkEvery = 100 * time.Minute
	mostChecks = 5
	earlyCheck = 0.12 // share of the distance, of the first
)

// gatherChecks tells where to look at what.
func (t *teller) gatherChecks() {
	n := min(max(int(math.Round(float64(t.plan.Moving)/float64(checkEvery))), 1), mostChecks)
	asks := [mostChecks]Ask{Pacing, Drinking, Schedule, Drinking, Form}
	last := 0.0
	for i := range n {
		share := (float64(i) + 0.5) / float64(n)
		if i == 0 {
			share = earlyCheck
		}
		at, name := t.checkpoint(share, last)
		last = at
		if asks[i] == Schedule && t.half(at) {
			continue // half way the time is told anyway
		}
		ask := asks[i]
		if ask == Drinking && t.plan.Moving < drinkFrom {
			ask = Form
		}
		weight := likely - 15*i
		if i == 0 && t.length <= shortRace {
			weight = must
		}
		t.tell(weight, Line{Kind: Check, From: at, Name: name, Ask: ask, AtRisk: t.plan.FirstAtRisk() != nil})
	}
	t.gatherToGo()
	t.gatherLast()
}

// gatherToGo tells what is left at round distances, and half way.
func (t *teller) gatherToGo() {
	half := false // a marathon to go at about half the distance says it all
	for _, g := range t.story.ToGo {
		if t.measure.Imperial && g.Left < 20_000 || g.Left < 9000 {
			continue // round in kilometres alone
		}
		if t.half(g.Distance) {
			if half = g.Left > 40_000; !half {
				continue
			}
		}
		weight := spare + 30
		if g.Left > 40_000 {
			weight = likely
		}
		t.tell(weight, Line{Kind: ToGo, From: g.Distance, Length: g.Left, Ascent: g.Ascent, Took: t.plan.Gun - t.elapsed(g.Distance)})
	}
	if !half {
		t.tell(useful, Line{Kind: Halfway, From: t.length / 2, Share: t.story.Halves[1].Effort, Level: t.level})
	}
}

// half reports whether a place is about half way.
func (t *teller) half(distance float64) bool { return math.Abs(distance-t.length/2) < 0.03*t.length }

// checkpoint is where to check at about a share of the course, after a place: at a
// landmark, or at a whole number of the unit.
func (t *teller) checkpoint(share, after float64) (float64, string) {
	near, best, name := share*t.length, 0.0, ""
	reach := min(0.06, share/2) * t.length
	least := reach
	for _, l := range t.plan.Course.Landmarks() {
		off := math.Abs(l.Distance - near)
		if l.Name == "" || off > reach || l.Distance < after+0.04*t.length || l.Distance > t.length-samePlace {
			continue
		}
		if l.Kind == course.Station {
			off /= 2
		}
		if off <= least {
			best, name, least = l.Distance, page.Plain(l.Name), off
		}
	}
	if name != "" {
		return best, name
	}
	if at := math.Round(near/t.measure.unit()) * t.measure.unit(); at > after && at < t.length {
		return at, ""
	}
	return near, ""
}

// gatherLast tells what is left after the last real climb.
func (t *teller) gatherLast() {
	last := t.story.Last
	if last == nil {
		return
	}
	for _, c := range t.climbs {
		if c.Start != last.Start {
			continue
		}
		l := Line{
			Kind: LastClimb, From: c.Top, Name: c.Name, Climbs: []Climb{c}, Length: t.length - c.Top, Count: len(last.Small),
			Took: t.plan.Gun - t.elapsed(c.Top), Ascent: last.After.Ascent, Descent: last.After.Descent,
			Only: len(t.climbs) == 1,
		}
		t.tell(must, l)
	}
}
