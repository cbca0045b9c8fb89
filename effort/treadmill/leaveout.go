package treadmill

import (
	"fmt"
	"math"
)

// A LeaveOut says how well the curve foretells gradients that it has not seen: each
// gradient in turn is left out with all its points, the polynomial is fitted to the
// others, and its value there compared with what was measured.
type LeaveOut struct {
	Gradients []LeftOut // in rising order of gradients

	// RMS is the root mean square of the errors, each gradient counted once, J/(kg m).
	RMS float64

	// InnerRMS leaves the lowest and the highest gradient out of the mean: without its
	// points a polynomial is extrapolated to an end, and its error there is large however
	// well it fits.
	InnerRMS float64
}

// A LeftOut is one gradient that was left out.
type LeftOut struct {
	Gradient  float64
	Points    int     // how many were left out
	Cost      float64 // weighted mean of what was measured, J/(kg m)
	Predicted float64 // by the fit to the others, not held at its ends and not checked to be a cost
	Error     float64 // Predicted − Cost
	End       bool    // whether it is the lowest or the highest
}

// LeaveOneGradientOut leaves out each gradient in turn. Every fit without it needs one
// distinct gradient more than the degree, so the points need two more; otherwise it
// returns an *Error that wraps ErrTooFewGradients, and one that wraps ErrIllConditioned
// where a fit without one of the gradients is. Gradients that differ by less than 1e-9
// count as one.
func (c *Curve) LeaveOneGradientOut() (LeaveOut, error) {
	if len(c.groups) < c.terms+1 {
		return LeaveOut{}, refuse("%w: leaving one out needs %d distinct ones at a degree of %d, there are %d",
			ErrTooFewGradients, c.terms+1, c.Degree(), len(c.groups))
	}
	var l LeaveOut
	for k := range c.groups {
		out, err := c.leave(k)
		if err != nil {
			return LeaveOut{}, &Error{Point: -1, Err: fmt.Errorf("without the gradient %g: %w", out.Gradient, err)}
		}
		l.Gradients = append(l.Gradients, out)
	}
	l.RMS, l.InnerRMS = rms(l.Gradients), rms(l.Gradients[1:len(l.Gradients)-1])
	return l, nil
}

// leave fits the points without the k-th gradient and predicts it.
func (c *Curve) leave(k int) (LeftOut, error) {
	var rest []Point
	for j, indices := range c.groups {
		for _, index := range indices {
			if j != k {
				rest = append(rest, c.points[index])
			}
		}
	}
	left := c.groups[k]
	out := LeftOut{Gradient: c.points[left[0]].Gradient, Points: len(left), End: k == 0 || k == len(c.groups)-1}
	s, err := solve(rest, c.terms)
	if err != nil {
		return out, err
	}
	weights := 0.0
	for _, index := range left {
		p := c.points[index]
		weights += p.weight()
		out.Cost += float64(p.weight() * p.Cost)
		out.Predicted += float64(p.weight() * s.at(p.Gradient))
	}
	out.Cost /= weights
	out.Predicted /= weights
	out.Error = out.Predicted - out.Cost
	return out, nil
}

// rms is the root mean square of the errors.
func rms(gradients []LeftOut) float64 {
	sum := 0.0
	for _, g := range gradients {
		sum += float64(g.Error * g.Error)
	}
	return math.Sqrt(sum / float64(len(gradients)))
}
