package energy

import (
	"math"

	"isoeffort.example/effort"
)

// RestingOxygen is the oxygen uptake of sitting at rest by convention, in ml/(kg min).
// It is the 3.5 of textbooks; from memory. Measured means are lower, 2.6 with an SD of
// 0.4 in 769 adults (Byrne et al. 2005, J Appl Physiol 99:1112, from memory), and
// standing is higher: effort.StandingPower is about 4.2.
const RestingOxygen = 3.5

// Gross returns the gross metabolic power in W/kg of a net one above standing: net +
// effort.StandingPower. A negative or infinite net power gives NaN.
func Gross(net float64) float64 {
	if !possible(net) {
		return math.NaN()
	}
	return net + effort.StandingPower
}

// Net returns the metabolic power above standing in W/kg of a gross one: the inverse of
// Gross. It is negative for somebody who sits. A negative or infinite gross power gives
// NaN.
func Net(gross float64) float64 {
	if !possible(gross) {
		return math.NaN()
	}
	return gross - effort.StandingPower
}
