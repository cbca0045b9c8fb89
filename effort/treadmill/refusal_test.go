package treadmill_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

func TestRefusals(t *testing.T) {
	t.Parallel()
	with := func(change func(p *treadmill.Point)) []treadmill.Point {
		points := on(gradients2002, effort.RunningCost)
		change(&points[4])
		return points
	}
	nan, inf := math.NaN(), math.Inf(1)
	cases := []struct {
		name   string
		points []treadmill.Point
		o      treadmill.Options
		point  int
		cause  error
		says   string
	}{
		{"gradient NaN", with(func(p *treadmill.Point) { p.Gradient = nan }), treadmill.Options{}, 4, treadmill.ErrGradient, "finite"},
		{"gradient Inf", with(func(p *treadmill.Point) { p.Gradient = -inf }), treadmill.Options{}, 4, treadmill.ErrGradient, "finite"},
		{"percent", with(func(p *treadmill.Point) { p.Gradient = 10 }), treadmill.Options{}, 4, treadmill.ErrGradient, "10 is beyond ±1; 10 % is 0.10"},
		{"cost NaN", with(func(p *treadmill.Point) { p.Cost = nan }), treadmill.Options{}, 4, treadmill.ErrCost, "finite"},
		{"cost Inf", with(func(p *treadmill.Point) { p.Cost = inf }), treadmill.Options{}, 4, treadmill.ErrCost, "finite"},
		{"cost 0", with(func(p *treadmill.Point) { p.Cost = 0 }), treadmill.Options{}, 4, treadmill.ErrCost, "0 J/(kg m) is not positive"},
		{"cost negative", with(func(p *treadmill.Point) { p.Cost = -1 }), treadmill.Options{}, 4, treadmill.ErrCost, "-1 J/(kg m) is not positive"},
		{"cost in J/(kg km)", with(func(p *treadmill.Point) { p.Cost = 3600 }), treadmill.Options{}, 4, treadmill.ErrCost, "3600 J/(kg m) is above 1000"},
		{"weight negative", with(func(p *treadmill.Point) { p.Weight = -1 }), treadmill.Options{}, 4, treadmill.ErrWeight, "-1 is not within"},
		{"weight NaN", with(func(p *treadmill.Point) { p.Weight = nan }), treadmill.Options{}, 4, treadmill.ErrWeight, "NaN"},
		{"weight Inf", with(func(p *treadmill.Point) { p.Weight = inf }), treadmill.Options{}, 4, treadmill.ErrWeight, "+Inf"},
		{"no variance", with(func(*treadmill.Point) {}), treadmill.Options{KnownVariance: true}, 0, treadmill.ErrWeight, "1/variance"},
		{"speed negative", with(func(p *treadmill.Point) { p.Speed = -3 }), treadmill.Options{}, 4, treadmill.ErrSpeed, "-3 m/s"},
		{"speed NaN", with(func(p *treadmill.Point) { p.Speed = nan }), treadmill.Options{}, 4, treadmill.ErrSpeed, "NaN"},
		{"degree negative", with(func(*treadmill.Point) {}), treadmill.Options{Degree: -1}, -1, treadmill.ErrDegree, "-1 is not within 1 to 9"},
		{"degree 10", with(func(*treadmill.Point) {}), treadmill.Options{Degree: 10}, -1, treadmill.ErrDegree, "10 is not within"},
		{"no points", nil, treadmill.Options{}, -1, treadmill.ErrTooFewGradients, "a degree of 5 needs 6 distinct ones, there are 0"},
		{"few gradients", on(gradients2002[:5], effort.RunningCost), treadmill.Options{}, -1, treadmill.ErrTooFewGradients, "there are 5"},
		{"many points on few", on([]float64{0, 0, 0, 0.1, 0.1, 0.2, 0.2 + 1e-12}, effort.RunningCost), treadmill.Options{Degree: 3}, -1, treadmill.ErrTooFewGradients, "there are 3"},
		{"crowded", on([]float64{0, 1e-8, 2e-8, 0.1, 0.2}, effort.RunningCost), treadmill.Options{Degree: 4}, -1, treadmill.ErrIllConditioned, "the condition number of 5 terms is"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			curve, err := treadmill.Fit(c.points, c.o)
			var located *treadmill.Error
			if !errors.As(err, &located) || located.Point != c.point || !errors.Is(err, c.cause) || curve != nil {
				t.Fatalf("got %v, want points[%d]: %v", err, c.point, c.cause)
			}
			if text := err.Error(); !strings.HasPrefix(text, "treadmill: ") || !strings.Contains(text, c.says) {
				t.Errorf("text %q, want %q in it", text, c.says)
			}
		})
	}
}

