package cohort

import (
	"context"
	"math"
	"math/rand/v2"
)

const (
	exactSize  = 120  // effects up to which the system is solved exactly
	draws      = 4    // of the posterior of the effects, where it is not
	gradients  = 400  // steps of conjugate gradients at most
	accuracy   = 1e-7 // of their residual, relative
	largeBlock = 250  // editions of a course beyond which its block is left diagonal
)

// solve finds the effects given spreads and weights, and their posterior spread.
func (p *problem) solve(ctx context.Context, workers int, seed uint64) error {
	if err := each(ctx, workers, p.athletes(), p.factorBlock); err != nil {
		return err
	}
	for a := range p.blocks {
		if p.blocks[a].bad {
			return ErrNoFit
		}
	}
	if p.size() <= exactSize {
		return p.solveExactly(ctx, workers)
	}
	return p.solveBySteps(ctx, workers, seed)
}

// precision is the prior's of an effect.
func (p *problem) precision(i int) float64 {
	nx := p.nx()
	switch {
	case i < nx:
		return p.ridge[i]
	case i < nx+p.courses:
		return p.courseWeight[i-nx] / (p.spreads.course * p.spreads.course)
	}
	return p.editionWeight[i-nx-p.courses] / (p.spreads.edition * p.spreads.edition)
}

// apply fills dst with A v, A the precision of the effects.
func (p *problem) apply(dst, v []float64, scratch *[2][]float64) {
	for i := range dst {
		dst[i] = p.precision(i) * v[i]
	}
	for a := range p.blocks {
		n := p.first[a+1] - p.first[a]
		x, y := scratch[0][:n], scratch[1][:n]
		p.sums(x, a, v)
		clear(y)
		times(y, p.blocks[a].inv, n, x)
		p.spreadBack(dst, a, y)
	}
}

func (p *problem) scratch() *[2][]float64 {
	most := 0
	for a := range p.blocks {
		most = max(most, p.first[a+1]-p.first[a])
	}
	return &[2][]float64{make([]float64, most), make([]float64, most)}
}

// solveBySteps solves for the mean and for the draws by conjugate gradients, each in a
// goroutine of its own.
func (p *problem) solveBySteps(ctx context.Context, workers int, seed uint64) error {
	pre, err := p.precondition()
	if err != nil {
		return err
	}
	right := make([][]float64, 1+draws)
	answers := make([][]float64, 1+draws)
	right[0], answers[0] = p.rightSide(), append([]float64(nil), p.effects...)
	for d := range draws {
		if err := ctx.Err(); err != nil {
			return err
		}
		right[1+d] = p.perturbation(rand.New(rand.NewPCG(seed, uint64(d))))
		answers[1+d] = make([]float64, p.size())
	}
	failed := make([]error, len(right))
	if err := each(ctx, workers, len(right), func(i int) {
		failed[i] = p.conjugate(ctx, answers[i], right[i], pre)
	}); err != nil {
		return err
	}
	for _, err := range failed {
		if err != nil {
			return err
		}
	}
	p.effects = answers[0]
	p.takeDraws(ctx, workers, answers[1:], pre)
	return ctx.Err()
}

// rightSide is XᵀV⁻¹y.
func (p *problem) rightSide() []float64 {
	b := make([]float64, p.size())
	s := p.scratch()
	for a := range p.blocks {
		o := p.of(a)
		x, y := s[0][:len(o)], s[1][:len(o)]
		for i := range o {
			x[i] = o[i].y
		}
		clear(y)
		times(y, p.blocks[a].inv, len(o), x)
		p.spreadBack(b, a, y)
	}
	return b
}

// perturbation is a normal draw of covariance A.
func (p *problem) perturbation(rng *rand.Rand) []float64 {
	b := make([]float64, p.size())
	for i := range b {
		b[i] = math.Sqrt(p.precision(i)) * rng.NormFloat64()
	}
	s := p.scratch()
	for a := range p.blocks {
		n := p.first[a+1] - p.first[a]
		x := s[0][:n]
		for i := range x {
			x[i] = rng.NormFloat64()
		}
		backward(p.blocks[a].l, n, x)
		p.spreadBack(b, a, x)
	}
	return b
}

// conjugate solves A x = b from x on.
func (p *problem) conjugate(ctx context.Context, x, b []float64, pre *preconditioner) error {
	n := len(x)
	r, z, d, q := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	s := p.scratch()
	p.apply(q, x, s)
	for i := range r {
		r[i] = b[i] - q[i]
	}
	pre.divide(z, r)
	copy(d, z)
	rz := dot(r, z)
	pre.divide(q, b)
	enough := accuracy * accuracy * dot(b, q)
	for step := 0; step < gradients && rz > enough; step++ {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		p.apply(q, d, s)
		alpha := rz / dot(d, q)
		for i := range x {
			x[i] += float64(alpha * d[i])
			r[i] -= float64(alpha * q[i])
		}
		pre.divide(z, r)
		next := dot(r, z)
		for i := range d {
			d[i] = z[i] + float64(next/rz*d[i])
		}
		rz = next
	}
	if math.IsNaN(rz) {
		return ErrNoFit
	}
	return nil
}

// takeDraws makes posterior variances of the draws: of each athlete's sums of effects,
// and of each course and edition by its block, scaled as the draws vary.
func (p *problem) takeDraws(ctx context.Context, workers int, drawn [][]float64, pre *preconditioner) {
	_ = each(ctx, workers, p.athletes(), func(a int) {
		p.residuals(a)
		b, n := &p.blocks[a], p.first[a+1]-p.first[a]
		clear(b.cov)
		u := make([]float64, n)
		for _, d := range drawn {
			p.sums(u, a, d)
			for i := range n {
				for j := range n {
					b.cov[i*n+j] += u[i] * u[j] / draws
				}
			}
		}
	})
	p.blockVariances(drawn, pre)
}

func (p *problem) blockVariances(drawn [][]float64, pre *preconditioner) {
	nx := p.nx()
	seen, thought := 0.0, 0.0
	for c, b := range pre.blocks {
		p.spread[c] = pre.variance(c, 0)
		thought += p.spread[c]
		for _, d := range drawn {
			seen += d[nx+c] * d[nx+c] / draws
		}
		for k, e := range b.editions {
			p.alone[e] = pre.variance(c, k+1)
			p.total[e] = p.spread[c] + p.alone[e] + 2*pre.covariance(c, k+1)
		}
	}
	if scale := seen / thought; scale > 1 {
		for c := range p.spread {
			p.spread[c] *= scale
		}
		for e := range p.total {
			p.total[e] *= scale
		}
	}
}
