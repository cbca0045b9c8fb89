package treadmill

import "math"

// oxygenEnergy is the energy in J that a millilitre of oxygen gives at a respiratory
// exchange ratio of 0.96. Source: Weir 1949, J Physiol 109:1, from memory; energy.Power
// of package effort/energy takes the measured ratio instead.
const oxygenEnergy = 20.9

// OxygenPower returns the metabolic power in W/kg of an oxygen uptake in ml/(kg min), at
// 20.9 J/ml: gross of a gross uptake, net of a net one. An uptake that is negative or
// infinite gives NaN.
func OxygenPower(uptake float64) float64 {
	if !(uptake >= 0 && uptake <= math.MaxFloat64) {
		return math.NaN()
	}
	return uptake / 60 * oxygenEnergy
}

// NetCost returns the net cost of a metre along the slope, in J/(kg m), of a gross
// metabolic power and that of standing in W/kg at a belt speed in m/s:
//
//	(gross − standing) / speed
//
// standing is best the runner's own, measured before; effort.StandingPower is a mean.
// What cannot be gives NaN: a speed that is not positive, a standing power below 0, a
// gross power that is not above it, and infinite numbers.
func NetCost(gross, speed, standing float64) float64 {
	if !(speed > 0 && standing >= 0 && gross > standing) || math.IsInf(speed, 0) || math.IsInf(gross, 0) {
		return math.NaN()
	}
	return (gross - standing) / speed
}
