package calibrate

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"sync"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/samplemv"
)

// SampleOptions are the options of Sample. The zero value is ready.
type SampleOptions struct {
	Seed    uint64
	Draws   int // of all chains together, rounded up to whole chains; 0 means 1000
	Thin    int // steps from one draw to the next; 0 means 8
	BurnIn  int // steps that each chain forgets; 0 means 100
	Workers int // goroutines; 0 means 1. The draws are the same for any number
}

// chains is how many are run: enough to see whether they agree.
const chains = 4

// A Sampled is draws from the posterior, and how well they were made.
type Sampled struct {
	Draws []Draw

	// RHat is the worst potential scale reduction of the unknowns over the chains: near 1
	// where they agree; above 1.05 do not trust the draws and ask for more steps (Gelman &
	// Rubin 1992, Stat Sci 7:457, from memory).
	RHat float64

	// Moved is the share of the draws that differ from the one before in their chain.
	Moved float64
}

// Sample draws from the posterior itself by the method of Metropolis and Hastings, with the
// gaits chosen by the rule at every step where there are no splits, and with the scales of
// the errors among the unknowns. Half of the steps are proposed about the mode and half about
// where the chain stands. It takes some 8000 evaluations of all results at the defaults.
//
// The error wraps ErrOption, or is the context's.
func (e *Estimate) Sample(ctx context.Context, o SampleOptions) (*Sampled, error) {
	for _, v := range []struct {
		value *int
		usual int
	}{{&o.Draws, 1000}, {&o.Thin, 8}, {&o.BurnIn, 100}, {&o.Workers, 1}} {
		if *v.value == 0 {
			*v.value = v.usual
		}
		if *v.value < 1 || *v.value > 10_000_000 {
			return nil, fmt.Errorf("calibrate: %w: sample of %+v", ErrOption, o)
		}
	}
	var runs [chains]*chain
	gate := make(chan struct{}, o.Workers)
	var wait sync.WaitGroup
	for i := range runs {
		runs[i] = e.p.chain(ctx, o, i)
		wait.Go(func() {
			gate <- struct{}{}
			runs[i].run(o)
			<-gate
		})
	}
	wait.Wait()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return gather(runs[:]), nil
}

// chain is one walk over the posterior, in unknowns made independent by its covariance.
type chain struct {
	p      *problem
	mode   []float64
	root   *mat.TriDense
	scales []float64 // those of the mode
	rng    *rand.Rand
	at     *mat.Dense
	draws  []Draw
}

func (p *problem) chain(ctx context.Context, o SampleOptions, i int) *chain {
	c := &chain{p: p.clone(ctx), mode: p.z, root: p.root(), rng: rand.New(rand.NewPCG(o.Seed, uint64(i)))}
	c.scales = []float64{p.scale}
	if p.tilted {
		c.scales = append(c.scales, p.splitScale)
	}
	return c
}

func (c *chain) run(o SampleOptions) {
	n := len(c.mode) + len(c.scales)
	proposal := &proposal{rng: c.rng, unit: make([]float64, n)}
	for i := range proposal.unit {
		proposal.unit[i] = 1
		if i >= len(c.mode) {
			proposal.unit[i] = 1 / math.Sqrt(2*(c.p.freedom()+1)) // SD of ln scale
		}
	}
	each := (o.Draws + chains - 1) / chains
	c.at = mat.NewDense(each, n, nil)
	samplemv.MetropolisHastingser{
		Initial: make([]float64, n), Target: c, Proposal: proposal, Src: c.rng, BurnIn: o.BurnIn, Rate: o.Thin,
	}.Sample(c.at)
	for i := range each {
		z, scales := c.place(c.at.RawRowView(i))
		c.draws = append(c.draws, c.p.draw(z, scales[0], c.rng))
	}
}

// place is the unknowns and scales at a point of the chain.
func (c *chain) place(x []float64) (z, scales []float64) {
	z = append([]float64(nil), c.mode...)
	for i := range z {
		for j := range i + 1 {
			z[i] += float64(c.root.At(i, j) * x[j])
		}
	}
	for i, s := range c.scales {
		scales = append(scales, s*math.Exp(x[len(z)+i]))
	}
	return z, scales
}

// LogProb is the logarithm of the posterior density at a point.
func (c *chain) LogProb(x []float64) float64 {
	z, scales := c.place(x)
	p := c.p
	p.z = append(p.z[:0], z...)
	p.scale = scales[0]
	if p.tilted {
		p.splitScale = scales[1]
	}
	if !p.anew() {
		return math.Inf(-1)
	}
	return -p.credit() + p.scalePrior()
}

// scalePrior is the logarithm of the prior density of the logarithms of the scales: of
// scaled inverse chi-square squares. A race's sections add up to its time, so that they tell
// one scale less than their number.
func (p *problem) scalePrior() float64 {
	weight, guess := p.noiseWeight(), p.o.Noise/p.o.widen
	ln := func(guess, scale float64) float64 {
		return -weight*math.Log(scale) - weight*guess*guess/(2*scale*scale)
	}
	sum := ln(guess, p.scale)
	if p.tilted {
		sum += ln(p.o.SplitNoise/p.o.widen, p.splitScale)
		for _, u := range p.runs {
			if len(u.took) > 0 {
				sum += math.Log(p.splitScale)
			}
		}
	}
	return sum
}

// anew computes the residuals at z, and reports whether the model can.
func (p *problem) anew() (ok bool) {
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	if !p.tilted {
		_, ok = p.revalue(false)
		return ok
	}
	resid, err := p.residuals(p.resid[:0], p.z)
	if err != nil {
		return false
	}
	p.resid, p.value = resid, p.f(p.z, resid)
	return true
}

// gather puts chains together.
func gather(runs []*chain) *Sampled {
	s := &Sampled{}
	for _, c := range runs {
		s.Draws = append(s.Draws, c.draws...)
	}
	each, n := runs[0].at.Dims()
	moved := 0
	for i := range n {
		var means, variances []float64
		for _, c := range runs {
			m, v := stat.MeanVariance(mat.Col(nil, i, c.at), nil)
			means, variances = append(means, m), append(variances, v)
		}
		within, between := stat.Mean(variances, nil), stat.Variance(means, nil)
		if within > 0 {
			s.RHat = math.Max(s.RHat, math.Sqrt((float64(each-1)/float64(each)*within+between)/within))
		}
	}
	for _, c := range runs {
		for i := 1; i < each; i++ {
			if c.at.At(i, 0) != c.at.At(i-1, 0) {
				moved++
			}
		}
	}
	s.Moved = float64(moved) / float64(max(1, chains*(each-1)))
	return s
}
