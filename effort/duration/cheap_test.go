package duration_test

import (
	"testing"
	"time"

	"isoeffort.example/effort/duration"
)

// Nothing allocates, from power to pace. Not parallel: the count is of the process.
func TestNoAllocations(t *testing.T) {
	for _, c := range []duration.Curve{
		duration.PowerLaw{HourPower: 14.5, Endurance: 0.1},
		shaped(0.02, 1), shaped(0.02, 0.6),
		duration.Hyperbolic{Critical: 14, Reserve: 900},
		duration.Logarithmic{Nominal: 18, Long: 0.09},
		plain{duration.Logarithmic{Nominal: 18, Long: 0.09}},
	} {
		n := testing.AllocsPerRun(10, func() {
			c.Power(time.Hour)
			duration.RiegelAt(c, time.Hour)
			duration.DistanceIn(c, time.Hour, 3.6)
			_, _ = duration.TimeAt(c, 42_195, 3.6)
			_, _ = duration.IntensityPace(c, 0.9, 3.6)
			_, _ = duration.ToPowerLaw(c, time.Minute, time.Hour)
		})
		if n != 0 {
			t.Errorf("%T: %g allocations", c, n)
		}
	}
}

// Time asks Power as often as it says, wherever within a day the time lies.
func TestTimeIsQuick(t *testing.T) {
	t.Parallel()
	for _, c := range append(
		fourCurves(),
		shaped(0.1, 1.5),
		duration.Hyperbolic{Critical: 14, Reserve: 9},
		duration.Logarithmic{Nominal: 18, Short: 0.5, Long: 0.15},
		plain{duration.Logarithmic{Nominal: 18, Long: 0.09}},
	) {
		most, total, n := 0, 0, 0
		for at := 2 * time.Second; at < 25*time.Hour; at = at * 11 / 10 {
			asked := 0
			if _, err := duration.Time(counter{c, &asked}, duration.Work(c, at)); err != nil {
				t.Error(err)
			}
			most, total, n = max(most, asked), total+asked, n+1
		}
		if most > 40 || total > 20*n {
			t.Errorf("%+v: %d times on average, at most %d", c, total/n, most)
		}
	}
}

// counter counts how often Power is asked.
type counter struct {
	duration.Curve
	asked *int
}

func (c counter) Power(t time.Duration) float64 {
	*c.asked++
	return c.Curve.Power(t)
}

// Span is the curve's.
func (c counter) Span() (shortest, longest time.Duration) {
	if a, ok := c.Curve.(duration.Analytic); ok {
		return a.Span()
	}
	return time.Second, 1000 * time.Hour
}

// Exponent is the curve's.
func (c counter) Exponent(t time.Duration) float64 { return duration.Exponent(c.Curve, t) }
