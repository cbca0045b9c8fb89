package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// More effort is never slower: run all the way it is strictly faster, and by the gait rule
// no slower.
func TestMoreEffortIsNotSlower(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), drawSurroundings(t))
		e := rapid.Float64Range(0.4, 1.3).Draw(t, "intensity")
		more := e * (1 + rapid.Float64Range(1e-4, 0.3).Draw(t, "more"))
		gaits := allRun(in.ground)
		at := func(e float64, gaits []Gait) float64 {
			return in.Traverse(State{}, Pace{Intensity: e, Gaits: gaits}).Finish().Moving
		}
		if at(more, gaits) >= at(e, gaits) {
			t.Errorf("running at %g is no faster than at %g", more, e)
		}
		if at(more, nil) > at(e, nil) {
			t.Errorf("at %g slower than at %g", more, e)
		}
	})
}

func drawSurroundings(t *rapid.T) Surroundings {
	return Surroundings{
		Drag:     rapid.SampledFrom([]float64{0, 0.01, 0.02}).Draw(t, "drag"),
		HeadWind: rapid.Float64Range(-4, 8).Draw(t, "wind"),
	}
}

// A race stopped anywhere and taken up again from its state there ends as it would have:
// exactly so between cells. Within a cell capability is looked at once more, which
// moves the finish by less than the fade over that cell.
func TestTakenUpAgain(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), drawSurroundings(t))
		p := Pace{Intensity: rapid.Float64Range(0.5, 1.2).Draw(t, "intensity"), Tilt: rapid.Float64Range(-0.1, 0.1).Draw(t, "tilt")}
		whole := in.Traverse(State{}, p)
		p.Gaits = append([]Gait(nil), whole.Gait...)
		finish := whole.Finish()
		j := rapid.IntRange(0, in.ground.Len()-1).Draw(t, "cell")
		from, to := State{}, whole.End[j]
		if j > 0 {
			from = whole.End[j-1]
		}
		share := rapid.Float64Range(0, 0.99).Draw(t, "share")
		cut := whole.At(from.Distance + share*(to.Distance-from.Distance))

		again := in.Traverse(from, p).Finish()
		near(t, "moving", again.Moving, finish.Moving, 1e-12*finish.Moving)
		near(t, "work", again.Work, finish.Work, 1e-12*finish.Work)
		near(t, "spent", again.Spent, finish.Spent, 1e-12*finish.Spent)

		fade := math.Log(in.athlete.Capability(from.Work) / in.athlete.Capability(to.Work))
		again = in.Traverse(cut, p).Finish()
		near(t, "from within a cell", again.Moving, finish.Moving, fade*(to.Moving-from.Moving)+1e-12*finish.Moving)
	})
}

// Splits and bouts add up to the whole.
func TestPartsAddUp(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		in := integrator(t, drawGround(t), a, Surroundings{})
		out := in.Traverse(State{}, Pace{Intensity: 0.8})
		length := in.ground.Length()
		cut := length * rapid.Float64Range(0, 1).Draw(t, "cut")
		finish := out.Finish()
		near(t, "walking", out.WalkingTime(0, cut)+out.WalkingTime(cut, length), out.WalkingTime(0, length), 1e-9*finish.Moving)
		near(t, "effort", out.EffortBetween(0, cut, a)+out.EffortBetween(cut, length, a), finish.Work*3600*a.HourPower, 1e-6)
		if w := out.WalkingTime(0, length); w < 0 || w > finish.Moving*(1+1e-12) {
			t.Errorf("walks %g s of %g", w, finish.Moving)
		}
		before := State{}
		for _, s := range out.End {
			if !(s.Distance > before.Distance && s.Moving > before.Moving && s.Work > before.Work && s.Spent >= before.Spent) {
				t.Fatalf("from %+v to %+v", before, s)
			}
			near(t, "at", out.At(s.Distance).Moving, s.Moving, 1e-12*s.Moving)
			before = s
		}
		near(t, "length", before.Distance, length, 1e-9)
	})
}

