package treadmill

import (
	"fmt"
	"math"
)

// A Point is one measurement in steady state, or the mean of several.
type Point struct {
	Gradient float64 // rise over run, within ±1
	Cost     float64 // net, above standing, along the slope, J/(kg m)

	// Weight is the precision of Cost, relative to that of other points: n for the mean
	// of n measurements, say. Under Options.KnownVariance it is 1/variance in
	// (J/(kg m))⁻². 0 means 1, and is refused under KnownVariance.
	Weight float64

	// Speed is that of the belt in m/s; 0 means not known. It is not used in the fit, but
	// the range of speeds is kept for About.
	Speed float64
}

// Bounds of a point. [Our own: far beyond what can be measured.]
const (
	steepest    = 1.0
	dearest     = 1000.0 // J/(kg m), fifty times the dearest of Minetti et al. 2002
	leastWeight = 1e-12
	mostWeight  = 1e12
	fastest     = 15.0 // m/s
)

// Check returns an error that wraps ErrGradient, ErrCost, ErrWeight or ErrSpeed where the
// point cannot be: a number that is NaN or infinite, a gradient beyond ±1, a cost that is
// not positive or above 1000 J/(kg m), a weight that is negative or neither 0 nor within
// 1e-12 to 1e12, a speed below 0 or above 15 m/s.
func (p Point) Check() error {
	switch {
	case !finite(p.Gradient):
		return fmt.Errorf("%w: %g is not a finite number", ErrGradient, p.Gradient)
	case math.Abs(p.Gradient) > steepest:
		return fmt.Errorf("%w: %g is beyond ±1; 10 %% is 0.10", ErrGradient, p.Gradient)
	case !finite(p.Cost):
		return fmt.Errorf("%w: %g is not a finite number", ErrCost, p.Cost)
	case p.Cost <= 0:
		return fmt.Errorf("%w: %g J/(kg m) is not positive", ErrCost, p.Cost)
	case p.Cost > dearest:
		return fmt.Errorf("%w: %g J/(kg m) is above %g", ErrCost, p.Cost, dearest)
	case p.Weight != 0 && !(p.Weight >= leastWeight && p.Weight <= mostWeight):
		return fmt.Errorf("%w: %g is not within %g to %g", ErrWeight, p.Weight, leastWeight, mostWeight)
	case !(p.Speed >= 0 && p.Speed <= fastest):
		return fmt.Errorf("%w: %g m/s is not within 0 to %g", ErrSpeed, p.Speed, fastest)
	}
	return nil
}

// weight is Weight with 0 replaced.
func (p Point) weight() float64 {
	if p.Weight == 0 {
		return 1
	}
	return p.Weight
}

// finite reports whether x is neither NaN nor infinite.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
