package duration

import (
	"math"
	"time"
)

// A Hyperbolic curve is a critical power that can be held for good, and a reserve of
// work above it:
//
//	P = Critical + Reserve/t,  so that  work = Reserve + Critical · t
//
// Both must be positive, or Power is NaN.
//
// Use it for 2 to 30 min. It never falls under Critical, which nobody holds for much
// over half an hour: it flatters beyond an hour, and is of no use for a race of many.
// Through the men's best times at 3000 and 10,000 m it is 7 % too fast at the marathon and
// makes the best distance in 24 h 1.67 times what it is. Towards 0 it grows without bound, and work of Reserve or less has no time.
//
// Sources, from memory: Monod & Scherrer 1965, Ergonomics 8:329, for single groups of
// muscles; Hill 1993, Sports Medicine 16:237, a review, for the whole body and for the
// range.
type Hyperbolic struct {
	Critical float64 // W/kg
	Reserve  float64 // J/kg
}

// Power returns the power in W/kg that can be held for a time.
func (h Hyperbolic) Power(t time.Duration) float64 {
	if t <= 0 || !h.possible() {
		return math.NaN()
	}
	return h.Critical + h.Reserve/t.Seconds()
}

func (h Hyperbolic) possible() bool { return positive(h.Critical) && positive(h.Reserve) }

// Span returns all that a Duration can be.
func (h Hyperbolic) Span() (shortest, longest time.Duration) { return 1, longestTime }

// Exponent returns the reserve's share of the power, (Reserve/t)/Power.
func (h Hyperbolic) Exponent(t time.Duration) float64 { return h.Reserve / t.Seconds() / h.Power(t) }

// About describes the curve.
func (Hyperbolic) About() About {
	return About{
		Name:       "critical power",
		Source:     "Monod & Scherrer 1965, Ergonomics 8:329; Hill 1993, Sports Medicine 16:237; from memory",
		Population: "healthy, mostly young adults, on cycle ergometers and treadmills",
		From:       2 * time.Minute,
		To:         30 * time.Minute,
		Outside:    "never falls under the critical power, so it flatters beyond an hour",
	}
}
