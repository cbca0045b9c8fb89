package effort

import (
	"errors"
	"math"
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// floats calls visit for each float64 field of a struct, nested ones and those in the
// first element of slices too.
func floats(value reflect.Value, path string, visit func(path string, field *float64)) {
	for i := range value.NumField() {
		field, name := value.Field(i), path+value.Type().Field(i).Name
		switch {
		case field.Kind() == reflect.Float64:
			visit(name, field.Addr().Interface().(*float64))
		case field.Kind() == reflect.Struct:
			floats(field, name+".", visit)
		case field.Kind() == reflect.Slice && field.Len() > 0 && field.Index(0).Kind() == reflect.Struct:
			floats(field.Index(0), name+"[0].", visit)
		}
	}
}

// signed are the numbers that may be negative.
var signed = map[string]bool{
	"HeadWind": true, "Wind.From": true, "Altitude.From": true, "Heat.Above": true, "Heat.Below": true,
	"Temperature": true, "WBGT": true, "Tilt": true,
}

// impossible are the numbers that a field cannot be.
func impossibles(path string) (values []float64) {
	for _, v := range odd {
		if !(signed[path] && v < 0 && v > -2) {
			values = append(values, v)
		}
	}
	return values
}

// quietly runs f and reports a panic.
func quietly(t *testing.T, what string, f func()) {
	t.Helper()
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s: panic: %v", what, r)
		}
	}()
	f()
}

// Every number of the athlete and of the surroundings is refused where it cannot be, by
// everything that takes one: fields added later are looked at by themselves.
func TestEveryNumberRefused(t *testing.T) {
	t.Parallel()
	g := level(t, 1000)
	count := 0
	refuses := func(what string, want error, a Athlete, s Surroundings) {
		quietly(t, what, func() {
			_, integrate := NewIntegrator(g, a, s)
			_, slope := NewSlope(a, 0.1, s)
			_, _, move := Move(a, 0.1, 10, s)
			for _, err := range []error{integrate, slope, move} {
				if !errors.Is(err, want) {
					t.Errorf("%s: %v", what, err)
				}
			}
		})
		count++
	}
	a, s := Usual(12), Surroundings{Stops: []Stop{{100, time.Minute}}, Day: day(t, nil, Night{})}
	floats(reflect.ValueOf(&a).Elem(), "", func(path string, field *float64) {
		before := *field
		for _, *field = range impossibles(path) {
			refuses("athlete's "+path, ErrAthlete, a, Surroundings{})
		}
		*field = before
	})
	floats(reflect.ValueOf(&s).Elem(), "", func(path string, field *float64) {
		before := *field
		for _, *field = range impossibles(path) {
			if path == "Stops[0].Distance" && *field > 0 && finite(*field) {
				continue // beyond the finish it is not reached
			}
			refuses("surroundings' "+path, ErrSurroundings, Usual(12), s)
		}
		*field = before
	})
	if count < 25*5 {
		t.Errorf("only %d numbers looked at", count)
	}
	for _, s := range []Surroundings{
		{Start: 1001 * time.Hour},
		{Heat: Heat{Expected: -1}},
		{Heat: Heat{Loss: 0.01}},
		{Heat: Heat{ColdLoss: 0.01}},
		{Stops: []Stop{{100, -1}}},
		{Stops: []Stop{{100, 0}, {99, 0}}},
	} {
		refuses("surroundings", ErrSurroundings, Usual(12), s)
	}
	a = Usual(12)
	a.Habit = WalkOnly + 1
	refuses("habit", ErrAthlete, a, Surroundings{})
}

// An athlete that cannot be gets no number from the plain functions either.
func TestImpossibleAthlete(t *testing.T) {
	t.Parallel()
	g := level(t, 1000)
	for name, change := range map[string]func(a *Athlete){
		"negative mass":       func(a *Athlete) { a.Mass, a.Load = -70, 10 },
		"negative hour power": func(a *Athlete) { a.HourPower = -12 },
		"negative economy":    func(a *Athlete) { a.Economy = -1 },
	} {
		a := Usual(12)
		change(&a)
		for what, got := range map[string]float64{
			"LevelSpeed": a.LevelSpeed(10, Surroundings{}), "Capability": a.Capability(1),
			"RunningWork": g.RunningWork(a), "UniformTime": a.UniformTime(1e5).Seconds(), "UniformWork": a.UniformWork(time.Hour),
		} {
			touched := name == "negative hour power" && what != "LevelSpeed" && what != "RunningWork" ||
				name != "negative hour power" && (what == "LevelSpeed" || what == "RunningWork")
			if touched && !math.IsNaN(got) && got != 0 {
				t.Errorf("%s: %s is %g", name, what, got)
			}
		}
	}
}

