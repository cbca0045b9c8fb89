package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
)

// SE returns the standard error of the logarithm of a number: about the relative
// standard error of the number itself.
func (e *Estimate) SE(n effort.Number) float64 { return math.Sqrt(e.Basis.Cov[n][n]) }

// Correlation returns that of the logarithms of two numbers, 0 where one is known.
func (e *Estimate) Correlation(a, b effort.Number) float64 {
	if e.SE(a) == 0 || e.SE(b) == 0 {
		return 0
	}
	return e.Basis.Cov[a][b] / (e.SE(a) * e.SE(b))
}

// Freedom returns the degrees of freedom of Student's t distribution about the mode that
// draws and intervals have: the results that the noise rests on, the guess among them.
func (e *Estimate) Freedom() float64 { return e.p.freedom() }

// Interval returns the ends of the central interval that holds a share of the posterior
// of a number, 0 < share < 1: Student's t about the mode, on the logarithm; for the fade
// shape in the unknown of its prior, which keeps it within 0.4 and 1.3.
func (e *Estimate) Interval(n effort.Number, share float64) (low, high float64) {
	w := distuv.StudentsT{Sigma: 1, Nu: e.Freedom()}.Quantile((1+share)/2) * math.Sqrt(e.p.cov.At(int(n), int(n)))
	return e.p.number(n, e.p.z[n]-w), e.p.number(n, e.p.z[n]+w)
}

// number is number n where its unknown is z.
func (p *problem) number(n effort.Number, z float64) float64 {
	var at [effort.Numbers]float64
	at[n] = z
	a, _ := p.o.Prior.athlete(p.o.Base, at[:])
	return a.Get(n)
}

// Informed returns which part of the prior's variance of a number the results removed:
// 0 where they said nothing of it, near 1 where they settled it.
func (e *Estimate) Informed(n effort.Number) float64 {
	if e.p.o.Prior[n].LogSD == 0 {
		return 0
	}
	return 1 - e.p.cov.At(int(n), int(n))
}

// TiltInformed is Informed for the pacing tilt.
func (e *Estimate) TiltInformed() float64 {
	if !e.p.tilted || e.p.o.Tilt.SD == 0 {
		return 0
	}
	return 1 - e.p.cov.At(tilt, tilt)
}

// covariance returns that of the logarithms, from that in prior SDs.
func (p *problem) covariance() (cov [effort.Numbers][effort.Numbers]float64) {
	_, scale, _ := p.athlete(p.z)
	for i := range effort.Numbers {
		for j := range effort.Numbers {
			cov[i][j] = p.cov.At(i, j) * scale[i] * scale[j]
		}
	}
	return cov
}

// freedom is that of the noise: the results that the guess is worth and those left of the
// results.
func (p *problem) freedom() float64 {
	finish, _ := p.hear(p.reaches(p.cov))
	return p.noiseWeight() + finish.free
}

// scatter is the scale of the results about the fit as Options.Noise has it, without the
// guess; 0 if nothing is left of them to tell.
func (p *problem) scatter() float64 {
	finish, _ := p.hear(p.reaches(p.cov))
	if finish.free < 0.5 {
		return 0
	}
	return math.Sqrt(finish.squares/finish.free) * p.o.widen
}

// root is a square root of the covariance in prior SDs.
func (p *problem) root() *mat.TriDense {
	var chol mat.Cholesky
	var root mat.TriDense
	if chol.Factorize(p.cov) {
		chol.LTo(&root)
		return &root
	}
	n := p.dims()
	diagonal := mat.NewTriDense(n, mat.Lower, nil)
	for i := range n {
		diagonal.SetTri(i, i, math.Sqrt(math.Max(0, p.cov.At(i, i))))
	}
	return diagonal
}
