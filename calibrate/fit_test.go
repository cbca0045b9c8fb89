package calibrate_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

var day = time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)

func result(distance, ascent float64, took time.Duration) record.Result {
	return record.Result{Date: day, Distance: distance, Ascent: ascent, Descent: ascent, Time: took}
}

func fit(t *testing.T, o calibrate.Options, results ...record.Result) *calibrate.Estimate {
	t.Helper()
	e, err := calibrate.Fit(context.Background(), results, o)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// 40:00 for 10 km is about 14.5 W/kg, and one result says that it is one.
func TestOneResult(t *testing.T) {
	t.Parallel()
	e := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute))
	if p := e.Athlete.HourPower; p < 14 || p > 15 {
		t.Errorf("hour power %.2f", p)
	}
	for _, n := range []effort.Number{effort.Endurance, effort.Fade} {
		if math.Abs(e.Informed(n)) > 0.1 {
			t.Errorf("one result informs the %v by %.2f", n, e.Informed(n))
		}
	}
	if !strings.Contains(strings.Join(e.Warnings, "\n"), "only one result") {
		t.Errorf("warnings %q", e.Warnings)
	}
	if e.Basis.Results != 1 || e.Basis.Longest != 40*time.Minute {
		t.Errorf("basis %+v", e.Basis)
	}
}

// On level ground with the fade shape and braking known the model is its closed form, so
// the mode must satisfy the conditions for a minimum computed from that alone.
func TestModeAgainstClosedForm(t *testing.T) {
	t.Parallel()
	prior := calibrate.Recreational()
	prior[effort.FadeShape].LogSD, prior[effort.Braking].LogSD = 0, 0
	results := []record.Result{
		result(5000, 0, 20*time.Minute), result(10_000, 0, 42*time.Minute),
		result(21_097.5, 0, 96*time.Minute), result(42_195, 0, 215*time.Minute),
	}
	e := fit(t, calibrate.Options{Prior: prior, Noise: 0.03, NoiseWeight: 1e9, Tails: math.Inf(1)}, results...)
	f := func(ln [3]float64) float64 { // the negative log posterior
		a := effort.Athlete{HourPower: math.Exp(ln[0]), Endurance: math.Exp(ln[1]), Fade: math.Exp(ln[2])}
		sum := 0.0
		for n, v := range ln {
			z := (v - math.Log(prior[n].Median)) / prior[n].LogSD
			sum += z * z / 2
		}
		for _, r := range results {
			miss := math.Log(r.Time.Seconds()/a.UniformTime(3.6*r.Distance).Seconds()) / 0.03
			sum += miss * miss / 2
		}
		return sum
	}
	var mode [3]float64
	for n := range mode {
		mode[n] = math.Log(e.Athlete.Get(effort.Number(n)))
	}
	const h = 1e-4
	for n := range mode {
		up, down := mode, mode
		up[n] += h
		down[n] -= h
		slope, curve := (f(up)-f(down))/(2*h), (f(up)+f(down)-2*f(mode))/(h*h)
		if off := slope / curve; math.Abs(off) > 0.01*e.SE(effort.Number(n)) {
			t.Errorf("%v: the minimum lies %.2g from the mode, SE %.2g", effort.Number(n), off, e.SE(effort.Number(n)))
		}
	}
	checkCovariance(t, e, f, mode)
}

// checkCovariance compares it with the inverse of the closed form's Hessian.
func checkCovariance(t *testing.T, e *calibrate.Estimate, f func([3]float64) float64, mode [3]float64) {
	t.Helper()
	const h = 1e-3
	var hess [3][3]float64
	for i := range 3 {
		for j := range 3 {
			at := func(a, b float64) float64 {
				v := mode
				v[i] += a
				v[j] += b
				return f(v)
			}
			hess[i][j] = (at(h, h) - at(h, -h) - at(-h, h) + at(-h, -h)) / (4 * h * h)
		}
	}
	for i := range 3 {
		for j := range 3 {
			sum := 0.0 // of covariance times Hessian, which is the identity
			for k := range 3 {
				sum += e.Basis.Cov[i][k] * hess[k][j]
			}
			want := 0.0
			if i == j {
				want = 1
			}
			if math.Abs(sum-want) > 0.02*math.Sqrt(hess[j][j]/hess[i][i])+0.005 {
				t.Errorf("covariance times Hessian at %d, %d: %.4f", i, j, sum)
			}
		}
	}
}

// Results to predict do not move the fit.
func TestPredictRowsAreLeftOut(t *testing.T) {
	t.Parallel()
	left := result(10_000, 0, 80*time.Minute)
	left.Role = record.Predict
	with := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute), left)
	without := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute))
	if with.Athlete != without.Athlete {
		t.Errorf("%+v, want %+v", with.Athlete, without.Athlete)
	}
}

