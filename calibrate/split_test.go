package calibrate_test

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// run makes a result of an athlete with a tilt over level ground, with a split each 5 km.
func run(t *testing.T, a effort.Athlete, distance, tilt float64) record.Result {
	t.Helper()
	g, err := effort.NewSummaryGround(distance, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	in, err := effort.NewIntegrator(g, a, effort.Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := in.Solve(effort.State{}, effort.Demand{Tilt: tilt})
	if err != nil {
		t.Fatal(err)
	}
	r := record.Result{Date: day, Distance: distance, Time: effort.Seconds(s.Finish().Moving)}
	for d := 5000.0; d < distance-1; d += 5000 {
		r.Splits = append(r.Splits, record.Split{Distance: d, Elapsed: s.At(d).Moving})
	}
	return r
}

// Races of several lengths tell fade from tilt: the first grows with the work, the second
// does not. Without errors, and with a wide prior and little noise, both come back.
func TestFadeAndTiltAreToldApart(t *testing.T) {
	t.Parallel()
	for _, truth := range []struct{ fade, tilt float64 }{{0.01, 0.1}, {0.04, -0.04}, {0.03, 0.03}} {
		a := effort.Athlete{HourPower: 14, Endurance: 0.08, Fade: truth.fade, FadeShape: 1, Braking: 1}
		prior := calibrate.Recreational()
		prior[effort.Fade].LogSD, prior[effort.FadeShape].LogSD = 2, 0
		e := fit(t, calibrate.Options{
			Prior: prior, Tilt: calibrate.TiltBelief{Mean: 0, SD: 0.2}, Noise: 0.001, SplitNoise: 0.001, NoiseWeight: 1e6,
		}, run(t, a, 10_000, truth.tilt), run(t, a, 42_195, truth.tilt), run(t, a, 100_000, truth.tilt))
		if off := math.Abs(e.Athlete.Fade - truth.fade); off > 0.001 {
			t.Errorf("fade %.4f, want %.4f", e.Athlete.Fade, truth.fade)
		}
		if off := math.Abs(e.Tilt.Mean - truth.tilt); off > 0.003 {
			t.Errorf("tilt %.4f, want %.4f", e.Tilt.Mean, truth.tilt)
		}
		if e.TiltInformed() < 0.9 || e.Informed(effort.Fade) < 0.9 {
			t.Errorf("informed: tilt %.2f, fade %.2f", e.TiltInformed(), e.Informed(effort.Fade))
		}
	}
}

// One race cannot tell them apart: with the usual priors and noise a start too fast goes to
// both, and neither is settled; but the hour power is no worse for it.
func TestOneRaceWithSplits(t *testing.T) {
	t.Parallel()
	a := effort.Usual(14)
	e := fit(t, calibrate.Options{}, run(t, a, 42_195, 0.12))
	without := run(t, a, 42_195, 0.12)
	without.Splits = nil
	bare := fit(t, calibrate.Options{}, without)
	t.Logf("with splits %+v tilt %+v, noise %.3f; without %+v", e.Athlete, e.Tilt, e.SplitNoise, bare.Athlete)
	if !(e.Tilt.Mean > calibrate.UsualTilt.Mean+0.01 && e.Athlete.Fade > 0.02) {
		t.Errorf("tilt %+v, fade %.4f", e.Tilt, e.Athlete.Fade)
	}
	if e.Informed(effort.Fade) > 0.6 {
		t.Errorf("one race settles the fade: %.2f", e.Informed(effort.Fade))
	}
	if len(e.Residuals[0].Sections) != len(run(t, a, 42_195, 0).Splits)+1 {
		t.Errorf("sections %v", e.Residuals[0].Sections)
	}
}

// Splits that know ascent and descent so far put the hills where they are: a race that
// climbs in its second half is slower there without any fade.
func TestSplitsKnowTheHills(t *testing.T) {
	t.Parallel()
	r := record.Result{
		Date: day, Distance: 20_000, Ascent: 800, Descent: 0, Time: 2 * time.Hour,
		Splits: []record.Split{{Distance: 10_000, Elapsed: 2700, Ascent: 0, Descent: 0}},
	}
	known := fit(t, calibrate.Options{}, r)
	r.Splits[0].Ascent, r.Splits[0].Descent = math.NaN(), math.NaN()
	unknown := fit(t, calibrate.Options{}, r)
	if a, b := math.Abs(known.Residuals[0].Sections[0]), math.Abs(unknown.Residuals[0].Sections[0]); !(a < b/2) {
		t.Errorf("section off by %.3f with the hills known, %.3f without", a, b)
	}
}

// A race not finished bounds: where the fit can do more anyway it changes nothing to speak
// of, and where it says that the runner did more, the hour power rises to that.
func TestNotFinished(t *testing.T) {
	t.Parallel()
	base := []record.Result{result(10_000, 0, 45*time.Minute), result(21_097.5, 0, 100*time.Minute)}
	plain := fit(t, calibrate.Options{}, base...)
	slow, fast := result(30_000, 0, 5*time.Hour), result(30_000, 0, 135*time.Minute)
	slow.DNF, fast.DNF = true, true
	easy, hard := fit(t, calibrate.Options{}, append(base, slow)...), fit(t, calibrate.Options{Tails: math.Inf(1)}, append(base, fast)...)
	if off := math.Abs(easy.Athlete.HourPower/plain.Athlete.HourPower - 1); off > 1e-3 {
		t.Errorf("a slow one moves the hour power by %.4f", off)
	}
	if hard.Athlete.HourPower < 1.01*plain.Athlete.HourPower {
		t.Errorf("a fast one: %.2f, without %.2f", hard.Athlete.HourPower, plain.Athlete.HourPower)
	}
	only := fit(t, calibrate.Options{}, slow)
	if !strings.Contains(strings.Join(only.Warnings, "\n"), "no result was finished") {
		t.Errorf("warnings %q", only.Warnings)
	}
}

// Half a weight is half an error's worth: a result given twice is one of weight two, and
// one of weight 0 is not there.
func TestWeights(t *testing.T) {
	t.Parallel()
	a, b := result(10_000, 0, 45*time.Minute), result(21_097.5, 0, 97*time.Minute)
	noise := calibrate.Options{NoiseWeight: 1e9, Tails: math.Inf(1)}
	twice := fit(t, noise, a, b, b)
	noise.Weights = []float64{1, 2}
	weighted := fit(t, noise, a, b)
	noise.Weights = []float64{1, 2, 0}
	beside := fit(t, noise, a, b, result(10_000, 0, 3*time.Hour))
	for n := range effort.Number(effort.Numbers) {
		x, y, z := twice.Athlete.Get(n), weighted.Athlete.Get(n), beside.Athlete.Get(n)
		if math.Abs(x/y-1) > 1e-5 || math.Abs(z/y-1) > 1e-9 {
			t.Errorf("%v: %.8g given twice, %.8g with weight 2, %.8g beside one of weight 0", n, x, y, z)
		}
	}
}

// A runner who improves by 4 % a year: unchanged, the fit is a mean over the years; with a
// half-life or a drift it comes to what the runner is now, and the drift is found.
func TestFitnessThatChanges(t *testing.T) {
	t.Parallel()
	var results []record.Result
	for i := range 12 {
		a := effort.Usual(10 * math.Exp(0.04*float64(i)/2))
		r := run(t, a, 10_000+1000*float64(i%3), 0)
		r.Splits = nil
		r.Date = day.AddDate(0, 6*i, 0)
		results = append(results, r)
	}
	now := 10 * math.Exp(0.04*5.5)
	still := fit(t, calibrate.Options{Noise: 0.01}, results...)
	recent := fit(t, calibrate.Options{Noise: 0.01, HalfLife: 365 * 24 * time.Hour}, results...)
	drifting := fit(t, calibrate.Options{Noise: 0.01, EstimateDrift: true}, results...)
	t.Logf("now %.2f: still %.2f, half-life %.2f, drift of %.2f %.2f", now, still.Athlete.HourPower, recent.Athlete.HourPower, drifting.Drift, drifting.Athlete.HourPower)
	off := func(e *calibrate.Estimate) float64 { return math.Abs(math.Log(e.Athlete.HourPower / now)) }
	if !(off(recent) < off(still)/1.5 && off(drifting) < off(still)/3 && drifting.Drift > 0) {
		t.Errorf("off by %.3f, %.3f and %.3f", off(still), off(recent), off(drifting))
	}
	// Looking back, the hour power is that of the time.
	then := fit(t, calibrate.Options{Noise: 0.01, Drift: 0.05, On: day}, results...)
	if math.Abs(then.Athlete.HourPower/10-1) > 0.02 {
		t.Errorf("at first %.2f, want 10", then.Athlete.HourPower)
	}
	if _, err := calibrate.Fit(context.Background(), results, calibrate.Options{Drift: -1}); err == nil {
		t.Error("a drift of -1 is accepted")
	}
}
