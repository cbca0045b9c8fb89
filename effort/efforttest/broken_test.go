package efforttest_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/efforttest"
)

// function is a curve given by its Power.
type function func(v, i float64) float64

func (f function) Power(v, i float64) float64 { return f(v, i) }

// parts is a separable curve given by its three methods.
type parts struct {
	function
	base, perMetre func(float64) float64
}

func (p parts) Base(v float64) float64     { return p.base(v) }
func (p parts) PerMetre(i float64) float64 { return p.perMetre(i) }

// slope is the cost per metre of a lawful curve: positive, and increasing with i.
func slope(i float64) float64 { return 4 + 3*math.Max(-1, math.Min(i, 1)) }

func lawful(v, i float64) float64 { return v * slope(i) }

// zero is 0, and NaN at NaN.
func zero(v float64) float64 { return 0 * v }

// when is lawful, with something added where a condition holds.
func when(holds func(v, i float64) bool, extra float64) function {
	return func(v, i float64) float64 {
		if holds(v, i) {
			return lawful(v, i) + extra
		}
		return lawful(v, i)
	}
}

// domain is where all of these curves are looked at.
var domain = efforttest.Domain{Gradient: [2]float64{-0.4, 0.45}, Speed: [2]float64{0, 5}}

// Curves that each break one law, most of them in no other way, and the laws that must be
// named, all of them and no other.
var broken = []struct {
	name  string
	curve effort.Curve
	laws  []efforttest.Law
}{
	{"none", nil, laws(efforttest.GoodDomain)},
	{"panic in the domain", function(func(v, i float64) float64 { return lawful(v, i) + zero([]float64{0}[int(v)/4]) }), laws(efforttest.NoPanic)},
	{"panic far outside", function(func(v, i float64) float64 {
		if v > 50 {
			panic("too fast")
		}
		return lawful(v, i)
	}), laws(efforttest.NoPanic)},
	{"panic at NaN", function(func(v, i float64) float64 {
		if math.IsNaN(i) {
			panic("no gradient")
		}
		return lawful(v, i)
	}), laws(efforttest.NoPanic)},
	{"panic in a part", parts{lawful, func(float64) float64 { panic("none") }, slope}, laws(efforttest.NoPanic)},
	{"infinite at the top", when(func(v, _ float64) bool { return v >= 5 }, math.Inf(1)), laws(efforttest.Finite, efforttest.Outside)},
	{"NaN downhill", when(func(_, i float64) bool { return i < -0.3 }, math.NaN()), laws(efforttest.Finite)},
	{"negative when slow", function(func(v, i float64) float64 { return lawful(v, i) - 0.1 }), laws(efforttest.Positive)},
	{"nothing when slow", function(func(v, i float64) float64 {
		return math.Max(-1, v-0.1) * slope(i) * math.Max(0, math.Copysign(1, v-0.1))
	}), laws(efforttest.Positive, efforttest.Increasing, efforttest.Uphill)},
	{"dearest at 3 m/s", function(func(v, i float64) float64 { return v * (6 - v) * slope(i) }), laws(efforttest.Increasing)},
	{"all speeds above 3 m/s alike", function(func(v, i float64) float64 { return math.Min(v, 3) * slope(i) }), laws(efforttest.Increasing)},
	{"falls by a little at one place", when(func(v, _ float64) bool { return v > 3.9 && v < 4 }, -0.9), laws(efforttest.Increasing, efforttest.Continuous)},
	{"all gradients alike", function(func(v, i float64) float64 { return 4*v + zero(math.Max(-1, math.Min(i, 1))) }), laws(efforttest.Uphill)},
	{"cheaper beyond 30 %", function(func(v, i float64) float64 { return v * (4 - math.Min(1, math.Abs(i-0.3))) }), laws(efforttest.Uphill)},
	{"jump with speed", when(func(v, _ float64) bool { return v > 2.0301 }, 0.01), laws(efforttest.Continuous)},
	{"jump with gradient", when(func(_, i float64) bool { return i > 0.0123 }, 0.01), laws(efforttest.Continuous)},
	{"jump at the level", when(func(v, i float64) bool { return i >= 0 && v > 0 }, 0.01), laws(efforttest.Continuous)},
	{"the level alone is dearer", when(func(v, i float64) bool { return i == 0 && v > 0 }, 0.01), laws(efforttest.Uphill, efforttest.Continuous)},
	{"jump at one place", when(func(v, i float64) bool { return v > 4 && i > 0.4 }, 0.01), laws(efforttest.Continuous)},
	{"small jump", when(func(_, i float64) bool { return i > 0.0123 }, 1e-4), laws(efforttest.Continuous)},
	{"NaN gradient taken for level", function(func(v, i float64) float64 {
		if i != i {
			i = 0
		}
		return lawful(v, i)
	}), laws(efforttest.NaN)},
	{"NaN speed taken for 0", function(func(v, i float64) float64 {
		if !(v > 0) {
			v = 0
		}
		return lawful(v, i)
	}), laws(efforttest.NaN)},
	{"not held outside", function(func(v, i float64) float64 { return v * math.Exp(i) }), laws(efforttest.Outside)},
	{"infinite just outside", when(func(_, i float64) bool { return i > 0.45 }, math.Inf(1)), laws(efforttest.Outside)},
	{"remembers", remembering(), laws(efforttest.Repeatable)},
	{"parts that do not add up", parts{lawful, zero, func(i float64) float64 { return slope(i) * (1 + 1e-11) }}, laws(efforttest.Parts)},
	{"a base that is not 0 at 0", parts{lawful, func(v float64) float64 { return 1e-13 + zero(v) }, slope}, laws(efforttest.Parts)},
	{"a base that knows no NaN", parts{lawful, func(float64) float64 { return 0 }, slope}, laws(efforttest.NaN)},
	{"a cost that knows no NaN", parts{lawful, zero, func(i float64) float64 {
		if i != i {
			return 4
		}
		return slope(i)
	}}, laws(efforttest.NaN)},
}

