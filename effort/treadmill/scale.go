package treadmill

// scale maps the measured range of gradients onto [−1, 1], so that powers and Chebyshev
// polynomials are all of size 1.
type scale struct{ middle, half float64 }

func scaleOf(points []Point) scale {
	low, high := span(points)
	return scale{middle: (low + high) / 2, half: (high - low) / 2}
}

// span returns the least and the greatest gradient.
func span(points []Point) (low, high float64) {
	low, high = points[0].Gradient, points[0].Gradient
	for _, p := range points {
		low, high = min(low, p.Gradient), max(high, p.Gradient)
	}
	return low, high
}

func (s scale) in(gradient float64) float64 { return (gradient - s.middle) / s.half }
func (s scale) out(x float64) float64       { return float64(x*s.half) + s.middle }

// chebyshev returns the first Chebyshev polynomials at x.
func chebyshev(x float64, terms int) (t [mostTerms]float64) {
	t[0], t[1] = 1, x
	for k := 2; k < terms; k++ {
		t[k] = float64(2*x*t[k-1]) - t[k-2]
	}
	return t
}

// A square holds a matrix of as many rows and columns as the polynomial has terms.
type square [mostTerms][mostTerms]float64

// chebyshevPowers returns the Chebyshev polynomials of slope·z + offset in powers of z:
// row k holds the coefficients of the k-th.
func chebyshevPowers(slope, offset float64, terms int) (m square) {
	m[0][0] = 1
	m[1][0], m[1][1] = offset, slope
	for k := 2; k < terms; k++ {
		for j := 0; j <= k; j++ {
			m[k][j] = float64(2*offset*m[k-1][j]) - m[k-2][j]
			if j > 0 {
				m[k][j] += float64(2 * slope * m[k-1][j-1])
			}
		}
	}
	return m
}

// inX is chebyshevPowers for the scaled gradient, inGradient for the gradient itself.
func inX(terms int) square { return chebyshevPowers(1, 0, terms) }

func (s scale) inGradient(terms int) square {
	return chebyshevPowers(1/s.half, -s.middle/s.half, terms)
}
