package brief

import (
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
)

// Weights: what must be told is; of the rest, the greater first.
const (
	must   = 1000
	likely = 700
	useful = 400
	spare  = 100
)

// Bounds that lines of the opening are told from. [Our own]
const (
	fewWalks  = 0.02     // share of the moving time
	shortRace = 25_000.0 // m; the pace of all of it, and the first check, are told
	unequal   = 0.03     // of the effort, by which one half is the harder
	drinkFrom = 75 * time.Minute
	patchFrom = 4 * time.Hour
)

// gatherOpening tells of the race as a whole.
func (t *teller) gatherOpening() {
	p, c := t.plan, t.plan.Course
	relief := c.Relief()
	name := page.Plain(c.Name())
	overview := Line{Kind: Overview, Name: name, Length: t.length, Ascent: relief.Ascent, Descent: relief.Descent, Took: p.Gun, Level: t.level, OverGoal: t.over}
	if !t.level && t.length <= shortRace && p.WalkingShare < fewWalks {
		overview.EarlyPace = t.pace(0, 1)
	}
	overview = t.placed(overview)
	overview.Clock, overview.weight = t.clock(p.Gun), must
	t.opening = append(t.opening, overview)
	if t.over {
		t.open(must, Line{Kind: Beyond, Took: p.Gun})
	}
	if second := t.story.Halves[1].Effort; second > 0.5+unequal || second < 0.5-unequal {
		t.open(useful, Line{Kind: Harder, Share: second})
	}
	t.open(must, Line{Kind: Effort, Feel: &t.feel, Level: t.level, OverGoal: t.over})
	if t.feel.Last > t.feel.First+1 {
		t.open(likely, Line{Kind: Late, Feel: &t.feel})
	}
	t.openManner()
	if len(p.Stops) > 1 {
		t.open(spare, Line{Kind: Pauses, Took: p.Stopped, Count: len(p.Stops)})
	}
}

// openManner tells how the ground is covered.
func (t *teller) openManner() {
	p := t.plan
	if t.level {
		l := Line{Kind: Pace, EarlyPace: t.pace(0, 0.25), LatePace: t.pace(0.75, 1)}
		if !t.whole && mostly(t.walked(0.75*t.length, t.length)) == plan.Walk {
			l.Gait = plan.Walk
		}
		t.open(likely+50, l)
	}
	if t.level {
		t.open(useful, Line{Kind: Wind})
	}
	if len(p.Climbs) > 0 {
		t.open(likely+20, Line{Kind: Hills, Gait: mostly(p.WalkingShare)})
	}
	t.openWalking()
	t.gatherWeather()
}

// pace is the pace per kilometre between two shares of the distance.
func (t *teller) pace(from, to float64) time.Duration {
	a, b := from*t.length, to*t.length
	return time.Duration(float64(t.moving(a, b)) * 1000 / (b - a))
}

// mostly names a gait by the share of the time that is walked, as plans do.
func mostly(walked float64) plan.Gait {
	const most = 0.95
	switch {
	case walked >= most:
		return plan.Walk
	case walked <= 1-most:
		return plan.Run
	}
	return plan.Mixed
}

// gatherStart tells of the start.
func (t *teller) gatherStart() {
	p := t.plan
	l := Line{Kind: Start, Took: p.Start.Delay, Crowd: max(p.Start.Crowd, 0), Gait: p.Bouts(0, t.length)[0].Gait}
	if lost := l.Took + l.Crowd; lost >= time.Second {
		l.Behind = max(p.Behind(t.length/2), 0)
		l.Returns = p.Behind(t.length) <= lost/2
	}
	t.tell(must, l)
}

// gatherClosing tells how to finish and what comes after.
func (t *teller) gatherClosing() {
	add := func(weight int, l Line) {
		l.weight = weight
		t.closing = append(t.closing, t.placed(l))
	}
	if t.plan.Moving > patchFrom {
		add(likely, Line{Kind: Patch, From: t.length})
	}
	if l, ok := t.sleepless(); ok {
		add(must, l)
	}
	left := 0.1 * t.length
	for _, round := range []float64{1, 2, 3, 5} { // units
		if d := round * t.measure.unit(); d <= 0.2*t.length && d < 5.1*1000 {
			left = d
		}
	}
	add(must, Line{Kind: Home, From: t.length, Length: left})
	add(useful, Line{Kind: After, From: t.length})
}

// gatherGround tells what each section is, or on laps the first.
func (t *teller) gatherGround() {
	for i, s := range t.sections {
		if s.From >= t.full() || len(t.sections) == 1 {
			continue
		}
		r := t.plan.Course.ReliefBetween(s.From, s.To)
		walked := t.walked(s.From, s.To)
		l := Line{
			Kind: Ground, From: s.From, To: s.To, Length: s.To - s.From, Ascent: r.Ascent, Descent: r.Descent,
			Took: t.moving(s.From, s.To), Gait: mostly(walked), Share: walked, Level: t.level, Whole: t.oneGait(s.From),
			Sloping: t.sloping(s.From, s.To, r.Ascent < r.Descent),
		}
		if t.level {
			l.EarlyPace = t.pace(s.From/t.length, s.To/t.length)
		}
		if l.Gait == plan.Run && len(t.plan.Bouts(s.From, s.To)) > 1 {
			l.Gait = plan.Mixed
		}
		weight := likely + 40 - i
		switch {
		case len(t.sections) <= 2 && i == 0:
			weight = spare
		case t.level:
			weight = useful - 20*i
		}
		t.tell(weight, l)
	}
}

// A stretch climbs or falls where its gradient over slopeWindow metres is beyond slope.
// [Our own]
const (
	slope       = 0.015
	slopeWindow = 200.0
)

// sloping is the share of a stretch that climbs, or that falls.
func (t *teller) sloping(from, to float64, down bool) float64 {
	n := int(max(1, (to-from)/(slopeWindow/2)))
	found := 0
	for i := range n {
		middle := from + (to-from)*(float64(i)+0.5)/float64(n)
		g := t.plan.Course.Gradient(max(0, middle-slopeWindow/2), min(t.length, middle+slopeWindow/2))
		if down {
			g = -g
		}
		if g >= slope {
			found++
		}
	}
	return float64(found) / float64(n)
}

// gatherFeel tells what the effort feels like after a third and after seven tenths.
func (t *teller) gatherFeel() {
	if t.feel.Last <= t.feel.First+2 || t.laps > 1 {
		return
	}
	least := [...]float64{0.33, 0.7}
	n := 0
	for _, s := range t.sections {
		share := s.From / t.length
		if n < len(least) && share >= least[n] {
			t.tell(useful-60+int(100*share), Line{Kind: Now, From: s.From, Feel: &t.feel, Share: share})
			for n < len(least) && share >= least[n] {
				n++
			}
		}
	}
}
