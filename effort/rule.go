package effort

import "math"

// choose returns the gait that buys the ground more cheaply in time and budget together
// when the power p is on offer, p standing for relative intensity ε: the lower of
//
//	(1 + (ε_g/ε)^n/(n−1)) / v_g
//
// over the gaits g, where ε_g is the intensity that the gait really uses. It is the
// least of time plus budget at the price λ = 1/((n−1) ε^n), the price at which a runner
// whose speed is proportional to power would choose ε itself; so a walk held back by
// the fastest walk is preferred until running is some 6 to 11 % faster. [Our own: the
// local form of the optimum.] Running slower than the slowest run is walking. guess is a
// walking speed to start from, 0 for want of one.
func (m *mover) choose(c *cell, p, guess float64) (Gait, Stride) {
	if m.habit == WalkOnly || m.mustWalk {
		return Walk, m.walkFrom(c, p, guess)
	}
	run := m.run(c, p)
	full := m.order / (m.order - 1)
	if m.habit == RunOnly || run.Speed > full*m.fastestWalk && run.Speed >= m.slowestRun {
		return Run, run
	}
	walk := m.walkFrom(c, p, guess)
	if run.Speed < m.slowestRun || m.price(walk, p) <= m.price(run, p) {
		return Walk, walk
	}
	return Run, run
}

// price is the time and budget of one metre, in seconds.
func (m *mover) price(s Stride, p float64) float64 {
	share := 1.0
	if s.Power != p {
		share = math.Pow(s.Power/p, m.order)
	}
	return (1 + share/(m.order-1)) / s.Speed
}
