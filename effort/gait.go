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

// A Habit says which gaits a runner uses.
type Habit uint8

// The habits.
const (
	RunAndWalk Habit = iota // by the gait rule
	RunOnly                 // never walks, however slow the run
	WalkOnly                // never runs
)

// A Stride is one gait at one power on one piece of ground.
type Stride struct {
	Speed float64 // along the slope, m/s
	Power float64 // effort power that it takes, W/kg: less than is on offer at a greatest speed

	// Elasticity is the relative change of Speed per relative change of the power on
	// offer: 1 for running without wind, 0 at a greatest speed.
	Elasticity float64
}

// mover holds what an athlete's speed depends on besides power and ground.
type mover struct {
	running, walking        *motion
	metabolic               float64 // factor on metabolic cost: economy and load
	braking                 float64 // factor on braking: the athlete's and load
	fastestWalk, slowestRun float64
	walkFall                float64
	fastestDescent          float64 // 0: none
	limit                   float64 // greatest speed on the cell at hand, 0: none
	mustWalk                bool    // on the cell at hand
	habit                   Habit
	ease                    bool // walks by Pace.Ease
	air
	order   float64 // n = 1/k
	capBase float64 // of walking, at the fastest walk
}

func newMover(a Athlete, s Surroundings) mover { return modelGround.mover(a, s) }

// modelGround has the curves of the model and no cells.
var modelGround = Curves{}.empty(0, 0)

// mover is that of an athlete on the curves of a ground.
func (g *Ground) mover(a Athlete, s Surroundings) mover {
	a = a.filled()
	load := 1 + a.Load/a.Mass
	m := mover{
		running: g.run, walking: g.walk,
		metabolic: a.Economy * load, braking: a.Braking * load,
		fastestWalk: a.FastestWalk, slowestRun: a.SlowestRun, walkFall: a.WalkFall,
		fastestDescent: a.FastestDescent, habit: a.Habit,
		air:   air{drag: s.Drag, wind: s.HeadWind},
		order: 1 / a.Endurance,
	}
	if g.walk.separable != nil {
		m.capBase, _ = g.walk.power(a.FastestWalk, 0)
	}
	return m
}

// way is a gait on a cell: the motion's own power × base, a cost per metre, and the air.
type way struct {
	motion         *motion
	base, perMetre float64
	gradient       float64
}

func (m *mover) runWay(c *cell) way {
	return way{m.running, m.metabolic * c.surface, m.metabolic*c.run + m.braking*c.brake, c.gradient}
}

func (m *mover) walkWay(c *cell) way {
	return way{m.walking, m.metabolic * c.surface, m.metabolic*c.walk + m.braking*c.brake, c.gradient}
}

// runCost is the effort per metre of running without air, at the reference speed of a
// curve whose cost depends on speed.
func (m *mover) runCost(c *cell) float64 {
	cost := m.metabolic*c.run + m.braking*c.brake
	if m.running.table == nil && m.running.separable != nil {
		return cost
	}
	return cost + m.metabolic*c.surface*m.running.speedCost(c.gradient)
}

// run is running at the power p, or at the fastest descent.
func (m *mover) run(c *cell, p float64) Stride {
	w := m.runWay(c)
	s := m.freeRun(&w, p)
	if top := m.topRun(c); top > 0 && s.Speed > top {
		s = m.held(&w, top)
	}
	return s
}

// freeRun is running at the power p.
func (m *mover) freeRun(w *way, p float64) Stride {
	cost := w.perMetre
	if w.motion.curve != nil || w.motion.table != nil {
		return m.hardRun(w, p)
	}
	if m.drag == 0 {
		return Stride{p / cost, p, 1}
	}
	if v, slope, ok := m.runInAir(cost, p); ok {
		return Stride{v, p, p / (v * slope)}
	}
	top := p / cost
	if m.wind < 0 {
		top -= m.wind // the wind helps only up to its own speed, and then resists
	}
	v, slope := m.speed(w, p, top, top)
	return Stride{v, p, p / (v * slope)}
}

