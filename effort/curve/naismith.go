package curve

import "math"

// Naismith is Naismith's rule for hill walks: an hour for every three miles and an hour
// for every 2000 feet of climb, so a metre of climb takes as long as 7.92 m of level. The
// zero value is the rule as published. Uphill
//
//	Speed(i) = Level / (1 + Equivalence · i)
//
// horizontally; downhill it is Level. It has no bounds; NaN gives NaN, as does a field
// for which Check has an error.
//
// With an Equivalence of 8 it is what the records of fell races gave for men, with 10 for
// women (Scarf 2007, J Sports Sci 25:719, second-hand), at their own level speeds. It is
// no rule for descents that have to be held back on.
//
// Source: Naismith 1892, Scott Mt Club J 2:136, from memory; a mountaineer's rule of
// thumb, not a measurement.
type Naismith struct {
	// Level is the speed on the level in m/s. 0 means 1.341, three miles an hour.
	Level float64

	// Equivalence is how many metres of level take as long as a metre of climb. 0 means
	// 7.92.
	Equivalence float64
}

// Speed returns the horizontal speed in m/s.
func (n Naismith) Speed(gradient float64) float64 {
	if n.Check() != nil {
		return math.NaN()
	}
	n = n.filled()
	return n.Level / (1 + n.Equivalence*math.Max(gradient, 0))
}

// Check returns an error that wraps ErrParameter unless Level is within 0.1 to 10 m/s and
// Equivalence within 1 to 50, or 0. [Our own.]
func (n Naismith) Check() error {
	n = n.filled()
	if err := within("level speed", n.Level, 0.1, 10, "m/s"); err != nil {
		return err
	}
	return within("equivalence", n.Equivalence, 1, 50, "")
}

// filled replaces what 0 stands for: a mile is 1609.344 m, a foot 0.3048 m.
func (n Naismith) filled() Naismith {
	const threeMiles, climb = 3 * 1609.344, 2000 * 0.3048
	if n.Level == 0 {
		n.Level = threeMiles / 3600
	}
	if n.Equivalence == 0 {
		n.Equivalence = threeMiles / climb
	}
	return n
}
