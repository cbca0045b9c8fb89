package effort

import "math"

// air is what the runner meets of it: drag coefficient, wind against and across, m/s.
type air struct{ drag, wind, cross float64 }

// airPower is AirPower of what the runner meets.
func (a *air) airPower(v float64) float64 {
	if a.drag == 0 {
		return 0
	}
	u := v + a.wind
	return a.drag * v * u * a.relative(u)
}

// relative is the speed of the air past a runner who meets u of it head on.
func (a *air) relative(u float64) float64 {
	if a.cross == 0 {
		return math.Abs(u)
	}
	return math.Sqrt(u*u + a.cross*a.cross)
}
