package energy

import "math"

// Bounds are the two ends of an estimate; what share of people lies between them is said
// where they come from. Impossible input gives NaN for both.
type Bounds struct {
	Low, High float64
}

// nowhere is the answer to impossible input.
func nowhere() Bounds { return Bounds{math.NaN(), math.NaN()} }

// valid reports whether b can be a range of something that is never negative.
func (b Bounds) valid() bool { return possible(b.Low) && possible(b.High) && b.Low <= b.High }

// positive reports whether x is finite and more than 0.
func positive(x float64) bool { return x > 0 && possible(x) }

// possible reports whether x is finite and not negative.
func possible(x float64) bool { return x >= 0 && x <= math.MaxFloat64 }
