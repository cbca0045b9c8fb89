package effort

import (
	"fmt"
	"math"
)

// A Limit holds the runner back on a stretch of the course, whatever effort is on offer
// there. What is not used is not spent. Where limits overlap each of them holds.
//
// A cell is on the stretch if its middle is.
type Limit struct {
	From, To float64 // m from the start

	// Intensity is a ceiling on relative intensity, for a stretch where haste is
	// dangerous. 0 is none.
	Intensity float64

	// Speed is a greatest speed in m/s along the slope. 0 is none.
	Speed float64

	// Walk has the stretch walked; a runner whose Habit is RunOnly too.
	Walk bool
}

// A Crowd is what a full start leaves of the road: nobody is faster than
//
//	Speed / (1 − x/Over)
//
// x metres after the start line and before Over. The zero value is none. [Our own form: a
// field stretches out as it goes.]
type Crowd struct {
	Speed float64 // at the line, m/s along the slope
	Over  float64 // m
}

// at is the greatest speed at a distance, 0 for none.
func (c Crowd) at(distance float64) float64 {
	if c.Speed == 0 || distance >= c.Over {
		return 0
	}
	return c.Speed / (1 - distance/c.Over)
}

func (c Crowd) check() error {
	if c == (Crowd{}) {
		return nil
	}
	if !(c.Speed >= 0.1 && c.Speed <= 10 && c.Over > 0 && c.Over <= 1e6) {
		return fmt.Errorf("effort: %w: a crowd of %g m/s over %g m is not within 0.1 to 10 m/s and 1000 km", ErrSurroundings, c.Speed, c.Over)
	}
	return nil
}

func (l Limit) check() error {
	switch {
	case !(l.From >= 0 && l.From < l.To && l.To <= 1e9):
		return fmt.Errorf("effort: %w: a limit from %g to %g m", ErrSurroundings, l.From, l.To)
	case l.Intensity != 0 && !(l.Intensity >= 0.1 && l.Intensity <= 2):
		return fmt.Errorf("effort: %w: limit at %g m: intensity %g is not within 0.1 to 2", ErrSurroundings, l.From, l.Intensity)
	case l.Speed != 0 && !(l.Speed >= 0.1 && l.Speed <= 15):
		return fmt.Errorf("effort: %w: limit at %g m: speed %g m/s is not within 0.1 to 15", ErrSurroundings, l.From, l.Speed)
	case l.Intensity == 0 && l.Speed == 0 && !l.Walk:
		return fmt.Errorf("effort: %w: limit at %g m limits nothing", ErrSurroundings, l.From)
	}
	return nil
}

// hold is what the limits leave of one cell.
type hold struct {
	intensity, spend float64 // ceiling and its n-th power, 0 for none
	speed            float64 // 0 for none
	walk             bool
	share            float64 // of the walked stretch that the cell is, by length
}

// holdBack prepares the holds, or none where nothing is limited.
func (in *Integrator) holdBack(s *Surroundings) {
	in.holds = in.holds[:0]
	if len(s.Limits) == 0 && s.Crowd.Speed == 0 {
		return
	}
	start := 0.0
	for j := range in.ground.cells {
		c := &in.ground.cells[j]
		middle := (start + c.end) / 2
		start = c.end
		h := hold{speed: s.Crowd.at(middle)}
		for _, l := range s.Limits {
			if middle >= l.From && middle < l.To {
				h.add(l)
			}
		}
		h.spend = math.Pow(h.intensity, in.mover.order)
		in.holds = append(in.holds, h)
	}
	in.shareWalks()
}

func (h *hold) add(l Limit) {
	h.intensity, h.speed, h.walk = least(h.intensity, l.Intensity), least(h.speed, l.Speed), h.walk || l.Walk
}

// least is the lesser of two bounds, 0 being none.
func least(a, b float64) float64 {
	if a == 0 || b != 0 && b < a {
		return b
	}
	return a
}

// shareWalks finds how much of its walked stretch each cell is.
func (in *Integrator) shareWalks() {
	for j := 0; j < len(in.holds); j++ {
		if !in.holds[j].walk {
			continue
		}
		from, length := j, 0.0
		for ; j < len(in.holds) && in.holds[j].walk; j++ {
			length += in.ground.cells[j].length
		}
		for i := from; i < j; i++ {
			in.holds[i].share = in.ground.cells[i].length / length
		}
	}
}

// keep makes the mover keep to what holds on cell j.
func (in *Integrator) keep(j int) {
	if len(in.holds) > 0 {
		in.mover.limit, in.mover.mustWalk = in.holds[j].speed, in.holds[j].walk
	}
}

// free ends keep.
func (in *Integrator) free() { in.mover.limit, in.mover.mustWalk = 0, false }

// ceiling returns the intensity on cell j and its n-th power, and whether a ceiling holds it.
func (in *Integrator) ceiling(j int, intensity, spend float64) (float64, float64, bool) {
	if len(in.holds) > 0 {
		if h := &in.holds[j]; h.intensity != 0 && intensity > h.intensity {
			return h.intensity, h.spend, true
		}
	}
	return intensity, spend, false
}
