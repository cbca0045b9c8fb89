package effort

import (
	"math"
	"time"
)

// A Basis says what an athlete's numbers rest on, so that a forecast can say how sure it
// is. Package calibrate makes one; the zero value is an athlete taken as known.
type Basis struct {
	// Cov is the covariance of the natural logarithms of the athlete's numbers.
	Cov [Numbers][Numbers]float64

	// Noise is the SD of the logarithm of one race's time about the model.
	Noise float64

	// Quantile is the number of SDs on either side of the centre that hold 90 %.
	// 0 means 1.645, the normal distribution's.
	Quantile float64

	Results int           // how many results were used, 0: none
	Longest time.Duration // of them

	// Doubts are what a reader of a plan should know about the numbers, in plain words.
	Doubts []string
}

// Known reports whether the athlete is taken as known, without a spread.
func (b Basis) Known() bool { return b.Results == 0 }

// LogSD returns the SD of the logarithm of a race's time, from the slopes ∂ ln T/∂ ln θ
// that FastestTime gives: to first order √(sᵀ Cov s + Noise²).
func (b Basis) LogSD(slope [Numbers]float64) float64 {
	v := b.Noise * b.Noise
	for i := range Numbers {
		for j := range Numbers {
			v += slope[i] * b.Cov[i][j] * slope[j]
		}
	}
	return math.Sqrt(math.Max(v, 0))
}

// Interval returns the ends of the central 90 % interval of a race's time in seconds.
func (b Basis) Interval(moving float64, slope [Numbers]float64) (low, high float64) {
	q := b.Quantile
	if q == 0 {
		q = 1.645
	}
	w := math.Exp(q * b.LogSD(slope))
	return moving / w, moving * w
}
