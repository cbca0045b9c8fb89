package effort

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"pgregory.net/rapid"
)

// A straight stretch with a point put into it, and cells that split it, change nothing: to
// rounding in all that does not fade.
func TestSplitStretch(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawFullAthlete(t)
		a.Fade = 0
		i, share := rapid.Float64Range(-0.4, 0.4).Draw(t, "gradient"), rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		s := Surroundings{Drag: drawOrOff(t, "drag", 0.001, 0.02), HeadWind: rapid.Float64Range(-4, 8).Draw(t, "wind")}
		e := rapid.Float64Range(0.5, 1.3).Draw(t, "intensity")
		finish := func(step float64, x ...float64) State {
			z := make([]float64, len(x))
			for j := range x {
				z[j] = 1500 + i*x[j]
			}
			c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
			if err != nil {
				t.Fatal(err)
			}
			return integrator(t, ground(t, c, step), a, s).Traverse(State{}, Pace{Intensity: e}).Finish()
		}
		whole := finish(1000, 0, 1000)
		for name, split := range map[string]State{
			"a point more": finish(1000, 0, 1000*share, 1000), "cells": finish(1000/math.Ceil(20*share), 0, 1000), "both": finish(30, 0, 1000*share, 1000),
		} {
			near(t, name+", time", split.Moving, whole.Moving, 1e-9*whole.Moving)
			near(t, name+", work", split.Work, whole.Work, 1e-9*whole.Work)
			near(t, name+", budget", split.Spent, whole.Spent, 1e-8*whole.Spent)
			near(t, name+", worn", split.Worn, whole.Worn, 1e-9*whole.Worn)
		}
	})
}

// Where capability changes on the way, halving the cells quarters what they miss as long
// as the middle of a cell is known beforehand: running without air, by altitude and fade.
// Where the work or the time to the middle is guessed from running without air at full
// capability (in walking, against the air, in heat), it halves. There cells of 25 m leave
// less than 2e-5 of the time, under conditions harder than a race's: a fade of 0.05 and
// a loss of 0.5 % a degree.
func TestOrderOfTheStep(t *testing.T) {
	t.Parallel()
	warming := day(t, []Hour{{Temperature: 16, Humidity: 60}, {Clock: 12 * time.Hour, Temperature: 34, Humidity: 60}}, Night{})
	hot, air := Heat{Loss: 0.005, Above: 5}, Surroundings{Drag: 0.01, HeadWind: 3}
	fading := Athlete{HourPower: 12, Endurance: 0.1, Fade: 0.05, FadeShape: 0.6, Braking: 1}
	eager, walker, fresh := fading, fading, fading
	eager.Eagerness, walker.HourPower, walker.FastestWalk, fresh.Fade = 2, 6, 3, 0
	for _, c := range []struct {
		name         string
		athlete      Athlete
		surroundings Surroundings
		gait         Gait
		order        float64
	}{
		{"fade", fading, Surroundings{}, Run, 2},
		{"fade by haste", eager, Surroundings{}, Run, 2},
		{"altitude", fresh, Surroundings{Altitude: Altitude{Loss: 0.063, From: AtSea}}, Run, 2},
		{"fade in the air", fading, air, Run, 1},
		{"fade of a walk", walker, Surroundings{}, Walk, 1},
		{"a warming day", fresh, Surroundings{Day: warming, Heat: hot}, Run, 1},
	} {
		finish := func(step float64) float64 {
			g := straight(t, 32_000, 0, 0.02, 0, step)
			gaits := allRun(g)
			for j := range gaits {
				gaits[j] = c.gait
			}
			return integrator(t, g, c.athlete, c.surroundings).Traverse(State{}, Pace{Intensity: 0.8, Gaits: gaits}).Finish().Moving
		}
		coarse, middle, fine := finish(2000), finish(1000), finish(500)
		order := math.Log2((coarse - middle) / (middle - fine))
		t.Logf("%s: order %.2f, at 25 m %.1e of the time is left", c.name, order, math.Abs(finish(25)-finish(12.5))*2/fine)
		near(t, c.name+", order", order, c.order, 0.15)
		near(t, c.name+", left at 25 m", 2*math.Abs(finish(25)-finish(12.5))/fine, 0, 2e-5)
	}
}

