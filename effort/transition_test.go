package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Around a transition the rule chooses differently, above it it runs up to 200 W/kg, and
// at it the two gaits are as good, unless the slowest run decides.
func TestTransition(t *testing.T) {
	t.Parallel()
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		a := drawFullAthlete(t)
		s := drawSlope(t, a)
		tr, ok := s.Transition()
		if !ok {
			above, _ := s.Choose(199)
			below, _ := s.Choose(0.051)
			if above == Run && below == Walk {
				t.Error("no transition, but walks little power and runs much")
			}
			return
		}
		found++
		below, _ := s.Choose(tr.Power * (1 - 2e-9))
		above, _ := s.Choose(tr.Power * (1 + 2e-9))
		if below != Walk || above != Run {
			t.Errorf("%v below %g W/kg, %v above", below, tr.Power, above)
		}
		p := tr.Power + (199-tr.Power)*rapid.Float64Range(0.001, 1).Draw(t, "share")
		if gait, _ := s.Choose(p); gait != Run {
			t.Errorf("walks at %g W/kg, above the transition at %g", p, tr.Power)
		}
		if tr.Run != s.Run(tr.Power) || tr.Walk != s.Walk(tr.Power) {
			t.Error("strides are not those at the transition")
		}
		low, top, ok := s.Band(0)
		if !ok || low != top {
			return
		}
		slowest := tr.Run.Speed <= s.mover.slowestRun*(1+1e-8)
		if !slowest && math.Abs(low/tr.Power-1) > 1e-8 {
			t.Errorf("transition at %.9g W/kg, equal prices at %.9g", tr.Power, low)
		}
	})
	if found == 0 {
		t.Error("no transition was looked at")
	}
}

// The crossing is where the two cost curves give one power at one speed: 2.14 m/s,
// 7.69 km/h on the level, found independently from the curves; see
// TestCrossingOnTheLevel. From −15 to +20 % the two agree to 1e-6, the table's 3e-9 being
// divided by the small angle at which the curves meet.
func TestCrossing(t *testing.T) {
	t.Parallel()
	a := Usual(12)
	a.Braking = 0
	for _, i := range []float64{-0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15, 0.2} {
		s, err := NewSlope(a, i, Surroundings{})
		if err != nil {
			t.Fatal(err)
		}
		tr, ok := s.Crossing()
		if !ok {
			t.Fatalf("no crossing at %g", i)
		}
		near(t, "as fast", tr.Run.Speed, tr.Walk.Speed, 1e-6)
		near(t, "where the curves meet", tr.Run.Speed, crossing(i), 1e-6)
		near(t, "walking there", WalkingPower(tr.Walk.Speed, i), tr.Power, 1e-6*tr.Power)
		if i == 0 {
			near(t, "m/s", tr.Run.Speed, 2.14, 0.005)
			near(t, "km/h", 3.6*tr.Run.Speed, 7.69, 0.005)
		}
	}
}

// A band contains the transition, unless the slowest run sets that, and grows with the
// share.
func TestBand(t *testing.T) {
	t.Parallel()
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		a := drawFullAthlete(t)
		a.Habit = RunAndWalk
		s := drawSlope(t, a)
		share := rapid.Float64Range(0.001, 0.2).Draw(t, "share")
		low, top, ok := s.Band(share)
		wideLow, wideTop, wideOK := s.Band(share * rapid.Float64Range(1.01, 3).Draw(t, "wider"))
		if ok && wideOK && !(wideLow <= low && low <= top && top <= wideTop) {
			t.Errorf("%g to %g W/kg, with a larger share %g to %g", low, top, wideLow, wideTop)
		}
		if wideOK && !ok { // only where running is the cheaper by more than the share, always
			for p := 0.05; p < 200; p *= 1.1 {
				if s.advantage(p) <= share {
					t.Fatalf("no band, but running is cheaper by %g at %g W/kg, a share of %g", s.advantage(p), p, share)
				}
			}
		}
		tr, crosses := s.Transition()
		if !ok || !crosses || tr.Run.Speed <= s.mover.slowestRun*(1+1e-8) {
			return
		}
		found++
		if !(low <= tr.Power && tr.Power <= top) {
			t.Errorf("transition at %g W/kg, band from %g to %g", tr.Power, low, top)
		}
	})
	if found == 0 {
		t.Error("no band was looked at")
	}
	s, err := NewSlope(Usual(12), 0, Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	for _, share := range append(odd, 1) {
		if low, top, ok := s.Band(share); ok || !math.IsNaN(low) || !math.IsNaN(top) {
			t.Errorf("band of %g: %g to %g, %v", share, low, top, ok)
		}
	}
}
