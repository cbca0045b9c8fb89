package duration

import (
	"math"

	"isoeffort.example/effort"
)

// faded returns the work h in hour-equivalents for which ∫₀ʰ P60/C(u) du is fresh: what
// an athlete does who, unfading, would do that much. It goes forward by Newton's method
// on the integral, which it takes along from panel to panel.
//
// The integrand grows as e^(φF(u)), F the fade's time. A panel is held to a growth of φF
// by a few units and to a doubling of u + h₀, where F has its singularity at u = −h₀: on
// such a panel ten Gauss points leave less than 1e-12.
func faded(a effort.Athlete, fresh float64) float64 {
	work, left := 0.0, fresh
	for range 200 {
		step := left * a.Capability(work) / a.HourPower
		bare := work + fadeScale
		growth := a.Fade * math.Pow(bare/fadeScale, a.FadeShape-1)
		step = min(step, bare, 1/growth)
		left -= freshOver(a, work, step)
		work += step
		if math.Abs(step) <= 1e-15*work {
			break
		}
	}
	return work
}

// fadeScale is h₀ of Athlete.Capability. It steers the panels only.
const fadeScale = 1.5

// freshOver is ∫ P60/C(u) du from a work over a step, which may be negative.
func freshOver(a effort.Athlete, from, step float64) float64 {
	half := step / 2
	middle, sum := from+half, 0.0
	for _, g := range gauss {
		x := half * g.at
		sum += g.weight * (1/a.Capability(middle+x) + 1/a.Capability(middle-x))
	}
	return half * sum * a.HourPower
}

// gauss are the positive points of the ten-point Gauss–Legendre rule on [−1, 1] and
// their weights (Abramowitz & Stegun 1964, table 25.4; checked to 1e-15 in the tests by
// what such a rule integrates exactly).
var gauss = [5]struct{ at, weight float64 }{
	{0.148874338981631211, 0.295524224714752870},
	{0.433395394129247191, 0.269266719309996355},
	{0.679409568299024406, 0.219086362515982044},
	{0.865063366688984511, 0.149451349150580593},
	{0.973906528517171720, 0.066671344308688138},
}
