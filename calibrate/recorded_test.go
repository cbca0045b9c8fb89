package calibrate_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// recorded is a run of an athlete over a course at even effort but for a tilt, as fixes.
func recorded(t *testing.T, a effort.Athlete, tilt float64) (*record.Recording, effort.Solution) {
	t.Helper()
	g, err := effort.NewGround(hilly(t, 50_000, 40), 25)
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
	var fixes []record.Fix
	for d := 0.0; d <= 50_000; d += 25 {
		fixes = append(fixes, record.Fix{Time: day.Add(effort.Seconds(s.At(d).Moving)), Distance: d})
	}
	r, err := record.Reduce(fixes, record.RecordingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return r, s
}

// Of a run at even effort the windows have its one intensity, spend its budget and fade as
// the athlete does; one started fast has a greater apparent fade; and one long run with its
// splits gives Fit something to say of the fade.
func TestRecordedRun(t *testing.T) {
	t.Parallel()
	a := effort.Athlete{HourPower: 15, Endurance: 0.09, Fade: 0.03, FadeShape: 1, Braking: 1}
	r, s := recorded(t, a, 0)
	c := hilly(t, 50_000, 40)
	windows, err := calibrate.Windows(a, c, r, effort.Surroundings{}, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range windows {
		if math.Abs(w.Intensity/s.Intensity-1) > 0.002 || w.Moving.Minutes() < 15 {
			t.Errorf("%+v, want an intensity of %.4f", w, s.Intensity)
		}
	}
	if last := windows[len(windows)-1]; math.Abs(last.Spent-1) > 0.01 {
		t.Errorf("spent %.4f", last.Spent)
	}
	fade, se := calibrate.ApparentFade(windows)
	if math.Abs(fade-0.03) > 0.001 || !(se < 0.001) {
		t.Errorf("apparent fade %.4f ± %.4f", fade, se)
	}
	fast, _ := recorded(t, a, 0.1)
	windows, err = calibrate.Windows(a, c, fast, effort.Surroundings{}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if apparent, _ := calibrate.ApparentFade(windows); !(apparent > 0.05) {
		t.Errorf("apparent fade of a fast start %.4f", apparent)
	}
	one, err := r.Result(c, 5000)
	if err != nil {
		t.Fatal(err)
	}
	e := fit(t, calibrate.Options{}, one)
	t.Logf("fade %.4f, informed %.2f; tilt %+v", e.Athlete.Fade, e.Informed(effort.Fade), e.Tilt)
	if e.Informed(effort.Fade) < 0.1 {
		t.Errorf("the splits of a long run say nothing of the fade: %.2f", e.Informed(effort.Fade))
	}
	if _, err := calibrate.Windows(a, c, r, effort.Surroundings{}, time.Second); !errors.Is(err, calibrate.ErrOption) {
		t.Error(err)
	}
	if f, _ := calibrate.ApparentFade(windows[:3]); !math.IsNaN(f) {
		t.Errorf("apparent fade of three windows: %g", f)
	}
}
