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
	faded   fadeExp

	lastWalk float64 // the speed of the last walk, to start the next from
	out      Traverse
	offer    []float64 // power on offer in each cell, W/kg
	gaits    []Gait
	best     []Gait // of the joined bouts tried
	joiner   joiner
	sweeps   int
	scout    *Integrator // over coarse ground, where it is used

	surroundings Surroundings
	heatShare    float64 // what the heat's loss is multiplied by
	places       []place // of each cell; none where the surroundings are alike everywhere
	holds        []hold  // of each cell; none where nothing is limited
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
	in.ground, in.athlete, in.mover = g, a.filled(), g.mover(a, s)
	in.meet(s)
	in.holdBack(&s)
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
// integrator. It panics if the intensity is not positive and finite, the tilt not within
// ±0.5, or Gaits is not as long as the ground has cells.
func (in *Integrator) Traverse(from State, p Pace) *Traverse {
	if !(p.Intensity > 0) || math.IsInf(p.Intensity, 1) {
		panic("effort: intensity is not positive and finite")
	}
	if !(math.Abs(p.Tilt) <= 0.5) {
		panic("effort: tilt is not within -0.5 to 0.5")
	}
	if p.Gaits != nil && len(p.Gaits) != len(in.ground.cells) {
		panic("effort: not one gait for each cell")
	}
	in.sweeps++
	in.tilt.prepare(in, p.Tilt)
	cells := in.ground.cells
	out := &in.out
	out.First = sort.Search(len(cells)-1, func(j int) bool { return cells[j].end > from.Distance })
	if from.Worn == 0 {
		from.Worn = from.Work
	}
	out.From = from
	s := sweep{in: in, pace: p, state: from, fade: in.athlete.Fade, unit: 1 / (3600 * in.athlete.HourPower)}
	s.fullSpend = math.Pow(p.Intensity, in.mover.order)
	still := in.mover.air
	in.mover.ease = p.Ease
	in.faded, in.lastWalk = fadeExp{}, 0
	for j := out.First; j < len(cells); j++ {
		s.step(j)
	}
	in.mover.air = still
	in.free()
	out.timeSlope, out.spentSlope = s.timeSlope, s.spentSlope
	return out
}

// sweep is the running state of one Traverse.
type sweep struct {
	in                    *Integrator
	pace                  Pace
	state                 State
	fade                  float64
	unit                  float64 // 1/(3600 P60)
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
	tilt, tiltSpend := in.tilt.at(j)
	in.keep(j)
	intensity, spend, held := in.ceiling(j, s.pace.Intensity*tilt, s.fullSpend*tiltSpend)
	p := in.offerAt(j, s.state, length, intensity)
	gait, stride := in.stride(j, c, p, s.pace.Gaits)

	dt := length / stride.Speed
	if !held {
		s.timeSlope -= dt * stride.Elasticity
	}
	if stride.Power != p {
		spend *= math.Pow(stride.Power/p, m.order)
	}
	if !held && (stride.Elasticity != 0 || stride.Power == p) { // at a greatest speed nothing changes
		s.spentSlope += spend * dt * (m.order - stride.Elasticity) / 3600
	}
	work := stride.Power * dt * s.unit
	s.state.Distance = c.end
	s.state.Moving += dt
	s.state.Work += work
	s.state.Spent += spend * dt / 3600
	if in.athlete.Eagerness != 0 {
		work *= math.Pow(intensity*stride.Power/p, in.athlete.Eagerness)
	}
	s.state.Worn += work
	in.out.End[j], in.out.Gait[j], in.out.Power[j], in.offer[j] = s.state, gait, stride.Power, p
}

// offerAt is the power on offer over so many metres of cell j from a state, at a relative
// intensity, and makes the mover meet the air there. Capability is taken at what will
// be the middle of the piece if it is run: for running without air that leaves an error of
// second order in the step; walking, air and the hour leave one of first order, 2e-5 of
// the time at most at 25 m.
func (in *Integrator) offerAt(j int, from State, length, intensity float64) float64 {
	work := length * in.mover.runCost(&in.ground.cells[j]) / 2
	p := in.fresh(j, from, work, intensity)
	if len(in.places) == 0 {
		return p
	}
	place := &in.places[j]
	in.mover.air, place.met = place.air, 1
	if in.surroundings.Day == nil && !in.surroundings.ThinAir {
		return p
	}
	h := in.hourAt(place, from.Moving+place.clock+work/p)
	in.mover.drag, place.met = place.drag*h.density, h.density
	return p * h.capability
}

// fresh is the power on offer after so much more work, J/kg, whatever the hour.
func (in *Integrator) fresh(j int, from State, work, intensity float64) float64 {
	half := from.Worn + in.haste(intensity)*work/(3600*in.athlete.HourPower)
	p := intensity * in.athlete.HourPower * in.faded.after(in.athlete.Fade*in.clock.time(half))
	if len(in.places) > 0 {
		p *= in.places[j].capability
	}
	return p
}

// meetAgain makes the mover meet the air of cell j as it did in the last traverse.
func (in *Integrator) meetAgain(j int) {
	if len(in.places) > 0 {
		place := &in.places[j]
		in.mover.air = place.air
		in.mover.drag *= place.met
	}
}

// mostHaste is the relative intensity at which haste is held: nobody gives more than that
// for long, but more may be on offer where all is at its greatest speed.
const mostHaste = 2.0

// haste is how much faster an eager runner's fade counts work at a relative intensity.
func (in *Integrator) haste(intensity float64) float64 {
	if in.athlete.Eagerness == 0 {
		return 1
	}
	return math.Pow(math.Min(intensity, mostHaste), in.athlete.Eagerness)
}

func (in *Integrator) stride(j int, c *cell, p float64, gaits []Gait) (Gait, Stride) {
	switch {
	case gaits == nil:
		gait, stride := in.mover.choose(c, p, in.lastWalk)
		if gait == Walk {
			in.lastWalk = stride.Speed
		}
		return gait, stride
	case gaits[j] == Walk:
		stride := in.mover.walkFrom(c, p, in.lastWalk)
		in.lastWalk = stride.Speed
		return Walk, stride
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
