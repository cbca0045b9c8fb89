package treadmill_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/effort/efforttest"
	"isoeffort.example/effort/treadmill"
)

// invented draws points about a bowl: some gradients, some points on each.
func invented(r *rapid.T) []treadmill.Point {
	gradients := rapid.SliceOfNDistinct(rapid.IntRange(-45, 45), 6, 12, rapid.ID[int]).Draw(r, "percent")
	var points []treadmill.Point
	for _, percent := range gradients {
		for range rapid.IntRange(1, 3).Draw(r, "repeats") {
			i := float64(percent) / 100
			points = append(points, treadmill.Point{
				Gradient: i,
				Cost:     5 + 10*i + 50*i*i + rapid.Float64Range(-0.5, 0.5).Draw(r, "noise"),
				Weight:   rapid.SampledFrom([]float64{0.5, 1, 2, 3}).Draw(r, "weight"),
			})
		}
	}
	return points
}

// fitted draws points and fits them at a degree of at most 4, which 6 gradients can bear.
// Points that happen to lie on the polynomial are left out: what errors they have are
// rounding.
func fitted(r *rapid.T, o treadmill.Options) ([]treadmill.Point, treadmill.Options, *treadmill.Curve) {
	points := invented(r)
	o.Degree = rapid.IntRange(1, 4).Draw(r, "degree")
	c, err := treadmill.Fit(points, o)
	if err != nil {
		r.Fatal(err)
	}
	if c.ResidualSD() < 1e-3 {
		r.Skip("no residuals")
	}
	return points, o, c
}

// same compares two curves in all that a law leaves alone: costs, coefficients and, where
// errors are asked for, their covariance.
func same(r *rapid.T, a, b *treadmill.Curve, errors bool) {
	r.Helper()
	close := func(what string, x, y, size float64) {
		if !(math.Abs(x-y) <= 1e-9*size) { // of conditions below 1e4, rounding leaves 1e-12
			r.Errorf("%s %.17g and %.17g", what, x, y)
		}
	}
	x, y, covX, covY := a.Coefficients(), b.Coefficients(), a.Covariance(), b.Covariance()
	for k := range x {
		close("coefficients", x[k], y[k], math.Abs(x[k])+math.Pow(4, float64(k)))
		for j := 0; errors && j < len(x); j++ {
			close("covariances", covX.At(j, k), covY.At(j, k), math.Sqrt(covX.At(j, j)*covX.At(k, k)))
		}
	}
	ends := a.About().Gradient
	for _, i := range []float64{ends[0], (ends[0] + ends[1]) / 2, ends[1]} {
		if p, q := a.PerMetre(i), b.PerMetre(i); !math.IsNaN(p) || !math.IsNaN(q) {
			close("costs", p, q, 10)
		}
		if errors {
			close("standard errors", a.SE(i), b.SE(i), a.SE(i))
		}
	}
}

// A weight of 2 is the point twice: in the curve always, in its errors where the variance
// is known.
func TestWeightTwoIsTwoPoints(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, o, _ := fitted(r, treadmill.Options{KnownVariance: rapid.Bool().Draw(r, "known")})
		j := rapid.IntRange(0, len(points)-1).Draw(r, "which")
		double := append(slices.Clone(points), points[j])
		points[j].Weight *= 2
		a, b := mustFitR(r, points, o), mustFitR(r, double, o)
		same(r, a, b, o.KnownVariance)
		if b.DegreesOfFreedom() != a.DegreesOfFreedom()+1 {
			r.Errorf("%d and %d degrees of freedom", a.DegreesOfFreedom(), b.DegreesOfFreedom())
		}
	})
}

// All weights times a factor change nothing but the residual SD of a point of weight 1
// where the variance is unknown, and divide the covariance by it where it is known.
func TestScaleOfWeights(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, o, a := fitted(r, treadmill.Options{})
		factor := rapid.SampledFrom([]float64{1e-6, 0.3, 7, 1e6}).Draw(r, "factor")
		scaled := slices.Clone(points)
		for j := range scaled {
			scaled[j].Weight *= factor
		}
		b := mustFitR(r, scaled, o)
		same(r, a, b, true)
		if !(math.Abs(b.ResidualSD()/a.ResidualSD()/math.Sqrt(factor)-1) < 1e-9) {
			r.Errorf("residual SDs %g and %g", a.ResidualSD(), b.ResidualSD())
		}
		o.KnownVariance = true
		a, b = mustFitR(r, points, o), mustFitR(r, scaled, o)
		same(r, a, b, false)
		if !(math.Abs(a.SE(0)/b.SE(0)/math.Sqrt(factor)-1) < 1e-9) && !math.IsNaN(a.SE(0)) {
			r.Errorf("standard errors %g and %g", a.SE(0), b.SE(0))
		}
	})
}

