package effort

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawSlope(t *rapid.T, a Athlete) *Slope {
	s := Surroundings{Drag: drawOrOff(t, "drag", 0.001, 0.02), HeadWind: rapid.Float64Range(-4, 10).Draw(t, "wind")}
	slope, err := NewSlope(a, rapid.Float64Range(-0.6, 0.6).Draw(t, "gradient"), s)
	if err != nil {
		t.Fatal(err)
	}
	return slope
}

// More power is never slower, in either gait and by the rule, and costs are positive.
func TestMorePowerOnASlope(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := drawSlope(t, drawFullAthlete(t))
		p := math.Exp(rapid.Float64Range(-2, 4).Draw(t, "ln power"))
		more := p * math.Exp(rapid.Float64Range(1e-6, 2).Draw(t, "ln more"))
		for name, stride := range map[string]func(p float64) Stride{
			"run": s.Run, "walk": s.Walk, "by rule": func(p float64) Stride { _, v := s.Choose(p); return v },
		} {
			slow, fast := stride(p), stride(more)
			if fast.Speed < slow.Speed*(1-1e-10) {
				t.Errorf("%s: %.9g m/s by %g W/kg, %.9g by %g", name, slow.Speed, p, fast.Speed, more)
			}
			for _, v := range []float64{slow.Speed, slow.Power} {
				if !(v > 0 && v < 1000) {
					t.Errorf("%s: stride %+v by %g W/kg", name, slow, p)
				}
			}
			if slow.Power > p*(1+1e-12) || slow.Elasticity < 0 {
				t.Errorf("%s: stride %+v by %g W/kg", name, slow, p)
			}
		}
	})
}

// The rule's gait is the cheaper one, greatest speeds, load and wind included, unless the
// slowest run or the habit decides.
func TestChoiceOnASlope(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		checkChoice(t, drawSlope(t, drawFullAthlete(t)), rapid.Float64Range(1, 40).Draw(t, "power"))
	})
	a := Athlete{HourPower: 8, Endurance: 0.15, Braking: 0.5, Economy: 1.15, FastestWalk: 2.1, FastestDescent: 1.609375}
	s, err := NewSlope(a, -0.25, Surroundings{}) // both gaits at the fastest descent
	if err != nil {
		t.Fatal(err)
	}
	checkChoice(t, s, 5.75)
}

func checkChoice(t rapid.TB, s *Slope, p float64) {
	m := &s.mover
	gait, stride := s.Choose(p)
	run, walk := s.Run(p), s.Walk(p)
	switch {
	case m.habit == RunOnly && gait == Walk, m.habit == WalkOnly && gait == Run:
		t.Errorf("habit %d: %v", m.habit, gait)
	case m.habit != RunAndWalk:
	case run.Speed < m.slowestRun:
		if gait == Run {
			t.Errorf("runs at %g m/s, slower than the slowest run %g", run.Speed, m.slowestRun)
		}
	case m.price(stride, p) > (1+1e-9)*math.Min(m.price(run, p), m.price(walk, p)):
		t.Errorf("%v, run %.6f s/m %+v, walk %.6f s/m %+v", gait, m.price(run, p), run, m.price(walk, p), walk)
	}
}

// Power undoes Run and Walk: to 1e-9 where nothing is tabulated, and to the table's 3e-9
// where the model walks.
func TestPowerUndoesStrides(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := drawSlope(t, drawFullAthlete(t))
		p := rapid.Float64Range(0.5, 40).Draw(t, "power")
		run, walk := s.Run(p), s.Walk(p)
		near(t, "running", s.Power(Run, run.Speed), run.Power, 1e-9*p)
		near(t, "walking", s.Power(Walk, walk.Speed), walk.Power, 1e-8*p)
		v := rapid.Float64Range(0.1, 8).Draw(t, "speed")
		for _, g := range []Gait{Run, Walk} {
			braking := s.mover.braking * BrakingCost(s.gradient) * v
			near(t, "metabolic", s.Metabolic(g, v), s.Power(g, v)-braking, 1e-12*p)
			if s.gradient >= 0 && s.Metabolic(g, v) != s.Power(g, v) {
				t.Errorf("%v up: metabolic %g, power %g W/kg", g, s.Metabolic(g, v), s.Power(g, v))
			}
		}
	})
}

