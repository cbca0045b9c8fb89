package duration_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
)

func drawTime(t *rapid.T, from, to time.Duration) time.Duration {
	return time.Duration(rapid.Int64Range(int64(from), int64(to)).Draw(t, "time"))
}

func timeOf(t rapid.TB, c duration.Curve, work float64) float64 {
	t.Helper()
	got, err := duration.Time(c, work)
	if err != nil {
		t.Fatal(err)
	}
	return got.Seconds()
}

// The root against the power law's own T = 3600 s (W/3600 P60)^(1/(1−k)), and the
// hyperbola's T = (W − reserve)/critical. Half a nanosecond of a minute is 1e-11.
func TestClosedForms(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		at := drawTime(t, time.Minute, 200*time.Hour)
		p := duration.PowerLaw{
			HourPower: rapid.Float64Range(5, 25).Draw(t, "hour power"),
			Endurance: rapid.Float64Range(0.02, 0.3).Draw(t, "endurance"),
		}
		work := duration.Work(p, at)
		near(t, "power law", timeOf(t, p, work), 3600*math.Pow(work/(3600*p.HourPower), 1/(1-p.Endurance)), 2e-11)
		h := duration.Hyperbolic{
			Critical: rapid.Float64Range(5, 25).Draw(t, "critical"),
			Reserve:  rapid.Float64Range(200, 2000).Draw(t, "reserve"),
		}
		work = h.Critical*at.Seconds() + h.Reserve
		near(t, "hyperbola", timeOf(t, h, work), (work-h.Reserve)/h.Critical, 2e-11)
	})
}

// lambertBelow is the branch −1 of Lambert's W for x in (−1/e, 0), the root w < −1 of
// w e^w = x, by bisection of w + ln(−w) = ln(−x), w negative.
func lambertBelow(x float64) float64 {
	low, high := -750.0, -1.0
	for range 200 {
		if w := (low + high) / 2; w+math.Log(-w) > math.Log(-x) {
			high = w
		} else {
			low = w
		}
	}
	return (low + high) / 2
}

// The branch's definition, and a published value: W₋₁(−0.1) = −3.577152… (Corless et al.
// 1996, Adv Comput Math 5:329, for the function; the value from memory).
func TestLambert(t *testing.T) {
	t.Parallel()
	near(t, "W(−0.1)", lambertBelow(-0.1), -3.577152, 1e-7)
	for _, w := range []float64{-1.5, -4, -20} {
		near(t, "W", lambertBelow(w*math.Exp(w)), w, 1e-12)
	}
}

// Mulligan, Adam & Emig 2018: the time over a distance beyond the break in closed form,
// T = −D/(γ W₋₁(−D e^(−1/γ)/(γ tc))) with D the work over the nominal power; ours to
// 1e-10 by the root. Derived anew, the paper not being at hand.
func TestLambertForm(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		l := duration.Logarithmic{
			Nominal: rapid.Float64Range(8, 25).Draw(t, "nominal"),
			Time:    drawTime(t, time.Minute, 20*time.Minute),
			Short:   0.1,
			Long:    rapid.Float64Range(0.02, 0.1).Draw(t, "long"),
		}
		work := l.Nominal * l.Time.Seconds() * rapid.Float64Range(1.01, 200).Draw(t, "multiple")
		d := work / l.Nominal
		want := -d / (l.Long * lambertBelow(-d*math.Exp(-1/l.Long)/(l.Long*l.Time.Seconds())))
		near(t, "time", timeOf(t, l, work), want, 1e-10)
	})
}

// Against what package effort says of the same athlete, for which fades of shape 1 have
// a closed form.
func TestFadingAgainstUniform(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := effort.Usual(rapid.Float64Range(5, 25).Draw(t, "hour power"))
		a.Endurance = rapid.Float64Range(0.02, 0.3).Draw(t, "endurance")
		a.Fade = rapid.Float64Range(0, 0.1).Draw(t, "fade")
		work := 3600 * a.HourPower * rapid.Float64Range(0.05, 20).Draw(t, "hour-equivalents")
		near(t, "time", timeOf(t, duration.Fading{Athlete: a}, work), a.UniformTime(work).Seconds(), 1e-10)
	})
}

// The logarithm's landmarks: 0.9 of the nominal power at Endurance times the break, no
// work gained at the end of the span, and a formula that reaches 0 e times later.
func TestLogarithmicLandmarks(t *testing.T) {
	t.Parallel()
	l := duration.Logarithmic{Nominal: 20, Short: 0.1, Long: 0.15}
	at := effort.Seconds(360 * l.Endurance())
	near(t, "power at the endurance time", l.Power(at), 0.9*20, 1e-11)
	near(t, "power at the break", l.Power(6*time.Minute), 20, 1e-15)
	near(t, "power at half the break", l.Power(3*time.Minute), 20*(1+0.1*math.Ln2), 1e-15)
	_, end := l.Span()
	near(t, "end of the span in hours", end.Hours(), 28.9, 0.05/28.9)
	near(t, "exponent at the end", l.Exponent(end), 1, 1e-9)
	near(t, "zero power over the end", l.ZeroPower().Hours()/end.Hours(), math.E, 1e-12)
	if p := l.Power(end + 1); !math.IsNaN(p) {
		t.Errorf("power beyond the span %g", p)
	}
	l.Long = 0.01
	if _, end := l.Span(); end != math.MaxInt64 || l.ZeroPower() != math.MaxInt64 {
		t.Errorf("span of a nearly constant power ends at %v, zero at %v", end, l.ZeroPower())
	}
}
