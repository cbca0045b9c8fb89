package brief

import (
	"cmp"
	"slices"

	"isoeffort.example/course"
	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// Bounds of the descents that are told: so deep and so steep, and how many on what length.
// [Our own]
const (
	deepDrop    = 80.0  // m
	steepDrop   = -0.06 // gradient
	deepest     = 300.0 // m, from which all are that are as steep as deepSteep
	deepSteep   = -0.03
	descentEach = 25_000.0
	mostTold    = 4

	leastGentle = 1000.0 // m
	walkedAway  = 1. / 3 // share of the time on gentle ground, walked, from which no time comes back
)

// gatherStretches tells where ground tempts, where it falls steeply, where it gives time
// back, and what the user says of it.
func (t *teller) gatherStretches() {
	t.gatherTemptations()
	t.gatherDescents()
	t.gatherMakeUp()
	for _, m := range t.story.Marks {
		t.tell(must, Line{Kind: Mark, From: m.From, To: m.To, Length: m.To - m.From, MarkKind: m.Kind, Night: t.night((m.From + m.To) / 2), Note: page.Plain(m.Note)})
	}
}

// gatherTemptations tells where the first part of the race tempts.
func (t *teller) gatherTemptations() {
	tempts := 0
	for _, s := range t.story.Overspend {
		if s.From >= t.full() || tempts == 3 {
			continue
		}
		kind, weight := Drop, likely-20-40*tempts
		if s.Why == story.EarlyFlat {
			kind = Flat
		}
		if s.Descent-s.Ascent >= deepest {
			weight = must
		}
		t.tell(weight, Line{
			Kind: kind, From: s.From, To: s.To, Length: s.To - s.From, Descent: s.Descent - s.Ascent,
			Gait: mostly(t.walked(s.From, s.To)),
		})
		tempts++
	}
}

// gatherMakeUp tells of the longest gentle stretches, but for those of which so much is
// walked that little time comes back, and without the end of a descent that is told of.
func (t *teller) gatherMakeUp() {
	gentle := slices.Clone(t.story.MakeUp)
	slices.SortStableFunc(gentle, func(a, b story.Stretch) int { return -cmp.Compare(a.To-a.From, b.To-b.From) })
	for i, s := range gentle {
		for _, l := range t.lines {
			if l.Kind == Descent && l.From <= s.From && l.To > s.From {
				s.From = min(l.To, s.To)
			}
		}
		if s.From >= t.full() || i >= mostTold || s.To-s.From < leastGentle {
			continue
		}
		gait := mostly(t.walked(s.From, s.To))
		if gait == plan.Mixed && t.walked(s.From, s.To) > walkedAway {
			continue
		}
		r := t.plan.Course.ReliefBetween(s.From, s.To)
		t.tell(likely-60*i, Line{Kind: MakeUp, From: s.From, To: s.To, Length: s.To - s.From, Descent: r.Descent - r.Ascent, Gait: gait})
	}
}

// tempting reports whether a line that warns of temptation is about more than half of a
// descent; it weighs at least as much as that then.
func (t *teller) tempting(d course.Descent, weight int) bool {
	for i := range t.lines {
		l := &t.lines[i]
		if l.Kind == Drop && min(l.To, d.Foot)-max(l.From, d.Start) > d.Length()/2 {
			l.weight = max(l.weight, weight)
			return true
		}
	}
	return false
}

// gatherDescents tells of the deepest steep descents that no other line is about, and of
// all that are deeper than deepest.
func (t *teller) gatherDescents() {
	deep := slices.Clone(t.story.Descents)
	slices.SortStableFunc(deep, func(a, b course.Descent) int { return -cmp.Compare(a.Drop, b.Drop) })
	told := 0
	most := min(1+int(t.length/descentEach), mostTold)
	for _, d := range deep {
		weight := useful + 50 - 30*told
		if d.Drop >= deepest && d.Gradient() <= deepSteep {
			weight = must
		}
		small := d.Drop < deepDrop || d.Gradient() > steepDrop || told >= most
		if d.Start >= t.full() || small && weight < must || t.tempting(d, weight) {
			continue
		}
		t.tell(weight, Line{Kind: Descent, From: d.Start, To: d.Foot, Name: page.Plain(d.Name), Length: d.Length(), Descent: d.Drop})
		told++
	}
}
