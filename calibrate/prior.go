package calibrate

import (
	"fmt"
	"math"

	"isoeffort.example/effort"
)

// A Belief is a lognormal distribution of one number before any result is seen: its
// median, and the SD of its natural logarithm. A LogSD of 0 takes the number as known.
type Belief struct{ Median, LogSD float64 }

// A Prior is a belief for each number of an athlete, in the order of effort.Number.
type Prior [effort.Numbers]Belief

// Recreational is the default prior, for runners of every level on roads and good paths:
// hour power 12 W/kg (0.4), endurance exponent 0.10 (0.3), fade 0.02 (0.5), fade shape 1
// (0.25 near the median, running out towards 0.4 and 1.3), braking 1 (0.4). [Our own, from the spread of
// published exponents and of finish times; package effort gives the sources of the
// usual values.]
func Recreational() Prior {
	return Prior{
		effort.HourPower: {12, 0.4},
		effort.Endurance: {0.10, 0.3},
		effort.Fade:      {0.02, 0.5},
		effort.FadeShape: {1, 0.25},
		effort.Braking:   {1, 0.4},
	}
}

// Mountain is Recreational with a braking of 2, for technical trail.
func Mountain() Prior {
	p := Recreational()
	p[effort.Braking].Median = 2
	return p
}

// Flat is a prior that all but leaves every number to the results, 20 to 1 about its usual
// value for one log SD: for those who have many results, and for looking at what these say
// for themselves. With few, expect numbers that no runner has. The fade shape stays as in
// Recreational: nothing is known without that.
func Flat() Prior {
	p := Recreational()
	for n := range p {
		if effort.Number(n) != effort.FadeShape {
			p[n].LogSD = 3
		}
	}
	return p
}

// bounds hold each number within what the model can mean by it.
var bounds = [effort.Numbers][2]float64{
	effort.HourPower: {1, 40},
	effort.Endurance: {0.01, 0.4},
	effort.Fade:      {0, 0.5},
	effort.FadeShape: {0.4, 1.3},
	effort.Braking:   {0, 10},
}

// athlete returns the athlete at z, each number so many prior SDs from its median, and
// the derivative of each number's logarithm by z.
func (p Prior) athlete(base effort.Athlete, z []float64) (a effort.Athlete, slope [effort.Numbers]float64) {
	a = base
	for n := range effort.Number(effort.Numbers) {
		var v float64
		if n == effort.FadeShape {
			v, slope[n] = p[n].between(z[n], bounds[n][0], bounds[n][1])
		} else {
			v, slope[n] = p[n].lognormal(z[n], bounds[n][0], bounds[n][1])
		}
		a = a.Set(n, v)
	}
	return a, slope
}

// lognormal is the number at z and the slope of its logarithm; the bounds are so far out
// that only a minimiser's wild step meets them.
func (b Belief) lognormal(z, low, top float64) (v, slope float64) {
	v, slope = b.Median*math.Exp(b.LogSD*z), b.LogSD
	if !(v >= low && v <= top) {
		return math.Min(math.Max(v, low), top), 0
	}
	return v, slope
}

// between is the same for a number whose bounds are near: a logistic curve from low to
// top that has the belief's median and, there, its spread, so that no edge stands in
// the minimiser's way.
func (b Belief) between(z, low, top float64) (v, slope float64) {
	if b.LogSD == 0 || b.Median <= low || b.Median >= top {
		return b.Median, 0
	}
	share := (b.Median - low) / (top - low)
	steep := b.LogSD * b.Median / ((top - low) * share * (1 - share))
	share = 1 / (1 + (1-share)/share*math.Exp(-steep*z))
	v = low + (top-low)*share
	return v, steep * share * (1 - share) * (top - low) / v
}

func (p Prior) check() error {
	for n, b := range p {
		name, low, top := effort.Number(n), bounds[n][0], bounds[n][1]
		if !(b.Median >= low && b.Median <= top) {
			return fmt.Errorf("calibrate: %w: median %g of the %v is not within %g to %g", ErrPrior, b.Median, name, low, top)
		}
		if !(b.LogSD >= 0 && b.LogSD <= 3) {
			return fmt.Errorf("calibrate: %w: log SD %g of the %v is not within 0 to 3", ErrPrior, b.LogSD, name)
		}
	}
	return nil
}
