package duration_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
	"isoeffort.example/effort/duration/durationtest"
)

// near reports a number that is farther from another than a relative tolerance.
func near(t rapid.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got/want-1) <= tolerance) {
		t.Errorf("%s: %.12g, want %.12g within %.2g", what, got, want, tolerance)
	}
}

func shaped(fade, shape float64) duration.Fading {
	return duration.Fading{Athlete: effort.Athlete{HourPower: 14, Endurance: 0.09, Fade: fade, FadeShape: shape}}
}

// plain hides what a curve knows of itself.
type plain struct{ duration.Curve }

func TestLaws(t *testing.T) {
	t.Parallel()
	const day = 24 * time.Hour
	logarithmic := duration.Logarithmic{Nominal: 19, Short: 0.12, Long: 0.07}
	for name, c := range map[string]struct {
		curve    duration.Curve
		from, to time.Duration
	}{
		"power law":               {duration.PowerLaw{HourPower: 14.5, Endurance: 0.1}, time.Second, 1000 * day},
		"steep power law":         {duration.PowerLaw{HourPower: 14.5, Endurance: 0.9}, time.Second, day},
		"no fade":                 {shaped(0, 1), time.Second, 1000 * day},
		"fade":                    {shaped(0.02, 0), time.Second, 100 * day},
		"early fade":              {shaped(0.03, 0.4), time.Second, 100 * day},
		"late fade":               {shaped(0.03, 1.7), time.Second, 10 * day},
		"heavy late fade":         {shaped(0.5, 2), time.Second, 10 * day},
		"hyperbola":               {duration.Hyperbolic{Critical: 14, Reserve: 900}, time.Second, 10 * day},
		"logarithm":               {logarithmic, time.Second, 10 * day},
		"logarithm of one slope":  {duration.Logarithmic{Nominal: 19, Time: time.Hour, Long: 0.15}, time.Second, 6 * day},
		"logarithm differentiate": {plain{logarithmic}, 2 * time.Second, 30 * day},
		"fade differentiated":     {plain{shaped(0.02, 1)}, 2 * time.Second, 30 * day},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			durationtest.CheckCurve(t, c.curve, c.from, c.to)
		})
	}
}

func TestLawsAtRandom(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		share := func(name string, low, top float64) float64 { return rapid.Float64Range(low, top).Draw(t, name) }
		curves := []duration.Curve{
			duration.PowerLaw{HourPower: share("hour power", 1, 30), Endurance: share("endurance", 0.01, 0.9)},
			duration.Fading{Athlete: effort.Athlete{
				HourPower: share("fresh", 1, 30), Endurance: share("k", 0.01, 0.4),
				Fade: share("fade", 0, 0.5), FadeShape: share("shape", 0.1, 2),
			}},
			duration.Hyperbolic{Critical: share("critical", 1, 25), Reserve: share("reserve", 100, 3000)},
			duration.Logarithmic{Nominal: share("nominal", 1, 30), Short: share("short", 0.01, 0.9), Long: share("long", 0.01, 0.15)},
		}
		for _, c := range curves {
			durationtest.CheckCurve(t, c, time.Minute, 26*time.Hour)
		}
	})
}

// Impossible parameters give NaN for power and what rests on it, and no time.
func TestImpossibleCurves(t *testing.T) {
	t.Parallel()
	nan, inf := math.NaN(), math.Inf(1)
	curves := []duration.Curve{duration.PowerLaw{}, duration.Hyperbolic{}, duration.Logarithmic{}, duration.Fading{}}
	for _, x := range []float64{nan, inf, -inf, -1} {
		curves = append(
			curves,
			duration.PowerLaw{HourPower: x, Endurance: 0.1},
			duration.PowerLaw{HourPower: 14, Endurance: x},
			duration.Hyperbolic{Critical: x, Reserve: 900},
			duration.Hyperbolic{Critical: 14, Reserve: x},
			duration.Logarithmic{Nominal: x, Long: 0.1},
			duration.Logarithmic{Nominal: 14, Short: x, Long: 0.1},
			duration.Logarithmic{Nominal: 14, Short: 0.1, Long: x},
			duration.Fading{Athlete: effort.Usual(x)},
			shaped(x, 1), shaped(0.02, x),
		)
	}
	curves = append(
		curves,
		duration.PowerLaw{HourPower: 14, Endurance: 1},
		duration.Logarithmic{Nominal: 14, Time: -time.Second, Long: 0.1},
		duration.Logarithmic{Nominal: 14, Long: 1},
	)
	for _, c := range curves {
		for _, at := range []time.Duration{1, time.Minute, time.Hour, 100 * time.Hour} {
			for _, x := range []float64{
				c.Power(at), duration.Work(c, at), duration.Exponent(c, at), duration.RiegelAt(c, at),
				duration.HourPower(c), duration.DistanceIn(c, at, 3.6),
			} {
				if !math.IsNaN(x) {
					t.Errorf("%+v at %v gives %g", c, at, x)
				}
			}
		}
		if got, err := duration.Time(c, 50_000); err == nil {
			t.Errorf("%+v gives %v", c, got)
		}
		if got, err := duration.IntensityPace(c, 1, 3.6); err == nil {
			t.Errorf("%+v gives a pace of %v", c, got)
		}
	}
}
