package fuel

import (
	"fmt"
	"math"

	"isoeffort.example/internal/say"
)

// Units says how distances and drink are printed. Grams are grams everywhere.
type Units int

// The units: kilometres and millilitres, or miles and US fluid ounces.
const (
	Metric Units = iota
	Imperial
)

// mlPerOunce is exact by definition: the US fluid ounce is 231/128 cubic inches.
const mlPerOunce = 29.5735295625

func (u Units) distance(m float64) string {
	if u == Imperial {
		return say.Imperial().At(m)
	}
	return say.Metric().At(m)
}

// drink rounds down to 50 ml or an ounce: a range is no measurement, and down is the safe side.
func (u Units) drink(r Range) string {
	step, unit, per := 50.0, "ml", 1.0
	if u == Imperial {
		step, unit, per = 1, "oz", mlPerOunce
	}
	down := func(x float64) float64 { return step * math.Floor(x/per/step+1e-9) }
	return fmt.Sprintf("%.0f to %.0f %s", down(r.Low), down(r.High), unit)
}
