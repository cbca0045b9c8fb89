package curve

import "math"

// Tobler is Tobler's hiking function, for walking on paths:
//
//	6 exp(−3.5 |i + 0.05|) km/h
//
// which is fastest, 6 km/h, on a descent of 5 %, and 5.04 km/h on the level. It is taken
// as horizontal speed, which the source leaves open [Our own reading]; at 30 % along the
// slope would be 4 % more. It has no bounds and goes to 0 both ways; NaN gives NaN.
//
// Source: Tobler 1993, Three presentations on geographical analysis and modeling,
// Technical Report 93-1, National Center for Geographic Information and Analysis, from
// memory; a curve through a Swiss manual's figures (Imhof 1950) that states no error.
type Tobler struct{}

// Speed returns the horizontal speed in m/s.
func (Tobler) Speed(gradient float64) float64 {
	return 6 / 3.6 * math.Exp(-3.5*math.Abs(gradient+0.05))
}
