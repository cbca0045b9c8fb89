package effort

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// One who only runs never walks and one who only walks never runs, whatever is demanded;
// without a habit both happen.
func TestHabits(t *testing.T) {
	t.Parallel()
	count := [3][2]int{}
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawFullGround(t), drawFullAthlete(t)
		s, ok := solvedBy(t, integrator(t, g, a, drawFullSurroundings(t, g.length)), drawDemand(t, g.length))
		if !ok {
			return
		}
		for _, gait := range s.Gait {
			count[a.Habit][gait]++
		}
		if a.Habit == RunOnly && slices.Contains(s.Gait, Walk) || a.Habit == WalkOnly && slices.Contains(s.Gait, Run) {
			t.Errorf("habit %d: %v", a.Habit, s.Gait)
		}
	})
	if testing.Short() {
		return // too few draws to have met all
	}
	if count[RunAndWalk][Run] == 0 || count[RunAndWalk][Walk] == 0 || count[RunOnly][Run] == 0 || count[WalkOnly][Walk] == 0 {
		t.Errorf("cells run and walked by habit: %v", count)
	}
}

// Bouts keep the habit on hills, for a budget and for a goal.
func TestHabitsInBouts(t *testing.T) {
	t.Parallel()
	g := ground(t, profile(t, 40_000, 10, func(x float64) float64 { return 3 * waves(x) }), 0)
	for _, habit := range []Habit{RunOnly, WalkOnly} {
		a := Usual(9)
		a.Habit = habit
		in := integrator(t, g, a, Surroundings{})
		for _, d := range []Demand{{Budget: 1.05, ShortestBout: 60}, {Moving: 36_000}, {Moving: 36_000, ShortestBout: 60}} {
			s, err := in.Solve(State{}, d)
			if err != nil {
				t.Errorf("habit %d, %+v: %v", habit, d, err)
				continue
			}
			walked := s.WalkingTime(0, g.length) / s.Finish().Moving
			if habit == RunOnly && walked > 0 || habit == WalkOnly && walked < 1-1e-12 {
				t.Errorf("habit %d, %+v: walks %.3f of the time", habit, d, walked)
			}
		}
	}
}

// The fastest finish that a budget allows exists where a greatest speed holds all the way
// and does not spend it: it is that speed.
func TestGreatestSpeedAllTheWay(t *testing.T) {
	t.Parallel()
	walker, careful := Usual(8), Usual(12)
	walker.Habit, careful.FastestDescent = WalkOnly, 2
	for _, c := range []struct {
		name    string
		athlete Athlete
		ground  *Ground
		moving  float64
	}{
		{"a walker on the level", walker, level(t, 10_000), 10_000 / 1.8},
		{"down at the fastest descent", careful, straight(t, 3000, 1000, -0.1, 0, 100), 3000 * 1.004987562 / 2},
	} {
		s, err := integrator(t, c.ground, c.athlete, Surroundings{}).Solve(State{}, Demand{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		near(t, c.name, s.Finish().Moving, c.moving, 1e-6*c.moving)
	}
}

// The gaits that a solve settled on can be given to the next, and lead to the same finish;
// Fastest with them spends the budget, and no more.
func TestSettledGaitsAgain(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawFullGround(t), drawFullAthlete(t)
		checkSettled(t, integrator(t, g, a, drawFullSurroundings(t, g.length)), drawDemand(t, g.length))
	})
	steep := ground(t, profile(t, 1700, 100, func(x float64) float64 { return 0.35*min(x, 100) + 0.22*max(0, x-100) }), 20)
	for _, a := range []Athlete{
		{HourPower: 15, Endurance: 0.0625, Fade: 0.05, Braking: 1, FastestWalk: 1.5, SlowestRun: 2},
		{HourPower: 14, Endurance: 0.1, Fade: 0.05, Braking: 1, FastestWalk: 1.5, SlowestRun: 2},
	} {
		checkSettled(t, integrator(t, steep, a, Surroundings{}), Demand{})
	}
}

func checkSettled(t rapid.TB, in *Integrator, d Demand) {
	s, err := in.Solve(State{}, d)
	if err != nil {
		return
	}
	finish, gaits := s.Finish(), slices.Clone(s.Gait)
	d.Gaits = gaits
	again, err := in.Solve(State{}, d)
	if err != nil {
		t.Errorf("%v of %d cells walked in %.1f s: %v", slices.Index(gaits, Run), len(gaits), finish.Moving, err)
		return
	}
	near(t, "time", again.Finish().Moving, finish.Moving, 1e-8*finish.Moving)
	near(t, "budget", again.Finish().Spent, finish.Spent, 1e-6*finish.Spent)
	if d.Moving > 0 || d.Budget != 0 || d.Tilt != 0 {
		return
	}
	if _, err := in.Fastest(gaits); err != nil {
		t.Errorf("fastest: %v", err)
	}
	if in.out.timeSlope == 0 && in.out.Finish().Spent < 1 {
		return // all at greatest speeds, and budget is left
	}
	near(t, "budget of the fastest", in.out.Finish().Spent, 1, 1e-6)
}