// A wind from behind never slows a runner at a given effort, and a head wind never speeds
// one.
func TestWind(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawGround(t), drawAthlete(t)
		drag := rapid.Float64Range(0.001, 0.03).Draw(t, "drag")
		wind := rapid.Float64Range(0, 12).Draw(t, "wind")
		at := func(wind float64, gaits []Gait) float64 {
			in := integrator(t, g, a, Surroundings{Drag: drag, HeadWind: wind})
			return in.Traverse(State{}, Pace{Intensity: 0.9, Gaits: gaits}).Finish().Moving
		}
		gaits := allRun(g)
		const rounding = 1 + 1e-12
		if still := at(0, gaits); at(wind, gaits)*rounding < still || at(-wind, gaits) > still*rounding {
			t.Errorf("running: %.3f s against, %.3f s still, %.3f s with %.1f m/s", at(wind, gaits), still, at(-wind, gaits), wind)
		}
		if still := at(0, nil); at(wind, nil)*rounding < still || at(-wind, nil) > still*rounding {
			t.Errorf("by rule: %.3f s against, %.3f s still, %.3f s with %.1f m/s", at(wind, nil), still, at(-wind, nil), wind)
		}
	})
}

// On a smooth profile halving the step changes no split by more than 1 s per hour where
// all is run. By the gait rule it may change by what one cell more of walking costs
// besides: a change of gait is placed to the cell.
func TestHalfTheStep(t *testing.T) {
	t.Parallel()
	for _, a := range []Athlete{Usual(9), Usual(11), Usual(16), {HourPower: 12, Endurance: 0.08, Fade: 0.04, FadeShape: 0.5, Braking: 2}} {
		for _, spacing := range []float64{10, 2.5} {
			c := profile(t, 80_000, spacing, waves)
			for _, step := range []float64{50, 25} {
				coarse, fine := splits(t, ground(t, c, step), a), splits(t, ground(t, c, step/2), a)
				cell := 0.0
				if a.HourPower < 16 {
					cell = step * (1/1.8 - 1/(1.8*(1+preference(a.Endurance))))
				}
				worst := 0.0
				for i := range fine {
					change := math.Abs(coarse[i] - fine[i])
					worst = math.Max(worst, change)
					if change > cell+fine[i]/3600 {
						t.Errorf("%+v, points every %g m, step %g to %g m: split %d of %.0f s changes by %.2f s", a, spacing, step, step/2, i, fine[i], change)
					}
				}
				t.Logf("hour power %g, points every %g m, step %g to %g m: %.2f s at most", a.HourPower, spacing, step, step/2, worst)
			}
		}
	}
}

// splits are the moving times at every 4 km of 80 km.
func splits(t *testing.T, g *Ground, a Athlete) (at []float64) {
	t.Helper()
	s := solve(t, integrator(t, g, a, Surroundings{}), State{}, Demand{})
	for x := 4000.0; x <= 80_000; x += 4000 {
		at = append(at, s.At(x).Moving)
	}
	return at
}

// A stronger runner is faster. Races of more than an hour take longer with a larger
// endurance exponent, and all with more fade or braking.
func TestNumbersOfTheAthlete(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawGround(t), drawAthlete(t)
		a.Braking = math.Max(a.Braking, 0.1)
		a.Fade = math.Max(a.Fade, 0.001)
		gaits := allRun(g)
		time := func(a Athlete) float64 {
			f, err := integrator(t, g, a, Surroundings{}).Fastest(gaits)
			if err != nil {
				t.Fatal(err)
			}
			return f.Moving
		}
		base := time(a)
		for n := range Number(Numbers) {
			if n == FadeShape {
				continue
			}
			change := math.Log(time(a.Set(n, 1.1*a.Get(n))) / base)
			if n == HourPower || n == Endurance && base < 3500 {
				change = -change
			}
			if n == Endurance && base >= 3500 && base <= 3700 {
				continue
			}
			if change < -1e-9 {
				t.Errorf("10 %% more %v: %.2g of a time of %.0f s, the wrong way", n, change, base)
			}
		}
	})
}
