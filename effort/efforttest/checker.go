package efforttest

import (
	"fmt"
	"math"
	"slices"

	"isoeffort.example/effort"
)

// checker holds a curve, its grid and what was found.
type checker struct {
	curve             effort.Curve
	domain            Domain
	speeds, gradients []float64
	violations        []Violation
}

// report keeps the first violation of each law.
func (k *checker) report(law Law, speed, gradient float64, format string, args ...any) {
	if !k.broken(law) {
		k.violations = append(k.violations, Violation{law, speed, gradient, fmt.Sprintf(format, args...)})
	}
}

// broken reports whether a violation of the law was found.
func (k *checker) broken(law Law) bool { return len(k.only(law)) > 0 }

// only returns the violation of one law, if there is one.
func (k *checker) only(law Law) []Violation {
	for j, v := range k.violations {
		if v.Law == law {
			return k.violations[j : j+1]
		}
	}
	return nil
}

// sort puts the violations into the order of declaration.
func (k *checker) sort() {
	order := []Law{
		GoodDomain, NoPanic, Finite, Positive, Increasing, Uphill, Continuous, NaN, Outside,
		Repeatable, Parts, NoAllocation,
	}
	slices.SortFunc(k.violations, func(a, b Violation) int {
		return slices.Index(order, a.Law) - slices.Index(order, b.Law)
	})
}

// power is the curve's, NaN where it panics.
func (k *checker) power(speed, gradient float64) float64 {
	return k.guard(speed, gradient, k.curve.Power)
}

// guard calls a function of the curve and reports its panic.
func (k *checker) guard(speed, gradient float64, f func(speed, gradient float64) float64) (value float64) {
	defer func() {
		if fault := recover(); fault != nil {
			value = math.NaN()
			k.report(NoPanic, speed, gradient, "panic: %v", fault)
		}
	}()
	return f(speed, gradient)
}

// finite reports whether x is neither NaN nor infinite.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
