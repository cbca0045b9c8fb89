package energy

import "math"

// Coefficients of Péronnet & Massicotte in g/l, from memory. Inverted they are, per gram
// of carbohydrate, 0.745 l of oxygen and 0.742 l of carbon dioxide, and per gram of fat
// 2.007 and 1.412, each good to 0.3 % for the digits printed. Molar masses and molar
// volumes give the same within that, for glucose and between two common fats; see the tests.
const (
	carbohydrateCarbon = 4.585
	carbohydrateOxygen = 3.226
	fatOxygen          = 1.695
	fatCarbon          = 1.701
)

// FatRQ and CarbohydrateRQ are the respiratory quotients at which the equations of
// Oxidation are 0 for carbohydrate and for fat: 0.7036 and 0.9965. The second is not 1
// because a mole of carbon dioxide takes less room than one of oxygen.
const (
	FatRQ          = carbohydrateOxygen / carbohydrateCarbon
	CarbohydrateRQ = fatOxygen / fatCarbon
)

// CarbohydrateEnergy and FatEnergy are the energies of burning carbohydrate, counted as
// glucose, and human fat, in J/g.
//
// Sources, from memory: the heat of combustion of glucose, 2803 kJ/mol (tables of
// physical chemistry), over 180.16 g/mol; 39.4 kJ/g of fat (Livesey & Elia 1988, Am J
// Clin Nutr 47:608; ± 0.2). With the oxygen above they give 20.9 and 19.6 kJ/l. The fat
// figure of 9.75 kcal/g (40.8 kJ/g) that is often printed would make it 20.3 kJ/l, 3 %
// more than Weir, Lusk and Brockway have, and is not used.
const (
	CarbohydrateEnergy = 15_560.0
	FatEnergy          = 39_400.0
)

// Oxidation returns the carbohydrate, as glucose, and the fat burnt in g/min, or g, for
// oxygen used and carbon dioxide given off in l/min, or l:
//
//	carbohydrate = 4.585 V̇CO₂ − 3.226 V̇O₂
//	fat          = 1.695 V̇O₂ − 1.701 V̇CO₂
//
// It holds in steady exercise without much lactate, protein left out. The ratio of the
// gases is held within [FatRQ, CarbohydrateRQ], where the equations would turn negative;
// outside [LeastRER, MostRER], and for a volume that is negative or infinite or of
// oxygen 0, both are NaN.
//
// Source: Péronnet & Massicotte 1991, Can J Sport Sci 16:23, from memory. Their table of
// the energy of oxygen is not remembered well enough to stand here; energies follow from
// CarbohydrateEnergy and FatEnergy and are 0.6 to 1.0 % below Weir's, most of it because
// Weir, like Lusk, burns starch (21.1 kJ/l) where this burns glucose (20.9 kJ/l).
func Oxidation(oxygen, carbonDioxide float64) (carbohydrate, fat float64) {
	if !possible(oxygen) {
		return math.NaN(), math.NaN()
	}
	c, f := perLitre(carbonDioxide / oxygen)
	return oxygen * c, oxygen * f
}

// perLitre returns what a litre of oxygen burns, in g, at a respiratory exchange ratio.
func perLitre(rer float64) (carbohydrate, fat float64) {
	if !(rer >= LeastRER && rer <= MostRER) {
		return math.NaN(), math.NaN()
	}
	// The differences are taken from the zeros, so that neither ends below 0 by rounding.
	r := math.Min(math.Max(rer, FatRQ), CarbohydrateRQ)
	return carbohydrateCarbon * (r - FatRQ), fatCarbon * (CarbohydrateRQ - r)
}
