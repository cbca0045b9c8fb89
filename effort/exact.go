package effort

import "math"

// longStep is the longest step in ln intensity that exact takes at once.
const longStep = 2.0

// exact looks for x with the settled gaits, from a point swept with them and no farther
// from it than reach, to a relative tolerance of time or budget. Where it does not find
// it, x is where it came nearest.
func (s *solver) exact(now point, tolerance, reach float64) (float64, bool) {
	low, top, from := math.Inf(-1), math.Inf(1), now.x
	var before point
	best := now
	for i := range 60 {
		if math.Abs(now.value) < tolerance {
			return now.x, true
		}
		if math.Abs(now.value) < math.Abs(best.value) {
			best = now
		}
		// The derivative leaves out what walking and the hour have on the fade and on
		// capability; two points see it.
		if secant := (now.value - before.value) / (now.x - before.x); i > 0 && secant > now.slope/2 && secant < 2*now.slope {
			now.slope = secant
		}
		if now.value < 0 {
			low = now.x
		} else {
			top = now.x
		}
		// Where nearly all is at its greatest speed the slope says little.
		step := -now.value / now.slope
		if !(math.Abs(step) <= longStep) {
			step = math.Copysign(longStep, -now.value)
		}
		next := now.x + step
		if next <= low || next >= top {
			next = (low + top) / 2
		}
		if math.Abs(next-from) > reach {
			return best.x, false
		}
		if math.Abs(next-now.x) < 1e-15 {
			return now.x, true
		}
		before, now = now, s.miss(next, s.in.gaits)
	}
	return best.x, false
}
