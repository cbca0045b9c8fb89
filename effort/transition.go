package effort

import "math"

// A Transition is where a runner who comes to have more power changes from walking to
// running on a slope.
type Transition struct {
	Power     float64 // W/kg on offer
	Walk, Run Stride  // at it
}

// powerRange bounds the powers in W/kg at which a transition is looked for.
const leastPower, mostPower = 0.05, 200.0

// Transition returns the power at which the gait rule changes from walking to running:
// the least above which it runs, to 1e-9. ok is false where it never changes between
// 0.05 and 200 W/kg, as for a Habit of one gait, or always runs.
func (s *Slope) Transition() (t Transition, ok bool) {
	power, ok := s.crossing(func(power float64) bool {
		gait, _ := s.Choose(power)
		return gait == Run
	})
	return Transition{power, s.Walk(power), s.Run(power)}, ok
}

// Crossing returns the power at which running comes to be as fast as walking without a
// fastest walk: where the two curves meet, at equal effort, whatever the rule. ok is
// false where they do not meet between 0.05 and 200 W/kg.
func (s *Slope) Crossing() (t Transition, ok bool) {
	free := *s
	free.mover.fastestWalk, free.mover.walkFall, free.mover.fastestDescent = unlimited, 0, 0
	free.mover.capBase, _ = free.mover.walking.power(unlimited, free.gradient)
	power, ok := free.crossing(func(power float64) bool {
		return free.Run(power).Speed > free.Walk(power).Speed
	})
	return Transition{power, free.Walk(power), free.Run(power)}, ok
}

// unlimited is a walking speed in m/s that nobody reaches.
const unlimited = 20

// scanStep is the step in ln power by which a crossing is looked for from above.
const scanStep = 0.02

// crossing is the least power above which runs is true. At very low powers running can
// come out cheaper again, since walking curves ask something of the slowest walk, so it
// is looked for from above.
func (s *Slope) crossing(runs func(power float64) bool) (power float64, ok bool) {
	if !runs(mostPower) {
		return math.NaN(), false
	}
	top := math.Log(mostPower)
	low := top - scanStep
	for ; runs(math.Exp(low)); low -= scanStep {
		if top = low; top < math.Log(leastPower) {
			return math.NaN(), false
		}
	}
	for top-low > 1e-10 {
		middle := (low + top) / 2
		if runs(math.Exp(middle)) {
			top = middle
		} else {
			low = middle
		}
	}
	return math.Exp(top), true
}

// Band returns the powers in W/kg between which either gait is fine: the rule's price of
// a metre, in time and budget, is within a share of it the same for both. The model
// cannot tell gaits apart by less than the error of its curves, some 5 % of power, and
// people mix them between about 1.9 and 3.0 m/s (Long & Srinivasan 2013, J R Soc
// Interface 10:20120980, from memory). The slowest run and the Habit are not looked at.
// low is 0 where running is dearer by less than the share however little the power, as
// on steep climbs. ok is false where running never gets cheaper by the share, or always
// is, or the share is not within 0 to 1.
func (s *Slope) Band(share float64) (low, top float64, ok bool) {
	if !(share >= 0 && share < 1) {
		return math.NaN(), math.NaN(), false
	}
	free := *s
	free.mover.slowestRun, free.mover.habit = 0, RunAndWalk
	low, found := free.crossing(func(power float64) bool { return free.advantage(power) > -share })
	if !found {
		low = 0
	}
	top, ok = free.crossing(func(power float64) bool { return free.advantage(power) > share })
	return low, top, ok
}

// advantage is how much cheaper running is than walking, as a logarithm.
func (s *Slope) advantage(power float64) float64 {
	m := &s.mover
	run, walk := m.run(&s.cell, power), m.walk(&s.cell, power)
	return math.Log(m.price(walk, power) / m.price(run, power))
}
