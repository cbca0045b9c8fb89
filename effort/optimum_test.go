package effort

import "math"

// A spread is an effort of its own on each cell, the gaits held: what even effort is
// measured against. It moves by the integrator's own capability and strides.
//
// The variable z of a cell is ln ε; where there is a greatest speed, ε is 1/(1 + e^−z)
// times the intensity that this speed takes. So what varies is what is really used, and
// time and budget are smooth in it.
type spread struct {
	in     *Integrator
	gaits  []Gait
	even   float64 // an intensity about which capability is looked at
	states []State // before each cell and at the finish, of the last sweep
	steep  float64 // of ln budget by a shift of all z, when last balanced
}

func newSpread(in *Integrator, gaits []Gait, even float64) *spread {
	return &spread{
		in: in, even: even, gaits: append([]Gait{}, gaits...),
		states: make([]State, len(in.ground.cells)+1), steep: in.mover.order - 1,
	}
}

// begin makes the integrator ready to step, and returns what takes that back.
func (s *spread) begin() func() {
	still := s.in.mover.air
	s.in.faded = fadeExp{}
	return func() { s.in.mover.air = still }
}

// topPower is the power of the greatest speed on a cell whose air has been met, 0 where
// there is none.
func (s *spread) topPower(j int) float64 {
	m, c := &s.in.mover, &s.in.ground.cells[j]
	w, v := m.walkWay(c), m.topWalk(c)
	if s.gaits[j] == Run {
		if !m.descends(c) {
			return 0
		}
		w, v = m.runWay(c), m.fastestDescent
	}
	power, _ := m.powerAt(&w, v)
	return power
}

// topIntensity is the intensity that the greatest speed on a cell takes, 0 where there is
// none.
func (s *spread) topIntensity(j int, from State) float64 {
	in, length := s.in, s.in.ground.cells[j].length
	top := s.even
	p := in.offerAt(j, from, length, top)
	full := s.topPower(j)
	top *= full / p
	if full > 0 && (in.surroundings.Day != nil || in.athlete.Eagerness != 0) {
		top *= full / in.offerAt(j, from, length, top) // the capability half-way depends on it
	}
	return top
}

// intensity is that of a z.
func (s *spread) intensity(j int, from State, z float64) float64 {
	if top := s.topIntensity(j, from); top > 0 {
		return top / (1 + math.Exp(-z))
	}
	return math.Exp(z)
}

// step goes over a cell at an intensity.
func (s *spread) step(j int, from State, intensity float64) State {
	in := s.in
	c := &in.ground.cells[j]
	p := in.offerAt(j, from, c.length, intensity)
	stride := in.mover.run(c, p)
	if s.gaits[j] == Walk {
		stride = in.mover.walk(c, p)
	}
	return in.moved(c, from, stride, intensity*stride.Power/p)
}

// moved is the state after a cell, at a stride that is used at an intensity.
func (in *Integrator) moved(c *cell, from State, stride Stride, used float64) State {
	dt := c.length / stride.Speed
	work := stride.Power * dt / (3600 * in.athlete.HourPower)
	return State{
		Distance: c.end,
		Moving:   from.Moving + dt,
		Work:     from.Work + work,
		Worn:     from.Worn + work*math.Pow(used, in.athlete.Eagerness),
		Spent:    from.Spent + dt*math.Pow(used, in.mover.order)/3600,
	}
}

// sweep goes over all cells.
func (s *spread) sweep(z []float64) State {
	defer s.begin()()
	for j := range z {
		from := s.states[j]
		s.states[j+1] = s.step(j, from, s.intensity(j, from, z[j]))
	}
	return s.states[len(z)]
}

// nearTop is the z at which a cell whose speed is the greatest begins, 0.7 % below the
// intensity that it takes: further up no slope would show.
const nearTop = 5.0

// evenly returns the z of even effort, which keep below greatest speeds.
func (s *spread) evenly(intensity float64) []float64 {
	defer s.begin()()
	z := make([]float64, len(s.gaits))
	for j := range z {
		from := s.states[j]
		z[j] = s.evenOn(j, intensity)
		s.states[j+1] = s.step(j, from, s.intensity(j, from, z[j]))
	}
	return z
}

// evenOn is the z of an intensity on a cell before which the state is known.
func (s *spread) evenOn(j int, intensity float64) float64 {
	top := s.topIntensity(j, s.states[j])
	if top == 0 {
		return math.Log(intensity)
	}
	share := intensity / top
	return math.Min(nearTop, math.Log(share)-math.Log(math.Max(1e-9, 1-share)))
}

const (
	farShift = 12.0  // of z, beyond which greatest speeds leave some of the budget
	balanced = 1e-11 // of budget
)

// balance shifts all z alike so that they spend the whole budget, and returns the finish.
// Where greatest speeds leave some of it, z ends as high as it goes.
func (s *spread) balance(z []float64) State {
	low, top, at := -100.0, 100.0, 0.0
	lastAt, lastMiss := 0.0, 0.0
	for i := range 60 {
		finish := s.sweep(z)
		miss := math.Log(finish.Spent)
		if math.Abs(miss) < balanced || miss < 0 && at >= farShift || math.IsNaN(miss) {
			return finish
		}
		if miss < 0 {
			low = at
		} else {
			top = at
		}
		if secant := (miss - lastMiss) / (at - lastAt); i > 0 && secant > 0 {
			s.steep = secant
		}
		next := at + math.Max(-1, math.Min(1, -miss/s.steep))
		if next < low || next > top {
			next = (low + top) / 2
		}
		if next == at || math.IsNaN(next) {
			return finish
		}
		for j := range z {
			z[j] += next - at
		}
		lastAt, lastMiss, at = at, miss, next
	}
	return s.sweep(z)
}

// spendsAll reports whether a finish is one of the whole budget.
func spendsAll(finish State) bool { return math.Abs(finish.Spent-1) < 1e-9 }

// tooSlow reports whether something is run in the last sweep that is to be walked.
func (s *spread) tooSlow() bool {
	for j, g := range s.gaits {
		speed := s.in.ground.cells[j].length / (s.states[j+1].Moving - s.states[j].Moving)
		if g == Run && speed < s.in.mover.slowestRun {
			return true
		}
	}
	return false
}
