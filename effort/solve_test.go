package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// What is asked of a solve is met to a relative 1e-9, by the gait rule, tilted or not.
func TestDemandMet(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), drawSurroundings(t))
		tilt := rapid.SampledFrom([]float64{0, -0.02, 0.1}).Draw(t, "tilt")
		budget := rapid.SampledFrom([]float64{0, 0.5, 0.9}).Draw(t, "budget")
		d := Demand{Budget: budget, Tilt: tilt}
		s := solve(t, in, State{}, d)
		near(t, "budget", s.Finish().Spent, d.budget(), 1e-9*d.budget())
		goal := s.Finish().Moving * rapid.Float64Range(0.7, 2).Draw(t, "goal")
		s = solve(t, in, State{}, Demand{Moving: goal, Tilt: tilt})
		near(t, "moving time", s.Finish().Moving, goal, 1e-9*goal)
	})
}

// The solution is the traverse at its intensity with the gaits that it settled on.
func TestSolutionIsItsTraverse(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), drawSurroundings(t))
		s := solve(t, in, State{}, Demand{})
		finish, intensity := s.Finish(), s.Intensity
		gaits := append([]Gait(nil), s.Gait...)
		again := in.Traverse(State{}, Pace{Intensity: intensity, Gaits: gaits}).Finish()
		near(t, "moving", again.Moving, finish.Moving, 1e-9*finish.Moving)
		for j, g := range in.Gaits() {
			if g != gaits[j] {
				t.Fatalf("cell %d: %v and %v", j, g, gaits[j])
			}
		}
	})
}

// A plan remade on the way, from where it says the runner should be and for the time that
// is left, is the same plan, to the accuracy of a solve.
func TestRemadeOnTheWay(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		a.SlowestRun, a.FastestWalk = 0.5, 0.5 // never walks
		in := integrator(t, drawGround(t), a, drawSurroundings(t))
		tilt := rapid.SampledFrom([]float64{0, -0.02}).Draw(t, "tilt")
		s := solve(t, in, State{}, Demand{Tilt: tilt})
		if in.ground.Len() < 2 || s.WalkingTime(0, in.ground.Length()) > 0 {
			return
		}
		finish, intensity := s.Finish().Moving, s.Intensity
		from := s.End[rapid.IntRange(0, in.ground.Len()-2).Draw(t, "cell")]
		s = solve(t, in, from, Demand{Moving: finish, Tilt: tilt})
		near(t, "intensity", s.Intensity, intensity, 2*solveTolerance*intensity*finish/(finish-from.Moving))
		near(t, "time", s.Finish().Moving, finish, 1e-9*finish)
	})
}

// By the gait rule it is the same plan to the accuracy of the rule, 0.03 % of intensity for
// each of the two.
func TestRemadeByRule(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{8, 9, 10, 11, 12} {
		in := integrator(t, ground(t, profile(t, 80_000, 10, waves), 0), Usual(power), Surroundings{})
		s := solve(t, in, State{}, Demand{})
		finish, intensity := s.Finish().Moving, s.Intensity
		trace := append([]State(nil), s.End...)
		for _, j := range []int{100, 700, 1500, 2200, 3000} {
			s = solve(t, in, trace[j], Demand{Moving: finish})
			near(t, "intensity", s.Intensity, intensity, 2*ruleTolerance*intensity)
			t.Logf("hour power %g, from %.1f km: %+.4f %%", power, trace[j].Distance/1000, 100*(s.Intensity/intensity-1))
		}
	}
}

// An athlete who runs only above 4 m/s walks a goal that walking meets, at one power on
// level ground.
func TestOnlyWalks(t *testing.T) {
	t.Parallel()
	a := Usual(8)
	a.SlowestRun, a.Fade = 4, 0
	in := integrator(t, level(t, 10_000), a, Surroundings{})
	s := solve(t, in, State{}, Demand{Moving: 7000})
	near(t, "time", s.Finish().Moving, 7000, 7e-6)
	near(t, "walking", s.WalkingTime(0, 10_000), 7000, 7e-6)
	for j, p := range s.Power {
		if v := 10_000.0 / 7000; math.Abs(p-WalkingPower(v, 0)) > 1e-6 {
			t.Fatalf("cell %d: %g W/kg", j, p)
		}
	}
}

// Ground that no one would draw still has an answer.
func TestOddGround(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		length, step float64
		height       func(float64) float64
	}{
		{"two points", 10_000, 10_000, slope(0.05)},
		{"one cell", 1000, 1000, slope(0)},
		{"a metre", 1, 1, slope(0)},
		{"all downhill", 10_000, 10_000, func(x float64) float64 { return 3000 - 0.3*x }},
		{"all steeply uphill", 5000, 5000, slope(1)},
		{"a wall", 100, 0.1, func(x float64) float64 { return 500 * math.Max(0, math.Min(1, x-50)) }},
	} {
		for _, step := range []float64{0, 1, 10_000} {
			g := ground(t, profile(t, c.length, c.step, c.height), step)
			for _, d := range []Demand{{}, {ShortestBout: 60}, {Moving: c.length / 2.5}, {Moving: c.length}, {Tilt: -0.02}} {
				in := integrator(t, g, Usual(12), Surroundings{})
				s := solve(t, in, State{}, d)
				f := s.Finish()
				if !(f.Moving > 0 && f.Moving < 1e6 && f.Work > 0 && f.Spent > 0 && s.Intensity > 0) {
					t.Errorf("%s, step %g, %+v: %+v at %g", c.name, step, d, f, s.Intensity)
				}
				if d.Moving > 0 {
					near(t, c.name, f.Moving, d.Moving, 1e-9*d.Moving)
				} else {
					near(t, c.name, f.Spent, 1, 1e-9)
				}
			}
		}
	}
}

// Goals that no one could want have finite answers: 100 hours for 10 km takes 4 % of the
// capability, 5 minutes ten times all of it.
func TestOddGoals(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 10_000), Usual(12), Surroundings{})
	slow := solve(t, in, State{}, Demand{Moving: 360_000})
	near(t, "slow, s", slow.Finish().Moving, 360_000, 360e-6)
	near(t, "slow, intensity", slow.Intensity, 0.036, 0.001)
	fast := solve(t, in, State{}, Demand{Moving: 300})
	near(t, "fast, s", fast.Finish().Moving, 300, 300e-9)
	near(t, "fast, intensity", fast.Intensity, 10.08, 0.01)
}
