package efforttest

import "fmt"

// A Law is what a curve must obey.
type Law string

// The laws. All but Outside and NaN are about the domain.
const (
	// GoodDomain: the domain itself is finite, in order and has no negative speed, and
	// the curve is not nil. Nothing else is looked at where it is broken.
	GoodDomain Law = "good domain"

	// NoPanic: neither a speed nor a gradient, possible or not, makes the curve panic.
	// Nothing else is looked at where it is broken.
	NoPanic Law = "no panic"

	// Finite: power is neither infinite nor NaN.
	Finite Law = "finite"

	// Positive: power is above 0 at speeds above 0, and not below 0 at the speed 0.
	Positive Law = "positive"

	// Increasing: a higher speed takes more power on the same gradient.
	Increasing Law = "increasing in speed"

	// Uphill: from a gradient of 0 up, a steeper one takes more power at the same speed,
	// speeds above 0.
	Uphill Law = "increasing uphill"

	// Continuous: power does not jump with speed or with gradient. See Violations.
	Continuous Law = "continuous"

	// NaN: a NaN for either argument, or for both, gives NaN; in Base and PerMetre too.
	NaN Law = "NaN in, NaN out"

	// Outside: on gradients outside the domain, infinite ones included, power is finite
	// or NaN.
	Outside Law = "finite or NaN outside"

	// Repeatable: the same arguments give the same value, to the last bit, in whichever
	// order they come.
	Repeatable Law = "same arguments, same value"

	// Parts: a Separable's Power is Base + speed · PerMetre within 1e-12 of the greater
	// of the three, and its Base(0) is 0.
	Parts Law = "sum of its parts"

	// NoAllocation: Power, Base and PerMetre allocate no memory. Only Check looks at it.
	NoAllocation Law = "no allocation"
)

// A Violation is where a curve breaks a law.
type Violation struct {
	Law             Law
	Speed, Gradient float64 // where: m/s along the slope, rise over run
	Detail          string  // what was found there
}

// Error returns the violation in words.
func (v Violation) Error() string {
	return fmt.Sprintf("efforttest: %s: at %g m/s on a gradient of %g: %s", v.Law, v.Speed, v.Gradient, v.Detail)
}
