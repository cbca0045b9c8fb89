package duration

import (
	"math"
	"time"
)

// Riegel's exponents b of T2 = T1 (D2/D1)^b. All are averages over records; a runner's
// own lie between 1.04 and 1.15 or so (from memory), and 1.06 is too fast for most at the marathon
// (Vickers & Vertosick 2016, second-hand).
const (
	// RiegelUsual is the exponent for all, as of 1977: for times of 3.5 to 230 min.
	// Source: Riegel 1981, American Scientist 69:285, second-hand.
	RiegelUsual = 1.06

	// RiegelMen and RiegelWomen are the exponents of the world's best times in running.
	// Source: Riegel 1981, from memory; best times of 1980, from memory too, give 1.077
	// and 1.080 (see the tests).
	RiegelMen   = 1.07732
	RiegelWomen = 1.08283
)

// Riegel returns the time over distance d2 by a runner who took t1 over d1, on like
// ground: t1 (d2/d1)^b. Distances are in one unit, whichever. It holds for times of 3.5
// to 230 min; beyond it extrapolates and flatters.
//
// The error wraps ErrInput for a time or a distance that is not a positive number, for a
// b of less than 1, by which a longer race would be run faster, and for a time longer
// than a Duration can be.
//
// Source: as RiegelUsual.
func Riegel(t1 time.Duration, d1, d2, b float64) (time.Duration, error) {
	if t1 <= 0 || !positive(d1) || !positive(d2) || !positive(b) || b < 1 {
		return 0, inputError("%v over %g predicts nothing over %g with an exponent of %g", t1, d1, d2, b)
	}
	return seconds(t1.Seconds() * math.Pow(d2/d1, b))
}

// RiegelBetween returns the exponent b of one runner's times over two distances, ln(t2/t1)
// over ln(d2/d1). It is NaN if a time or a distance is not a positive number or the
// distances are equal. A value below 1 says that the two races were not alike.
func RiegelBetween(t1 time.Duration, d1 float64, t2 time.Duration, d2 float64) float64 {
	if t1 <= 0 || t2 <= 0 || !positive(d1) || !positive(d2) || d1 == d2 {
		return math.NaN()
	}
	return logRatio(t2, t1) / math.Log(d2/d1)
}
