package duration

import (
	"math"
	"time"

	"isoeffort.example/effort"
)

// A Fading curve is what the model of package effort says of an athlete who runs uniform
// ground, one cost per metre all the way, and spends the whole budget: the power law
// with its fade. The relative intensity is the same throughout, so power falls during
// the effort, and Power is its mean. With τ the time in hours, h the work in
// hour-equivalents, P60 the hour power, k the endurance exponent and C(h) the
// Athlete's Capability
//
//	∫₀ʰ P60/C(u) du = τ^(1−k),  P = P60 h/τ
//
// which for a fade of shape 1 is (e^(φh) − 1)/φ = τ^(1−k), as Athlete.UniformWork has
// it. Other shapes are integrated, to 1e-12. Braking, economy and what the athlete walks
// do not matter here. An athlete who does not pass Check has a Power of NaN.
//
// Use it for some 3 min to a day, with a fade from the athlete's own long races. Below an
// hour it is nearly the power law. Through the men's best times at 3000 m and the marathon
// a fade of 0.02 makes the best distance in 24 h 1.19 times what it is and one of 0.04
// 1.07 times, where the power law says 1.37. [Our own, by integration of the model.]
type Fading struct {
	Athlete effort.Athlete
}

// Power returns the mean power in W/kg that can be held for a time.
func (f Fading) Power(t time.Duration) float64 {
	if t <= 0 || f.Athlete.Check() != nil {
		return math.NaN()
	}
	return f.Athlete.HourPower * f.work(t) / t.Hours()
}

// work is the work of a time in hour-equivalents.
func (f Fading) work(t time.Duration) float64 {
	a := f.Athlete
	if a.Fade == 0 || a.FadeShape == 0 || a.FadeShape == 1 {
		return a.UniformWork(t) / (3600 * a.HourPower)
	}
	return faded(a, math.Pow(t.Hours(), 1-a.Endurance))
}

// Span returns all that a Duration can be.
func (f Fading) Span() (shortest, longest time.Duration) { return 1, longestTime }

// Exponent returns −d ln Power/d ln t, which grows with time from the endurance exponent:
// 1 − (1−k) τ^(1−k) C(h)/(P60 h).
func (f Fading) Exponent(t time.Duration) float64 {
	a := f.Athlete
	if t <= 0 || a.Check() != nil {
		return math.NaN()
	}
	h := f.work(t)
	return 1 - (1-a.Endurance)*math.Pow(t.Hours(), 1-a.Endurance)*a.Capability(h)/(a.HourPower*h)
}

// About describes the curve.
func (Fading) About() About {
	return About{
		Name:       "power law with fade",
		Source:     "the model of package effort, our own; its power law as of PowerLaw",
		Population: "none measured",
		From:       210 * time.Second,
		To:         24 * time.Hour,
		Outside:    "extrapolates the fade",
	}
}
