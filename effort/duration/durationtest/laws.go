// Package durationtest checks the laws that a duration.Curve must keep.
package durationtest

import (
	"errors"
	"math"
	"time"

	"isoeffort.example/effort/duration"
)

// A T takes what fails: a testing.T, or whatever stands for one.
type T interface {
	Helper()
	Errorf(format string, arguments ...any)
}

const steps = 60

// CheckCurve checks, at times spread evenly in their logarithm between two that lie
// within the curve's span, that
//
//   - power is positive and finite and falls with time, and work grows;
//   - power is NaN for a time that is not positive and outside the span;
//   - Time is the inverse of Work, TimeAt of DistanceIn, and impossible work an error;
//   - Exponent is the slope of power, and between 0 and 1.
//
// A curve need keep Power to some 1e-14, and Time is then right to 1e-12 over 1 − k.
func CheckCurve(t T, c duration.Curve, from, to time.Duration) {
	t.Helper()
	for i := range steps + 1 {
		at := spread(from, to, float64(i)/steps)
		checkInverse(t, c, at)
		if i > 0 && i < steps {
			checkSlope(t, c, at)
		}
		if i < steps {
			checkFalls(t, c, at, spread(from, to, float64(i+1)/steps))
		}
	}
	checkOutside(t, c)
}

// spread is the time at a share of the way between two, in its logarithm.
func spread(from, to time.Duration, share float64) time.Duration {
	return time.Duration(float64(from) * math.Pow(float64(to)/float64(from), share))
}

func checkFalls(t T, c duration.Curve, before, after time.Duration) {
	t.Helper()
	p, q := c.Power(before), c.Power(after)
	if !(p > q && q > 0 && !math.IsInf(p, 0)) {
		t.Errorf("power goes from %g W/kg at %v to %g at %v", p, before, q, after)
	}
	if v, w := duration.Work(c, before), duration.Work(c, after); !(v > 0 && w > v) {
		t.Errorf("work goes from %g J/kg in %v to %g in %v", v, before, w, after)
	}
}

func checkInverse(t T, c duration.Curve, at time.Duration) {
	t.Helper()
	const cost = 3.7
	tolerance := 1 + 1e-12*float64(at)/(1-duration.Exponent(c, at)) // ns
	got, err := duration.Time(c, duration.Work(c, at))
	if !(err == nil && math.Abs(float64(got-at)) <= tolerance) {
		t.Errorf("the work of %v takes %v, error %v", at, got, err)
	}
	got, err = duration.TimeAt(c, duration.DistanceIn(c, at, cost), cost)
	if !(err == nil && math.Abs(float64(got-at)) <= tolerance) {
		t.Errorf("the distance in %v takes %v, error %v", at, got, err)
	}
}

// checkSlope asks that the exponent lies between the mean ones before and after, which
// holds at a break too.
func checkSlope(t T, c duration.Curve, at time.Duration) {
	t.Helper()
	k := duration.Exponent(c, at)
	if !(k > 0 && k < 1) {
		t.Errorf("endurance exponent %g at %v", k, at)
	}
	before := slope(c, spread(at, 2*at, -1e-4), at)
	after := slope(c, at, spread(at, 2*at, 1e-4))
	const rounding = 1e-8
	if !(k > min(before, after)-rounding && k < max(before, after)+rounding) {
		t.Errorf("endurance exponent %.10g at %v, before it %.10g and after it %.10g", k, at, before, after)
	}
	if b := duration.RiegelAt(c, at); !(math.Abs(b*(1-k)-1) < 1e-14) {
		t.Errorf("Riegel's exponent %g at %v for an endurance exponent of %g", b, at, k)
	}
}

// slope is −Δ ln P/Δ ln t.
func slope(c duration.Curve, a, b time.Duration) float64 {
	return -math.Log(c.Power(b)/c.Power(a)) / math.Log(float64(b)/float64(a))
}

func checkOutside(t T, c duration.Curve) {
	t.Helper()
	outside := []time.Duration{0, -1, -time.Hour, math.MinInt64}
	if a, ok := c.(duration.Analytic); ok {
		if shortest, longest := a.Span(); longest < math.MaxInt64 {
			outside = append(outside, shortest-1, longest+1)
		}
	}
	for _, at := range outside {
		if p, k := c.Power(at), duration.Exponent(c, at); !math.IsNaN(p) || !math.IsNaN(k) {
			t.Errorf("at %v power %g and exponent %g, want NaN", at, p, k)
		}
	}
	for _, work := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0} {
		if got, err := duration.Time(c, work); !errors.Is(err, duration.ErrInput) {
			t.Errorf("work of %g takes %v, error %v", work, got, err)
		}
	}
	if got, err := duration.Time(c, math.MaxFloat64); !errors.Is(err, duration.ErrBeyond) {
		t.Errorf("work of %g takes %v, error %v", math.MaxFloat64, got, err)
	}
}
