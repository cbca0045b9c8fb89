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
	v := m.runSpeed(c, p)
	slope := cost + m.airSlope(v)
	return stride{v, p, p / (v * slope)}
}

// runSpeed solves v cost + air(v) = p by Newton's method, held in a bracket.
func (m *mover) runSpeed(c *cell, p float64) float64 {
	cost := m.runCost(c)
	v := p / cost
	if m.drag == 0 {
		return v
	}
	low, top := 0.0, v
	if m.wind < 0 {
		top = v - m.wind // the wind helps only up to its own speed, and then resists
	}
	guess := p / (cost + AirPower(m.drag, v, m.wind)/v)
	return root(low, top, math.Min(math.Max(guess, low), top), func(v float64) (excess, slope float64) {
		return v*cost + AirPower(m.drag, v, m.wind) - p, cost + m.airSlope(v)
	})
}

// airSlope is the derivative of AirPower by speed.
func (m *mover) airSlope(v float64) float64 {
	u := v + m.wind
	return m.drag * (u*math.Abs(u) + 2*v*math.Abs(u))
}

// walkPower is the effort power of walking a cell at speed v, and its derivative by v.
func (m *mover) walkPower(c *cell, v float64) (power, slope float64) {
	base, baseSlope := walkingBaseFast(m.base, v)
	perMetre := m.economy*c.walk + m.braking*c.brake
	return m.economy*c.surface*base + v*perMetre + AirPower(m.drag, v, m.wind),
		m.economy*c.surface*baseSlope + perMetre + m.airSlope(v)
}

// fullWalkPower is walkPower at the fastest walk.
func (m *mover) fullWalkPower(c *cell) float64 {
	v := m.fastestWalk
	return m.economy*(c.surface*m.capBase+v*c.walk) + v*m.braking*c.brake + AirPower(m.drag, v, m.wind)
}

// walk is walking at the power p or at the fastest walk, whichever is slower.
func (m *mover) walk(c *cell, p float64) stride {
	if full := m.fullWalkPower(c); full <= p {
		return stride{m.fastestWalk, full, 0}
	}
	guess := math.Min(m.fastestWalk, p/(m.economy*(2.2*c.surface+c.walk)+m.braking*c.brake+0.5))
	var slope float64
	v := root(0, m.fastestWalk, math.Max(guess, 0.1), func(v float64) (float64, float64) {
		var value float64
		value, slope = m.walkPower(c, v)
		return value - p, slope
	})
	return stride{v, p, p / (v * slope)}
}

// rootTolerance is the relative step of Newton's method after which the next, being of
// its square, would be within rounding.
const rootTolerance = 1e-7

// root finds where an increasing function crosses zero between low and top, by Newton's
// method from a guess, bisecting where that would leave the bracket.
func root(low, top, x float64, f func(float64) (value, slope float64)) float64 {
	for range 200 {
		value, slope := f(x)
		if value > 0 {
			top = x
		} else {
			low = x
		}
		next := x - value/slope
		if !(next >= low && next <= top) {
			next = (low + top) / 2
		}
		if math.Abs(next-x) <= rootTolerance*x {
			return next
		}
		x = next
	}
	return x
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
