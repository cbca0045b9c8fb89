package calibrate

import (
	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"

	"isoeffort.example/effort"
)

// gaussNewton is the Hessian of F without the second derivatives of the model.
func (p *problem) gaussNewton() *mat.SymDense {
	h := mat.NewSymDense(effort.Numbers, nil)
	for i := range effort.Numbers {
		for j := i; j < effort.Numbers; j++ {
			sum := 0.0
			for _, s := range p.slopes {
				sum += s[i] * s[j]
			}
			sum /= p.noise * p.noise
			if i == j {
				sum++
			}
			h.SetSym(i, j, sum)
		}
	}
	return h
}

// invertHessian computes the covariance of z at the mode from the central differences of
// the gradient.
func (p *problem) invertHessian() error {
	n := effort.Numbers
	jac := mat.NewDense(n, n, nil)
	fd.Jacobian(jac, func(grad, z []float64) { p.evaluate(z); copy(grad, p.grad) }, p.z,
		&fd.JacobianSettings{Formula: fd.Central, Step: 0.02})
	p.evaluate(p.z)
	if p.failed != nil {
		return p.failed
	}
	h := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range i + 1 {
			h.SetSym(i, j, (jac.At(i, j)+jac.At(j, i))/2)
		}
	}
	if cov, doubtful := invert(h); !doubtful {
		p.cov = cov
		return nil
	}
	p.cov, p.doubtful = invert(p.gaussNewton())
	p.doubtful = true
	return nil
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

func equal(a, b []float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
