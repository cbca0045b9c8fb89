package treadmill_test

import (
	"slices"
	"strings"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

func contains(part string) func(string) bool {
	return func(s string) bool { return strings.Contains(s, part) }
}

// A clean curve over enough gradients has no warning; each kind comes where it must.
func TestWarnings(t *testing.T) {
	t.Parallel()
	odd := on(gradients2002, effort.RunningCost)
	odd[6].Cost += 6
	some := on(gradients2002, effort.RunningCost)
	some[2].Weight = 2
	tight := on(gradients2002, effort.RunningCost)
	loose := on(gradients2002, effort.RunningCost)
	for j := range tight {
		tight[j].Cost += 0.1 * float64(j%2)
		tight[j].Weight, loose[j].Weight = 1e4, 1e-4
	}
	peak := func(i float64) float64 { return 3 + 5/(1+400*i*i) }
	heavy := on(gradients2002[:9], peak)
	for j := range heavy {
		heavy[j].Weight = 100
	}
	cases := []struct {
		name   string
		points []treadmill.Point
		o      treadmill.Options
		want   string // "" means none at all
	}{
		{"clean", on(gradients2002, effort.RunningCost), treadmill.Options{}, ""},
		{"bumps", odd, treadmill.Options{Degree: 9}, "cost falls away from its least between gradients of "},
		{"the least uphill", on(gradients2002, func(i float64) float64 { return 3 + 20*(i-0.1)*(i-0.1) }), treadmill.Options{Degree: 2}, "the least cost is uphill, on a gradient of 0.1"},
		{"a short range", on(gradients2002[4:9], effort.RunningCost), treadmill.Options{Degree: 3}, ""},
		{"no descents", on(gradients2002[6:], effort.RunningCost), treadmill.Options{Degree: 3}, "measured on gradients of 0 to 0.45 only"},
		{"no climbs", on(gradients2002[:8], effort.RunningCost), treadmill.Options{Degree: 3}, "measured on gradients of -0.45 to 0.1 only"},
		{"a high degree on few gradients", on(gradients2002[:9], peak), treadmill.Options{Degree: 7}, "a gradient left out is foretold with an error of 4.8 J/(kg m), 22 times the residual SD"},
		{"the same, all of weight 100", heavy, treadmill.Options{Degree: 7}, "a gradient left out is foretold with an error of 4.8 J/(kg m), 22 times the residual SD"},
		{"through every point", on(gradients2002[3:9], effort.RunningCost), treadmill.Options{}, "no degrees of freedom: the polynomial goes through every point"},
		{"through every point, known", tight[3:9], treadmill.Options{KnownVariance: true}, "nothing tests the known variance"},
		{"none to leave out", on(gradients2002[3:9], effort.RunningCost), treadmill.Options{}, "leaving one out needs 7 distinct ones at a degree of 5, there are 6"},
		{"variance too small", tight, treadmill.Options{KnownVariance: true}, "times as large as the known variance lets expect: the degree"},
		{"variance too great", loose, treadmill.Options{KnownVariance: true}, "it is too great"},
		{"some weights", some, treadmill.Options{}, "12 of 13 points have no weight and were given 1"},
		{"kilocalories", on(gradients2002, func(i float64) float64 { return effort.RunningCost(i) / 4.184 }), treadmill.Options{}, "costs outside 0.5 to 60 J/(kg m): 1, the first is points[4]"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			warnings := mustFit(t, c.points, c.o).Warnings()
			if c.want == "" && len(warnings) > 0 || c.want != "" && !slices.ContainsFunc(warnings, contains(c.want)) {
				t.Errorf("warnings %q, want %q", warnings, c.want)
			}
		})
	}
}

// A caller who changes the warnings or the points changes no curve.
func TestCurveDoesNotChange(t *testing.T) {
	t.Parallel()
	points := on(gradients2002[6:], effort.RunningCost)
	c := mustFit(t, points, treadmill.Options{Degree: 3})
	before := c.Residuals()
	c.Warnings()[0], points[0].Cost = "", 100
	if c.Warnings()[0] == "" || !slices.Equal(before, c.Residuals()) {
		t.Error(c.Warnings(), c.Residuals())
	}
}
