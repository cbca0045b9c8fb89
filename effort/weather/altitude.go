package weather

import "math"

// WehrlinHallen returns the share of the maximal oxygen uptake at 300 m that is left at
// an altitude, m: 1 up to 300 m and, above,
//
//	1 − 0.063 (altitude − 300)/1000
//
// It was measured from 300 to 2800 m in eight unacclimatised endurance athletes, in a
// chamber. Acclimatised athletes lose less, and people of lower uptake often
// do. The line goes on to MaxAltitude, where 0.326 are left, the least that it returns; from
// about 5000 m up the true loss is greater. The altitude must be within MinAltitude and
// MaxAltitude, else the result is NaN. It knows nothing of mountain sickness, which is a
// reason to go down and see a doctor, not to pace.
//
// Source: Wehrlin & Hallén 2006, Eur J Appl Physiol 96:404,
// doi:10.1007/s00421-005-0081-9, from memory.
func WehrlinHallen(altitude float64) float64 {
	if !inside(altitude, MinAltitude, MaxAltitude) {
		return math.NaN()
	}
	return 1 - 0.063/1000*math.Max(altitude-300, 0)
}
