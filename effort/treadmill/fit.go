package treadmill

import (
	"fmt"
	"slices"
)

// Options of Fit. The zero value is ready.
type Options struct {
	// Degree of the polynomial, 1 to 9; 0 means 5, that of Minetti et al. 2002. [Our
	// own choice of default.] It is never changed to fit the points.
	Degree int

	// KnownVariance takes the weights for 1/variance in (J/(kg m))⁻², so that the
	// covariance rests on them alone. Otherwise they are relative and the covariance is
	// scaled by the residuals.
	KnownVariance bool

	// Name and Population go into About. Empty ones leave "own treadmill data" and "not
	// given".
	Name, Population string
}

const (
	defaultDegree = 5
	mostDegree    = 9
	mostTerms     = mostDegree + 1
)

// Fit returns the polynomial of the gradient that fits the costs best: that with the least
// sum of weight · (cost − polynomial)². The order of the points has no bearing on it but
// for rounding. A point of weight 2 counts as two equal points in the coefficients, and
// under KnownVariance in the covariance too; where residuals scale it, a duplicate adds a
// degree of freedom and a weight does not.
//
// It needs one distinct gradient more than the degree, and returns an *Error that wraps
// the cause otherwise; also where a point does not pass Check, where the degree is outside
// 1 to 9, and where gradients so close together or weights so unlike make a condition
// number above 1e8. Gradients that differ by less than 1e-9 count as one. What is doubtful
// but possible is in Curve.Warnings.
//
// The points are copied. The time it takes grows with the number of points times that of
// distinct gradients, because it leaves out each of the gradients in turn, up to 1000.
func Fit(points []Point, o Options) (*Curve, error) {
	if o.Degree == 0 {
		o.Degree = defaultDegree
	}
	if o.Degree < 1 || o.Degree > mostDegree {
		return nil, refuse("%w: %d is not within 1 to %d", ErrDegree, o.Degree, mostDegree)
	}
	if err := check(points, o); err != nil {
		return nil, err
	}
	c := &Curve{options: o, points: slices.Clone(points)}
	c.groups = group(points)
	if len(c.groups) <= o.Degree {
		return nil, refuse("%w: a degree of %d needs %d distinct ones, there are %d",
			ErrTooFewGradients, o.Degree, o.Degree+1, len(c.groups))
	}
	var err error
	if c.solution, err = solve(points, o.Degree+1); err != nil {
		return nil, &Error{Point: -1, Err: err}
	}
	c.low, c.high = span(points)
	c.warn()
	return c, nil
}

// check returns an *Error of the first point that is refused.
func check(points []Point, o Options) error {
	for j, p := range points {
		err := p.Check()
		if err == nil && o.KnownVariance && p.Weight == 0 {
			err = fmt.Errorf("%w: it is 0, where 1/variance is asked for", ErrWeight)
		}
		if err != nil {
			return &Error{Point: j, Err: err}
		}
	}
	return nil
}

// sameGradient is the difference below which gradients count as one: far above rounding,
// far below what a treadmill can set.
const sameGradient = 1e-9

// group returns the indices of the points of each distinct gradient, in rising order of
// gradients.
func group(points []Point) [][]int {
	order := make([]int, len(points))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch ga, gb := points[a].Gradient, points[b].Gradient; {
		case ga < gb:
			return -1
		case ga > gb:
			return 1
		}
		return 0
	})
	var groups [][]int
	for k, j := range order {
		if k == 0 || points[j].Gradient-points[order[k-1]].Gradient >= sameGradient {
			groups = append(groups, nil)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], j)
	}
	return groups
}
