package chart

import (
	"time"

	"isoeffort.example/plan"
)

// bandHeight is that of the band of gaits, pt.
const bandHeight = 7.0

// band draws the gait along the course: filled where it is walked, empty where it is run.
func (p *page) band(pl *plan.Plan, g pane, top float64) {
	bottom := top - bandHeight
	p.box(white, pen{width: 0.6}, g.left, bottom, g.right, top)
	for _, b := range pl.Bouts(0, pl.Course.Length()) {
		if b.Gait == plan.Walk {
			p.box(0.15, pen{}, g.x(b.From), bottom, g.x(b.To), top)
		}
	}
	p.write(p.w.Gait, g.left-captionGap, bottom+1, 1, smallSize, false)
}

// gunTime returns when a plan arrives at a distance, from the gun.
func gunTime(p *plan.Plan, distance float64) time.Duration {
	if distance >= p.Course.Length() {
		return p.Gun
	}
	t := p.Gun - p.Moving - p.Stopped + time.Duration(p.State(max(distance, 0)).Moving*float64(time.Second))
	for _, s := range p.Stops {
		if s.Distance < distance {
			t += s.Duration
		}
	}
	return t
}
