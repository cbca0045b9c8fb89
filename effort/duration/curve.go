package duration

import (
	"errors"
	"fmt"
	"math"
	"time"
)

// A Curve is the relation between power and time to exhaustion of one runner.
//
// Power returns the mean effort power in W/kg that can be held for a time that ends in
// exhaustion. Within the curve's span it must be positive and fall with time, and Power
// times time must grow with it; outside and for a time that is not positive it must be
// NaN. Package durationtest checks these laws.
type Curve interface {
	Power(t time.Duration) float64
}

// An Analytic curve knows its span and its slope. Every curve of this package does. One
// that does not is taken to hold from 1 s to 1000 h, and Exponent differentiates it
// numerically.
type Analytic interface {
	Curve

	// Span returns the shortest and the longest time for which Power is a number.
	Span() (shortest, longest time.Duration)

	// Exponent returns −d ln Power/d ln t, more than 0 and less than 1.
	Exponent(t time.Duration) float64
}

// An About says what a curve rests on, for a report or a warning by program.
type About struct {
	Name       string
	Source     string // citation, and how far it was read
	Population string // who was measured
	From, To   time.Duration
	Outside    string // what becomes of it outside From and To
}

// Holds reports whether a time is one for which the curve was made.
func (a About) Holds(t time.Duration) bool { return t >= a.From && t <= a.To }

var (
	// ErrInput is wrapped by the error for a number that cannot be what it stands for.
	ErrInput = errors.New("input out of range")

	// ErrBeyond is wrapped by the error for work that a curve has no time for.
	ErrBeyond = errors.New("beyond the curve")
)

// Work returns the work in J/kg that is done in a time to exhaustion, Power · t. It is
// NaN where Power is.
func Work(c Curve, t time.Duration) float64 { return c.Power(t) * t.Seconds() }

// HourPower returns the power in W/kg that can be held for an hour. For Fading it is the
// mean over that hour, and so a little less than the hour power of its fresh athlete:
// 1 % for a fade of 0.02.
func HourPower(c Curve) float64 { return c.Power(time.Hour) }

// longestTime is the longest that a Duration can be, 292 years.
const longestTime time.Duration = math.MaxInt64

// span is the curve's span, or 1 s to 1000 h if it knows none.
func span(c Curve) (shortest, longest time.Duration) {
	if a, ok := c.(Analytic); ok {
		return a.Span()
	}
	return time.Second, 1000 * time.Hour
}

// positive reports whether x is a positive, finite number.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }

// share reports whether x lies between 0 and 1 and is neither.
func share(x float64) bool { return x > 0 && x < 1 }

// inputError says what is wrong with an input.
func inputError(format string, arguments ...any) error {
	return fmt.Errorf("duration: %w: %s", ErrInput, fmt.Sprintf(format, arguments...))
}
