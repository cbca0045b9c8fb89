package treadmill

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"isoeffort.example/effort"
)

// A Curve is a fitted cost curve: an effort.Separable with a Base of 0. Within the
// measured range of gradients its cost is the polynomial, outside it is held constant at
// that of the nearer end. It is made by Fit, does not change and may be shared between
// goroutines. The zero Curve is none: its cost is NaN.
type Curve struct {
	solution
	options   Options
	points    []Point
	groups    [][]int
	low, high float64 // the measured range
	warnings  []string
}

var _ effort.Separable = (*Curve)(nil)

// Power returns speed · PerMetre(gradient) in W/kg, net. A speed that is negative,
// infinite or NaN gives NaN.
func (c *Curve) Power(speed, gradient float64) float64 {
	return moving(speed) * c.PerMetre(gradient)
}

// Base returns 0, NaN where the speed is none.
func (c *Curve) Base(speed float64) float64 { return 0 * moving(speed) }

// PerMetre returns the net cost in J/(kg m) along the slope, held constant outside the
// measured range. It is NaN at NaN and where the polynomial is not positive, which cannot
// be a cost: Faults says where.
func (c *Curve) PerMetre(gradient float64) float64 {
	cost := c.at(math.Min(math.Max(gradient, c.low), c.high))
	if !(cost > 0) {
		return math.NaN()
	}
	return cost
}

// moving returns a speed that is possible as it is, and NaN for one that is not.
func moving(speed float64) float64 {
	if speed >= 0 && speed <= math.MaxFloat64 {
		return speed
	}
	return math.NaN()
}

// About describes the curve. Its range of gradients is that of the points, its range of
// speeds that of the points whose speed is known, 0 to 0 if none is.
func (c *Curve) About() effort.About {
	a := effort.About{
		Name: c.options.Name,
		Source: fmt.Sprintf("polynomial of degree %d by weighted least squares, %d points on %d gradients",
			c.Degree(), len(c.points), len(c.groups)),
		Population: c.options.Population,
		Gradient:   [2]float64{c.low, c.high},
		Speed:      speeds(c.points),
		Outside:    "gradient held constant, speed proportional",
	}
	if a.Name == "" {
		a.Name = "own treadmill data"
	}
	if a.Population == "" {
		a.Population = "not given"
	}
	return a
}

// speeds returns the least and greatest of those that are known.
func speeds(points []Point) (r [2]float64) {
	for _, p := range points {
		if p.Speed == 0 {
			continue
		}
		if r[0] == 0 || p.Speed < r[0] {
			r[0] = p.Speed
		}
		r[1] = max(r[1], p.Speed)
	}
	return r
}

// Degree returns that of the polynomial, −1 for the zero Curve.
func (c *Curve) Degree() int { return c.terms - 1 }

// Coefficients returns those of the polynomial in ascending powers of the gradient:
// J/(kg m). They reproduce PerMetre best where 0 lies well inside the range; of gradients
// crowded far from 0 they are large and of opposite signs, and PerMetre has more digits.
func (c *Curve) Coefficients() []float64 {
	m := c.inGradient()
	coefficients := make([]float64, c.terms)
	for k := range c.terms {
		for j := 0; j <= k; j++ {
			coefficients[j] += float64(m[k][j] * c.chebyshev[k])
		}
	}
	return coefficients
}

// Covariance returns the covariance matrix of Coefficients, (J/(kg m))²: (XᵀWX)⁻¹, and
// that times ResidualSD² unless the variance is known. Without degrees of freedom it is
// NaN then. The matrix is the caller's.
func (c *Curve) Covariance() *mat.SymDense {
	if c.terms == 0 {
		return &mat.SymDense{}
	}
	m := c.inGradient()
	root := mat.NewDense(c.terms, c.terms, nil) // mᵀ R⁻¹, of which the covariance is the square
	for j := range c.terms {
		for column := range c.terms {
			sum := 0.0
			for k := j; k <= column; k++ {
				sum += float64(m[k][j] * c.inverse[k][column])
			}
			root.Set(j, column, sum)
		}
	}
	var covariance mat.SymDense
	covariance.SymOuterK(c.unit(), root)
	return &covariance
}

// inGradient returns the Chebyshev polynomials in powers of the gradient.
func (c *Curve) inGradient() square { return c.scale.inGradient(c.terms) }

// Residuals returns cost − polynomial of each point in the order given to Fit, J/(kg m).
func (c *Curve) Residuals() []float64 {
	residuals := make([]float64, len(c.points))
	for j, p := range c.points {
		residuals[j] = p.Cost - c.at(p.Gradient)
	}
	return residuals
}

// Warnings returns what is doubtful about the curve, to be shown beside it: faults, ends
// of the range, a least cost that is not where it should be, no degrees of freedom,
// residuals that the known variance does not explain, costs that look like another unit,
// weights given for some points only, and gradients that the curve does not foretell.
func (c *Curve) Warnings() []string { return slices.Clone(c.warnings) }
