package treadmill_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

// Of 2000 invented laboratories, the truth lies within the 95 % interval of 95 % at every
// gradient looked at, within 3 SD of that count, whether the variance is known or not. The
// points have unlike weights, as the means of 1 to 4 measurements.
func TestCoverage(t *testing.T) {
	t.Parallel()
	const trials, sd = 2000, 0.3
	at := []float64{-0.45, -0.18, 0, 0.25, 0.45}
	for _, known := range []bool{false, true} {
		draw := rand.New(rand.NewPCG(2026, 11))
		hits := make([]int, len(at))
		for range trials {
			points := on(gradients2002, effort.RunningCost)
			for j := range points {
				n := float64(1 + j%4)
				points[j].Cost += draw.NormFloat64() * sd / math.Sqrt(n)
				points[j].Weight = n
				if known {
					points[j].Weight = n / (sd * sd)
				}
			}
			c := mustFit(t, points, treadmill.Options{KnownVariance: known})
			quantile := 1.959963984540054
			if !known {
				quantile = distuv.StudentsT{Sigma: 1, Nu: float64(c.DegreesOfFreedom())}.Quantile(0.975)
			}
			for k, i := range at {
				if math.Abs(c.PerMetre(i)-effort.RunningCost(i)) <= quantile*c.SE(i) {
					hits[k]++
				}
			}
		}
		spread := 3 * math.Sqrt(0.95*0.05/trials)
		for k, i := range at {
			if share := float64(hits[k]) / trials; math.Abs(share-0.95) > spread {
				t.Errorf("known variance %v, at %g: coverage %.4f, want 0.95 within %.4f", known, i, share, spread)
			}
		}
	}
}
