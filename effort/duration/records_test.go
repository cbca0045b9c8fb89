package duration_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/duration"
)

// A best is the time in seconds of a world's best over a distance in metres.
type best struct{ metres, seconds float64 }

// Best times of 1980, of Riegel's day, from memory: 1500 m, mile, 3000, 5000 and 10,000 m
// and marathon, and of the women the distances that were run then.
var (
	men1980   = []best{{1500, 211.36}, {1609.344, 228.8}, {3000, 452.1}, {5000, 788.4}, {10_000, 1642.4}, {42_195, 7714}}
	women1980 = []best{{1500, 232.47}, {1609.344, 261.68}, {3000, 507.12}, {42_195, 8741}}
)

// Men's best times and distances as of 2023, from memory: track from 800 m, half and
// whole marathon, and on beyond the source of any curve here, 100 km and 24 h.
var (
	men2023 = []best{
		{800, 100.91},
		{1000, 131.96},
		{1500, 206.00},
		{1609.344, 223.13},
		{3000, 440.67},
		{5000, 755.36},
		{10_000, 1571.00},
		{21_097.5, 3451},
		{42_195, 7235},
	}
	hundred = best{100_000, 21_935}
	day     = best{319_614, 86_400}
)

// slopeOf is the slope of ln time over ln distance, by least squares.
func slopeOf(bests []best) float64 {
	var n, x, y, xx, xy float64
	for _, b := range bests {
		u, v := math.Log(b.metres), math.Log(b.seconds)
		n, x, y, xx, xy = n+1, x+u, y+v, xx+u*u, xy+u*v
	}
	return (n*xy - x*y) / (n*xx - x*x)
}

// Riegel 1981, from memory: the exponents of the world's best times in running. The best
// times of 1980 give 1.077 and 1.080. He used more distances than these: half a
// hundredth, less than a third of what sets either apart from 1.06.
func TestRiegelAgainstBests(t *testing.T) {
	t.Parallel()
	for _, g := range []struct {
		exponent float64
		bests    []best
	}{{duration.RiegelMen, men1980}, {duration.RiegelWomen, women1980}} {
		got := slopeOf(g.bests)
		t.Logf("%.4f, Riegel %.5f", got, g.exponent)
		if math.Abs(got-g.exponent) > 0.005 {
			t.Errorf("best times give %.4f, Riegel %.5f", got, g.exponent)
		}
	}
}

const bestCost = 3.6 // J/(kg m); it cancels in every comparison here

func (b best) effort() duration.Effort {
	return duration.Effort{Time: effort.Seconds(b.seconds), Power: bestCost * b.metres / b.seconds}
}

// misses are ln(predicted/true) of the times over distances.
func misses(t *testing.T, c duration.Curve, bests []best) (each []float64, mean float64) {
	t.Helper()
	for _, b := range bests {
		got, err := duration.TimeAt(c, b.metres, bestCost)
		if err != nil {
			t.Fatal(err)
		}
		miss := math.Log(got.Seconds() / b.seconds)
		each = append(each, miss)
		mean += math.Abs(miss) / float64(len(bests))
	}
	return each, mean
}

func must[C any](t *testing.T) func(C, error) C {
	return func(c C, err error) C {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
}

// Mulligan, Adam & Emig 2018: best times from 800 m to the marathon with a mean error of
// less than 1 %. Here even through three of them alone, without a fit.
func TestLogarithmicAgainstBests(t *testing.T) {
	t.Parallel()
	l := must[duration.Logarithmic](t)(duration.LogarithmicThrough(0, men2023[5].effort(), men2023[8].effort(), men2023[0].effort()))
	each, mean := misses(t, l, men2023)
	t.Logf("%+v: mean %.4f, each %.4f", l, mean, each)
	if mean >= 0.01 {
		t.Errorf("mean error %.2f %%", 100*mean)
	}
}

// fadingThrough is the athlete of a given fade and two efforts, by bisection of the
// endurance exponent.
func fadingThrough(fade float64, a, b duration.Effort) duration.Fading {
	low, high := 0.01, 0.4
	f := duration.Fading{Athlete: effort.Athlete{HourPower: 20, Fade: fade}}
	for range 60 {
		f.Athlete.Endurance = (low + high) / 2
		if f.Power(a.Time)/f.Power(b.Time) < a.Power/b.Power {
			low = f.Athlete.Endurance
		} else {
			high = f.Athlete.Endurance
		}
	}
	f.Athlete.HourPower *= a.Power / f.Power(a.Time)
	return f
}

// What the curves promise of long races, at the men's best times: through 3000 m and
// the marathon (the hyperbola through 3000 and 10,000 m), how many times the best
// distance each curve promises for the time of the best 100 km, and for 24 h. All
// flatter, the fade least. Few run so long, so part of it is the field's and not the
// curve's.
func TestLongRaces(t *testing.T) {
	t.Parallel()
	short, middle, long := men2023[4].effort(), men2023[6].effort(), men2023[8].effort()
	for _, r := range []struct {
		name         string
		curve        duration.Curve
		hundred, day float64
	}{
		{"hyperbola", must[duration.Hyperbolic](t)(duration.HyperbolicThrough(short, middle)), 1.36, 1.67},
		{"power law", must[duration.PowerLaw](t)(duration.PowerLawThrough(short, long)), 1.20, 1.37},
		{"logarithm", must[duration.Logarithmic](t)(duration.LogarithmicThrough(0, short, long, duration.Effort{})), 1.19, 1.34},
		{"fade 0.02", fadingThrough(0.02, short, long), 1.17, 1.19},
		{"fade 0.04", fadingThrough(0.04, short, long), 1.14, 1.07},
	} {
		inHundred := duration.DistanceIn(r.curve, effort.Seconds(hundred.seconds), bestCost) / hundred.metres
		inDay := duration.DistanceIn(r.curve, 24*time.Hour, bestCost) / day.metres
		if math.Abs(inHundred-r.hundred) > 0.005 || math.Abs(inDay-r.day) > 0.005 {
			t.Errorf("%s: %.3f of the best in 100 km's time and %.3f in 24 h, want %.2f and %.2f", r.name, inHundred, inDay, r.hundred, r.day)
		}
	}
}
