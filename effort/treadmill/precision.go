package treadmill

import "math"

// SE returns the standard error of the polynomial at a gradient, J/(kg m): the root of
// xᵀ Cov x with x the powers of the gradient, computed without cancellation. It is that of
// the fitted mean, not the scatter of a single measurement, and takes a polynomial of this
// degree to be true. It is NaN outside the measured range, where the curve is held and its
// error is not known, and where Covariance is NaN.
func (c *Curve) SE(gradient float64) float64 {
	if !(gradient >= c.low && gradient <= c.high) {
		return math.NaN()
	}
	return math.Sqrt(c.unit() * c.variance(gradient))
}

// DegreesOfFreedom returns the number of points less that of coefficients.
func (c *Curve) DegreesOfFreedom() int { return len(c.points) - c.terms }

// ResidualSD returns √(Σ weight · residual² / degrees of freedom): the standard deviation
// of a point of weight 1 in J/(kg m), or under KnownVariance the ratio of the scatter seen
// to that known, which should be near 1. It is NaN without degrees of freedom.
func (c *Curve) ResidualSD() float64 { return math.Sqrt(c.residualVariance() * c.weight) }

// residualVariance is that of a point of the greatest weight.
func (c *Curve) residualVariance() float64 {
	if c.DegreesOfFreedom() <= 0 {
		return math.NaN()
	}
	return c.squares / float64(c.DegreesOfFreedom())
}

// unit is the variance, known or estimated, of a point of the greatest weight.
func (c *Curve) unit() float64 {
	if c.options.KnownVariance {
		return 1 / c.weight
	}
	return c.residualVariance()
}

// ConditionNumber returns the ratio of the greatest to the least singular value of the
// weighted design in Chebyshev polynomials, as it was solved. 10 is good, above 1e8 Fit
// refuses. That of plain powers of the gradient would be far greater.
func (c *Curve) ConditionNumber() float64 { return c.condition }
