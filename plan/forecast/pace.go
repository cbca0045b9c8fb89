package forecast

import (
	"errors"
	"math"

	"isoeffort.example/effort"
)

// coarseCells is how many cells of the ground are one of the coarse ground, on which the
// search for a draw's intensity begins.
const coarseCells = 8

// near is how far from the budget a sweep may end, as a logarithm over the order n = 1/k:
// the rest is taken as straight, see search. A draw that is not near after nearSweeps
// goes to the full solve of package effort.
const (
	near       = 0.002
	nearSweeps = 8
)

// pacer finds the times of draws to 0.1 % by few sweeps, where a full solve finds them to
// 1e-9 by many. It keeps nothing of a draw for the next.
type pacer struct {
	day          *day
	fine, coarse effort.Integrator
}

// cover fills in the moving times of one draw.
func (p *pacer) cover(draw Draw, out []float64) error {
	d := p.day
	if err := p.fine.Reset(d.ground, draw.Athlete, d.surroundings); err != nil {
		return err
	}
	if err := p.coarse.Reset(d.coarse, draw.Athlete, d.surroundings); err != nil {
		return err
	}
	factor := math.Exp(draw.Noise)
	s := search{in: &p.coarse, draw: draw, order: 1 / draw.Athlete.Endurance}
	if s.from(d.begin(draw.Athlete)) {
		s.in = &p.fine
		if s.from(s.x + d.shift) {
			d.read(s.end, factor*s.rest(), out)
			return nil
		}
	}
	return d.solved(&p.fine, draw, factor, out)
}

// begin is the closed form for running all the way, ln intensity.
func (d *day) begin(a effort.Athlete) float64 {
	hours := a.UniformTime(d.ground.RunningWork(a)).Hours()
	return -a.Endurance * math.Log(math.Max(hours, 1e-6))
}

// solved is the full solve.
func (d *day) solved(in *effort.Integrator, draw Draw, factor float64, out []float64) error {
	s, err := in.Solve(effort.State{}, effort.Demand{Tilt: draw.Tilt})
	if errors.Is(err, effort.ErrDemand) {
		for i := range out {
			out[i] = never
		}
		return nil
	}
	if err != nil {
		return err
	}
	d.read(s.Traverse, factor, out)
	return nil
}

// read takes the times at the places.
func (d *day) read(t *effort.Traverse, factor float64, out []float64) {
	for i, distance := range d.at {
		out[i] = factor * t.At(distance).Moving
	}
}

// search looks for the intensity that spends the budget.
type search struct {
	in    *effort.Integrator
	draw  Draw
	order float64

	x     float64 // ln intensity of the last sweep
	miss  float64 // ln of the budget that it spends
	time  float64 // ln of the time that it takes
	end   *effort.Traverse
	trade float64 // d ln time / d ln budget
}

// from searches from x and reports whether it came near.
func (s *search) from(x float64) bool {
	slope := s.order - 1 // of miss by x, where all is run
	s.trade = -1 / slope
	for i := range nearSweeps {
		before := *s
		s.sweep(x)
		if i > 0 && s.x != before.x {
			slope = math.Max(0.8*(s.order-1), math.Min(5*s.order, (s.miss-before.miss)/(s.x-before.x)))
			s.trade = math.Max(-1.2/(s.order-1), math.Min(-0.2/s.order, (s.time-before.time)/(s.miss-before.miss)))
		}
		if math.Abs(s.miss) < near*s.order {
			return true
		}
		if !(math.Abs(s.miss/slope) < 1) {
			return false
		}
		x = s.x - s.miss/slope
	}
	return false
}

func (s *search) sweep(x float64) {
	s.x = x
	s.end = s.in.Traverse(effort.State{}, effort.Pace{Intensity: math.Exp(x), Tilt: s.draw.Tilt})
	finish := s.end.Finish()
	s.miss, s.time = math.Log(finish.Spent), math.Log(finish.Moving)
}

// rest is the factor on all times that leads from the last sweep to the budget:
// exp(−trade · miss). The trade is −1/(n−1) where all is run, and less where some is walked,
// as the last two sweeps say; it holds across changes of gait, which the rule makes where
// time and budget trade alike in both. A trade that is wrong by half leaves 0.1 %.
func (s *search) rest() float64 { return math.Exp(-s.trade * s.miss) }
