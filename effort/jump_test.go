package effort

import (
	"math"
	"testing"
)

// On long level ground without fade all cells turn from walking to running at one and
// the same intensity, and the finish leaps over an hour: between the two it is run and
// walked by turns. Every goal is met.
func TestGoalsAcrossJump(t *testing.T) {
	t.Parallel()
	g := ground(t, profile(t, 50_000, 50_000, slope(0)), 100)
	mixed := 0
	for _, power := range []float64{8, 8.5, 9, 9.5, 10} {
		a := Usual(power)
		a.Fade = 0
		in := integrator(t, g, a, Surroundings{})
		for goal := 6 * 3600.0; goal <= 9*3600; goal += 180 {
			s := solve(t, in, State{}, Demand{Moving: goal})
			near(t, "goal", s.Finish().Moving, goal, 1e-9*goal)
			if w := s.WalkingTime(0, 50_000); w > 0 && w < goal {
				mixed++
			}
		}
	}
	if mixed == 0 {
		t.Error("no goal was between running and walking")
	}
}

// A weak runner's budget is spent across the jump, too, and a stronger one is never
// slower.
func TestBudgetAcrossJump(t *testing.T) {
	t.Parallel()
	g := ground(t, profile(t, 50_000, 50_000, slope(0)), 100)
	before := math.Inf(1)
	for power := 7.0; power <= 11; power += 0.1 {
		a := Usual(power)
		a.Fade = 0
		s := solve(t, integrator(t, g, a, Surroundings{}), State{}, Demand{})
		near(t, "budget", s.Finish().Spent, 1, 1e-9)
		if s.Finish().Moving > before*(1+1e-9) {
			t.Errorf("hour power %.1f: %.1f s, less power %.1f s", power, s.Finish().Moving, before)
		}
		before = s.Finish().Moving
	}
}
