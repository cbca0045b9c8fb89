package effort

import (
	"errors"
	"math"
	"testing"
)

// Numbers that are no use to anyone.
var odd = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, -1e-300, 1e300, -1e300}

func TestAthleteRefused(t *testing.T) {
	t.Parallel()
	if err := Usual(12).Check(); err != nil {
		t.Error(err)
	}
	if err := (Athlete{}).Check(); !errors.Is(err, ErrAthlete) {
		t.Errorf("the zero athlete: %v", err)
	}
	g := level(t, 1000)
	for _, v := range odd {
		for i, set := range []func(a *Athlete) *float64{
			func(a *Athlete) *float64 { return &a.HourPower },
			func(a *Athlete) *float64 { return &a.Endurance },
			func(a *Athlete) *float64 { return &a.Fade },
			func(a *Athlete) *float64 { return &a.FadeShape },
			func(a *Athlete) *float64 { return &a.Braking },
			func(a *Athlete) *float64 { return &a.Economy },
			func(a *Athlete) *float64 { return &a.FastestWalk },
			func(a *Athlete) *float64 { return &a.SlowestRun },
		} {
			a := Usual(12)
			*set(&a) = v
			if err := a.Check(); !errors.Is(err, ErrAthlete) {
				t.Errorf("number %d of %g: %v", i, v, err)
			}
			if _, err := NewIntegrator(g, a, Surroundings{}); !errors.Is(err, ErrAthlete) {
				t.Errorf("integrator, number %d of %g: %v", i, v, err)
			}
		}
	}
}

func TestSurroundingsRefused(t *testing.T) {
	t.Parallel()
	g := level(t, 1000)
	for _, v := range odd {
		for _, s := range []Surroundings{{Drag: v}, {HeadWind: v}} {
			if s.HeadWind == -1 || s.HeadWind == -1e-300 {
				continue // from behind
			}
			if err := s.Check(); !errors.Is(err, ErrSurroundings) {
				t.Errorf("%+v: %v", s, err)
			}
			if _, err := NewIntegrator(g, Usual(12), s); !errors.Is(err, ErrSurroundings) {
				t.Errorf("integrator in %+v: %v", s, err)
			}
		}
	}
}

func TestStepRefused(t *testing.T) {
	t.Parallel()
	c := profile(t, 1000, 100, slope(0))
	for _, step := range append(odd, 0.99, 10_001) {
		if _, err := NewGround(c, step); !errors.Is(err, ErrStep) {
			t.Errorf("step %g: %v", step, err)
		}
	}
}

func TestSummaryRefused(t *testing.T) {
	t.Parallel()
	for _, s := range [][3]float64{{0, 0, 0}, {1000, 600, 500}, {2e6, 0, 0}} {
		if _, err := NewSummaryGround(s[0], s[1], s[2]); !errors.Is(err, ErrSummary) {
			t.Errorf("%v: %v", s, err)
		}
	}
	for _, v := range odd {
		for i := range 3 {
			s := [3]float64{1000, 50, 50}
			s[i] = v
			if _, err := NewSummaryGround(s[0], s[1], s[2]); !errors.Is(err, ErrSummary) {
				t.Errorf("%v: %v", s, err)
			}
		}
	}
}

func TestDemandRefused(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 10_000), Usual(12), Surroundings{})
	from := State{Distance: 5000, Moving: 1500, Work: 0.4, Spent: 0.3}
	for _, c := range []struct {
		demand Demand
		want   error
	}{
		{Demand{Moving: 1500}, ErrDemand},
		{Demand{Moving: 1}, ErrDemand},
		{Demand{Budget: 0.3}, ErrSpent},
		{Demand{Budget: 0.1}, ErrSpent},
		{Demand{Budget: 1e7}, ErrDemand},
		{Demand{Tilt: 0.51}, ErrDemand},
		{Demand{ShortestBout: -1}, ErrDemand},
		{Demand{ShortestBout: 1e7}, ErrDemand},
	} {
		if _, err := in.Solve(from, c.demand); !errors.Is(err, c.want) {
			t.Errorf("%+v: %v, want %v", c.demand, err, c.want)
		}
	}
	for _, v := range odd {
		for _, d := range []Demand{{Moving: v}, {Budget: v}, {Tilt: v}, {ShortestBout: v}} {
			if d.Tilt == -1e-300 {
				continue // hardly one
			}
			if err := solvesOrRefuses(t, in, from, d); !errors.Is(err, ErrDemand) {
				t.Errorf("%+v: %v", d, err)
			}
		}
	}
}

