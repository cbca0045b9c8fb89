package treadmill_test

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"isoeffort.example/effort/treadmill"
)

// integral returns a polynomial with the value level at 0 whose derivative is factor times
// the product of (i − root).
func integral(level, factor float64, roots ...float64) func(float64) float64 {
	d := []float64{factor}
	for _, root := range roots {
		next := make([]float64, len(d)+1)
		for k, c := range d {
			next[k+1] += c
			next[k] -= root * c
		}
		d = next
	}
	return func(i float64) float64 {
		sum := 0.0
		for k := len(d) - 1; k >= 0; k-- {
			sum = sum*i + d[k]/float64(k+1)
		}
		return level + sum*i
	}
}

// Curves whose derivative has chosen roots: those are where the falls begin and end.
func TestFallsEndAtTheRootsOfTheDerivative(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name  string
		roots []float64
		falls [][2]float64
	}{
		{"a bowl", []float64{-0.15}, nil},
		{"a bump uphill", []float64{-0.15, 0.20, 0.26}, [][2]float64{{0.20, 0.26}}},
		{"a bump downhill", []float64{-0.40, -0.30, 0.02}, [][2]float64{{-0.40, -0.30}}},
		{"two bumps", []float64{-0.31, -0.24, 0.01, 0.20, 0.30}, [][2]float64{{-0.31, -0.24}, {0.20, 0.30}}},
		{"narrow", []float64{-0.15, 0.2000, 0.2004}, [][2]float64{{0.2000, 0.2004}}},
		{"level for a point", []float64{-0.15, 0.2, 0.2}, nil},
		{"falls to the end", []float64{-0.15, 0.35}, [][2]float64{{0.35, 0.45}}},
		{"straight", nil, nil},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			factor := 12.0
			if c.name == "falls to the end" {
				factor = -factor // two roots: rising between them
			}
			cost := integral(12, factor, c.roots...)
			curve := mustFit(t, on(gradients2002, cost), treadmill.Options{Degree: len(c.roots) + 1})
			faults := curve.Faults()
			if len(faults) != len(c.falls) {
				t.Fatalf("faults %v, want %v", faults, c.falls)
			}
			for k, f := range faults {
				// A root of multiplicity 1 moves by the rounding of the derivative over its
				// slope there: 1e-12 over 1e-3 where two are closest.
				near(t, "from", f.From, c.falls[k][0], 1e-8)
				near(t, "to", f.To, c.falls[k][1], 1e-8)
				near(t, "depth", f.Depth, math.Abs(cost(c.falls[k][0])-cost(c.falls[k][1])), 1e-12)
				if f.Kind != treadmill.Falling {
					t.Error(f)
				}
			}
		})
	}
}

// A derivative that touches 0 without changing its sign is no fall, wherever it does; by
// rounding alone it would be one on many of these.
func TestLevelForAPoint(t *testing.T) {
	t.Parallel()
	for r := 0.05; r < 0.4; r += 0.002 {
		for _, degree := range []int{6, 8} {
			c := mustFit(t, on(gradients2002, integral(12, 12, -0.15, r, r, r, r)), treadmill.Options{Degree: degree})
			if f := c.Faults(); f != nil {
				t.Errorf("level at %g, degree %d: %v", r, degree, f)
			}
		}
	}
}

// A cost below 0: where, how far, and no number for it.
func TestNotPositive(t *testing.T) {
	t.Parallel()
	cost := func(i float64) float64 { return 50*(i+0.1)*(i+0.1) - 0.125 } // 0 at −0.15 and −0.05
	c := mustFit(t, on([]float64{-0.4, -0.3, -0.2, 0, 0.1, 0.2, 0.3}, cost), treadmill.Options{Degree: 2})
	faults := c.Faults()
	if len(faults) != 1 || faults[0].Kind != treadmill.NotPositive {
		t.Fatal(faults)
	}
	near(t, "from", faults[0].From, -0.15, 1e-12)
	near(t, "to", faults[0].To, -0.05, 1e-12)
	near(t, "depth", faults[0].Depth, 0.125, 1e-12)
	gradient, least := c.Minimum()
	for _, x := range []float64{c.PerMetre(-0.1), c.Power(3, -0.1), gradient, least} {
		if !math.IsNaN(x) {
			t.Errorf("%g, want NaN", x)
		}
	}
	near(t, "cost beside it", c.PerMetre(0), 0.375, 1e-12)
	if !slices.ContainsFunc(c.Warnings(), contains("cost is not positive between gradients of -0.15 and -0.05")) {
		t.Error(c.Warnings())
	}
}

