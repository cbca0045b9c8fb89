package duration

import (
	"math"
	"time"
)

// Exponent returns the endurance exponent at a time, k = −d ln Power/d ln t. It is exact
// for an Analytic curve. For another it comes from differences over 0.2 % of the time on
// either side, with an error of some 1e-9 where the curve is smooth; where it has a
// break, the mean of both sides. NaN where Power is NaN.
func Exponent(c Curve, t time.Duration) float64 {
	if a, ok := c.(Analytic); ok {
		return a.Exponent(t)
	}
	near, far := difference(c, t, 1e-3), difference(c, t, 2e-3)
	return (4*near - far) / 3 // Richardson's extrapolation
}

// difference is −Δ ln Power/Δ ln t across a relative step to either side.
func difference(c Curve, t time.Duration, step float64) float64 {
	before, after := scaled(t, math.Exp(-step)), scaled(t, math.Exp(step))
	return -math.Log(c.Power(after)/c.Power(before)) / logRatio(after, before)
}

// RiegelAt returns Riegel's exponent at a time, b = 1/(1−k), k being Exponent: the
// relative change of time for a relative change of distance, on ground whose cost per
// metre does not change. NaN where Exponent is.
func RiegelAt(c Curve, t time.Duration) float64 { return 1 / (1 - Exponent(c, t)) }