// solvesOrRefuses reports a panic, and a solution that is not finite.
func solvesOrRefuses(t *testing.T, in *Integrator, from State, d Demand) (err error) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%+v from %+v: panic: %v", d, from, r)
		}
	}()
	s, err := in.Solve(from, d)
	if err != nil {
		return err
	}
	f := s.Finish()
	if sum := f.Moving + f.Work + f.Spent + s.Intensity + s.BoutCost; math.IsNaN(sum) || math.IsInf(sum, 0) {
		t.Errorf("%+v from %+v: %+v at %g", d, from, f, s.Intensity)
	}
	return nil
}

// From a state that no race is in, Solve has a finite answer or an error.
func TestOddStates(t *testing.T) {
	t.Parallel()
	a := Usual(12)
	a.FadeShape = 0.7
	in := integrator(t, level(t, 1000), a, Surroundings{})
	states := []State{{Distance: 1000, Moving: 200}, {Distance: 1001, Moving: 200}}
	for _, v := range odd {
		states = append(states, State{Distance: v}, State{Moving: v}, State{Work: v}, State{Spent: v})
	}
	for _, from := range states {
		for _, d := range []Demand{{}, {Moving: 400}, {ShortestBout: 60}} {
			_ = solvesOrRefuses(t, in, from, d)
		}
	}
}

// A storm from behind that would blow a runner along faster than the goal leaves no
// intensity for it.
func TestBlownAlong(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 10_000), Usual(12), Surroundings{Drag: 0.1, HeadWind: -15})
	_ = solvesOrRefuses(t, in, State{}, Demand{Moving: 36_000})
}

// The panics that are documented.
func TestPanics(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 10_000), Usual(12), Surroundings{})
	for name, f := range map[string]func(){
		"no intensity":  func() { in.Traverse(State{}, Pace{}) },
		"NaN":           func() { in.Traverse(State{}, Pace{Intensity: math.NaN()}) },
		"negative":      func() { in.Traverse(State{}, Pace{Intensity: -1}) },
		"gaits":         func() { in.Traverse(State{}, Pace{Intensity: 1, Gaits: []Gait{Run}}) },
		"fastest gaits": func() { _, _ = in.Fastest([]Gait{Run}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}

// The plain functions return, whatever they are given, and NaN for NaN.
func TestOddNumbers(t *testing.T) {
	t.Parallel()
	for _, v := range odd {
		for name, got := range map[string]float64{
			"RunningCost":      RunningCost(v),
			"WalkingLeastCost": WalkingLeastCost(v),
			"WalkingPower, v":  WalkingPower(v, 0),
			"WalkingPower, i":  WalkingPower(1, v),
			"BrakingCost":      BrakingCost(v),
			"AirPower":         AirPower(v, 1, 0),
			"Capability":       Usual(12).Capability(v),
			"Intensity":        Usual(12).Intensity(v),
			"LevelSpeed":       Usual(12).LevelSpeed(v, Surroundings{}),
			"LevelSpeed, air":  Usual(12).LevelSpeed(v, Surroundings{Drag: 0.01}),
			"Riegel":           Riegel(v),
			"RiegelEndurance":  RiegelEndurance(v),
		} {
			if math.IsNaN(v) && !math.IsNaN(got) {
				t.Errorf("%s of NaN is %g", name, got)
			}
		}
		if got := RunningCost(v) + WalkingLeastCost(v) + WalkingPower(1, v); !math.IsNaN(v) && !(got > 0 && got < 100) {
			t.Errorf("costs at gradient %g: %g", v, got)
		}
		if got := BrakingCost(v); v > -1e100 && !(got >= 0 && got <= Gravity) {
			t.Errorf("braking at gradient %g: %g", v, got)
		}
		_ = Usual(12).UniformTime(v)
		_ = Usual(12).UniformWork(Seconds(v))
	}
	if Seconds(1e300) != math.MaxInt64 || Seconds(-1e300) != math.MinInt64 || Seconds(math.NaN()) != 0 || Seconds(1.5) != 1_500_000_000 {
		t.Error("Seconds does not hold within a Duration")
	}
}
