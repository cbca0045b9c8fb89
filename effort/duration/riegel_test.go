package duration_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
)

// A power law on level ground is Riegel's prediction, and its exponent at every time.
func TestRiegelIsPowerLaw(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := duration.PowerLaw{HourPower: rapid.Float64Range(8, 20).Draw(t, "hour power"), Endurance: rapid.Float64Range(0.02, 0.2).Draw(t, "k")}
		d1, d2 := rapid.Float64Range(1000, 50_000).Draw(t, "d1"), rapid.Float64Range(1000, 50_000).Draw(t, "d2")
		t1, t2 := timeOf(t, p, 3.6*d1), timeOf(t, p, 3.6*d2)
		b := effort.Riegel(p.Endurance)
		got, err := duration.Riegel(effort.Seconds(t1), d1, d2, b)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "time", got.Seconds(), t2, 1e-10)
		near(t, "exponent", duration.RiegelAt(p, got), b, 1e-14)
		if math.Abs(d2/d1-1) > 0.01 {
			near(t, "exponent between", duration.RiegelBetween(effort.Seconds(t1), d1, effort.Seconds(t2), d2), b, 1e-9)
		}
	})
}

func TestRiegelImpossible(t *testing.T) {
	t.Parallel()
	nan, inf := math.NaN(), math.Inf(1)
	for _, r := range []struct {
		t1        time.Duration
		d1, d2, b float64
	}{
		{0, 10, 20, 1.06},
		{-time.Hour, 10, 20, 1.06},
		{time.Hour, 0, 20, 1.06},
		{time.Hour, 10, -20, 1.06},
		{time.Hour, nan, 20, 1.06},
		{time.Hour, 10, inf, 1.06},
		{time.Hour, 10, 20, nan},
		{time.Hour, 10, 20, inf},
		{time.Hour, 10, 20, 0.99},
		{time.Hour, 1, 1e300, 1.06},
		{time.Hour, 1e300, 1e-300, 1.06},
	} {
		if got, err := duration.Riegel(r.t1, r.d1, r.d2, r.b); !errors.Is(err, duration.ErrInput) {
			t.Errorf("%+v gives %v, error %v", r, got, err)
		}
	}
	for _, b := range []float64{
		duration.RiegelBetween(0, 10, time.Hour, 20), duration.RiegelBetween(time.Hour, 10, -1, 20),
		duration.RiegelBetween(time.Hour, 10, time.Hour, 10), duration.RiegelBetween(time.Hour, nan, 2*time.Hour, 20),
		duration.RiegelBetween(time.Hour, 10, 2*time.Hour, inf),
	} {
		if !math.IsNaN(b) {
			t.Errorf("exponent %g", b)
		}
	}
}
