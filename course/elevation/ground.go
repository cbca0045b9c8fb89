package elevation

import (
	"iter"
	"math"
)

// A ground is the posterior of the heights at the nodes: of all that the ground may be,
// given what was seen.
type ground struct {
	seen      []float64 // m; NaN where nothing was
	noise     autoregression
	precision band      // factorised
	height    []float64 // mean, m
}

// Orders of the autoregressions that stand for the spectra: 12 nodes of rises reach over
// 120 m, which holds what stands out at 200 m and more; noise is shorter.
const (
	groundOrder = 12
	noiseOrder  = 4
)

// newGround returns the posterior for heights seen at the nodes (NaN where none is),
// rises that follow one autoregression about 0, and noise that follows another, which
// does not carry over nodes at which nothing was seen. ok is false if the arithmetic
// cannot tell.
func newGround(seen []float64, rises rough, noise autoregression) (g ground, ok bool) {
	n := len(seen)
	width := max(rises.order()+1, len(noise.order)-1)
	g = ground{noise: noise, seen: seen, precision: newBand(n, width)}
	precisionOf(rises, g.precision)
	for from, run := range runs(seen) {
		noise.forms(len(run), func(first int, c []float64, weight float64) {
			g.precision.addSquare(from+first, c, weight)
		})
	}
	if !g.precision.factorise() {
		return g, false
	}
	g.height = g.pull(seen)
	for _, z := range g.height {
		if math.IsNaN(z - z) {
			return g, false
		}
	}
	return g, true
}

// pull is the mean of the posterior if other heights had been seen at the same nodes.
func (g ground) pull(seen []float64) []float64 {
	out := make([]float64, len(seen))
	for from, run := range runs(seen) {
		g.noise.forms(len(run), func(first int, c []float64, weight float64) {
			sum := 0.0
			for k, v := range c {
				sum += v * run[first+k]
			}
			for k, v := range c {
				out[from+first+k] += weight * sum * v
			}
		})
	}
	g.precision.solve(out)
	return out
}

// twice is a curve that follows what was seen more closely: the mean plus the mean of
// what it left. An undulation of which a share s is kept is kept to 1 − (1−s)². Source:
// Tukey 1977, Exploratory Data Analysis ("twicing"), from memory.
func (g ground) twice() []float64 {
	left := make([]float64, len(g.seen))
	for i, z := range g.seen {
		left[i] = z - g.height[i]
	}
	left = g.pull(left)
	for i, z := range g.height {
		left[i] += z
	}
	return left
}

// runs yields the runs of heights that are known, with the index of the first.
func runs(z []float64) iter.Seq2[int, []float64] {
	return func(yield func(int, []float64) bool) {
		for from := 0; from < len(z); from++ {
			to := from
			for to < len(z) && !math.IsNaN(z[to]) {
				to++
			}
			if to > from && !yield(from, z[from:to]) {
				return
			}
			from = to
		}
	}
}

// precisionOf fills an empty band with the precision of heights whose rises follow an
// autoregression. Far from the ends its rows are all the same: a short one is made and
// stretched.
func precisionOf(rises rough, b band) {
	order := rises.order()
	short := b
	if long := 4 * (order + 2); rises.even() && b.n > long {
		short = newBand(long, b.width)
	}
	form := make([]float64, order+2)
	rises.forms(short.n-1, func(first int, c []float64, weight float64) {
		form := form[:len(c)+1] // of heights: one term more
		clear(form)
		for k, v := range c {
			form[k] -= v
			form[k+1] += v
		}
		short.addSquare(first, form, weight)
	})
	if short.n == b.n {
		return
	}
	for i := range b.n {
		from := min(i, short.n/2)
		if left := b.n - i; left <= short.n/2 {
			from = short.n - left
		}
		copy(b.row(i), short.row(from))
	}
}

// A climb is the ascent of all that a ground may be: the mean, its variance, and the
// linear form of the heights that it is like for small changes.
type climb struct {
	mean, variance float64
	form           []float64
}

// climb returns the ascent of the ground on a trend that rises by trend from node to
// node. A rise that is Gaussian with mean m and SD s has the mean ascent
//
//	m Φ(m/s) + s φ(m/s)
//
// At nodes of unseen ones it is max(m, 0): what undulates in a gap is not made up.
// The covariance of the ascents of two rises is that of the rises, C, times the
// probabilities of both to be rises, plus C²/2 times the densities at zero (the first
// terms of its expansion in Hermite polynomials); the second part is taken over rises no
// farther apart than the precision reaches.
//
// A rise that is certain, by more SDs than matter, is as it is.
func (g ground) climb(trend float64, unseen []bool) climb {
	n := len(g.height)
	cov := g.precision.inverse()
	chance, density := make([]float64, n), make([]float64, n) // of the rise to node i
	form := make([]float64, n)
	var c climb
	for i := 1; i < n; i++ {
		m := g.height[i] - g.height[i-1] + trend
		v := cov.row(i)[0] + cov.row(i - 1)[0] - 2*cov.row(i - 1)[1]
		s := math.Sqrt(max(v, 0))
		switch {
		case unseen[i] || !(math.Abs(m) < certain*s):
			c.mean += max(m, 0)
			if m > 0 {
				chance[i] = 1
			}
		default:
			chance[i] = math.Erfc(-m/s/math.Sqrt2) / 2
			phi := math.Exp(-m*m/v/2) / math.Sqrt(2*math.Pi)
			density[i] = phi / s
			c.mean += m*chance[i] + s*phi
		}
		form[i] += chance[i]
		form[i-1] -= chance[i]
	}
	c.form = form
	c.variance = g.precision.variance(form) + curvedPart(cov, density)
	return c
}

// certain is how many SDs make a rise certain: beyond, the mean differs by less than
// 1e-7 s.
const certain = 5

// curvedPart sums density density C²/2 over pairs of rises.
func curvedPart(cov band, density []float64) float64 {
	sum := 0.0
	for i := 1; i < len(density); i++ {
		if density[i] == 0 {
			continue
		}
		low, high := cov.row(i-1), cov.row(i)
		for k := 0; k+1 < len(low) && i+k < len(density); k++ {
			before := low[1] // cov of heights i−1 and i+k−1 … by their distance
			if k > 0 {
				before = high[k-1]
			}
			c := high[k] + low[k] - low[k+1] - before
			part := density[i] * density[i+k] * c * c / 2
			if k > 0 {
				part *= 2
			}
			sum += part
		}
	}
	return sum
}
