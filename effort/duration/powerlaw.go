package duration

import (
	"math"
	"time"
)

// A PowerLaw is power falling as a power of time:
//
//	P = HourPower (t/1 h)^−Endurance
//
// Its work grows as t^(1−k), k the endurance exponent, so on level ground it is Riegel's
// T2 = T1 (D2/D1)^b with b = 1/(1−k). HourPower must be positive and Endurance between 0
// and 1, or Power is NaN.
//
// Use it for some 3 min to 4 h. Riegel 1981, American Scientist 69:285 (second-hand)
// gives 3.5 to 230 min for runners. Drake, Finke & Ferguson 2024, Eur J Appl Physiol
// 124:507, find it the safer tool over all durations than a critical power. Below a
// minute it promises too much. Beyond 4 h it flatters, since it knows no fade: through the
// men's best times at 3000 m and the marathon it makes the best distance in 24 h 1.37
// times what it is.
type PowerLaw struct {
	HourPower float64 // W/kg
	Endurance float64 // the endurance exponent k
}

// Power returns the power in W/kg that can be held for a time.
func (p PowerLaw) Power(t time.Duration) float64 {
	if t <= 0 || !p.possible() {
		return math.NaN()
	}
	return p.HourPower * math.Pow(t.Hours(), -p.Endurance)
}

func (p PowerLaw) possible() bool { return positive(p.HourPower) && share(p.Endurance) }

// Span returns all that a Duration can be.
func (p PowerLaw) Span() (shortest, longest time.Duration) { return 1, longestTime }

// Exponent returns Endurance at every time.
func (p PowerLaw) Exponent(t time.Duration) float64 {
	if t <= 0 || !p.possible() {
		return math.NaN()
	}
	return p.Endurance
}

// About describes the curve.
func (PowerLaw) About() About {
	return About{
		Name:       "power law",
		Source:     "Riegel 1981, American Scientist 69:285, second-hand",
		Population: "holders of records in running, of both sexes and all ages",
		From:       210 * time.Second,
		To:         230 * time.Minute,
		Outside:    "promises too much on either side",
	}
}