// Leaving out needs one gradient more than fitting, and says so; so it does where what is
// left is too crowded.
func TestLeaveOutRefusals(t *testing.T) {
	t.Parallel()
	c := mustFit(t, on(gradients2002[:6], effort.RunningCost), treadmill.Options{})
	if _, err := c.LeaveOneGradientOut(); !errors.Is(err, treadmill.ErrTooFewGradients) {
		t.Error(err)
	}
	crowded := mustFit(t, on([]float64{0, 1.2e-9, 0.1, 0.2, 0.3}, effort.RunningCost), treadmill.Options{Degree: 3})
	_, err := crowded.LeaveOneGradientOut()
	if !errors.Is(err, treadmill.ErrIllConditioned) || !strings.Contains(err.Error(), "without the gradient 0.2: ") {
		t.Error(err)
	}
}

// Neither a speed nor a gradient that cannot be has a cost, nor has the zero Curve; beyond
// the range the cost is held and its error not known.
func TestEdges(t *testing.T) {
	t.Parallel()
	c := mustFit(t, on(gradients2002, effort.RunningCost), treadmill.Options{})
	var zero treadmill.Curve
	for k, x := range []float64{
		c.Power(-1, 0), c.Power(math.Inf(1), 0), c.Power(math.NaN(), 0), c.Power(3, math.NaN()), c.Base(-1),
		c.SE(0.46), c.SE(-0.46), c.SE(math.NaN()), zero.PerMetre(0), zero.Power(3, 0), zero.SE(0), zero.ResidualSD(),
	} {
		if !math.IsNaN(x) {
			t.Errorf("%d: %g, want NaN", k, x)
		}
	}
	near(t, "steepest", c.PerMetre(math.Inf(1)), c.PerMetre(0.45), 0)
	near(t, "deepest", c.PerMetre(math.Inf(-1)), c.PerMetre(-0.45), 0)
	near(t, "standing", c.Power(0, 0), 0, 0)
	if zero.Faults() != nil || len(zero.Coefficients()) != 0 || !zero.Covariance().IsEmpty() {
		t.Error("the zero Curve has a polynomial")
	}
	if _, err := zero.LeaveOneGradientOut(); err == nil {
		t.Error("the zero Curve left a gradient out")
	}
}

// Without degrees of freedom there is no standard error, but for a known variance.
func TestNoDegreesOfFreedom(t *testing.T) {
	t.Parallel()
	points := on(gradients2002[3:9], effort.RunningCost)
	c := mustFit(t, points, treadmill.Options{})
	if !math.IsNaN(c.SE(0)) || !math.IsNaN(c.ResidualSD()) || !math.IsNaN(c.Covariance().At(0, 0)) {
		t.Error(c.SE(0), c.ResidualSD(), c.Covariance().At(0, 0))
	}
	for j := range points {
		points[j].Weight = 25
	}
	known := mustFit(t, points, treadmill.Options{KnownVariance: true})
	near(t, "SE at a point", known.SE(0), 0.2, 1e-12) // the curve goes through it: 1/√25
}

// What a net cost cannot be made of is NaN.
func TestNetCostEdges(t *testing.T) {
	t.Parallel()
	nan, inf := math.NaN(), math.Inf(1)
	for _, x := range [][3]float64{
		{10, 0, 1}, {10, -3, 1}, {1, 3, 1.4}, {1.4, 3, 1.4}, {10, 3, -1}, {-1, 3, 0}, {inf, 3, 1}, {10, inf, 1}, {nan, 3, 1}, {10, nan, 1}, {10, 3, nan},
	} {
		if got := treadmill.NetCost(x[0], x[1], x[2]); !math.IsNaN(got) {
			t.Errorf("NetCost%v is %g", x, got)
		}
	}
	for _, x := range []float64{-1, inf, nan} {
		if got := treadmill.OxygenPower(x); !math.IsNaN(got) {
			t.Errorf("OxygenPower(%g) is %g", x, got)
		}
	}
}
