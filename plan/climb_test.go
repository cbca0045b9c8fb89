package plan_test

import (
	"math"
	"strings"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A steep climb is walked, a gentle one run, and each says so.
func TestClimbAdvice(t *testing.T) {
	t.Parallel()
	hill := func(gradient float64) func(float64) float64 {
		return func(x float64) float64 {
			return 100 + gradient*math.Min(math.Max(x-20_000, 0), 3000) - gradient*math.Min(math.Max(x-30_000, 0), 3000)
		}
	}
	for _, r := range []struct {
		gradient float64
		want     string
	}{{0.03, "run all of it"}, {0.15, "walk all of it"}} {
		p := even(t, profile(t, 50_000, hill(r.gradient)), effort.Usual(12), plan.Race{})
		if len(p.Climbs) != 1 {
			t.Fatalf("%d climbs", len(p.Climbs))
		}
		c := p.Climbs[0]
		if got := c.Describe(1000, "km"); !strings.HasPrefix(got, r.want) {
			t.Errorf("%g: %q", r.gradient, got)
		}
		if math.Abs(c.Climb.Start-20_000) > 11 || math.Abs(c.Climb.Top-23_000) > 11 || c.Took <= 0 || c.Top <= c.Start {
			t.Errorf("%g: %+v", r.gradient, c)
		}
	}
}

func TestDescribe(t *testing.T) {
	t.Parallel()
	run := func(from, to float64) plan.Bout { return plan.Bout{Gait: plan.Run, From: from, To: to} }
	walk := func(from, to float64) plan.Bout { return plan.Bout{Gait: plan.Walk, From: from, To: to} }
	for _, r := range []struct {
		bouts []plan.Bout
		want  string
	}{
		{[]plan.Bout{run(0, 1000), walk(1000, 3000)}, "run to 1.0 km, then walk to the top"},
		{[]plan.Bout{walk(0, 1000), run(1000, 3000)}, "walk to 1.0 km, then run to the top"},
		{[]plan.Bout{run(0, 1000), walk(1000, 2000), run(2000, 3000)}, "walk 1.0-2.0 km, run the rest"},
		{[]plan.Bout{walk(0, 500), run(500, 1000), walk(1000, 2000), run(2000, 2500), walk(2500, 3000)}, "run and walk by turns, walk from 2.5 km"},
		{[]plan.Bout{walk(0, 500), run(500, 1000), walk(1000, 2000), run(2000, 2500), walk(2500, 3000), run(3000, 3500)}, "run and walk by turns: walk where it is steepest"},
		{[]plan.Bout{run(0, 100), walk(100, 3000)}, "walk all of it"},
		{[]plan.Bout{run(0, 2900), walk(2900, 3000)}, "run all of it, no harder than on the flat"},
	} {
		c := plan.Climb{Gait: plan.Mixed, Bouts: r.bouts, WalkingShare: 0.5}
		if n := len(r.bouts); r.bouts[n-1].To == 3000 && n == 2 && r.bouts[0].To != 1000 {
			c.WalkingShare = (3000 - r.bouts[0].To) / 3000
		}
		if got := c.Describe(1000, "km"); got != r.want {
			t.Errorf("%v: %q, want %q", r.bouts, got, r.want)
		}
	}
	if got := (plan.Climb{Gait: plan.Mixed, WalkingShare: 0.5, Bouts: []plan.Bout{run(0, 1609.344), walk(1609.344, 5000)}}).Describe(1609.344, "mi"); got != "run to 1.0 mi, then walk to the top" {
		t.Errorf("in miles: %q", got)
	}
}
