package efforttest

import (
	"testing"

	"isoeffort.example/effort"
)

// T is the part of a test that Check needs: a *testing.T, *testing.B or *testing.F.
type T interface {
	Helper()
	Errorf(format string, args ...any)
}

// Check reports as an error of the test each law that the curve breaks over the domain.
//
// It may not be called from a parallel test, nor while one runs: testing.AllocsPerRun,
// by which it looks for allocations, panics then. Violations has no such limit.
func Check(t T, c effort.Curve, d Domain) {
	t.Helper()
	violations := Violations(c, d)
	for _, v := range violations {
		t.Errorf("%T: %v", c, v)
	}
	if k := (&checker{curve: c, domain: d}); !stops(violations) && !k.allocationFree() {
		t.Errorf("%T: %v", c, k.violations[0])
	}
}

// Violations returns the laws that the curve breaks over the domain, each once, where it
// was first found, in the order in which the laws are declared. NoAllocation it does not
// look at.
//
// A jump is looked for between all neighbours of the grid: the step is halved 40 times,
// always keeping the half in which power changes more. If power still changes by more
// than a millionth of the greatest power there, and by more than half of what it changed
// over a step a million times longer, it jumps. An infinite slope, as of a root at 0, is
// no jump; two jumps that cancel within a step of the grid are not seen.
//
// It takes about half a million evaluations.
func Violations(c effort.Curve, d Domain) []Violation {
	k := &checker{curve: c, domain: d}
	if fault := d.fault(); fault != "" || c == nil {
		k.report(GoodDomain, d.Speed[0], d.Gradient[0], "curve %T, domain: %s", c, fault)
		return k.violations
	}
	k.speeds, k.gradients = grid(d.Speed), grid(d.Gradient)
	for _, law := range []func(){k.outside, k.nan, k.values, k.repeatable, k.jumps, k.parts} {
		law()
		if k.broken(NoPanic) {
			return k.only(NoPanic)
		}
	}
	k.sort()
	return k.violations
}

// stops reports whether the violations are such that nothing else can be looked at.
func stops(violations []Violation) bool {
	return len(violations) > 0 && (violations[0].Law == NoPanic || violations[0].Law == GoodDomain)
}

// allocationFree looks at NoAllocation, in the corners of the domain.
func (k *checker) allocationFree() bool {
	power := k.allocations(func(v, i float64) { k.curve.Power(v, i) })
	parts := 0.0
	if s, ok := k.curve.(effort.Separable); ok {
		parts = k.allocations(func(v, i float64) { s.Base(v); s.PerMetre(i) })
	}
	if power == 0 && parts == 0 {
		return true
	}
	k.report(NoAllocation, k.domain.Speed[1], k.domain.Gradient[1], "four calls allocate %g times in Power, %g in Base and PerMetre", power, parts)
	return false
}

// allocations counts those of one call in each corner of the domain.
func (k *checker) allocations(call func(v, i float64)) float64 {
	return testing.AllocsPerRun(100, func() {
		for _, v := range k.domain.Speed {
			for _, i := range k.domain.Gradient {
				call(v, i)
			}
		}
	})
}