// A slope moves as the integrator does over uniform ground, to what Newton's method
// leaves of a speed.
func TestSlopeIsTheIntegrators(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawFullAthlete(t)
		a.Fade = 0
		i, e := rapid.Float64Range(-0.45, 0.45).Draw(t, "gradient"), rapid.Float64Range(0.4, 1.4).Draw(t, "intensity")
		sur := Surroundings{Drag: drawOrOff(t, "drag", 0.001, 0.02), HeadWind: rapid.Float64Range(-4, 8).Draw(t, "wind")}
		in := integrator(t, straight(t, 1000, 1000, i, 0, 50), a, sur)
		tr := in.Traverse(State{}, Pace{Intensity: e})
		gait, stride, err := Move(a, i, e*a.HourPower, sur)
		if err != nil {
			t.Fatal(err)
		}
		moving := 1000 * math.Hypot(1, i) / stride.Speed
		near(t, "time", tr.Finish().Moving, moving, 1e-9*moving)
		for j, g := range tr.Gait {
			near(t, "power", tr.Power[j], stride.Power, 1e-9*stride.Power)
			if g != gait {
				t.Errorf("cell %d: %v, on the slope %v", j, g, gait)
			}
		}
	})
}

// What nobody can do is NaN, standing still, or an error.
func TestOddOnASlope(t *testing.T) {
	t.Parallel()
	for _, i := range []float64{-3, -0.5, 0, 0.5, 3} {
		s, err := NewSlope(Usual(12), i, Surroundings{Drag: 0.01, HeadWind: 2})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []float64{0, -1, -1e300, math.Inf(-1)} {
			gait, v := s.Choose(p)
			if zero := (Stride{}); v != zero || s.Run(p) != zero || s.Walk(p) != zero || gait != Walk {
				t.Errorf("gradient %g, power %g: %v, %+v, %+v, %+v", i, p, gait, v, s.Run(p), s.Walk(p))
			}
		}
		for _, p := range []float64{math.NaN(), math.Inf(1)} {
			_, v := s.Choose(p)
			for _, v := range []Stride{v, s.Run(p), s.Walk(p)} {
				if !math.IsNaN(v.Speed) || !math.IsNaN(v.Power) || !math.IsNaN(v.Elasticity) {
					t.Errorf("gradient %g, power %g: %+v", i, p, v)
				}
			}
		}
		for _, v := range []float64{-1, -1e-300, math.NaN(), math.Inf(1), math.Inf(-1)} {
			if p := s.Power(Run, v) + s.Metabolic(Walk, v); !math.IsNaN(p) {
				t.Errorf("gradient %g, speed %g: %g W/kg", i, v, p)
			}
		}
		if s.Power(Run, 0) != 0 || s.Power(Walk, 0) != 0 || s.Metabolic(Walk, 0) != 0 {
			t.Error("standing takes power")
		}
	}
	for _, i := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 3.0000001, -3.0000001, 1e300} {
		if _, _, err := Move(Usual(12), i, 10, Surroundings{}); !errors.Is(err, ErrGradient) {
			t.Errorf("gradient %g: %v", i, err)
		}
	}
}

// No method of a slope allocates, nor does Move.
func TestSlopeAllocatesNothing(t *testing.T) { // not parallel: AllocsPerRun must not be
	a := Usual(12)
	a.WalkFall, a.FastestDescent, a.Load = 1, 3, 5
	s, err := NewSlope(a, -0.1, Surroundings{Drag: 0.01, HeadWind: -2})
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range map[string]func(){
		"Choose":     func() { s.Choose(9) },
		"Run":        func() { s.Run(9) },
		"Walk":       func() { s.Walk(3) },
		"Power":      func() { s.Power(Walk, 1.5) },
		"Metabolic":  func() { s.Metabolic(Run, 3) },
		"Transition": func() { s.Transition() },
		"Crossing":   func() { s.Crossing() },
		"Band":       func() { s.Band(0.03) },
		"Move":       func() { _, _, _ = Move(a, 0.1, 9, Surroundings{Drag: 0.01}) },
	} {
		if n := testing.AllocsPerRun(50, f); n != 0 {
			t.Errorf("%s allocates %g times", name, n)
		}
	}
}