// Scatter beyond the guess widens the intervals and is said; what lies far off is named.
func TestScatter(t *testing.T) {
	t.Parallel()
	calm := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute), result(10_000, 0, 41*time.Minute), result(10_000, 0, 40*time.Minute), result(10_000, 0, 41*time.Minute))
	wild := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute), result(10_000, 0, 55*time.Minute), result(10_000, 0, 40*time.Minute), result(10_000, 0, 55*time.Minute))
	if wild.Basis.Noise < 0.1 || calm.Basis.Noise > 0.035 {
		t.Errorf("noise %.3f and %.3f", wild.Basis.Noise, calm.Basis.Noise)
	}
	if wild.SE(effort.HourPower) < 2*calm.SE(effort.HourPower) {
		t.Errorf("standard errors %.3f and %.3f", wild.SE(effort.HourPower), calm.SE(effort.HourPower))
	}
	if !strings.Contains(strings.Join(wild.Warnings, "\n"), "scatter by") {
		t.Errorf("warnings %q", wild.Warnings)
	}
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	ok := result(10_000, 0, 40*time.Minute)
	for _, r := range []struct {
		name    string
		results []record.Result
		options calibrate.Options
		want    error
	}{
		{"nothing", nil, calibrate.Options{}, calibrate.ErrNoResults},
		{"no time", []record.Result{result(10_000, 0, 0)}, calibrate.Options{}, record.ErrTime},
		{"no distance", []record.Result{result(0, 0, time.Hour)}, calibrate.Options{}, record.ErrDistance},
		{"too fast", []record.Result{result(10_000, 0, 15*time.Minute)}, calibrate.Options{}, record.ErrTooFast},
		{"prior", []record.Result{ok}, calibrate.Options{Prior: calibrate.Prior{{12, -1}}}, calibrate.ErrPrior},
		{"noise", []record.Result{ok}, calibrate.Options{Noise: math.NaN()}, calibrate.ErrOption},
		{"step", []record.Result{ok}, calibrate.Options{Step: -1}, calibrate.ErrOption},
		{"air", []record.Result{ok}, calibrate.Options{Surroundings: effort.Surroundings{Drag: -1}}, effort.ErrSurroundings},
	} {
		if _, err := calibrate.Fit(context.Background(), r.results, r.options); !errors.Is(err, r.want) {
			t.Errorf("%s: %v, want %v", r.name, err, r.want)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := calibrate.Fit(ctx, []record.Result{ok}, calibrate.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
}

// What no runner's numbers explain ends in a fit with warnings or in an error, not in a
// panic or in numbers that are none.
func TestOddResults(t *testing.T) {
	t.Parallel()
	for _, results := range [][]record.Result{
		{result(10_000, 0, 40*time.Minute), result(10_000, 0, 5*time.Hour)},
		{result(42_195, 0, 3*time.Hour), result(5000, 0, 40*time.Minute)},
		{result(10_000, 5000, 20*time.Hour)},
		{result(500_000, 9000, 200*time.Hour), result(1000, 0, 3*time.Minute)},
		{result(1, 0, time.Second)},
		{result(100, 0, 40*time.Hour)},
	} {
		e, err := calibrate.Fit(context.Background(), results, calibrate.Options{})
		if err != nil {
			t.Logf("%v: %v", results[0].Distance, err)
			continue
		}
		for n := range effort.Number(effort.Numbers) {
			if v, se := e.Athlete.Get(n), e.SE(n); !(v > 0) || math.IsInf(v, 0) || !(se >= 0) || math.IsInf(se, 0) {
				t.Errorf("%v: %v %g with standard error %g", results[0].Distance, n, v, se)
			}
		}
		t.Logf("%v m: %+v %q", results[0].Distance, e.Athlete, e.Warnings)
	}
}

// Hilly results of strong runners are fitted, though the usual runner would walk there.
func TestHillyResults(t *testing.T) {
	t.Parallel()
	for _, results := range [][]record.Result{
		{result(60_000, 2400, 4*time.Hour+40*time.Minute)},
		{
			result(45_632, 2282, 3*time.Hour+51*time.Minute+55*time.Second),
			result(73_740, 2335, 5*time.Hour+22*time.Minute+13*time.Second),
			result(83_354, 3546, 7*time.Hour+2*time.Minute+28*time.Second),
		},
	} {
		fit(t, calibrate.Options{}, results...)
	}
	for distance := 10_000.0; distance <= 160_000; distance *= 2 {
		for steep := 0.0; steep <= 0.06; steep += 0.02 {
			for speed := 4.0; speed <= 18; speed += 2 {
				level := distance * (1 + 8*steep)
				r := result(distance, steep*distance, time.Duration(level/1000/speed*float64(time.Hour)))
				if r.Check() != nil {
					continue
				}
				if _, err := calibrate.Fit(context.Background(), []record.Result{r}, calibrate.Options{}); err != nil {
					t.Errorf("%+v: %v", r, err)
				}
			}
		}
	}
}

// Results that say nothing new of a number, lie years apart or lie far off are said to.
func TestWarnings(t *testing.T) {
	t.Parallel()
	old := result(10_000, 0, 40*time.Minute)
	old.Date = day.AddDate(-5, 0, 0)
	far := result(21_097.5, 0, 125*time.Minute)
	far.Race = "a bad day"
	e := fit(t, calibrate.Options{}, old, far, result(10_000, 0, 40*time.Minute), result(5000, 0, 19*time.Minute+20*time.Second),
		result(21_097.5, 0, 89*time.Minute), result(42_195, 0, 188*time.Minute), result(15_000, 0, 62*time.Minute), result(8000, 0, 31*time.Minute+30*time.Second))
	text := strings.Join(e.Warnings, "\n")
	for _, want := range []string{"little about the fade", "span 5 years", `"a bad day"`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	if len(e.Basis.Doubts) != len(e.Warnings) {
		t.Errorf("doubts %q", e.Basis.Doubts)
	}
	steady := fit(t, calibrate.Options{}, result(10_000, 0, 40*time.Minute), result(5000, 0, 19*time.Minute+20*time.Second),
		result(21_097.5, 0, 89*time.Minute), result(42_195, 0, 188*time.Minute))
	if text := strings.Join(steady.Warnings, "\n"); strings.Contains(text, "scatter") || strings.Contains(text, "off the fit") || strings.Contains(text, "years") {
		t.Errorf("a steady runner: %q", text)
	}
}
