package efforttest

import (
	"math"

	"isoeffort.example/effort"
)

// values looks at Finite, Positive, Increasing and Uphill on the grid.
func (k *checker) values() {
	below := make([]float64, len(k.speeds)) // of the gradient before
	for n, i := range k.gradients {
		slower := math.NaN()
		for m, v := range k.speeds {
			p := k.power(v, i)
			k.value(v, i, p)
			if m > 0 && finite(p) && p <= slower {
				k.report(Increasing, v, i, "%g W/kg, and %g at %g m/s", p, slower, k.speeds[m-1])
			}
			if n > 0 && k.gradients[n-1] >= 0 && v > 0 && finite(p) && p <= below[m] {
				k.report(Uphill, v, i, "%g W/kg, and %g on %g", p, below[m], k.gradients[n-1])
			}
			slower, below[m] = p, p
		}
	}
}

// value looks at Finite and Positive at one place.
func (k *checker) value(v, i, p float64) {
	switch {
	case !finite(p):
		k.report(Finite, v, i, "%g W/kg", p)
	case p < 0 || p == 0 && v > 0:
		k.report(Positive, v, i, "%g W/kg", p)
	}
}

// nan looks at NaN in Power.
func (k *checker) nan() {
	v, i, nan := k.domain.Speed[1], k.domain.Gradient[1], math.NaN()
	for _, at := range [][2]float64{{nan, i}, {v, nan}, {nan, nan}, {nan, 0}, {0, nan}} {
		if p := k.power(at[0], at[1]); !math.IsNaN(p) {
			k.report(NaN, at[0], at[1], "%g W/kg", p)
		}
	}
}

// outside looks at Outside, and at NoPanic for speeds of all kinds.
func (k *checker) outside() {
	for _, v := range []float64{k.speeds[0], k.speeds[len(k.speeds)/2], k.domain.Speed[1]} {
		for _, beyond := range []float64{1e-9, 0.01, 0.1, 0.5, 1, 2, 10, 1e6, math.MaxFloat64, math.Inf(1)} {
			for _, i := range []float64{k.domain.Gradient[0] - beyond, k.domain.Gradient[1] + beyond} {
				if p := k.power(v, i); math.IsInf(p, 0) {
					k.report(Outside, v, i, "%g W/kg", p)
				}
			}
		}
	}
	for _, v := range []float64{-1, 0, 1e-300, 100, math.MaxFloat64, math.Inf(1), math.Inf(-1)} {
		for _, i := range []float64{k.domain.Gradient[0], 0, k.domain.Gradient[1], math.Inf(1), math.Inf(-1)} {
			k.power(v, i)
		}
	}
}

// repeatable looks at Repeatable: the grid one way and then the other.
func (k *checker) repeatable() {
	first := make([]float64, 0, len(k.gradients)*len(k.speeds))
	for _, i := range k.gradients {
		for _, v := range k.speeds {
			first = append(first, k.power(v, i))
		}
	}
	for j := len(first) - 1; j >= 0; j-- {
		v, i := k.speeds[j%len(k.speeds)], k.gradients[j/len(k.speeds)]
		if p := k.power(v, i); math.Float64bits(p) != math.Float64bits(first[j]) {
			k.report(Repeatable, v, i, "%g W/kg, and %g before, a difference of %g", p, first[j], p-first[j])
		}
	}
}

// partsTolerance is the relative difference that Parts allows: some thousand roundings.
const partsTolerance = 1e-12

// parts looks at Parts, and at NaN in them.
func (k *checker) parts() {
	s, ok := k.curve.(effort.Separable)
	if !ok {
		return
	}
	base := func(v float64) float64 { return k.guard(v, 0, func(v, _ float64) float64 { return s.Base(v) }) }
	perMetre := func(i float64) float64 { return k.guard(0, i, func(_, i float64) float64 { return s.PerMetre(i) }) }
	for _, i := range k.gradients {
		for _, v := range k.speeds {
			p, b, m := k.power(v, i), base(v), v*perMetre(i)
			bound := partsTolerance * max(math.Abs(p), math.Abs(b), math.Abs(m))
			if finite(p) && !(math.Abs(p-(b+m)) <= bound) {
				k.report(Parts, v, i, "Power %g W/kg, Base %g, speed · PerMetre %g", p, b, m)
			}
		}
	}
	if b := base(0); b != 0 {
		k.report(Parts, 0, 0, "Base is %g W/kg", b)
	}
	if b, m := base(math.NaN()), perMetre(math.NaN()); !math.IsNaN(b) || !math.IsNaN(m) {
		k.report(NaN, math.NaN(), math.NaN(), "Base %g W/kg, PerMetre %g J/(kg m)", b, m)
	}
}
