package curve

import (
	"math"

	"isoeffort.example/effort"
)

// PandolfSantee is Pandolf with the downhill correction of Santee and others. Its fields
// are those of Pandolf, whose Power it has on the level and uphill. Downhill, in watts,
//
//	CF = η (G (W+L) V / 3.5 − (W+L)(G+6)²/W + 25 − V²)
//
// is subtracted from M, in the terms of Pandolf with G below 0. Published does that and
// nothing else, and has three faults, for which Power departs from it [Our own]:
//
//   - It jumps at G = 0: just below, walking costs η ((W+L) 36/W − 25 + V²) W more than
//     on the level, 0.18 W/kg at 1.34 m/s for 70 kg without load, and 0.70 W/kg with a
//     load of 70 kg. So Power downhill is at most Power on the level, which is held down
//     to −0.7 % in the first case and −1.5 % in the second.
//   - At slow speeds it is nonsense: its net power does not end at 0 with the speed, and
//     without load it is negative below 0.62 m/s at −9 %. So below 1 m/s Power is in
//     proportion to speed, at the cost per metre of 1 m/s.
//   - Beyond the gradients measured it grows with the square of the gradient, even for
//     one who hardly moves. So below −12 % it is held constant.
//
// So Power is continuous and grows with speed, but is no more than a guess below 1 m/s
// and on descents steeper than 12 %, where it is too low in the end. The correction
// counts watts, so Power depends on the body mass even without load.
//
// Source: Santee, Allison, Blanchard & Small 2001, Aviat Space Environ Med 72:562, from
// memory, the range of gradients included: soldiers on a treadmill at 1.34 m/s, with and
// without loads. At 1.34 m/s and −10 % without load its published gross
// power is 0.425 W/kg above that of effort.WalkingPower, whose standard error is 0.42, and
// its net power 0.365.
type PandolfSantee Pandolf

const (
	// santeeSlowest is the speed in m/s below which the correction is not used. [Our own.]
	santeeSlowest = 1.0

	// santeeSteepest is the steepest descent measured, from memory.
	santeeSteepest = -0.12
)

// Published returns the gross power in W/kg of body mass by the two equations, held
// nowhere. It is NaN where Check objects.
func (p PandolfSantee) Published(speed, gradient float64) float64 {
	gross := Pandolf(p).Published(speed, gradient)
	if gradient < 0 {
		gross -= p.correction(speed, gradient)
	}
	return gross
}

// correction is CF/W.
func (p PandolfSantee) correction(speed, gradient float64) float64 {
	f := Pandolf(p).filled()
	total, percent := f.Mass+f.Load, 100*gradient
	steep := (percent + 6) * (percent + 6) / f.Mass
	return f.Terrain / f.Mass * (percent*total*speed/3.5 - total*steep + 25 - speed*speed)
}

// Power returns the net power in W/kg of body mass, NaN where Check objects.
func (p PandolfSantee) Power(speed, gradient float64) float64 {
	if !(gradient < 0) {
		return Pandolf(p).Power(speed, gradient)
	}
	at := math.Max(moving(speed), santeeSlowest)
	gradient = math.Max(gradient, santeeSteepest)
	downhill := Pandolf(p).Power(at, gradient) - p.correction(at, gradient)
	return math.Min(Pandolf(p).Power(speed, 0), downhill*speed/at)
}

// About describes the curve.
func (PandolfSantee) About() effort.About {
	return effort.About{
		Name:       "Pandolf et al. 1977 with Santee et al. 2001 downhill, walking with a load",
		Source:     "J Appl Physiol 43:577, doi:10.1152/jappl.1977.43.4.577; Aviat Space Environ Med 72:562; from memory",
		Population: "a few young men, most of them soldiers, on a treadmill",
		Gradient:   [2]float64{santeeSteepest, 0.25},
		Speed:      [2]float64{santeeSlowest, 2.2},
		Gross:      true,
		Outside:    "held below -0.12 and above 0.45; downhill below 1 m/s in proportion to speed, above 2.2 m/s extrapolated",
	}
}
