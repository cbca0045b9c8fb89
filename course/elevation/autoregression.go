package elevation

import "math"

// An autoregression predicts each value of a stationary series from those before it.
// order[p] holds the p coefficients of the prediction from the last p values, nearest
// first, and variance[p] the variance of its error; variance[0] is that of the series.
type autoregression struct {
	order    [][]float64
	variance []float64
}

// spectrumPoints is the number of frequencies that a spectrum is summed over.
const spectrumPoints = 4096

// autocovariance sums a spectrum S(ω), ω from 0 to π radians per node, to the
// autocovariances of lags 0 to p: r(k) = 1/π ∫ S(ω) cos kω dω.
func autocovariance(spectrum func(omega float64) float64, p int) []float64 {
	r := make([]float64, p+1)
	for j := range spectrumPoints {
		omega := math.Pi * (float64(j) + 0.5) / spectrumPoints
		s, c := spectrum(omega)/spectrumPoints, math.Cos(omega)
		now, before := 1.0, c // cos kω and cos (k−1)ω, by the recurrence of Chebyshev
		for k := range r {
			r[k] += s * now
			now, before = 2*c*now-before, now
		}
	}
	return r
}

// autoregress fits autoregressions of order 0 to p to autocovariances by the recursion
// of Levinson and Durbin (Durbin 1960, Rev Inst Int Stat 28:233, from memory). Of all
// stationary series with these autocovariances that of order p assumes least (Burg).
func autoregress(r []float64) autoregression {
	p := len(r) - 1
	a := autoregression{order: make([][]float64, p+1), variance: make([]float64, p+1)}
	// The ridge keeps series that are all but determined, such as slopes of very smooth
	// ground, within what the arithmetic can tell apart.
	v := r[0] * (1 + 1e-9)
	a.variance[0] = v
	for k := 1; k <= p; k++ {
		last := a.order[k-1]
		reflection := r[k]
		for i, c := range last {
			reflection -= c * r[k-1-i]
		}
		reflection /= v
		coefficients := make([]float64, k)
		for i, c := range last {
			coefficients[i] = c - reflection*last[k-2-i]
		}
		coefficients[k-1] = reflection
		v *= 1 - reflection*reflection
		a.order[k], a.variance[k] = coefficients, v
	}
	return a
}

// forms calls add with the linear forms of a series of n values whose squares, times
// weights, sum to its quadratic form: row i predicts value i from up to p before it.
// c[k] is the coefficient at value first+k.
func (a autoregression) forms(n int, add func(first int, c []float64, weight float64)) {
	rows := a.rows()
	for i := range n {
		p := min(i, len(rows)-1)
		add(i-p, rows[p], 1/a.variance[p])
	}
}

// rows are the linear forms of each order.
func (a autoregression) rows() [][]float64 {
	rows := make([][]float64, len(a.order))
	for p, order := range a.order {
		rows[p] = make([]float64, p+1)
		rows[p][p] = 1
		for k, c := range order {
			rows[p][p-1-k] = -c
		}
	}
	return rows
}
