package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

const (
	firmGuess    = 50   // results that a guess of the noise is worth
	looseGuess   = 4    // if the results contradict it
	contradicted = 0.01 // the level at which they do
)

// heard is what residuals say of their scale: the sum of their squares, each with its
// weight, and how many of them are left after what they were spent on.
type heard struct{ squares, free float64 }

// hear listens to the finish times and to the sections, given how far the covariance lets
// each residual reach, squared.
func (p *problem) hear(reach []float64) (finish, split heard) {
	p.each(func(i int, k kind) {
		if k.bound {
			return
		}
		of := &finish
		if k.split {
			of = &split
		}
		t := p.term(k, p.resid[i])
		counts := math.Min(1, k.run.weight)
		r := p.resid[i] / k.bare
		of.squares += counts * t.weight * r * r
		of.free += counts * (1 - t.weight*reach[i]/(k.scale*k.scale))
	})
	for _, u := range p.runs {
		if len(u.took) > 0 {
			split.free -= math.Min(1, u.weight) // the finish is given
		}
	}
	finish.free, split.free = math.Max(0, finish.free), math.Max(0, split.free)
	return finish, split
}

// reaches is how far a covariance lets each residual reach, squared.
func (p *problem) reaches(cov *mat.SymDense) (squares []float64) {
	n := p.dims()
	for i := range p.resid {
		squares = append(squares, quadratic(cov, p.jac[i*n:(i+1)*n]))
	}
	return squares
}

// quadratic is vᵀ cov v.
func quadratic(cov *mat.SymDense, v []float64) float64 {
	sum := 0.0
	for i, a := range v {
		if a == 0 {
			continue
		}
		for j, b := range v {
			sum += a * cov.At(i, j) * b
		}
	}
	return sum
}

// weigh weighs the scatter of the residuals into the scales: each guess counts as some
// results, the scale of a scaled inverse chi-square posterior. Only near the mode can they
// contradict it.
func (p *problem) weigh(near bool) {
	if p.deaf {
		return
	}
	cov, doubtful := invert(p.curvature(true))
	if doubtful {
		return
	}
	widen := p.o.widen
	guess, splitGuess := p.o.Noise/widen, p.o.SplitNoise/widen
	reach := p.reaches(cov)
	for range 20 {
		finish, split := p.hear(reach)
		if near && p.contradicted(finish, guess) {
			p.loose = true
		}
		scale, splitScale := finish.scale(guess, p.noiseWeight()), split.scale(splitGuess, p.noiseWeight())
		change := math.Abs(math.Log(scale/p.scale)) + math.Abs(math.Log(splitScale/p.splitScale))
		if p.scale, p.splitScale = scale, splitScale; change < quiet/10 {
			break
		}
	}
	p.value = p.f(p.z, p.resid)
}

func (h heard) scale(guess, weight float64) float64 {
	return math.Sqrt((weight*guess*guess + h.squares) / (weight + h.free))
}

// noiseWeight is how many results the guess is worth.
func (p *problem) noiseWeight() float64 {
	switch {
	case p.o.NoiseWeight > 0:
		return p.o.NoiseWeight
	case p.loose:
		return looseGuess
	}
	return firmGuess
}

// contradicted reports whether residuals are too large for the guess.
func (p *problem) contradicted(h heard, guess float64) bool {
	return h.free > 0 && distuv.ChiSquared{K: h.free}.Survival(h.squares/(guess*guess)) < contradicted
}
