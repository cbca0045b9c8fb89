package duration

import (
	"math"
	"testing"

	"isoeffort.example/effort"
)

// Ten Gauss points integrate every power up to the 19th exactly, over [−1, 1], and no
// other ten points do.
func TestGauss(t *testing.T) {
	t.Parallel()
	for n := 0; n < 20; n += 2 {
		sum := 0.0
		for _, g := range gauss {
			sum += 2 * g.weight * math.Pow(g.at, float64(n))
		}
		if want := 2 / float64(n+1); math.Abs(sum-want) > 1e-15 {
			t.Errorf("x^%d integrates to %.17g, want %.17g", n, sum, want)
		}
	}
}

// The panels of faded against ten thousand even ones, for the fades hardest to follow,
// up to what a Duration can hold.
func TestFadedAgainstFinePanels(t *testing.T) {
	t.Parallel()
	for _, fresh := range []float64{0.01, 1, 100, 2.5e6} {
		for _, shape := range []float64{0.1, 0.9, 1.5, 2} {
			a := effort.Athlete{HourPower: 10, Endurance: 0.01, Fade: 0.5, FadeShape: shape}
			const panels = 10_000
			work, sum := faded(a, fresh), 0.0
			for i := range panels {
				sum += freshOver(a, work*(float64(i)/panels), work/panels)
			}
			if !(math.Abs(sum/fresh-1) < 1e-12) {
				t.Errorf("shape %g: the work of %g is worth %.14g", shape, fresh, sum)
			}
		}
	}
}
