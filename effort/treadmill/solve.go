package treadmill

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// A solution is a least-squares fit in Chebyshev polynomials of the scaled gradient, its
// weights divided by the greatest.
type solution struct {
	scale     scale
	terms     int
	chebyshev [mostTerms]float64
	poly      poly    // the same in powers of the scaled gradient
	inverse   square  // of the triangle R of the weighted design, upper triangular
	squares   float64 // sum of weighted squared residuals
	weight    float64 // the greatest
	condition float64 // of the weighted design
}

// worstCondition is that of the weighted design above which its solution is refused:
// rounding of costs in the last bit then moves coefficients in the eighth digit.
const worstCondition = 1e8

// solve fits a polynomial of so many terms. The points must have at least as many
// distinct gradients.
func solve(points []Point, terms int) (solution, error) {
	s := solution{scale: scaleOf(points), terms: terms}
	for _, p := range points {
		s.weight = max(s.weight, p.weight())
	}
	r := s.triangle(points)
	if s.condition = condition(r, terms); !(s.condition <= worstCondition) {
		return s, fmt.Errorf("%w: the condition number of %d terms is %.2g, above %g; take a lower degree",
			ErrIllConditioned, terms, s.condition, worstCondition)
	}
	s.backSubstitute(r)
	s.squares = r.At(terms, terms) * r.At(terms, terms)
	s.powers()
	return s, nil
}

// triangle returns the triangle of the QR factorisation of the weighted design with the
// weighted costs as its last column, which become those of the rotated problem; the last
// element is the norm of the residuals. A row of zeros makes room for it where there are
// no more points than terms.
func (s *solution) triangle(points []Point) *mat.Dense {
	design := mat.NewDense(max(len(points), s.terms+1), s.terms+1, nil)
	for j, p := range points {
		root := math.Sqrt(p.weight() / s.weight)
		t := chebyshev(s.scale.in(p.Gradient), s.terms)
		for k := range s.terms {
			design.Set(j, k, root*t[k])
		}
		design.Set(j, s.terms, root*p.Cost)
	}
	var qr mat.QR
	qr.Factorize(design)
	var r mat.Dense
	qr.RTo(&r)
	return &r
}

// condition returns the ratio of the greatest to the least singular value of the triangle
// without its last column, +Inf if it has none.
func condition(r *mat.Dense, terms int) float64 {
	var svd mat.SVD
	if !svd.Factorize(r.Slice(0, terms, 0, terms), mat.SVDNone) {
		return math.Inf(1)
	}
	values := svd.Values(nil)
	return values[0] / values[terms-1]
}

// backSubstitute solves the triangular system for the coefficients, and for the columns of
// the identity to have its inverse.
func (s *solution) backSubstitute(r *mat.Dense) {
	for k := s.terms - 1; k >= 0; k-- {
		rest := r.At(k, s.terms)
		for j := k + 1; j < s.terms; j++ {
			rest -= float64(r.At(k, j) * s.chebyshev[j])
		}
		s.chebyshev[k] = rest / r.At(k, k)
		for column := k; column < s.terms; column++ {
			rest := 0.0
			if column == k {
				rest = 1
			}
			for j := k + 1; j <= column; j++ {
				rest -= float64(r.At(k, j) * s.inverse[j][column])
			}
			s.inverse[k][column] = rest / r.At(k, k)
		}
	}
}

// powers writes the polynomial in powers of the scaled gradient, for evaluation.
func (s *solution) powers() {
	m := inX(s.terms)
	s.poly.terms = s.terms
	for k := range s.terms {
		for j := 0; j <= k; j++ {
			s.poly.c[j] += float64(m[k][j] * s.chebyshev[k])
		}
	}
}

// at returns the polynomial at a gradient, held nowhere.
func (s *solution) at(gradient float64) float64 { return s.poly.at(s.scale.in(gradient)) }

// variance returns the squared standard error at a gradient for a residual variance of 1:
// |R⁻ᵀ t|², t being the Chebyshev polynomials there.
func (s *solution) variance(gradient float64) float64 {
	t := chebyshev(s.scale.in(gradient), s.terms)
	sum := 0.0
	for column := range s.terms {
		u := 0.0
		for k := 0; k <= column; k++ {
			u += float64(s.inverse[k][column] * t[k])
		}
		sum += float64(u * u)
	}
	return sum
}
