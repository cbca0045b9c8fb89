// Package curve holds published cost curves and rules of walking that the model does not
// go by itself: to compare with, or to be given to it as an effort.Curve.
//
//	ACSMRunning    effort.Separable  treadmill, level and uphill
//	ACSMWalking    effort.Separable  treadmill, level and uphill
//	Pandolf        effort.Separable  walking with a load, level and uphill
//	PandolfSantee  effort.Curve      the same with a correction downhill
//	Naismith       Rule              hill walking, hours by distance and climb
//	Tobler         Rule              walking speed by gradient
//
// The curves return net metabolic power in W/kg of body mass, above standing; the gross
// figures of their sources have functions of their own. Speeds of curves are along the
// slope in m/s, those of rules are horizontal, gradients are rise over horizontal run. A
// negative or infinite speed gives NaN, and so does NaN anywhere. Every curve passes the
// laws of package effort/efforttest over the range that its About states. Pandolf's has
// no descents, where that equation breaks them.
//
// It was all written from memory of the sources and checked by arithmetic against each
// other and against the curves of package effort. It is not for anything medical: the
// sources measured healthy adults, mostly young men.
package curve

import "math"

// steepest is the gradient above which the curves here are held constant, so that they
// stay finite. Their sources do not go so far; RunningCost and WalkingPower of package
// effort are held from the same gradient. [Our own.]
const steepest = 0.45

// held is min(max(i, low), top) that lets NaN through.
func held(i, low, top float64) float64 { return math.Min(math.Max(i, low), top) }

// moving returns a speed that is possible as it is, and NaN for one that is not.
func moving(speed float64) float64 {
	if speed >= 0 && speed <= math.MaxFloat64 {
		return speed
	}
	return math.NaN()
}