func laws(l ...efforttest.Law) []efforttest.Law { return l }

// remembering returns a curve that grows dearer by a hair with every call.
func remembering() function {
	calls := 0.0
	return func(v, i float64) float64 {
		calls++
		return lawful(v, i) * (1 + 1e-15*calls)
	}
}

func TestBrokenCurves(t *testing.T) {
	t.Parallel()
	for _, b := range broken {
		violations := efforttest.Violations(b.curve, domain)
		if got := lawsOf(violations); !slices.Equal(got, b.laws) {
			t.Errorf("%s: found %q, want %q: %v", b.name, got, b.laws, violations)
		}
	}
}

func lawsOf(violations []efforttest.Violation) (l []efforttest.Law) {
	for _, v := range violations {
		l = append(l, v.Law)
	}
	return l
}

// Curves that only look broken: each is near to breaking a law and must pass.
func TestLawfulCurves(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]effort.Curve{
		"plain":               function(lawful),
		"infinite slope at 0": function(func(v, i float64) float64 { return math.Sqrt(v) * slope(i) }),
		"infinite slope at a place": function(func(v, i float64) float64 {
			return v * (slope(i) + math.Cbrt(i-0.0123)*zero(i) + math.Cbrt(held(i-0.0123)))
		}),
		"steep":                    function(func(v, i float64) float64 { return v * (slope(i) + math.Tanh(1e10*(i-0.0123))) }),
		"kink":                     function(func(v, i float64) float64 { return v * (slope(i) + 9*math.Abs(held(i))) }),
		"jump too small to matter": function(func(v, i float64) float64 { return lawful(v, i) * (1 + 4e-7*math.Copysign(1, i-0.0123)) }),
		"NaN outside": function(func(v, i float64) float64 {
			if i < -0.4 || i > 0.45 {
				return math.NaN()
			}
			return lawful(v, i)
		}),
		"parts that all but cancel": parts{
			func(v, i float64) float64 { return v * (4 + cancelling(i)) },
			func(v float64) float64 { return 4 * v }, cancelling,
		},
	} {
		for _, v := range efforttest.Violations(c, domain) {
			t.Errorf("%s: %v", name, v)
		}
	}
}

// cancelling leaves a hundred-thousandth of a cost of 4 downhill.
func cancelling(i float64) float64 { return -4*(1-1e-5) + math.Max(0, held(i)) + zero(held(i)) }

// held keeps a gradient within ±1.
func held(i float64) float64 { return math.Max(-1, math.Min(i, 1)) }

// A Base is looked at where the speed is 0, even outside the domain.
func TestBaseAtRest(t *testing.T) {
	t.Parallel()
	c := parts{lawful, func(v float64) float64 { return 1e-13 + zero(v) }, slope}
	moving := efforttest.Domain{Gradient: domain.Gradient, Speed: [2]float64{1, 5}}
	if got := lawsOf(efforttest.Violations(c, moving)); !slices.Equal(got, laws(efforttest.Parts)) {
		t.Errorf("found %q", got)
	}
}

func TestBadDomains(t *testing.T) {
	t.Parallel()
	for _, d := range []efforttest.Domain{
		{Gradient: [2]float64{0.1, -0.1}, Speed: [2]float64{1, 2}},
		{Gradient: [2]float64{-0.1, 0.1}, Speed: [2]float64{2, 1}},
		{Gradient: [2]float64{-0.1, 0.1}, Speed: [2]float64{-1, 1}},
		{Gradient: [2]float64{math.NaN(), 0.1}, Speed: [2]float64{1, 2}},
		{Gradient: [2]float64{math.Inf(-1), 0.1}, Speed: [2]float64{1, 2}},
		{Gradient: [2]float64{0, 0.1}, Speed: [2]float64{1, math.Inf(1)}},
	} {
		if got := lawsOf(efforttest.Violations(function(lawful), d)); !slices.Equal(got, laws(efforttest.GoodDomain)) {
			t.Errorf("%v: %q", d, got)
		}
	}
	point := efforttest.Domain{Speed: [2]float64{1, 1}}
	if v := efforttest.Violations(function(lawful), point); v != nil {
		t.Errorf("a domain of one place: %v", v)
	}
}

// recorder stands for a test and keeps what is said to it.
type recorder []string

func (*recorder) Helper() {}

func (r *recorder) Errorf(format string, args ...any) { *r = append(*r, fmt.Sprintf(format, args...)) }
