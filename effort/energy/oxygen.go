package energy

import "math"

// Weir's coefficients, in kcal per litre of oxygen used and of carbon dioxide given off.
//
// Source: Weir 1949, J Physiol 109:1, doi:10.1113/jphysiol.1949.sp004363, from memory.
// Brockway 1987 (Hum Nutr Clin Nutr 41C:463, from memory), with newer chemistry, differs
// by 0.2 % at most between RER 0.7 and 1.
const (
	weirOxygen = 3.941
	weirCarbon = 1.106
)

// OxygenEnergy is the usual energy of oxygen in running, in J/ml: OxygenEnergyAt(0.96),
// to three digits.
const OxygenEnergy = 20.9

// LeastRER and MostRER bound the respiratory exchange ratios that this package takes for
// possible in steady exercise; others give NaN. Within them, what is below FatRQ or
// above 1 is taken for breathing and storage, not burning, and held there. [Our own.]
const (
	LeastRER = 0.65
	MostRER  = 1.3
)

// Weir returns the energy in kcal/min, or kcal, of oxygen used and carbon dioxide given
// off in l/min, or l:
//
//	3.941 V̇O₂ + 1.106 V̇CO₂
//
// It is gross if the gases are, and leaves out urinary nitrogen: Weir's own form without
// it, which assumes an eighth of the energy to be protein. A negative or infinite volume
// gives NaN; the ratio of the two is not checked.
func Weir(oxygen, carbonDioxide float64) float64 {
	if !possible(oxygen) || !possible(carbonDioxide) {
		return math.NaN()
	}
	return float64(weirOxygen*oxygen) + weirCarbon*carbonDioxide
}

// OxygenEnergyAt returns the energy of oxygen by Weir's equation, in J/ml, which is
// kJ/l, at a respiratory exchange ratio:
//
//	4.184 (3.941 + 1.106 RER)
//
// The ratio is held within [FatRQ, 1]; outside [LeastRER, MostRER] the result is NaN.
func OxygenEnergyAt(rer float64) float64 {
	if !(rer >= LeastRER && rer <= MostRER) {
		return math.NaN()
	}
	burnt := math.Min(math.Max(rer, FatRQ), 1)
	return JoulesPerKilocalorie / 1000. * Weir(1, burnt)
}

// Power returns the metabolic power in W/kg of an oxygen uptake in ml/(kg min) at a
// respiratory exchange ratio: gross of a gross uptake, net of a net one. A negative or
// infinite uptake gives NaN; the ratio as in OxygenEnergyAt.
func Power(oxygen, rer float64) float64 {
	if !possible(oxygen) {
		return math.NaN()
	}
	return oxygen * OxygenEnergyAt(rer) / 60
}

// Oxygen returns the oxygen uptake in ml/(kg min) of a metabolic power in W/kg: the
// inverse of Power. What is needed beyond the maximal oxygen uptake is not breathed; the
// function does not know that limit.
func Oxygen(power, rer float64) float64 {
	if !possible(power) {
		return math.NaN()
	}
	return power * 60 / OxygenEnergyAt(rer)
}
