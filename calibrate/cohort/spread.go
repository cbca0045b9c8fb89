package cohort

import "math"

// spreads are the second level of the model: how much everything varies.
type spreads struct {
	// root is the lower Cholesky factor, row by row, of the covariance of the logarithms of
	// an athlete's numbers.
	root [6]float64

	drift, memory float64 // of the fitness: SD, and days after which 1/e is left
	again         float64 // SD of an athlete's own effect of a course
	noise, growth float64 // scale of ε at four hours, and its growth with ln T

	course, edition            float64 // scales of the effects
	nu, courseNu, editionNu    float64 // degrees of freedom
	firmness                   float64 // of the beliefs below; 0 turns them off
	noDrift, noAgain, noSlopes bool    // held at nothing
}

// usualSpreads start the iteration, and are the centres of the beliefs that keep a spread
// from nothing or everything where the data do not speak: lognormal, log SD looseness. [Our
// own.]
func usualSpreads() spreads {
	return spreads{
		root:  [6]float64{0.22, 0, 0.15, 0, 0, 0.2},
		drift: 0.04, memory: 365, again: 0.02, noise: 0.06, growth: 0.1,
		course: 0.07, edition: 0.035, nu: 6, courseNu: 8, editionNu: 8, firmness: 1,
	}
}

const (
	looseness   = 1.0
	growthUsual = 0.1
	growthSD    = 0.3
	effectGuess = 4 // courses, or editions, that the usual scale of effects is worth

	spreadCount = 11
)

// crossUnits scale the covariances between numbers.
var crossUnits = [6]float64{0, 0.15, 0, 0.2, 0.2, 0}

// vector lists the athletes' spreads as the search takes them: logarithms, but for the
// cross terms and the growth.
func (s *spreads) vector() []float64 {
	return []float64{
		math.Log(s.root[0]), s.root[1] / crossUnits[1], math.Log(s.root[2]),
		s.root[3] / crossUnits[3], s.root[4] / crossUnits[4], math.Log(s.root[5]),
		math.Log(s.drift), math.Log(s.memory), math.Log(s.again), math.Log(s.noise), s.growth,
	}
}

// set is the inverse of vector. Logarithms are held within what a float64 takes.
func (s *spreads) set(v []float64) {
	e := func(i int) float64 { return math.Exp(math.Max(-12, math.Min(12, v[i]))) }
	s.root = [6]float64{e(0), v[1] * crossUnits[1], e(2), v[3] * crossUnits[3], v[4] * crossUnits[4], e(5)}
	s.drift, s.memory, s.again, s.noise, s.growth = e(6), e(7), e(8), e(9), v[10]
}

// belief is the negative log density of the beliefs in a vector and adds its slope.
func (s *spreads) belief(v, slope []float64) float64 {
	usual := usualSpreads()
	centre := usual.vector()
	sum := 0.0
	for i, x := range v {
		sd := looseness
		if i == spreadCount-1 {
			centre[i], sd = growthUsual, growthSD
		}
		d := (x - centre[i]) / sd
		sum += s.firmness * d * d / 2
		slope[i] += s.firmness * d / sd
	}
	return sum
}

// active says which of the vector may move.
func (s *spreads) active() (on [spreadCount]bool) {
	for i := range on {
		on[i] = true
	}
	if s.noDrift {
		on[6], on[7] = false, false
	}
	if s.noAgain {
		on[8] = false
	}
	if s.noSlopes {
		for _, i := range []int{1, 2, 3, 4, 5, 10} {
			on[i] = false
		}
	}
	return on
}

// covariance is that of the logarithms of an athlete's numbers.
func (s *spreads) covariance() (c [numbers][numbers]float64) {
	l := [numbers][numbers]float64{{s.root[0]}, {s.root[1], s.root[2]}, {s.root[3], s.root[4], s.root[5]}}
	for i := range numbers {
		for j := range numbers {
			for k := range numbers {
				c[i][j] += float64(l[i][k] * l[j][k])
			}
		}
	}
	return c
}

// scale is the scale of ε of a race whose duration's logarithm is size above four hours'.
func (s *spreads) scale(size float64) float64 { return s.noise * math.Exp(s.growth*size) }
