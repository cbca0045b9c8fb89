package effort

import "math"

// Gait is how ground is covered.
type Gait uint8

// The gaits.
const (
	Run Gait = iota
	Walk
)

func (g Gait) String() string {
	if g == Walk {
		return "walk"
	}
	return "run"
}

// mover holds what an athlete's speed depends on besides power and ground.
type mover struct {
	economy, braking        float64
	fastestWalk, slowestRun float64
	drag, wind              float64
	order                   float64 // n = 1/k
	capBase                 float64 // walkingBase(fastestWalk)
	base                    []node
	lastWalk                float64 // the speed of the last walk solved for, to start the next from
}

func newMover(a Athlete, s Surroundings) mover {
	a = a.filled()
	return mover{
		economy: a.Economy, braking: a.Braking,
		fastestWalk: a.FastestWalk, slowestRun: a.SlowestRun,
		drag: s.Drag, wind: s.HeadWind,
		order: 1 / a.Endurance, capBase: walkingBase(a.FastestWalk), base: baseTable(),
	}
}

// stride is one gait on one cell: its speed along the slope in m/s, the effort power it
// takes in W/kg, and its elasticity, the relative change of speed per relative change
// of the power on offer.
type stride struct {
	speed, power, elasticity float64
}

// runCost is the effort per metre of running, without air.
func (m *mover) runCost(c *cell) float64 { return m.economy*c.run + m.braking*c.brake }

// run is running at the power p.
func (m *mover) run(c *cell, p float64) stride {
	cost := m.runCost(c)
	if m.drag == 0 {
		return stride{p / cost, p, 1}
	}
	v, slope := m.runSpeed(cost, p)
	return stride{v, p, p / (v * slope)}
}

// runSpeed solves v cost + air(v) = p, and returns the slope of the left side there too.
func (m *mover) runSpeed(cost, p float64) (v, slope float64) {
	top := p / cost
	guess := p / (cost + AirPower(m.drag, top, m.wind)/top)
	if m.wind < 0 {
		top -= m.wind // the wind helps only up to its own speed, and then resists
	}
	return m.speed(0, cost, p, guess, top)
}

// walk is walking at the power p or at the fastest walk, whichever is slower.
func (m *mover) walk(c *cell, p float64) stride {
	perMetre := m.economy*c.walk + m.braking*c.brake
	base, top := m.economy*c.surface, m.fastestWalk
	if full := base*m.capBase + top*perMetre + AirPower(m.drag, top, m.wind); full <= p {
		return stride{top, full, 0}
	}
	guess := m.lastWalk
	if !(guess > 0) {
		guess = math.Min(top, p/(2.2*base+perMetre+0.5))
	}
	v, slope := m.speed(base, perMetre, p, math.Max(guess, 0.1), top)
	m.lastWalk = v
	return stride{v, p, p / (v * slope)}
}

// powerAt is the effort power of either gait at speed v, and its derivative:
// base · walkingBase(v) + perMetre · v + air(v).
func (m *mover) powerAt(base, perMetre, v float64) (power, slope float64) {
	power, slope = perMetre*v, perMetre
	if base != 0 {
		value, rise := walkingBaseFast(m.base, v)
		power, slope = power+base*value, slope+base*rise
	}
	if m.drag != 0 {
		u := v + m.wind
		air := math.Abs(u) * m.drag
		power, slope = power+v*u*air, slope+air*(u+2*v)
	}
	return power, slope
}

const (
	// speedTolerance is the relative step of Newton's method after which the next, being
	// of its square, would be within rounding.
	speedTolerance = 1e-7

	// quickSteps is how many steps are tried before the bracket is watched.
	quickSteps = 8
)

// speed solves powerAt = p for a speed in (0, top], by Newton's method from a guess, and
// returns the slope there too. Where that leaves the bracket, it bisects.
func (m *mover) speed(base, perMetre, p, guess, top float64) (v, slope float64) {
	v = guess
	for range quickSteps {
		value, slope := m.powerAt(base, perMetre, v)
		next := v - (value-p)/slope
		if !(next > 0 && next <= top) {
			break
		}
		if math.Abs(next-v) <= speedTolerance*v {
			return next, slope
		}
		v = next
	}
	return m.bracketed(base, perMetre, p, math.Min(v, top), top)
}

// bracketed is speed with a bracket around the solution.
func (m *mover) bracketed(base, perMetre, p, v, top float64) (float64, float64) {
	low, slope := 0.0, 0.0
	for range 200 {
		var value float64
		value, slope = m.powerAt(base, perMetre, v)
		if value > p {
			top = v
		} else {
			low = v
		}
		next := v - (value-p)/slope
		if !(next >= low && next <= top) {
			next = (low + top) / 2
		}
		if math.Abs(next-v) <= speedTolerance*v {
			return next, slope
		}
		v = next
	}
	return v, slope
}

// choose returns the gait that buys the ground more cheaply in time and budget together
// when the power p is on offer, p standing for relative intensity ε: the lower of
//
//	(1 + (ε_g/ε)^n/(n−1)) / v_g
//
// over the gaits g, where ε_g is the intensity that the gait really uses. It is the
// least of time plus budget at the price λ = 1/((n−1) ε^n), the price at which a runner
// whose speed is proportional to power would choose ε itself; so a walk held back by
// the fastest walk is preferred until running is some 6 to 11 % faster. [Our own: the
// local form of the optimum.] Running slower than the slowest run is walking.
func (m *mover) choose(c *cell, p float64) (Gait, stride) {
	run := m.run(c, p)
	full := m.order / (m.order - 1)
	if run.speed > full*m.fastestWalk && run.speed >= m.slowestRun {
		return Run, run
	}
	walk := m.walk(c, p)
	if run.speed < m.slowestRun || walk.speed >= run.speed {
		return Walk, walk
	}
	if walk.elasticity == 0 && m.price(walk, p) <= m.price(run, p) {
		return Walk, walk
	}
	return Run, run
}

// price is the time and budget of one metre, in seconds.
func (m *mover) price(s stride, p float64) float64 {
	share := 1.0
	if s.power != p {
		share = math.Pow(s.power/p, m.order)
	}
	return (1 + share/(m.order-1)) / s.speed
}
