package duration_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/effort/duration"
)

func TestLevelCost(t *testing.T) {
	t.Parallel()
	for economy, want := range map[float64]float64{0: 3.6, 1: 3.6, 1.1: 3.96, 0.9: 3.24} {
		near(t, "cost", duration.LevelCost(economy), want, 1e-14)
	}
	for _, economy := range []float64{-1, math.NaN(), math.Inf(1)} {
		if got := duration.LevelCost(economy); !math.IsNaN(got) {
			t.Errorf("an economy of %g costs %g", economy, got)
		}
	}
}

// 14.4 W/kg at 3.6 J/(kg m) is 4 m/s, 250 s for a kilometre; at four fifths 312.5 s.
func TestIntensityPace(t *testing.T) {
	t.Parallel()
	p := duration.PowerLaw{HourPower: 14.4, Endurance: 0.1}
	for intensity, want := range map[float64]time.Duration{1: 250 * time.Second, 0.8: 312_500 * time.Millisecond} {
		if got, err := duration.IntensityPace(p, intensity, 3.6); err != nil || (got-want).Abs() > 1 {
			t.Errorf("pace at %g: %v, error %v", intensity, got, err)
		}
	}
}

func TestLevelImpossible(t *testing.T) {
	t.Parallel()
	p := duration.PowerLaw{HourPower: 14.4, Endurance: 0.1}
	for _, x := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, errDistance := duration.TimeAt(p, x, 3.6)
		_, errCost := duration.TimeAt(p, 10_000, x)
		_, errIntensity := duration.IntensityPace(p, x, 3.6)
		_, errPace := duration.IntensityPace(p, 1, x)
		for _, err := range []error{errDistance, errCost, errIntensity, errPace} {
			if !errors.Is(err, duration.ErrInput) {
				t.Errorf("%g: error %v", x, err)
			}
		}
		if d := duration.DistanceIn(p, time.Hour, x); !math.IsNaN(d) {
			t.Errorf("at a cost of %g an hour is %g m", x, d)
		}
	}
	if got, err := duration.IntensityPace(p, 1e-12, 3.6); !errors.Is(err, duration.ErrInput) {
		t.Errorf("pace %v, error %v", got, err)
	}
}

// What a curve has no time for: a hyperbola's reserve or less, and more than a logarithm's
// span holds, here the work of its last moment.
func TestBeyond(t *testing.T) {
	t.Parallel()
	h := duration.Hyperbolic{Critical: 14, Reserve: 900}
	l := duration.Logarithmic{Nominal: 18, Long: 0.15}
	_, end := l.Span()
	for _, r := range []struct {
		curve duration.Curve
		work  float64
	}{{h, 899}, {h, 900}, {l, duration.Work(l, end) * (1 + 1e-12)}, {plain{h}, 913}, {broken{h}, 50_000}} {
		if got, err := duration.Time(r.curve, r.work); !errors.Is(err, duration.ErrBeyond) {
			t.Errorf("%+v: %g J/kg take %v, error %v", r.curve, r.work, got, err)
		}
	}
}

// broken says nothing of times about an hour, where it should.
type broken struct{ duration.Curve }

func (b broken) Power(t time.Duration) float64 {
	if t > 30*time.Minute && t < 2*time.Hour {
		return math.NaN()
	}
	return b.Curve.Power(t)
}
