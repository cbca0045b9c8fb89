package calibrate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// A term is what one residual adds to the negative log posterior: its value, slope and
// curvature by the residual over its scale, and the weight that the residual keeps beside
// one of a normal distribution.
type term struct{ value, slope, curve, weight float64 }

// tailed is the term of an error x scales long, Student's t of ν:
// (ν+1)/2 · ln(1 + x²/ν), or x²/2 where ν is infinite.
func tailed(x, nu float64) term {
	if math.IsInf(nu, 1) {
		return term{x * x / 2, x, 1, 1}
	}
	w := (nu + 1) / (nu + x*x)
	return term{(nu + 1) / 2 * math.Log1p(x*x/nu), w * x, w * (nu - x*x) / (nu + x*x), w}
}

// bounded is the term of a race not finished: −ln P(t ≤ x), the chance that a race with
// the errors of all others is at most as long as what was run.
func bounded(x, nu float64) term {
	var density, below, drop float64
	if math.IsInf(nu, 1) {
		density, below, drop = distuv.UnitNormal.Prob(x), distuv.UnitNormal.CDF(x), x
	} else {
		t := distuv.StudentsT{Sigma: 1, Nu: nu}
		density, below, drop = t.Prob(x), t.CDF(x), (nu+1)*x/(nu+x*x)
	}
	if !(below > 1e-300) { // beyond what can be told apart, go on along the parabola
		return term{x * x / 2, x, 1, 1}
	}
	ratio := density / below
	return term{-math.Log(below), -ratio, math.Max(0, ratio*(ratio+drop)), 1}
}
