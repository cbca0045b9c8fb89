package forecast_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

// A basis with a t quantile widens the 90 % interval to that many SDs (Basis.Interval).
func TestWideBasis(t *testing.T) {
	t.Parallel()
	d := drawer(t, effort.Usual(12), effort.Basis{Noise: 0.03, Quantile: 2.015}, forecast.Tilt{}) // ν 5 in any table of t
	var noise []float64
	for i := range 20_000 {
		noise = append(noise, d(i, rand.New(rand.NewPCG(1, uint64(i)))).Noise)
	}
	slices.Sort(noise)
	// Of so many the 95 % quantile has an SD of √(0.05·0.95/20000)/0.064 = 0.024 SDs; four.
	if got := noise[19_000] / 0.03; math.Abs(got-2.015) > 0.1 {
		t.Errorf("95 %% at %.3f SDs", got)
	}
}

// The regression finds what the derivative of the fastest time says to first order: row j
// of slopeᵀ Cov slope, correlations and all. Spreads are small, so that the first order
// holds; the shares have a sampling SD of about √(2/2000) = 0.03 times themselves, and that
// of the noise among them.
func TestSourcesAreAnalytic(t *testing.T) {
	t.Parallel()
	c := profile(t, 60_000, rolling)
	a := effort.Usual(12)
	b := effort.Basis{Noise: 0.01}
	for n, sd := range []float64{0.02, 0.06, 0.15, 0.08, 0.1} {
		b.Cov[n][n] = sd * sd
	}
	b.Cov[0][2], b.Cov[2][0] = 0.5*0.02*0.15, 0.5*0.02*0.15 // hour power and fade
	f := of(t, c, drawer(t, a, b, forecast.Tilt{}), plan.Race{}, forecast.Options{Draws: 2000})
	slope := slopeOf(t, c, a)
	want, total := map[string]float64{"the day": b.Noise * b.Noise}, b.LogSD(slope)*b.LogSD(slope)
	for i := range effort.Numbers {
		for j := range effort.Numbers {
			want[effort.Number(i).String()] += slope[i] * b.Cov[i][j] * slope[j]
		}
	}
	for _, s := range f.Sources {
		if w := want[s.Name] / total; math.Abs(s.Share-w) > 0.04 {
			t.Errorf("%s: %.3f, by the slopes %.3f", s.Name, s.Share, w)
		}
	}
	if len(f.Sources) != 6 || f.Unexplained > 0.02 {
		t.Errorf("sources %v, unexplained %.3f", f.Sources, f.Unexplained)
	}
	times := f.Finish().Times
	width := math.Log(times[4].Seconds()/times[0].Seconds()) / (2 * 1.645)
	if math.Abs(width/math.Sqrt(total)-1) > 0.08 { // sampling SD 0.026 at 2000 draws; three
		t.Errorf("SD %.4f, by the slopes %.4f", width, math.Sqrt(total))
	}
}

func slopeOf(t *testing.T, c *course.Course, a effort.Athlete) [effort.Numbers]float64 {
	t.Helper()
	g, err := effort.NewGround(c, 0)
	if err != nil {
		t.Fatal(err)
	}
	in, err := effort.NewIntegrator(g, a, effort.Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	fastest, err := in.Fastest(nil)
	if err != nil {
		t.Fatal(err)
	}
	return fastest.Slope
}
