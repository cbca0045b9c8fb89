package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// piecewise goes over a ground in stretches of one relative intensity each, up to the
// end of the cells named; it returns the finish.
func piecewise(in *Integrator, gaits []Gait, ends []int, intensity []float64) State {
	var from State
	for i, end := range ends {
		from = in.Traverse(from, Pace{Intensity: intensity[i], Gaits: gaits}).End[end]
	}
	return from
}

// balance sets the last intensity so that the stretches spend a budget. Work is a
// function of place where all is run without air, so that what the last one spends is
// proportional to ε^(n−1) exactly.
func balance(in *Integrator, gaits []Gait, ends []int, intensity []float64, budget float64) bool {
	last := len(ends) - 1
	before := piecewise(in, gaits, ends[:last], intensity).Spent
	all := piecewise(in, gaits, ends, intensity).Spent
	if before >= budget {
		return false
	}
	intensity[last] *= math.Pow((budget-before)/(all-before), 1/(1/in.athlete.Endurance-1))
	return true
}

// Even effort is best within this model: run all the way, whatever the hills and the
// fade, no exchange of intensity between stretches at equal budget is faster, and a
// small one, x the relative changes, costs n/2 ⟨x²⟩ of the time. [Our own, computed.]
func TestEvenEffortIsBest(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), Surroundings{})
		n := in.ground.Len()
		gaits := allRun(in.ground)
		even, err := in.Fastest(gaits)
		if err != nil {
			t.Fatal(err)
		}
		var ends []int
		var intensity []float64
		for range rapid.IntRange(1, 4).Draw(t, "cuts") {
			next := 0
			if len(ends) > 0 {
				next = ends[len(ends)-1] + 1
			}
			if next >= n-1 {
				break
			}
			ends = append(ends, rapid.IntRange(next, n-2).Draw(t, "end"))
			intensity = append(intensity, even.Intensity*math.Exp(rapid.Float64Range(-0.3, 0.3).Draw(t, "change")))
		}
		ends, intensity = append(ends, n-1), append(intensity, even.Intensity)
		if !balance(in, gaits, ends, intensity, 1) {
			return // the stretches before the last overspend
		}
		finish := piecewise(in, gaits, ends, intensity)
		near(t, "budget", finish.Spent, 1, 1e-8)
		if finish.Moving < even.Moving*(1-1e-8) {
			t.Fatalf("uneven %.6f s, even %.6f s", finish.Moving, even.Moving)
		}
	})
}

// What exchanges of a few per cent cost an hour, on level ground with the usual numbers.
func TestCostOfUnevenEffort(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 42_195), Usual(16), Surroundings{})
	n, gaits := in.ground.Len(), allRun(in.ground)
	even, err := in.Fastest(gaits)
	if err != nil {
		t.Fatal(err)
	}
	perHour := func(moving float64) float64 { return (moving - even.Moving) / even.Moving * 3600 }

	// Holding back 2 % at the start, returned by the end: n/2 · t²/3.
	held := solve(t, in, State{}, Demand{Tilt: -0.02}).Finish().Moving
	near(t, "held back, s per hour", perHour(held), 2.4, 0.1)
	fast := solve(t, in, State{}, Demand{Tilt: 0.02}).Finish().Moving
	near(t, "fast start, s per hour", perHour(fast), 2.4, 0.1)

	// Opening easier, or harder, over the first quarter.
	quarter := func(change float64) float64 {
		ends, intensity := []int{n/4 - 1, n - 1}, []float64{even.Intensity * (1 + change), even.Intensity}
		balance(in, gaits, ends, intensity, 1)
		return perHour(piecewise(in, gaits, ends, intensity).Moving)
	}
	t.Logf("first quarter 5 %% easier %.1f, 5 %% harder %.1f s per hour", quarter(-0.05), quarter(0.05))
	near(t, "first quarter 5 % easier, s per hour", quarter(-0.05), 12, 1)
	if quarter(0.05) < quarter(-0.05) {
		t.Error("opening too hard costs less than opening too easily")
	}
}

// The tilt is that of the share of running work done, and returned by the end.
func TestTilt(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		a.Fade = 0
		in := integrator(t, drawGround(t), a, Surroundings{})
		tilt := rapid.Float64Range(-0.5, 0.5).Draw(t, "tilt")
		gaits := allRun(in.ground)
		out := in.Traverse(State{}, Pace{Intensity: 0.9, Tilt: tilt, Gaits: gaits})
		total := in.ground.RunningWork(a) / (3600 * a.HourPower)
		for j := range out.End {
			before := State{}
			if j > 0 {
				before = out.End[j-1]
			}
			s := (before.Work + out.End[j].Work) / 2 / total
			near(t, "power", out.Power[j], 0.9*a.HourPower*(1+tilt*(1-2*s)), 1e-9*out.Power[j])
		}
	})
}
