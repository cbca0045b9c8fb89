package energy

import "math"

// Substrates are what a metabolic power burns.
type Substrates struct {
	Carbohydrate float64 // g/(kg h), as glucose
	Fat          float64 // g/(kg h)

	CarbohydrateShare float64 // of the energy, 0 to 1
	FatShare          float64 // of the energy, 1 − CarbohydrateShare
}

// ByShare returns the substrates of a gross metabolic power in W/kg of which
// carbohydrate gives a share of the energy:
//
//	carbohydrate = 3600 s P share / CarbohydrateEnergy,  fat = 3600 s P (1 − share) / FatEnergy
//
// so that the energies add up to the power. All are NaN for a power that is negative or
// infinite and a share outside [0, 1].
func ByShare(gross, share float64) Substrates {
	if !possible(gross) || !(share >= 0 && share <= 1) {
		return Substrates{math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	}
	hour := 3600 * gross
	return Substrates{
		Carbohydrate:      hour * share / CarbohydrateEnergy,
		Fat:               hour * (1 - share) / FatEnergy,
		CarbohydrateShare: share,
		FatShare:          1 - share,
	}
}

// ByRER is ByShare with the share that a respiratory exchange ratio stands for,
// CarbohydrateShare. The grams are 0.6 to 1.0 % more than Oxidation gives for the
// oxygen of Oxygen(gross, rer), for the reason said there.
func ByRER(gross, rer float64) Substrates { return ByShare(gross, CarbohydrateShare(rer)) }

// CarbohydrateShare returns the share of the energy, 0 to 1, that carbohydrate gives at
// a respiratory exchange ratio, by Oxidation and the energies of its substrates. The
// ratio is held within [FatRQ, CarbohydrateRQ]; outside [LeastRER, MostRER] the result is
// NaN. Lusk's table (Lusk 1924, J Biol Chem 59:41, from memory) is 0.8 to 1.1 percentage
// points lower between 0.75 and 0.95: its ends are 0.707 and 1.
func CarbohydrateShare(rer float64) float64 {
	c, f := perLitre(rer)
	c, f = c*CarbohydrateEnergy, f*FatEnergy
	return c / (c + f)
}

// RER returns the respiratory exchange ratio at which carbohydrate gives a share of the
// energy: the inverse of CarbohydrateShare, FatRQ at 0 and CarbohydrateRQ at 1. A share
// outside [0, 1] gives NaN.
func RER(share float64) float64 {
	if !(share >= 0 && share <= 1) {
		return math.NaN()
	}
	c := (1 - share) * carbohydrateCarbon * CarbohydrateEnergy
	f := share * fatCarbon * FatEnergy
	return (float64(c*FatRQ) + f*CarbohydrateRQ) / (c + f)
}
