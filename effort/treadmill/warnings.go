package treadmill

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Thresholds of the warnings. [Our own.]
const (
	cheapest    = 0.5  // J/(kg m): kcal/(kg km) are about 1 on the level, oxygen in ml/(kg m) 0.2
	usualMost   = 60.0 // J/(kg m): oxygen in ml/(kg km) is about 200 on the level
	hilly       = 0.20 // gradients up to which a hilly course needs a curve
	unlikely    = 0.001
	farAbove    = 3.0  // times the residual SD
	noticeable  = 0.01 // of the mean cost
	mostLeftOut = 1000 // gradients that are left out unasked
)

// warn notes what is doubtful about the curve.
func (c *Curve) warn() {
	for _, look := range []func(){c.warnPoints, c.warnFaults, c.warnMinimum, c.warnEnds, c.warnScatter, c.warnLeaveOut} {
		look()
	}
}

func (c *Curve) note(format string, args ...any) {
	c.warnings = append(c.warnings, fmt.Sprintf(format, args...))
}

func (c *Curve) warnPoints() {
	odd, first, without := 0, 0, 0
	for j, p := range c.points {
		if p.Cost < cheapest || p.Cost > usualMost {
			if odd == 0 {
				first = j
			}
			odd++
		}
		if p.Weight == 0 {
			without++
		}
	}
	if odd > 0 {
		c.note("costs outside %g to %g J/(kg m): %d, the first is points[%d]: is the unit right?", cheapest, usualMost, odd, first)
	}
	if without > 0 && without < len(c.points) {
		c.note("%d of %d points have no weight and were given 1", without, len(c.points))
	}
}

func (c *Curve) warnFaults() {
	for _, f := range c.Faults() {
		c.note("%v", f)
	}
}

func (c *Curve) warnMinimum() {
	if gradient, _ := c.Minimum(); c.low < 0 && gradient > 0 {
		c.note("the least cost is uphill, on a gradient of %.4g", gradient)
	}
}

func (c *Curve) warnEnds() {
	if c.low > -hilly || c.high < hilly {
		c.note("measured on gradients of %.4g to %.4g only: steeper ground is held at the cost of the end", c.low, c.high)
	}
}

func (c *Curve) warnScatter() {
	df := float64(c.DegreesOfFreedom())
	switch {
	case df == 0 && c.options.KnownVariance:
		c.note("no degrees of freedom: nothing tests the known variance")
	case df == 0:
		c.note("no degrees of freedom: the polynomial goes through every point and no standard error is known")
	case c.options.KnownVariance:
		ratio := c.ResidualSD()
		chi := distuv.ChiSquared{K: df}
		if chi.Survival(ratio*ratio*df) < unlikely {
			c.note("residuals are %.2g times as large as the known variance lets expect: the degree is too low or the variance too small", ratio)
		} else if chi.CDF(ratio*ratio*df) < unlikely {
			c.note("residuals are only %.2g times as large as the known variance lets expect: it is too great", ratio)
		}
	}
}

func (c *Curve) warnLeaveOut() {
	if len(c.groups) > mostLeftOut {
		c.note("more than %d gradients: how well the curve foretells one left out was not looked at", mostLeftOut)
		return
	}
	l, err := c.LeaveOneGradientOut()
	if err != nil {
		c.note("how well the curve foretells a gradient left out cannot be known: %v", err)
		return
	}
	weight, cost := 0.0, 0.0
	for _, p := range c.points {
		weight += p.weight() / float64(len(c.points))
		cost += p.Cost / float64(len(c.points))
	}
	scatter := c.ResidualSD() / math.Sqrt(weight)
	if l.InnerRMS > farAbove*scatter && l.InnerRMS > noticeable*cost {
		c.note("a gradient left out is foretold with an error of %.3g J/(kg m), %.2g times the residual SD: the degree is too high or too low for these gradients",
			l.InnerRMS, l.InnerRMS/scatter)
	}
}
