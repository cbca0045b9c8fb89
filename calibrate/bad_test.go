package calibrate_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort/record"
)

// Results given twice and results that are all alike are said to be so; results of 1 m and
// of 1000 h, which no runner has, end in an answer or an error; options that are none are
// refused.
func TestBadData(t *testing.T) {
	t.Parallel()
	ten := result(10_000, 0, 40*time.Minute)
	has := func(want string, results ...record.Result) {
		if text := strings.Join(fit(t, calibrate.Options{}, results...).Warnings, "\n"); !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	has("more than once", ten, ten, result(21_097.5, 0, 90*time.Minute))
	other, third := ten, ten
	other.Date, third.Date = day.AddDate(0, 1, 0), day.AddDate(0, 2, 0)
	has("all results are alike", ten, other, third)
	for _, o := range []calibrate.Options{
		{Tails: 0.5},
		{Tails: math.NaN()},
		{HalfLife: -1},
		{Drift: math.Inf(1)},
		{SplitNoise: -1},
		{Weights: []float64{1, 2}},
		{Weights: []float64{-1}},
		{Weights: []float64{math.NaN()}},
		{Tilt: calibrate.TiltBelief{Mean: math.NaN(), SD: 0.1}},
	} {
		if _, err := calibrate.Fit(context.Background(), []record.Result{ten}, o); !errors.Is(err, calibrate.ErrOption) {
			t.Errorf("%+v: %v", o, err)
		}
	}
	if _, err := calibrate.Fit(context.Background(), []record.Result{ten}, calibrate.Options{Weights: []float64{0}}); !errors.Is(err, calibrate.ErrNoResults) {
		t.Error(err)
	}
	stopped := ten
	stopped.Stopped = ten.Time
	if _, err := calibrate.Fit(context.Background(), []record.Result{stopped}, calibrate.Options{}); !errors.Is(err, record.ErrTime) {
		t.Error(err)
	}
}

// One bad day among good ones moves the fit by a fraction of what it does with normal
// errors.
func TestOneBadDay(t *testing.T) {
	t.Parallel()
	good := some()
	bad := append(some(), result(10_000, 50, 62*time.Minute))
	move := func(tails float64) float64 {
		o := calibrate.Options{Tails: tails}
		return math.Abs(math.Log(fit(t, o, bad...).Athlete.HourPower / fit(t, o, good...).Athlete.HourPower))
	}
	if heavy, normal := move(0), move(math.Inf(1)); !(heavy < 0.01 && heavy < normal/3) {
		t.Errorf("moved by %.4f, with normal errors %.4f", heavy, normal)
	}
}
