package effort

import "math"

// approach looks for x from a guess with the gait rule in force, and returns the last point swept and
// whether the demand is about met there; if not, low and top hold a jump.
func (s *solver) approach(guess float64) (now point, met bool) {
	s.low, s.top = math.Inf(-1), math.Inf(1)
	s.x = guess
	var before point
	for i := range 100 {
		now = s.miss(s.x, nil)
		if math.Abs(now.value) < ruleTolerance*now.slope {
			return now, true // as far as it goes once the gaits are held
		}
		// The derivative does not see that gaits change; the last two points do.
		if steeper := (now.value - before.value) / (now.x - before.x); i > 0 && steeper > now.slope {
			now.slope = steeper
		}
		dx := -now.value / now.slope
		s.narrow(s.x, now.value)
		if s.top-s.low < noJump || math.Abs(s.x) > farthest {
			return now, false
		}
		before, s.x = now, s.next(dx)
	}
	return now, false
}

func (s *solver) narrow(x, value float64) {
	if value < 0 {
		s.low = x
	} else {
		s.top = x
	}
}

// next is a Newton step of at most 0.7, or the middle of the bracket.
func (s *solver) next(dx float64) float64 {
	x := s.x + math.Max(-0.7, math.Min(0.7, dx))
	if math.IsNaN(dx) || x <= s.low || x >= s.top {
		switch {
		case math.IsInf(s.low, 0):
			return s.top - 0.7
		case math.IsInf(s.top, 0):
			return s.low + 0.7
		}
		return (s.low + s.top) / 2
	}
	return x
}
