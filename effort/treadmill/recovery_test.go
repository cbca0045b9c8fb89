package treadmill_test

import (
	"math"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

// gradients2002 are those of Minetti et al. 2002: 0 to ±0.45, from memory.
var gradients2002 = []float64{-0.45, -0.40, -0.35, -0.30, -0.20, -0.10, 0, 0.10, 0.20, 0.30, 0.35, 0.40, 0.45}

// published are the coefficients of effort.RunningCost in ascending powers.
var published = []float64{3.6, 19.5, 46.3, -43.3, -30.4, 155.4}

// on returns points on a function of the gradient.
func on(gradients []float64, cost func(float64) float64) []treadmill.Point {
	var points []treadmill.Point
	for _, i := range gradients {
		points = append(points, treadmill.Point{Gradient: i, Cost: cost(i)})
	}
	return points
}

// Points on the polynomial of 2002 give it back, at its own degree and, with a last
// coefficient of 0, at a higher one.
func TestRecoversThePolynomialOf2002(t *testing.T) {
	t.Parallel()
	points := on(gradients2002, effort.RunningCost)
	for degree := 5; degree <= 7; degree++ {
		c := mustFit(t, points, treadmill.Options{Degree: degree})
		for k, got := range c.Coefficients() {
			want := 0.0
			if k < len(published) {
				want = published[k]
			}
			near(t, "coefficient", got, want, 1e-9)
		}
		for i := -0.6; i <= 0.6; i += 0.001 {
			near(t, "cost", c.PerMetre(i), effort.RunningCost(i), 1e-12)
		}
		if c.ResidualSD() > 1e-12 || c.SE(0.1) > 1e-12 {
			t.Errorf("degree %d: residual SD %g, SE %g", degree, c.ResidualSD(), c.SE(0.1))
		}
		gradient, cost := c.Minimum()
		near(t, "least", cost, effort.RunningCost(gradient), 1e-12)
		for _, d := range []float64{-1e-3, 1e-3} {
			if effort.RunningCost(gradient+d) <= cost {
				t.Errorf("the published curve is lower at %g than at %g", gradient+d, gradient)
			}
		}
	}
}

// Minetti et al. 2002, abstract, from memory: running costs least, 1.73 ± 0.36 J/(kg m), at
// −20 % of slope. The polynomial's own least lies a little lower, within that SD.
func TestLeastCostOf2002(t *testing.T) {
	t.Parallel()
	c := mustFit(t, on(gradients2002, effort.RunningCost), treadmill.Options{})
	gradient, cost := c.Minimum()
	near(t, "gradient", gradient, -0.20, 0.05) // half the distance to the next gradient measured
	near(t, "cost", cost, 1.73, 0.36)
}

// From costs rounded to 0.01, what a table has, the curve is within the bound that the
// linearity of the fit gives: half of the last digit times the sum of what a unit at each
// of the gradients moves it by.
func TestRecoversFromARoundedTable(t *testing.T) {
	t.Parallel()
	points := on(gradients2002, effort.RunningCost)
	exact := mustFit(t, points, treadmill.Options{})
	rounded := on(gradients2002, func(i float64) float64 { return math.Round(effort.RunningCost(i)*100) / 100 })
	c := mustFit(t, rounded, treadmill.Options{})
	var moved []*treadmill.Curve
	for j := range points {
		unit := on(gradients2002, effort.RunningCost)
		unit[j].Cost++
		moved = append(moved, mustFit(t, unit, treadmill.Options{}))
	}
	greatest := 0.0
	for i := -0.45; i <= 0.45; i += 0.01 {
		bound := 0.0
		for _, m := range moved {
			bound += 0.005 * math.Abs(m.PerMetre(i)-exact.PerMetre(i))
		}
		off := math.Abs(c.PerMetre(i) - effort.RunningCost(i))
		if off > bound+1e-12 {
			t.Errorf("at %g off by %g, above %g", i, off, bound)
		}
		greatest = max(greatest, off)
	}
	if greatest == 0 || greatest > 0.01 {
		t.Errorf("off by up to %g: the table cannot have been rounded to 0.01", greatest)
	}
}

// Off the middle of the range, the coefficients still come back: to the digits that their
// size leaves.
func TestRecoversUphillOnly(t *testing.T) {
	t.Parallel()
	uphill := []float64{0.05, 0.08, 0.10, 0.12, 0.15, 0.18, 0.20}
	c := mustFit(t, on(uphill, effort.RunningCost), treadmill.Options{})
	for i := 0.05; i <= 0.20; i += 0.001 {
		near(t, "cost", c.PerMetre(i), effort.RunningCost(i), 1e-12)
	}
	for k, got := range c.Coefficients() {
		// Rounding of 1e-15 in cost over a half range of 0.075 is magnified by 1/0.075^k.
		near(t, "coefficient", got, published[k], 1e-13*math.Pow(0.075, -float64(k)))
	}
}
