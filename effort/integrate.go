package effort

import (
	"math"
	"sort"
)

// A State is where a runner stands in a race.
type State struct {
	Distance float64 // horizontal, from the start of the course, m
	Moving   float64 // time spent moving so far, s
	Work     float64 // effort so far in hour-equivalents, 1/(3600 HourPower)
	Spent    float64 // effort budget spent so far, 1 = all
}

// Pace is how a runner spreads effort over a course.
type Pace struct {
	// Intensity is the relative intensity, the same everywhere but for the tilt.
	Intensity float64

	// Tilt makes the intensity at a place where the share s of the course's running
	// work is done Intensity · (1 + Tilt (1 − 2s)): above 0 it starts fast, below 0 it
	// holds back at first and returns it by the end.
	Tilt float64

	// Gaits, if not nil, is the gait of every cell of the ground. Nil leaves the gait
	// to the rule, cell by cell.
	Gaits []Gait
}

// A Traverse is a passage over the cells of a ground, from a state to the finish. Cells
// before the state are not part of it. All slices have an element for each cell and
// belong to the Integrator: they hold until its next use.
type Traverse struct {
	First int       // the cell in which the traverse starts
	From  State     // where it starts
	End   []State   // after each cell
	Gait  []Gait    // in each cell
	Power []float64 // effort power in each cell, W/kg

	timeSlope, spentSlope float64 // dT/dlnε and dB/dlnε
}

// Finish returns the state at the finish.
func (t *Traverse) Finish() State { return t.End[len(t.End)-1] }

// At returns the state at a distance from the start of the course, which is taken to
// lie between the traverse's start and the finish; within a cell all columns run
// straight.
func (t *Traverse) At(distance float64) State {
	n := len(t.End)
	if distance <= t.From.Distance {
		return t.From
	}
	j := t.First + sort.Search(n-t.First, func(i int) bool { return t.End[t.First+i].Distance >= distance })
	if j == n {
		return t.Finish()
	}
	a, b := t.From, t.End[j]
	if j > t.First {
		a = t.End[j-1]
	}
	share := (distance - a.Distance) / (b.Distance - a.Distance)
	return State{
		Distance: distance,
		Moving:   a.Moving + share*(b.Moving-a.Moving),
		Work:     a.Work + share*(b.Work-a.Work),
		Spent:    a.Spent + share*(b.Spent-a.Spent),
	}
}

// WalkingTime returns the seconds walked between two distances.
func (t *Traverse) WalkingTime(from, to float64) float64 {
	sum := 0.0
	t.each(from, to, func(_ int, a, b State, walking bool) {
		if walking {
			sum += b.Moving - a.Moving
		}
	})
	return sum
}

// EffortBetween returns the effort in J/kg between two distances.
func (t *Traverse) EffortBetween(from, to float64, a Athlete) float64 {
	return (t.At(to).Work - t.At(from).Work) * 3600 * a.HourPower
}

// each visits the parts of cells between two distances.
func (t *Traverse) each(from, to float64, visit func(cell int, a, b State, walking bool)) {
	n := len(t.End)
	j := t.First + sort.Search(n-t.First, func(i int) bool { return t.End[t.First+i].Distance > from })
	for a := t.At(from); j < n && a.Distance < to; j++ {
		b := t.At(math.Min(to, t.End[j].Distance))
		visit(j, a, b, t.Gait[j] == Walk)
		a = b
	}
}

// An Integrator moves an athlete over a ground. It keeps its scratch memory between
// uses, so it must not be shared between goroutines; a used one allocates nothing.
type Integrator struct {
	ground  *Ground
	athlete Athlete
	mover   mover
	tilt    tilt
	out     Traverse
	offer   []float64 // power on offer in each cell, W/kg
	gaits   []Gait
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
	n := len(g.cells)
	if cap(in.out.End) < n {
		in.out.End, in.out.Gait, in.out.Power = make([]State, n), make([]Gait, n), make([]float64, n)
		in.offer, in.gaits = make([]float64, n), make([]Gait, n)
	}
	in.out.End, in.out.Gait, in.out.Power = in.out.End[:n], in.out.Gait[:n], in.out.Power[:n]
	in.offer, in.gaits = in.offer[:n], in.gaits[:n]
	return nil
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
	s := sweep{in: in, pace: p, state: from, fade: in.athlete.Fade, shape: in.athlete.FadeShape}
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
	fade, shape           float64
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
	capability := in.athlete.HourPower * math.Exp(-s.fade*fadeTime(half, s.shape))
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
