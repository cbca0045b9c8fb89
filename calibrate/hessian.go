package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// gradient is that of F by the residuals and slopes at hand.
func (p *problem) gradient() []float64 {
	n := p.dims()
	g := append([]float64(nil), p.z...)
	p.each(func(i int, k kind) {
		slope := p.term(k, p.resid[i]).slope / k.scale
		for j, v := range p.jac[i*n : (i+1)*n] {
			g[j] -= slope * v
		}
	})
	if p.frozen >= 0 {
		g[p.frozen] = 0
	}
	return g
}

// leastCurve is the share of its weight that a term's curvature counts for at least, so that
// the parabola opens upward.
const leastCurve = 0.2

// curvature is the Hessian of F without the second derivatives of the model. Of far
// errors, whose terms bend down, it takes what is safe for a step, or their weight.
func (p *problem) curvature(safe bool) *mat.SymDense {
	n := p.dims()
	h := make([]float64, n*n)
	p.each(func(i int, k kind) {
		t := p.term(k, p.resid[i])
		c := t.weight
		if k.bound {
			c = t.curve
		} else if safe {
			c = math.Max(t.curve, leastCurve*t.weight)
		}
		c /= k.scale * k.scale
		row := p.jac[i*n : (i+1)*n]
		for a, v := range row {
			if v == 0 {
				continue
			}
			for b := a; b < n; b++ {
				h[a*n+b] += c * v * row[b]
			}
		}
	})
	for a := range n {
		h[a*n+a]++
	}
	if f := p.frozen; f >= 0 {
		for a := range n {
			h[a*n+f], h[f*n+a] = 0, 0
		}
		h[f*n+f] = 1
	}
	return mat.NewSymDense(n, h)
}

// hessianStep is the step of the differences of the slopes, in prior SDs.
const hessianStep = 0.02

// bend computes the second derivatives of the model that belong to F's Hessian, Σ cₖ ∂²fₖ
// with cₖ = −termₖ'/sₖ, from the differences of the slopes: those of the closed forms, or
// where there are splits of the model itself.
func (p *problem) bend() error {
	n := p.dims()
	p.bent = mat.NewSymDense(n, nil)
	var c []float64
	p.each(func(i int, k kind) { c = append(c, p.term(k, p.resid[i]).slope/k.scale) })
	from := p.point()
	columns := make([][]float64, tilt+1)
	for a := range columns {
		if a == p.frozen || p.known(a) {
			continue
		}
		var sides [2][]float64
		for side, step := range [2]float64{-hessianStep, hessianStep} {
			p.z[a] = from.z[a] + step
			if !p.tilted {
				p.roughly()
			} else if _, err := p.refresh(p.z, true); err != nil {
				return err
			}
			sides[side] = append([]float64(nil), p.jac...)
		}
		p.z[a] = from.z[a]
		columns[a] = make([]float64, n)
		for r := range c {
			for b := range n {
				columns[a][b] -= c[r] * (sides[1][r*n+b] - sides[0][r*n+b]) / (2 * hessianStep)
			}
		}
	}
	p.restore(from)
	for a, column := range columns {
		for b := range column {
			v := column[b]
			if b < len(columns) && columns[b] != nil {
				v = (v + columns[b][a]) / 2
			}
			p.bent.SetSym(a, b, v)
		}
	}
	return nil
}

// known reports whether an unknown is none.
func (p *problem) known(a int) bool {
	if a == tilt {
		return !p.tilted || p.o.Tilt.SD == 0
	}
	return a < tilt && p.o.Prior[a].LogSD == 0
}

// spreadRounds is how often the spread is taken for how far residuals reach.
const spreadRounds = 12

// spread computes the covariance of z about the mode. The curvature of heavy tails differs
// between a residual and its neighbours, and most at the residuals of a few results that a
// fit has drawn to itself: so it is taken as its mean over where the covariance itself lets
// the residual lie. That is the normal distribution nearest to the posterior in the sense
// of variational inference (Opper & Archambeau 2009, Neural Comput 21:786, from memory), but
// for its centre, which is the mode.
func (p *problem) spread() error {
	if err := p.bend(); err != nil {
		return err
	}
	p.doubtful = false
	cov, doubtful := invert(p.averaged(nil))
	for range spreadRounds {
		if doubtful {
			p.doubtful = true
			p.cov, _ = invert(p.curvature(false))
			return nil
		}
		p.cov = cov
		cov, doubtful = invert(p.averaged(cov))
		if !doubtful && math.Abs(mat.Trace(cov)-mat.Trace(p.cov)) < 1e-4 {
			break
		}
	}
	p.cov = cov
	return nil
}

// averaged is the Hessian with the terms' curvature as their weight or, given a covariance
// of z, as the mean over that.
func (p *problem) averaged(cov *mat.SymDense) *mat.SymDense {
	n := p.dims()
	h := mat.NewSymDense(n, nil)
	h.AddSym(p.bent, h)
	for a := range n {
		h.SetSym(a, a, h.At(a, a)+1)
	}
	p.each(func(i int, k kind) {
		row := p.jac[i*n : (i+1)*n]
		c := 0.0
		if cov == nil {
			c = p.term(k, p.resid[i]).weight
		} else {
			reach := math.Sqrt(quadratic(cov, row))
			for _, q := range hermite {
				c += q[1] * p.term(k, p.resid[i]+q[0]*reach).curve
			}
		}
		c /= k.scale * k.scale
		for a, v := range row {
			for b := a; b < n; b++ {
				h.SetSym(a, b, h.At(a, b)+c*v*row[b])
			}
		}
	})
	if f := p.frozen; f >= 0 {
		for a := range n {
			h.SetSym(a, f, 0)
		}
		h.SetSym(f, f, 1)
	}
	return h
}

// hermite are nodes and weights of Gauss and Hermite's formula for the mean over a standard
// normal distribution. Seven points do for curves as smooth as these.
var hermite = [...][2]float64{
	{-3.750439717725742, 5.48268855972217e-4},
	{-2.366759410734541, 3.07571239675865e-2},
	{-1.154405394739968, 0.240123178605013},
	{0, 0.457142857142857},
	{1.154405394739968, 0.240123178605013},
	{2.366759410734541, 3.07571239675865e-2},
	{3.750439717725742, 5.48268855972217e-4},
}

// invert returns the inverse of a positive definite matrix; doubtful says that it is
// not one, and the inverse then that of the identity, the prior's.
func invert(h *mat.SymDense) (cov *mat.SymDense, doubtful bool) {
	n := h.SymmetricDim()
	cov = mat.NewSymDense(n, nil)
	var chol mat.Cholesky
	if chol.Factorize(h) && chol.InverseTo(cov) == nil {
		return cov, false
	}
	for i := range n {
		for j := range i + 1 {
			cov.SetSym(i, j, 0)
		}
		cov.SetSym(i, i, 1)
	}
	return cov, true
}

// evidence is the logarithm of the marginal likelihood by Laplace's approximation, but for
// a constant.
func (p *problem) evidence() float64 {
	var chol mat.Cholesky
	if !chol.Factorize(p.cov) {
		return math.Inf(-1)
	}
	return -p.credit() + chol.LogDet()/2
}