// From a state or for a demand that cannot be, each number by itself, there is an error.
func TestEveryDemandRefused(t *testing.T) {
	t.Parallel()
	a := Usual(12)
	a.Eagerness = 1
	in := integrator(t, level(t, 10_000), a, Surroundings{})
	state, demand := State{Distance: 100, Moving: 30, Work: 0.01, Spent: 0.01, Worn: 0.01}, Demand{}
	floats(reflect.ValueOf(&state).Elem(), "", func(path string, field *float64) {
		before := *field
		for _, *field = range impossibles(path) {
			if err := solvesOrRefuses(t, in, state, Demand{}); !errors.Is(err, ErrDemand) {
				t.Errorf("state's %s of %g: %v", path, *field, err)
			}
		}
		*field = before
	})
	floats(reflect.ValueOf(&demand).Elem(), "", func(path string, field *float64) {
		for _, *field = range impossibles(path) {
			if err := solvesOrRefuses(t, in, State{}, demand); !errors.Is(err, ErrDemand) {
				t.Errorf("demand's %s of %g: %v", path, *field, err)
			}
		}
		*field = 0
	})
}

// drawDemand draws a demand that may or may not be met.
func drawDemand(t *rapid.T, length float64) Demand {
	return Demand{
		Moving: length / 3 * drawOrOff(t, "goal", 0.3, 3), Budget: drawOrOff(t, "budget", 0.05, 2),
		Tilt: drawOrOff(t, "tilt", -0.1, 0.1), ShortestBout: drawOrOff(t, "bout", 20, 300), ChangeSaving: drawOrOff(t, "saving", 1, 60),
	}
}

// solvedBy solves with everything on, or reports what is wrong with the error.
func solvedBy(t *rapid.T, in *Integrator, d Demand) (Solution, bool) {
	before := in.Sweeps()
	s, err := in.Solve(State{}, d)
	if sweeps := in.Sweeps() - before; sweeps > 300 {
		t.Errorf("%d sweeps", sweeps)
	}
	if err != nil && !errors.Is(err, ErrDemand) && !errors.Is(err, ErrSpent) {
		t.Errorf("error %v", err)
	}
	return s, err == nil
}

// Whoever runs wherever in whatever weather for whatever demand: a solve meets it to 1e-9
// or says why not, in at most 300 sweeps. What it returns is finite, moves forward and
// costs effort, and takes no more power than is on offer.
func TestSolvesAnything(t *testing.T) {
	t.Parallel()
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawFullGround(t), drawFullAthlete(t)
		in := integrator(t, g, a, drawFullSurroundings(t, g.length))
		d := drawDemand(t, g.length)
		s, ok := solvedBy(t, in, d)
		if !ok {
			return
		}
		met++
		switch topped := in.out.timeSlope == 0; {
		case d.Moving > 0:
			near(t, "goal", s.Finish().Moving, d.Moving, 1e-9*d.Moving)
		case topped && s.Finish().Spent < d.budget(): // all at greatest speeds, and budget is left
		default:
			near(t, "budget", s.Finish().Spent, d.budget(), 1e-9*d.budget())
		}
		before := State{}
		for j, end := range s.End {
			if !(end.Distance > before.Distance && end.Moving > before.Moving && end.Work > before.Work && end.Spent >= before.Spent && end.Worn >= before.Worn) {
				t.Fatalf("cell %d from %+v to %+v", j, before, end)
			}
			most := in.offer[j] * (1 + 1e-12)
			if d.Ease {
				most = math.Inf(1) // eased walks may ask for more
			}
			if !(s.Power[j] > 0 && s.Power[j] <= most) || !finite(end.Moving+end.Work+end.Spent+end.Worn) {
				t.Fatalf("cell %d: %g W/kg of %g, %+v", j, s.Power[j], in.offer[j], end)
			}
			before = end
		}
	})
	if met == 0 {
		t.Error("no demand was met")
	}
}

// A gale from behind on a descent asks for nothing at a greatest speed: effort and budget
// never come back, and are numbers whatever the endurance exponent.
func TestCarriedAlong(t *testing.T) {
	t.Parallel()
	a := Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1, FastestDescent: 2}
	for _, habit := range []Habit{RunAndWalk, RunOnly, WalkOnly} {
		a.Habit = habit
		in := integrator(t, straight(t, 3000, 1000, -0.1, 0, 100), a, Surroundings{Drag: 0.02, HeadWind: -15})
		before := State{}
		for j, end := range in.Traverse(State{}, Pace{Intensity: 1}).End {
			if !(end.Work >= before.Work && end.Spent >= before.Spent) {
				t.Errorf("habit %d, cell %d: from %+v to %+v", habit, j, before, end)
				break
			}
			before = end
		}
	}
	// More power is not slower, as far as the wind carries.
	a = Athlete{HourPower: 12, Endurance: 0.1, FastestWalk: 1.96, Economy: 1.04, SlowestRun: 0.88}
	s, err := NewSlope(a, 0, Surroundings{Drag: 0.0371, HeadWind: -10.16})
	if err != nil {
		t.Fatal(err)
	}
	slow := Stride{}
	for p := 0.1; p < 0.3; p *= 1.001 {
		fast := s.Walk(p)
		if fast.Speed < slow.Speed*(1-1e-9) {
			t.Fatalf("walks at %.6f m/s by %.6f W/kg, at %.6f by a little less", fast.Speed, p, slow.Speed)
		}
		slow = fast
	}
}