// A race taken up again from the state between two cells ends as it would have, with the
// day, stops, an eager athlete and everything else on; State.Worn is what it takes.
func TestTakenUpAgainByTheClock(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawFullGround(t), drawFullAthlete(t)
		in := integrator(t, g, a, drawFullSurroundings(t, g.length))
		p := Pace{Intensity: rapid.Float64Range(0.5, 1.2).Draw(t, "intensity"), Tilt: rapid.Float64Range(-0.1, 0.1).Draw(t, "tilt")}
		whole := in.Traverse(State{}, p).Clone()
		from := whole.End[rapid.IntRange(0, g.Len()-1).Draw(t, "cell")]
		if from.Distance >= g.length {
			return
		}
		again := in.Traverse(from, p)
		finish, want := again.Finish(), whole.Finish()
		near(t, "moving", finish.Moving, want.Moving, 1e-10*want.Moving)
		near(t, "work", finish.Work, want.Work, 1e-10*want.Work)
		near(t, "spent", finish.Spent, want.Spent, 1e-9*want.Spent)
		near(t, "worn", finish.Worn, want.Worn, 1e-10*want.Worn)
		if a.Eagerness == 0 {
			near(t, "worn is work", want.Worn, want.Work, 1e-12*want.Work)
		}
		lost := from
		lost.Worn = 0
		if got := in.Traverse(lost, p).Finish().Moving; a.Eagerness == 0 && math.Abs(got-want.Moving) > 1e-10*want.Moving {
			t.Errorf("without Worn %.9f s, with it %.9f s", got, want.Moving)
		}
		s, err := in.Solve(from, Demand{Moving: want.Moving * 1.05})
		if err == nil {
			if off := s.Finish().Moving/(want.Moving*1.05) - 1; math.Abs(off) > 1e-9 {
				t.Errorf("goal from there missed by %.3g", off)
			}
		}
	})
}

// An eager start wears: worn is the work at an intensity of 1, more above and less below.
func TestWorn(t *testing.T) {
	t.Parallel()
	a := Usual(12)
	a.Eagerness = 1.5
	in := integrator(t, level(t, 20_000), a, Surroundings{})
	for _, e := range []float64{0.6, 0.9, 1, 1.1, 1.4} {
		finish := in.Traverse(State{}, Pace{Intensity: e, Gaits: allRun(in.ground)}).Finish()
		near(t, "worn over work", finish.Worn/finish.Work, math.Pow(e, 1.5), 1e-12)
	}
}

// Metabolic energy is what effort is without braking: on climbs the same, on descents
// less, by what braking asks of the runner.
func TestMetabolicEnergy(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawFullGround(t), drawFullAthlete(t)
		in := integrator(t, g, a, drawFullSurroundings(t, g.length))
		out := in.Traverse(State{}, Pace{Intensity: rapid.Float64Range(0.5, 1.2).Draw(t, "intensity")})
		metabolic, before, sum := in.Metabolic(nil), State{}, 0.0
		for j, end := range out.End {
			c, dt := &g.cells[j], end.Moving-before.Moving
			effort := (end.Work - before.Work) * 3600 * in.athlete.HourPower
			energy := metabolic[j] * dt
			sum += energy
			if energy > effort*(1+1e-9) || c.brake == 0 && math.Abs(energy-effort) > 1e-9*effort {
				t.Errorf("cell %d, gradient %.3f: effort %g, metabolic %g J/kg", j, c.gradient, effort, energy)
			}
			near(t, "braking", effort-energy, in.mover.braking*c.brake*c.length, 1e-9*effort)
			before = end
		}
		if effort := out.EffortBetween(0, g.length, in.athlete); sum > effort*(1+1e-9) {
			t.Errorf("metabolic energy %g J/kg of an effort of %g", sum, effort)
		}
	})
}
