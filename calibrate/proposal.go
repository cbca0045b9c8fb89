package calibrate

import (
	"math"
	"math/rand/v2"
)

// proposal proposes the steps of a chain whose unknowns are independent, of SD unit, as far
// as the covariance knows: by halves Student's t of proposalFreedom about the mode, which
// goes far at once where the posterior is near normal, and a normal step about where the
// chain stands, which finds its way where it is not.
type proposal struct {
	rng  *rand.Rand
	unit []float64
}

const proposalFreedom = 6

// step is the size of a step about where the chain stands, for so many unknowns (Roberts,
// Gelman & Gilks 1997, Ann Appl Probab 7:110, from memory).
func (p *proposal) step() float64 { return 2.38 / math.Sqrt(float64(len(p.unit))) }

// ConditionalRand proposes a point where the chain stands at y.
func (p *proposal) ConditionalRand(x, y []float64) []float64 {
	if x == nil {
		x = make([]float64, len(y))
	}
	about, stretch := y, p.step()
	if p.rng.Uint64()&1 == 0 {
		squares := 0.0
		for range proposalFreedom {
			v := p.rng.NormFloat64()
			squares += v * v
		}
		about, stretch = nil, math.Sqrt(proposalFreedom/squares)
	}
	for i, unit := range p.unit {
		v := stretch * unit * p.rng.NormFloat64()
		if about != nil {
			v += about[i]
		}
		x[i] = v
	}
	return x
}

// ConditionalLogProb is the logarithm of the density of x where the chain stands at y.
func (p *proposal) ConditionalLogProb(x, y []float64) float64 {
	n, s := float64(len(x)), p.step()
	far, near := 0.0, 0.0
	for i, unit := range p.unit {
		a, b := x[i]/unit, (x[i]-y[i])/(unit*s)
		far += a * a
		near += b * b
	}
	const nu = proposalFreedom
	upper, _ := math.Lgamma((nu + n) / 2)
	lower, _ := math.Lgamma(nu / 2.0)
	t := upper - lower - n/2*math.Log(nu*math.Pi) - (nu+n)/2*math.Log1p(far/nu)
	normal := -n/2*math.Log(2*math.Pi) - n*math.Log(s) - near/2
	most := math.Max(t, normal)
	return most + math.Log((math.Exp(t-most)+math.Exp(normal-most))/2)
}
