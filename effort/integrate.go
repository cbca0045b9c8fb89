package effort

import (
	"math"
	"sort"
)

// An Integrator moves an athlete over a ground. It keeps its scratch memory between
// uses, so it must not be shared between goroutines; a used one allocates nothing.
type Integrator struct {
	ground  *Ground
	athlete Athlete
	mover   mover
	tilt    tilt
	clock   fadeClock
	out     Traverse
	offer   []float64 // power on offer in each cell, W/kg
	gaits   []Gait
	best    []Gait // of the joined bouts tried
	joiner  joiner
	sweeps  int
}

// NewIntegrator returns an integrator. The error wraps ErrAthlete or ErrSurroundings.
func NewIntegrator(g *Ground, a Athlete, s Surroundings) (*Integrator, error) {
	in := &Integrator{}
	return in, in.Reset(g, a, s)
}

// Reset makes the integrator ready for another ground, athlete or surroundings, keeping
// its memory.
func (in *Integrator) Reset(g *Ground, a Athlete, s Surroundings) error {
	if err := a.Check(); err != nil {
		return err
	}
	if err := s.Check(); err != nil {
		return err
	}
	in.ground, in.athlete, in.mover = g, a.filled(), newMover(a, s)
	in.tilt.valid = false
	in.setClock()
	n := len(g.cells)
	if cap(in.out.End) < n {
		in.out.End, in.out.Gait, in.out.Power = make([]State, n), make([]Gait, n), make([]float64, n)
		in.offer, in.gaits = make([]float64, n), make([]Gait, n)
	}
	in.out.End, in.out.Gait, in.out.Power = in.out.End[:n], in.out.Gait[:n], in.out.Power[:n]
	in.offer, in.gaits = in.offer[:n], in.gaits[:n]
	return nil
}

// setClock prepares the fade for the athlete, who may do somewhat more work than running
// all the way takes.
func (in *Integrator) setClock() {
	most := 0.0
	if in.athlete.FadeShape != 1 {
		most = 1.25 * in.ground.RunningWork(in.athlete) / (3600 * in.athlete.HourPower)
	}
	in.clock.set(in.athlete.FadeShape, most, len(in.ground.cells))
}

// Sweeps returns how many times the integrator has gone over its ground so far.
func (in *Integrator) Sweeps() int { return in.sweeps }

// Traverse goes over the ground from a state at a pace. The result belongs to the
// integrator. It panics if the intensity is not positive or Gaits is not as long as
// the ground has cells.
func (in *Integrator) Traverse(from State, p Pace) *Traverse {
	if !(p.Intensity > 0) {
		panic("effort: intensity is not positive")
	}
	if p.Gaits != nil && len(p.Gaits) != len(in.ground.cells) {
		panic("effort: not one gait for each cell")
	}
	in.sweeps++
	in.tilt.prepare(in, p.Tilt)
	cells := in.ground.cells
	out := &in.out
	out.First = sort.Search(len(cells)-1, func(j int) bool { return cells[j].end > from.Distance })
	out.From = from
	s := sweep{in: in, pace: p, state: from, fade: in.athlete.Fade}
	s.fullSpend = math.Pow(p.Intensity, in.mover.order)
	for j := out.First; j < len(cells); j++ {
		s.step(j)
	}
	out.timeSlope, out.spentSlope = s.timeSlope, s.spentSlope
	return out
}

// sweep is the running state of one Traverse.
type sweep struct {
	in                    *Integrator
	pace                  Pace
	state                 State
	fade                  float64
	fullSpend             float64 // Intensity^n
	timeSlope, spentSlope float64
}

// step goes over cell j, or what is left of it.
func (s *sweep) step(j int) {
	in := s.in
	c, m := &in.ground.cells[j], &in.mover
	length := c.length
	if j == in.out.First {
		length *= in.ground.remaining(j, s.state.Distance)
	}
	unit := 1 / (3600 * in.athlete.HourPower)
	// Capability is taken at the middle of the cell, so the error is of second order.
	half := s.state.Work + length*m.runCost(c)*unit/2
	capability := in.athlete.HourPower * math.Exp(-s.fade*in.clock.time(half))
	tilt, tiltSpend := in.tilt.at(j)
	p := s.pace.Intensity * tilt * capability
	gait, stride := in.stride(j, c, p, s.pace.Gaits)

	dt := length / stride.speed
	spend := s.fullSpend * tiltSpend
	s.timeSlope -= dt * stride.elasticity
	if stride.power == p {
		s.spentSlope += spend * dt * (m.order - stride.elasticity) / 3600
	} else {
		spend *= math.Pow(stride.power/p, m.order)
	}
	s.state.Distance = c.end
	s.state.Moving += dt
	s.state.Work += stride.power * dt * unit
	s.state.Spent += spend * dt / 3600
	in.out.End[j], in.out.Gait[j], in.out.Power[j], in.offer[j] = s.state, gait, stride.power, p
}

func (in *Integrator) stride(j int, c *cell, p float64, gaits []Gait) (Gait, stride) {
	switch {
	case gaits == nil:
		return in.mover.choose(c, p)
	case gaits[j] == Walk:
		return Walk, in.mover.walk(c, p)
	}
	return Run, in.mover.run(c, p)
}

// remaining is the share of cell j that lies beyond a distance.
func (g *Ground) remaining(j int, distance float64) float64 {
	start := 0.0
	if j > 0 {
		start = g.cells[j-1].end
	}
	end := g.cells[j].end
	return math.Min(1, math.Max(0, (end-distance)/(end-start)))
}

// tilt holds the factors 1 + t (1 − 2s) of each cell and their n-th powers.
type tilt struct {
	value         float64
	valid         bool
	factor, spend []float64
}

func (t *tilt) prepare(in *Integrator, value float64) {
	if t.valid && t.value == value {
		return
	}
	t.value, t.valid = value, true
	t.factor, t.spend = t.factor[:0], t.spend[:0]
	if value == 0 {
		return
	}
	total, done := in.ground.RunningWork(in.athlete), 0.0
	for i := range in.ground.cells {
		c := &in.ground.cells[i]
		work := c.length * in.mover.runCost(c)
		f := 1 + value*(1-2*(done+work/2)/total)
		done += work
		t.factor = append(t.factor, f)
		t.spend = append(t.spend, math.Pow(f, in.mover.order))
	}
}

func (t *tilt) at(j int) (factor, spend float64) {
	if t.value == 0 {
		return 1, 1
	}
	return t.factor[j], t.spend[j]
}