// The order of the points has no bearing.
func TestOrderOfPoints(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, o, a := fitted(r, treadmill.Options{})
		other := slices.Clone(points)
		draw := rand.New(rand.NewPCG(rapid.Uint64().Draw(r, "seed"), 0))
		draw.Shuffle(len(other), func(i, j int) { other[i], other[j] = other[j], other[i] })
		same(r, a, mustFitR(r, other, o), true)
	})
}

// Costs times a factor make a curve times that factor.
func TestScaleOfCosts(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, o, a := fitted(r, treadmill.Options{})
		dear := slices.Clone(points)
		for j := range dear {
			dear[j].Cost *= 3
		}
		b := mustFitR(r, dear, o)
		for k, c := range b.Coefficients() {
			if !(math.Abs(c-3*a.Coefficients()[k]) <= 1e-9*(math.Abs(c)+math.Pow(4, float64(k)))) {
				r.Errorf("coefficient %d: %g, want 3 times %g", k, c, a.Coefficients()[k])
			}
		}
	})
}

// The residuals are orthogonal to every power of the gradient under the weights, which is
// what least squares means, and SE² is xᵀ Cov x.
func TestNormalEquationsHold(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, _, c := fitted(r, treadmill.Options{})
		residuals := c.Residuals()
		for k := 0; k <= c.Degree(); k++ {
			sum := 0.0
			for j, p := range points {
				sum += p.Weight * residuals[j] * math.Pow(p.Gradient/0.45, float64(k))
			}
			if !(math.Abs(sum) < 1e-9) {
				r.Errorf("Σ w r x^%d is %g", k, sum)
			}
		}
		i := points[0].Gradient
		x := make([]float64, c.Degree()+1)
		for k := range x {
			x[k] = math.Pow(i, float64(k))
		}
		v := mat.NewVecDense(len(x), x)
		if se, want := c.SE(i), math.Sqrt(mat.Inner(v, c.Covariance(), v)); !(math.Abs(se-want) < 1e-6*want) {
			r.Errorf("SE %g, by the covariance %g", se, want) // the latter cancels
		}
	})
}

// Leaving a gradient out is fitting without its points.
func TestLeaveOutIsAFitWithout(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		points, o, c := fitted(r, treadmill.Options{})
		l, err := c.LeaveOneGradientOut()
		if err != nil {
			r.Fatal(err)
		}
		out := l.Gradients[rapid.IntRange(1, len(l.Gradients)-2).Draw(r, "inner")]
		rest := slices.DeleteFunc(slices.Clone(points), func(p treadmill.Point) bool { return p.Gradient == out.Gradient })
		if len(rest) != len(points)-out.Points {
			r.Errorf("%d points of %d left out, %d said", len(points)-len(rest), len(points), out.Points)
		}
		if p := mustFitR(r, rest, o).PerMetre(out.Gradient); !math.IsNaN(p) && !(math.Abs(p-out.Predicted) < 1e-9) {
			r.Errorf("predicted %g, by a fit without %g", out.Predicted, p)
		}
	})
}

// The curve obeys the laws of a cost curve over its range, where it has no faults.
func TestEffortLaws(t *testing.T) {
	points := on(gradients2002, effort.RunningCost)
	for degree := 3; degree <= 9; degree++ {
		c := mustFit(t, points, treadmill.Options{Degree: degree})
		if f := c.Faults(); f != nil {
			t.Fatalf("degree %d: %v", degree, f)
		}
		efforttest.Check(t, c, efforttest.Domain{Gradient: c.About().Gradient, Speed: [2]float64{0, 6}})
	}
}

func mustFitR(r *rapid.T, points []treadmill.Point, o treadmill.Options) *treadmill.Curve {
	r.Helper()
	c, err := treadmill.Fit(points, o)
	if err != nil {
		r.Fatal(err)
	}
	return c
}
