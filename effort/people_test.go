package effort

import "testing"

// levelChange is the running speed in m/s from which the rule runs on the level.
func levelChange(a Athlete) float64 {
	m := newMover(a, Surroundings{})
	c := cell{run: RunningCost(0), walk: walkingGrade(0), surface: 1}
	low, top := 4.0, 12.0
	for top-low > 1e-9 {
		if p := (low + top) / 2; gaitAt(&m, &c, p) == Run {
			top = p
		} else {
			low = p
		}
	}
	return m.run(&c, top).Speed
}

func gaitAt(m *mover, c *cell, p float64) Gait {
	g, _ := m.choose(c, p, 0)
	return g
}

// People change gait on the level 0.5 to 0.9 km/h below the speed at which both cost the
// same (Minetti, Ardigò & Saibene 1994, Acta Physiol Scand 150:315). Here the two meet at 7.69 km/h, and the rule changes 0.5 to 0.9 km/h below
// for a usual endurance exponent.
func TestChangeBelowCrossing(t *testing.T) {
	t.Parallel()
	const crossing = 7.69 // km/h, as TestGaitCrossing finds
	for _, k := range []float64{0.08, 0.10, 0.12} {
		a := Usual(12)
		a.Endurance = k
		below := crossing - 3.6*levelChange(a)
		t.Logf("k %g: %.2f km/h below", k, below)
		if k == 0.10 && (below < 0.5 || below > 0.9) {
			t.Errorf("the rule changes %.2f km/h below the crossing", below)
		}
	}
}

// People mix walking and running at mean speeds of about 1.9 to 3.0 m/s (Long &
// Srinivasan 2013; Baker, Long & Srinivasan 2025). The model mixes between the fastest
// walk and the speed at which it runs, 1.8 to 2.0 m/s: the lower end of that only, since
// it knows one runner's speeds and no wish to rest.
func TestMixingSpeeds(t *testing.T) {
	t.Parallel()
	a := Usual(9)
	a.Fade = 0
	top := levelChange(a)
	near(t, "the speed at which it runs, m/s", top, 1.98, 0.02)
	g := level(t, 50_000)
	for _, r := range []struct {
		speed float64
		mixed bool
	}{{1.75, false}, {1.85, true}, {1.92, true}, {top + 0.03, false}, {2.5, false}} {
		s := solve(t, integrator(t, g, a, Surroundings{}), State{}, Demand{Moving: 50_000 / r.speed})
		walked := s.WalkingTime(0, 50_000)
		if mixed := walked > 0 && walked < s.Finish().Moving*(1-1e-9); mixed != r.mixed {
			t.Errorf("%.2f m/s: walked %.0f of %.0f s", r.speed, walked, s.Finish().Moving)
		}
	}
}

// In 100 km races the best finish within 15 % of their opening speed (Lambert et al.
// 2004), the ten best at 0.89 of it (Knechtle 2015). A strong runner's even effort, by
// a fade of 0.01 to 0.02, slows no more than that: to 0.95 and 0.905.
func TestHundredKilometres(t *testing.T) {
	t.Parallel()
	g := level(t, 100_000)
	for _, fade := range []float64{0.01, 0.015, 0.02} {
		a := Athlete{HourPower: 18, Endurance: 0.07, Fade: fade}
		s := solve(t, integrator(t, g, a, Surroundings{}), State{}, Demand{})
		first, last := s.At(10_000).Moving, s.Finish().Moving-s.At(90_000).Moving
		t.Logf("fade %g: %.2f h, the last 10 km at %.3f of the speed of the first", fade, s.Finish().Moving/3600, first/last)
		if ratio := first / last; ratio < 0.85 || ratio >= 1 {
			t.Errorf("fade %g: the last 10 km at %.3f of the speed of the first", fade, ratio)
		}
	}
}
