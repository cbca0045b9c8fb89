package energy_test

import (
	"math"
	"testing"

	"isoeffort.example/effort/energy"
)

// Group means, from memory: share of maximal oxygen uptake, share of carbohydrate.
var groupMeans = [][2]float64{
	{0.25, 0.10}, {0.65, 0.50}, {0.85, 0.73}, // Romijn et al. 1993
	{0.44, 0.45}, {0.57, 0.51}, {0.72, 0.76}, // van Loon et al. 2001
}

// misfit is the sum of squares about the group means.
func misfit(c energy.Crossover) (sum, worst float64) {
	for _, m := range groupMeans {
		d := c.Share(m[0]) - m[1]
		sum += d * d
		worst = math.Max(worst, math.Abs(d))
	}
	return sum, worst
}

// No other pair of two-digit numbers fits the group means better than the usual ones, and
// the misfit is what Crossover says.
func TestCrossoverIsTheFit(t *testing.T) {
	t.Parallel()
	usual, worst := misfit(energy.Crossover{})
	for half := 40; half <= 80; half++ {
		for width := 5; width <= 50; width++ {
			c := energy.Crossover{Half: float64(half) / 100, Width: float64(width) / 100}
			if sum, _ := misfit(c); sum < usual-1e-12 {
				t.Errorf("%+v fits better: %.6f < %.6f", c, sum, usual)
			}
		}
	}
	if rms := math.Sqrt(usual / float64(len(groupMeans))); math.Abs(rms-0.08) > 0.005 || math.Abs(worst-0.10) > 0.005 {
		t.Errorf("misfit %.3f, at worst %.3f", rms, worst)
	}
}

// The range for 90 % of people holds every group mean: a mean outside of it would say that
// SD is too small.
func TestRangeHoldsGroupMeans(t *testing.T) {
	t.Parallel()
	for _, m := range groupMeans {
		if r := (energy.Crossover{}).Range(m[0]); !(r.Low <= m[1] && m[1] <= r.High) {
			t.Errorf("%v outside of %v", m, r)
		}
	}
}

// Not fitted to, from memory: most fat burns at 0.48 of maximal uptake (Venables et al.
// 2005, the general population on a treadmill) to 0.64 (Achten et al. 2002, trained
// cyclists).
func TestMostFatBetweenStudies(t *testing.T) {
	t.Parallel()
	var c energy.Crossover
	best, at := 0.0, 0.0
	for x := 0.25; x <= 1; x += 0.001 {
		if fat := x * (1 - c.Share(x)); fat > best {
			best, at = fat, x
		}
	}
	if at < 0.48 || at > 0.64 || math.Abs(at-0.51) > 0.005 {
		t.Errorf("most fat at %.3f", at)
	}
}

// Where the usual SD sits: 0.14 in the share near Half, 0.04 in the respiratory exchange
// ratio, as Goedecke et al. 2000 found, from memory.
func TestSDAsExchangeRatio(t *testing.T) {
	t.Parallel()
	var c energy.Crossover
	r := c.Range(0.57)
	share := (r.High - r.Low) / (2 * 1.645)
	rer := (energy.RER(r.High) - energy.RER(r.Low)) / (2 * 1.645)
	if math.Abs(share-0.14) > 0.015 || math.Abs(rer-0.04) > 0.005 {
		t.Errorf("SD %.3f of the share, %.4f of the ratio", share, rer)
	}
}

// Relative intensity 1 is the hour share; at rest it is standing's.
func TestUptake(t *testing.T) {
	t.Parallel()
	for _, hour := range []float64{8, 14.5, 20} {
		if x := (energy.Crossover{}).Uptake(hour, hour); math.Abs(x-0.85) > 1e-15 {
			t.Errorf("hour power %g: %v", hour, x)
		}
		if x := (energy.Crossover{HourShare: 0.8}).Uptake(0, hour); math.Abs(x-0.8*1.44/(hour+1.44)) > 1e-15 {
			t.Errorf("standing, hour power %g: %v", hour, x)
		}
	}
}
