package effort

import "math"

// easedWalk is the walk whose power buys distance most cheaply in time and budget, where
// s is that at the power p. With the price λ of choose, the least of (1 + λ ε^n)/v over
// the power is where
//
//	(ε_w/ε)^n = e (n−1)/(n−e),
//
// e being the elasticity of the walk: less than p for a fast walk, whose speed gains
// little by more power, more than p for a slow one. It is p itself where e is 1, as for
// running without wind. e is taken at s; taking it at the answer changes times by less
// than 0.15 s/h. [Our own.]
func (m *mover) easedWalk(c *cell, p float64, s Stride) Stride {
	e := s.Elasticity
	if e == 0 { // at the greatest speed
		w := m.walkWay(c)
		_, slope := m.powerAt(&w, s.Speed)
		e = s.Power / (s.Speed * slope)
	}
	eased := p * math.Pow(e*(m.order-1)/(m.order-e), 1/m.order)
	if !(eased > 0) || s.Elasticity == 0 && eased >= s.Power {
		return s
	}
	return m.evenWalk(c, eased, s.Speed)
}
