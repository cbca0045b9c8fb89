package follow

import (
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// Arrival returns the gun time at which the rest reaches a distance that is still to come.
func (r *Rest) Arrival(distance float64) time.Duration {
	return r.Standing.arrival(r.trace, distance, false)
}

// State returns where the rest has the runner at a distance to come.
func (r *Rest) State(distance float64) effort.State { return r.trace.At(distance) }

// describe fills in times and gaits.
func (r *Rest) describe() {
	s, p := r.Standing, r.Standing.Plan
	length := p.Course.Length()
	r.Gun = r.Arrival(length)
	r.Late = r.Gun - s.planned(length, false)
	r.Bouts = bouts(r.trace)
	from := s.State.Moving
	for _, section := range p.Course.Sections() {
		at := section.To.Distance
		if at <= s.Distance {
			continue
		}
		moving := r.trace.At(at).Moving
		split := Split{
			Name: section.To.Name, Distance: at, Gun: r.Arrival(at), Planned: s.planned(at, false),
			Took: millis(moving) - millis(from), Stop: taken(p, at, true) - taken(p, at, false),
		}
		split.Late, split.Clock = split.Gun-split.Planned, s.Clock(split.Gun)
		r.Splits = append(r.Splits, split)
		from = moving
	}
	for _, c := range s.ahead() {
		c.Steady = s.arrival(r.trace, c.Distance, c.Departure)
		c.InHand = c.Limit - c.Steady
		c.Latest = s.Gun + c.InHand
		c.Reach = s.reach(c)
		r.Cutoffs = append(r.Cutoffs, c)
	}
}

// bouts are the stretches of one gait of a traverse.
func bouts(t *effort.Traverse) (out []plan.Bout) {
	from := t.From.Distance
	for j := t.First; j < len(t.End); j++ {
		gait := plan.Run
		if t.Gait[j] == effort.Walk {
			gait = plan.Walk
		}
		if n := len(out); n > 0 && out[n-1].Gait == gait {
			out[n-1].To = t.End[j].Distance
		} else {
			out = append(out, plan.Bout{Gait: gait, From: from, To: t.End[j].Distance})
		}
		from = t.End[j].Distance
	}
	return out
}
