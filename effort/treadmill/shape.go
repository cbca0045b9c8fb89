package treadmill

import (
	"fmt"
	"math"
)

// Minimum returns the gradient of least cost within the measured range and that cost in
// J/(kg m); of several equal to the last bit, the lowest gradient. Where it is at an end of
// the range, the true one may lie beyond. Both are NaN where the polynomial is not positive
// throughout.
func (c *Curve) Minimum() (gradient, cost float64) {
	x, cost := c.least()
	if !(cost > 0) {
		return math.NaN(), math.NaN()
	}
	return c.gradientAt(x), cost
}

// least returns the scaled gradient and the value of the polynomial's least.
func (c *Curve) least() (x, cost float64) {
	x, cost = -1, c.poly.at(-1)
	for _, turn := range c.turns()[1:] {
		if y := c.poly.at(turn); y < cost {
			x, cost = turn, y
		}
	}
	return x, cost
}

// turns returns −1, the turning points of the polynomial between, and 1: on each piece
// between two of them it rises or falls throughout.
func (c *Curve) turns() []float64 {
	d := c.poly.derivative()
	return append(append([]float64{-1}, d.signChanges()...), 1)
}

// gradientAt is the gradient of a scaled one, within the measured range to the last bit.
func (c *Curve) gradientAt(x float64) float64 {
	switch x {
	case -1:
		return c.low
	case 1:
		return c.high
	}
	return min(max(c.scale.out(x), c.low), c.high)
}

// A FaultKind is a way in which a polynomial cannot be a cost curve.
type FaultKind string

// The kinds of faults.
const (
	// Falling: the cost becomes less away from its least, on steeper ground. A curve may
	// be raced by all the same.
	Falling FaultKind = "cost falls away from its least"

	// NotPositive: the polynomial is 0 or less. PerMetre is NaN there.
	NotPositive FaultKind = "cost is not positive"
)

// A Fault is an interval of gradients in which a curve is faulty.
type Fault struct {
	Kind     FaultKind
	From, To float64 // gradients, From < To
	Depth    float64 // J/(kg m): how far it falls there, or the least it comes to below 0
}

// String returns the fault in words.
func (f Fault) String() string {
	return fmt.Sprintf("%s between gradients of %.4g and %.4g, by %.3g J/(kg m)", f.Kind, f.From, f.To, f.Depth)
}

// tiny is the part of the greatest cost by which a piece must fall to count: rounding of
// the polynomial stays below it.
const tiny = 1e-12

// Faults returns every interval within the measured range on which the cost falls away
// from its least, on either side, and then every one on which it is not positive, each
// kind in rising order of gradients; nil if there is none. The intervals end at the roots
// of the derivative and of the polynomial, bisected to the last bit, not at points of a
// grid: none is too narrow to be seen, but for falls by less than 1e-12 of the greatest
// cost.
func (c *Curve) Faults() []Fault {
	if c.terms == 0 {
		return nil
	}
	return append(c.falls(), c.notPositive()...)
}

// falls returns the Falling faults.
func (c *Curve) falls() []Fault {
	least, _ := c.least()
	turns := c.turns()
	greatest := 0.0
	for _, x := range turns {
		greatest = max(greatest, math.Abs(c.poly.at(x)))
	}
	var faults []Fault
	for k := 1; k < len(turns); k++ {
		fall := c.poly.at(turns[k-1]) - c.poly.at(turns[k])
		if turns[k] <= least {
			fall = -fall
		}
		if fall > tiny*greatest {
			faults = append(faults, Fault{Falling, c.gradientAt(turns[k-1]), c.gradientAt(turns[k]), fall})
		}
	}
	return faults
}

// notPositive returns the NotPositive faults.
func (c *Curve) notPositive() []Fault {
	edges := append(append([]float64{-1}, c.poly.signChanges()...), 1)
	turns := c.turns()
	var faults []Fault
	for k := 1; k < len(edges); k++ {
		a, b := edges[k-1], edges[k]
		if c.poly.at(a+(b-a)/2) > 0 {
			continue
		}
		depth := max(-c.poly.at(a), -c.poly.at(b), 0)
		for _, x := range turns {
			if x > a && x < b {
				depth = max(depth, -c.poly.at(x))
			}
		}
		faults = append(faults, Fault{NotPositive, c.gradientAt(a), c.gradientAt(b), depth})
	}
	return faults
}
