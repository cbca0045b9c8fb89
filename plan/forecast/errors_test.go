package forecast_test

import (
	"context"
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

func TestErrors(t *testing.T) {
	t.Parallel()
	c := profile(t, 10_000, level)
	good := forecast.Given([]forecast.Draw{{Athlete: effort.Usual(12)}})
	given := func(d forecast.Draw) forecast.Drawer { return forecast.Given([]forecast.Draw{d}) }
	for i, k := range []struct {
		draws forecast.Drawer
		race  plan.Race
		o     forecast.Options
		want  error
	}{
		{nil, plan.Race{}, forecast.Options{}, forecast.ErrDraw},
		{forecast.Given(nil), plan.Race{}, forecast.Options{}, forecast.ErrDraw},
		{given(forecast.Draw{}), plan.Race{}, forecast.Options{}, effort.ErrAthlete},
		{given(forecast.Draw{Athlete: effort.Usual(12), Tilt: math.NaN()}), plan.Race{}, forecast.Options{}, forecast.ErrDraw},
		{given(forecast.Draw{Athlete: effort.Usual(12), Tilt: 0.6}), plan.Race{}, forecast.Options{}, forecast.ErrDraw},
		{given(forecast.Draw{Athlete: effort.Usual(12), Noise: math.Inf(1)}), plan.Race{}, forecast.Options{}, forecast.ErrDraw},
		{good, plan.Race{}, forecast.Options{Draws: -1}, forecast.ErrOption},
		{good, plan.Race{}, forecast.Options{Workers: -1}, forecast.ErrOption},
		{good, plan.Race{}, forecast.Options{Step: math.NaN()}, effort.ErrStep},
		{good, plan.Race{}, forecast.Options{Quantiles: []float64{}}, forecast.ErrOption},
		{good, plan.Race{}, forecast.Options{Quantiles: []float64{0.5, 0.5}}, forecast.ErrOption},
		{good, plan.Race{}, forecast.Options{Quantiles: []float64{math.NaN()}}, forecast.ErrOption},
		{good, plan.Race{Goal: -1}, forecast.Options{}, plan.ErrGoal},
		{good, plan.Race{Cutoffs: []plan.Cutoff{{Distance: 11_000, Time: time.Hour}}}, forecast.Options{}, plan.ErrCutoff},
		{good, plan.Race{Stops: []plan.Stop{{Distance: 11_000, Duration: time.Hour}}}, forecast.Options{}, plan.ErrStop},
	} {
		if _, err := forecast.Of(context.Background(), c, k.draws, k.race, k.o); !errors.Is(err, k.want) {
			t.Errorf("case %d: %v, want %v", i, err, k.want)
		}
	}
}

func TestBadBasis(t *testing.T) {
	t.Parallel()
	cov := func(i, j int, v float64) (b effort.Basis) {
		b.Cov[i][j] = v
		return b
	}
	crossed := cov(0, 1, 0.1)
	crossed.Cov[1][0] = 0.1 // no variances: not a covariance
	for i, b := range []effort.Basis{cov(0, 0, -1), cov(0, 0, math.NaN()), cov(0, 1, 1), crossed, {Noise: -1}, {Noise: math.NaN()}, {Quantile: math.NaN()}} {
		if _, err := forecast.FromBasis(effort.Usual(12), b, forecast.Tilt{}); !errors.Is(err, forecast.ErrDraw) {
			t.Errorf("basis %d: %v", i, err)
		}
	}
	for _, tilt := range []forecast.Tilt{{Mean: 1}, {SD: -1}, {SD: math.NaN()}, {Mean: math.NaN()}} {
		if _, err := forecast.FromBasis(effort.Usual(12), effort.Basis{}, tilt); !errors.Is(err, forecast.ErrDraw) {
			t.Errorf("tilt %+v: %v", tilt, err)
		}
	}
	if _, err := forecast.FromBasis(effort.Athlete{}, effort.Basis{}, forecast.Tilt{}); !errors.Is(err, effort.ErrAthlete) {
		t.Errorf("no athlete: %v", err)
	}
}

func TestCancel(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	c := profile(t, 10_000, level)
	_, err := forecast.Of(ctx, c, forecast.Given([]forecast.Draw{{Athlete: effort.Usual(12)}}), plan.Race{}, forecast.Options{})
	if !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

func TestAllowed(t *testing.T) {
	t.Parallel()
	for _, k := range []struct {
		p, budget float64
		ok        bool
	}{
		{0.10, 1, true},
		{1, 1 + 1e-9, true},
		{0.0999, 1, false},
		{0.5, 1.001, true}, // as near as a budget is known
		{0.5, 1.021, false},
		{0, 0.5, false},
		{math.NaN(), 1, false},
		{1.1, 1, false},
		{0.5, math.NaN(), false},
		{0.5, math.Inf(1), false},
		{0.5, -1, false},
	} {
		ok, reason := forecast.Allowed(k.p, k.budget)
		if ok != k.ok || ok != (reason == "") || ok != (forecast.Warning(k.p, k.budget) == "") {
			t.Errorf("%+v: %v %q", k, ok, reason)
		}
	}
}
