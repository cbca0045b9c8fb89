package brief

import (
	"cmp"
	"slices"

	"isoeffort.example/course"
	"isoeffort.example/internal/page"
	"isoeffort.example/plan/story"
)

// Bounds of the descents that are told: so deep and so steep, and how many on what length.
// [Our own]
const (
	deepDrop    = 80.0  // m
	steepDrop   = -0.06 // gradient
	descentEach = 25_000.0
	mostTold    = 4
)

// gatherStretches tells where ground tempts, where it gives time back, where it falls
// steeply, and what the user says of it.
func (t *teller) gatherStretches() {
	tempts := 0
	for _, s := range t.story.Overspend {
		if s.From >= t.full() || tempts == 3 {
			continue
		}
		kind := Drop
		if s.Why == story.EarlyFlat {
			kind = Flat
		}
		t.tell(likely-20-40*tempts, Line{Kind: kind, From: s.From, To: s.To, Length: s.To - s.From, Descent: s.Descent - s.Ascent})
		tempts++
	}
	t.gatherMakeUp()
	t.gatherDescents()
	for _, m := range t.story.Marks {
		t.tell(must, Line{Kind: Mark, From: m.From, To: m.To, Length: m.To - m.From, MarkKind: m.Kind, Note: page.Plain(m.Note)})
	}
}

// gatherMakeUp tells of the longest gentle stretches.
func (t *teller) gatherMakeUp() {
	gentle := slices.Clone(t.story.MakeUp)
	slices.SortStableFunc(gentle, func(a, b story.Stretch) int { return -cmp.Compare(a.To-a.From, b.To-b.From) })
	for i, s := range gentle {
		if s.From < t.full() && i < mostTold {
			t.tell(likely-60*i, Line{Kind: MakeUp, From: s.From, To: s.To, Length: s.To - s.From, Descent: s.Descent - s.Ascent})
		}
	}
}

// gatherDescents tells of the deepest steep descents that no other line is about.
func (t *teller) gatherDescents() {
	deep := slices.Clone(t.story.Descents)
	slices.SortStableFunc(deep, func(a, b course.Descent) int { return -cmp.Compare(a.Drop, b.Drop) })
	told := 0
	for _, d := range deep {
		tempting := slices.ContainsFunc(t.lines, func(l Line) bool {
			return (l.Kind == Drop || l.Kind == MakeUp) && l.From < d.Foot && d.Start < l.To
		})
		if d.Drop < deepDrop || d.Gradient() > steepDrop || d.Start >= t.full() || tempting {
			continue
		}
		t.tell(useful+50-30*told, Line{Kind: Descent, From: d.Start, To: d.Foot, Name: page.Plain(d.Name), Length: d.Foot - d.Start, Descent: d.Drop})
		if told++; told > int(t.length/descentEach) || told == mostTold {
			return
		}
	}
}