// companionRoots returns the roots of a polynomial as eigenvalues of its companion matrix.
func companionRoots(c []float64) []complex128 {
	n := len(c) - 1
	m := mat.NewDense(n, n, nil)
	for k := range n {
		m.Set(k, n-1, -c[k]/c[n])
		if k > 0 {
			m.Set(k, k-1, 1)
		}
	}
	var eigen mat.Eigen
	if !eigen.Factorize(m, mat.EigenNone) {
		return nil
	}
	return eigen.Values(nil)
}

// wild draws costs so noisy that the polynomial through them has bumps.
func wild(r *rapid.T) *treadmill.Curve {
	gradients := []float64{-0.45, -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.45}
	points := on(gradients, func(float64) float64 { return rapid.Float64Range(1, 9).Draw(r, "cost") })
	c, err := treadmill.Fit(points, treadmill.Options{Degree: rapid.IntRange(2, 8).Draw(r, "degree")})
	if err != nil {
		r.Fatal(err)
	}
	return c
}

// Every end of a fall inside the range is a root of the derivative by another method, and
// every such root that is simple is a turning point: the faults and the least are those
// that the eigenvalues of the companion matrix give.
func TestFaultsAgainstCompanionMatrix(t *testing.T) {
	t.Parallel()
	compared := 0
	rapid.Check(t, func(r *rapid.T) {
		c := wild(r)
		coefficients, derivative := c.Coefficients(), []float64(nil)
		for k := 1; k < len(coefficients); k++ {
			derivative = append(derivative, float64(k)*coefficients[k])
		}
		if math.Abs(derivative[len(derivative)-1]) < 1e-6 {
			r.Skip("no last coefficient, no companion matrix")
		}
		roots := companionRoots(derivative)
		edges := []float64{-0.45}
		for k, z := range roots {
			for _, other := range roots[:k] {
				if cmplx.Abs(z-other) < 1e-3 {
					r.Skip("roots too close to call")
				}
			}
			if math.Abs(imag(z)) < 1e-9 && math.Abs(real(z)) < 0.45 {
				edges = append(edges, real(z))
			}
		}
		edges = append(edges, 0.45)
		slices.Sort(edges)
		compared++
		compareFalls(r, c, coefficients, edges)
	})
	if compared < 20 {
		t.Errorf("only %d of 100 curves could be compared", compared)
	}
}

// compareFalls looks at the falls of a curve, given its turning points and ends.
func compareFalls(r *rapid.T, c *treadmill.Curve, coefficients, edges []float64) {
	value := func(i float64) float64 {
		sum := 0.0
		for k := len(coefficients) - 1; k >= 0; k-- {
			sum = sum*i + coefficients[k]
		}
		return sum
	}
	least := slices.MinFunc(edges, func(a, b float64) int { return int(math.Copysign(1, value(a)-value(b))) })
	for _, i := range edges {
		if i != least && math.Abs(value(i)-value(least)) < 1e-9 {
			r.Skip("two least ones")
		}
	}
	if gradient, _ := c.Minimum(); !math.IsNaN(gradient) && !(math.Abs(gradient-least) < 1e-6) {
		r.Errorf("least at %g, want %g", gradient, least)
	}
	falling := slices.DeleteFunc(c.Faults(), func(f treadmill.Fault) bool { return f.Kind != treadmill.Falling })
	n := 0
	for k := 1; k < len(edges); k++ {
		a, b := edges[k-1], edges[k]
		if rises := value(b) > value(a); rises == (b > least) {
			continue
		}
		if n >= len(falling) || math.Abs(falling[n].From-a) > 1e-6 || math.Abs(falling[n].To-b) > 1e-6 {
			r.Fatalf("falls %v, want one between %g and %g", falling, a, b)
		}
		n++
	}
	if n != len(falling) {
		r.Errorf("%d falls too many: %v", len(falling)-n, falling)
	}
}

// Within its faults and nowhere else is the cost not a number or the curve not rising.
func TestFaultsOnAGrid(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		c := wild(r)
		faults := c.Faults()
		for i := -0.45; i <= 0.45; i += 0.003 {
			inside := slices.ContainsFunc(faults, func(f treadmill.Fault) bool {
				return f.Kind == treadmill.NotPositive && i >= f.From && i <= f.To
			})
			if math.IsNaN(c.PerMetre(i)) != inside {
				r.Errorf("at %g %g, faults %v", i, c.PerMetre(i), faults)
			}
		}
	})
}
