package calibrate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	firmGuess    = 50   // results that a guess of the noise is worth
	looseGuess   = 4    // if the results contradict it
	contradicted = 0.01 // the level at which they do
)

// weighNoise is σ with the guess counting as some results beside those at hand, less
// what those were spent on: the scale of a scaled inverse chi-square posterior.
func (p *problem) weighNoise() float64 {
	weight := p.noiseWeight()
	return math.Sqrt((weight*p.o.Noise*p.o.Noise + p.squares()) / (weight + p.free()))
}

// noiseWeight is how many results the guess is worth.
func (p *problem) noiseWeight() float64 {
	if p.o.NoiseWeight > 0 {
		return p.o.NoiseWeight
	}
	if free := p.free(); free > 0 {
		chi := distuv.ChiSquared{K: free}
		if chi.Survival(p.squares()/(p.o.Noise*p.o.Noise)) < contradicted {
			return looseGuess
		}
	}
	return firmGuess
}

// scatter is the SD of the results about the fit, without the guess; 0 if nothing is
// left of them to tell.
func (p *problem) scatter() float64 {
	if p.free() < 0.5 {
		return 0
	}
	return math.Sqrt(p.squares() / p.free())
}

// squares is the sum of the squared residuals.
func (p *problem) squares() float64 {
	sum := 0.0
	for _, e := range p.resid {
		sum += e * e
	}
	return sum
}

// free is how many results are left to tell the noise.
func (p *problem) free() float64 { return math.Max(0, float64(len(p.results))-freedom(p.cov)) }
