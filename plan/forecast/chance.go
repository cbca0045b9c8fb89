package forecast

import "math"

// A Chance is a probability and the standard error that it has from the number of draws
// alone. What the draws themselves may have wrong is not in it.
type Chance struct {
	P  float64 `json:"p"`
	SE float64 `json:"se"`
}

// chanceOf is x of n. The standard error is √(p̃(1−p̃)/n) at p̃ = (x+1)/(n+2), so that none
// or all of n is not taken for certain.
func chanceOf(x, n int) Chance {
	if n == 0 {
		return Chance{}
	}
	p := float64(x+1) / float64(n+2)
	return Chance{P: float64(x) / float64(n), SE: math.Sqrt(p * (1 - p) / float64(n))}
}
