package brief

import (
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
)

// gatherRules tells of the cutoffs and the stops.
func (t *teller) gatherRules() {
	p := t.plan
	first := p.FirstAtRisk()
	for i := range p.Cutoffs {
		m := &p.Cutoffs[i]
		l := Line{
			Kind: Cutoff, From: m.Distance, Name: page.Plain(m.Name), Limit: m.Limit, LimitAt: t.clock(m.Limit), InHand: m.InHand,
			AtRisk: m.AtRisk, Departure: m.Departure, Finish: m.Distance >= t.length-samePlace, Pausing: len(p.Stops) > 0,
			Hardest: m == first,
		}
		if l.Name == "" {
			l.Name = landmark(p.Course, m.Distance)
		}
		weight := spare + 50 - int(min(m.InHand, 10*time.Hour)/(12*time.Minute))
		if m.AtRisk {
			weight = must
		}
		t.tell(weight, l)
	}
	t.gatherStops()
	t.gatherDark()
}

// gatherStops tells of what is to be done at stops one by one, and of the others by section.
func (t *teller) gatherStops() {
	var same []plan.Stop
	for _, s := range t.plan.Stops {
		if s.Note != "" || s.Kind > plan.AidStation {
			t.tell(likely+60, Line{Kind: Stop, From: s.Distance, Name: landmark(t.plan.Course, s.Distance), Took: s.Duration, StopKind: s.Kind, Note: page.Plain(s.Note), Count: 1})
			continue
		}
		if len(same) > 0 && t.sectionAt(s.Distance) != t.sectionAt(same[0].Distance) {
			t.tellStops(same)
			same = nil
		}
		same = append(same, s)
	}
	t.tellStops(same)
}

func (t *teller) tellStops(stops []plan.Stop) {
	if len(stops) == 0 {
		return
	}
	first, last := stops[0], stops[len(stops)-1]
	l := Line{Kind: Stop, From: first.Distance, To: last.Distance, Name: landmark(t.plan.Course, first.Distance), StopKind: first.Kind, Count: len(stops)}
	for _, s := range stops {
		l.Took += s.Duration
	}
	t.tell(spare+40, l)
}