// runInAir solves v cost + air(v) = p by a few Newton steps, as speed does for all else;
// ok is false where they do not end at once.
func (m *mover) runInAir(cost, p float64) (v, slope float64, ok bool) {
	v = p / cost
	v = p / (cost + m.airPower(v)/v)
	for range 4 {
		u := v + m.wind
		r := m.relative(u)
		if !(v > 0) || r == 0 {
			return v, slope, false
		}
		air := m.drag * r * u
		slope = cost + air + m.drag*v*(r+u*u/r)
		step := (v*(cost+air) - p) / slope
		v -= step
		if math.Abs(step) <= speedTolerance*v {
			return v, slope, slope > 0 && v > 0
		}
	}
	return v, slope, false
}

// fastestRun bounds the speed in m/s of a run by a curve that costs something besides the
// metre, in still air.
const fastestRun = 100

func (m *mover) hardRun(w *way, p float64) Stride {
	guess := math.Max(0.5, math.Min(6, p/(4*w.base)))
	v, slope := m.speed(w, p, guess, fastestRun)
	return Stride{v, p, p / (v * slope)}
}

// descentFrom is the gradient below which FastestDescent holds: a speed as such does not
// hurt where the ground hardly falls.
const descentFrom = -0.02

// descends reports whether the fastest descent holds on a cell.
func (m *mover) descends(c *cell) bool { return m.fastestDescent > 0 && c.gradient < descentFrom }

// topRun is the fastest run that is allowed on a cell, 0 for any.
func (m *mover) topRun(c *cell) float64 {
	if m.descends(c) {
		return least(m.fastestDescent, m.limit)
	}
	return m.limit
}

// held is a way at a speed that is its greatest.
func (m *mover) held(w *way, v float64) Stride {
	power, _ := m.powerAt(w, v)
	return Stride{v, math.Max(power, leastEffort), 0}
}

// leastEffort is the effort power in W/kg of a runner whom the wind carries: nobody moves
// for nothing.
const leastEffort = 1e-3

// carries is the help of a wind from behind in J/(kg m) from which one power may be that
// of several walking speeds.
const carries = 0.5

// topWalk is the fastest walk on a cell.
func (m *mover) topWalk(c *cell) float64 {
	top := m.fastestWalk
	if m.walkFall > 0 && c.gradient > 0 {
		top /= 1 + m.walkFall*c.gradient
	}
	return least(top, m.topRun(c))
}

// walk is walking at the power p or at the fastest walk, whichever is slower.
func (m *mover) walk(c *cell, p float64) Stride { return m.walkFrom(c, p, 0) }

// walkFrom is walk with a speed to start from, 0 for want of one.
func (m *mover) walkFrom(c *cell, p, guess float64) Stride {
	s := m.evenWalk(c, p, guess)
	if m.ease {
		return m.easedWalk(c, p, s)
	}
	return s
}

// evenWalk is walking at the power p or at the fastest walk, whichever is slower.
func (m *mover) evenWalk(c *cell, p, guess float64) Stride {
	w, top := m.walkWay(c), m.topWalk(c)
	full := 0.0
	if top == m.fastestWalk && w.motion.curve == nil {
		full = w.base*m.capBase + top*w.perMetre + m.airPower(top)
	} else {
		full, _ = m.powerAt(&w, top)
	}
	if full <= p {
		return Stride{top, math.Max(full, leastEffort), 0}
	}
	if m.wind < 0 && m.drag*m.wind*m.wind > carries {
		guess = top // of several speeds at one power the greatest
	}
	if !(guess > 0) {
		guess = w.motion.guess(w.base, w.perMetre, p)
	}
	if !(guess >= 0.1) {
		guess = 0.1
	} else if guess > top {
		guess = top
	}
	v, slope := m.speed(&w, p, guess, top)
	return Stride{v, p, p / (v * slope)}
}
