package effort

import (
	"errors"
	"fmt"
	"math"
)

// motion is the Curve of a gait prepared for the integrator.
type motion struct {
	separable Separable // nil where the curve is not
	table     []node    // of Base; nil where that is 0 everywhere
	curve     Curve     // where it is not separable
	model     bool      // whether it is one of this package, whose laws are known
	reference float64   // the speed in m/s at which its mean over a cell is exact
	base      float64   // Base(reference)/reference, J/(kg m)

	// parabola is Base about, c0 + c1 v + c2 v²: through it at 0.5, 1 and 1.7 m/s.
	parabola [3]float64
}

// tableTop is the speed in m/s up to which the base of a user's curve is tabulated.
const tableTop = 8

// newMotion prepares a curve.
func newMotion(c Curve, reference float64) *motion {
	k := &motion{reference: reference}
	switch c := c.(type) {
	case MinettiRunning, MinettiWalking:
		k.separable, k.model = c.(Separable), true
	case LooneyWalking:
		k.separable, k.table, k.model = c, baseTable(), true
	case Separable:
		k.separable, k.table = c, tabulate(c.Base)
	default:
		k.curve = c
	}
	if k.table != nil {
		k.base = k.separable.Base(reference) / reference
		k.parabola = parabola(k.separable.Base)
	}
	return k
}

// parabola is the one through f at 0.5, 1 and 1.7, ascending powers.
func parabola(f func(float64) float64) [3]float64 {
	const a, b, c = 0.5, 1.0, 1.7
	first, second := (f(b)-f(a))/(b-a), (f(c)-f(b))/(c-b)
	bend := (second - first) / (c - a)
	slope := first - bend*(a+b)
	return [3]float64{f(a) - slope*a - bend*a*a, slope, bend}
}

// guess is about the speed at which base · Base(v) + perMetre · v is p, for want of a
// better one to start from; 0 where the parabola knows none.
func (k *motion) guess(base, perMetre, p float64) float64 {
	c, b, a := base*k.parabola[0]-p, base*k.parabola[1]+perMetre, base*k.parabola[2]
	root := b*b - 4*a*c
	if !(c < 0 && root > 0) {
		return 0
	}
	return -2 * c / (b + math.Sqrt(root)) // stable, and linear where a is 0
}

// tabulate is a table of a curve's base like baseTable, with slopes by central
// differences, or nil for a base that is 0 at every node.
func tabulate(base func(float64) float64) []node {
	table, zero := make([]node, int((tableTop-baseLow)*baseNodes)+2), true
	for i := range table {
		v := baseLow + float64(i)/baseNodes
		table[i] = node{base(v), difference(base, v)}
		zero = zero && table[i].value == 0
	}
	if zero {
		return nil
	}
	return table
}

// difference is the derivative of f at v by fourth-order central differences.
func difference(f func(float64) float64, v float64) float64 {
	h := 2e-3 * v
	return (8*(f(v+h)-f(v-h)) - (f(v+2*h) - f(v-2*h))) / (12 * h)
}

// perMetre is what a metre along a gradient adds to the cost of a cell: for a curve that
// is not separable all of it at the reference speed, from which atMean is then taken.
func (k *motion) perMetre(gradient float64) float64 {
	if k.separable != nil {
		return k.separable.PerMetre(gradient)
	}
	return k.curve.Power(k.reference, gradient) / k.reference
}

// atMean is the cost per metre that whole will see on a cell's mean gradient.
func (k *motion) atMean(gradient float64) float64 {
	if k.separable != nil {
		return 0
	}
	return k.curve.Power(k.reference, gradient) / k.reference
}

// speedCost is the part of the cost per metre that is not in the cell, at the reference
// speed.
func (k *motion) speedCost(gradient float64) float64 {
	if k.separable != nil {
		return k.base
	}
	return k.atMean(gradient)
}

// power is the part of the power that is not in the cell, and its derivative by speed.
func (k *motion) power(v, gradient float64) (value, slope float64) {
	switch {
	case k.table != nil:
		return baseFast(k.table, k.separable, v)
	case k.separable != nil:
		return 0, 0
	}
	return k.whole(v, gradient)
}

// whole is the power of a curve that is not separable.
func (k *motion) whole(v, gradient float64) (value, slope float64) {
	h := 1e-4 * v
	up, down := k.curve.Power(v+h, gradient), k.curve.Power(v-h, gradient)
	return k.curve.Power(v, gradient), (up - down) / (2 * h)
}

// baseFast is a curve's base and its slope, by the table where the table reaches.
func baseFast(table []node, c Separable, v float64) (value, slope float64) {
	place := (v - baseLow) * baseNodes
	if place >= 0 && place < float64(len(table)-1) {
		i := int(place)
		return hermite(table[i], table[i+1], place-float64(i), 1.0/baseNodes)
	}
	if _, ok := c.(LooneyWalking); ok {
		return walkingBaseAndSlope(v)
	}
	if v == 0 {
		return 0, math.Inf(1)
	}
	return c.Base(v), difference(c.Base, v)
}

// ErrCurve is wrapped by the error for a cost curve that cannot be moved by.
var ErrCurve = errors.New("cost curve is not finite, positive and growing with speed")

// checkCurves checks other curves than the model's on every cell.
func (g *Ground) checkCurves() error {
	if g.run.model && g.walk.model {
		return nil
	}
	for j := range g.cells {
		if err := g.checkCell(&g.cells[j]); err != nil {
			return err
		}
	}
	return nil
}

func (g *Ground) checkCell(c *cell) error {
	if !g.run.grows(c, c.run) {
		return fmt.Errorf("effort: running: %w on a gradient of %.3g at %.0f m", ErrCurve, c.gradient, c.end)
	}
	if !g.walk.grows(c, c.walk) {
		return fmt.Errorf("effort: walking: %w on a gradient of %.3g at %.0f m", ErrCurve, c.gradient, c.end)
	}
	return nil
}

// grows reports whether the power on a cell is positive, finite and growing about the
// reference speed.
func (k *motion) grows(c *cell, perMetre float64) bool {
	before := 0.0
	for _, share := range []float64{0.5, 0.75, 1, 1.2} {
		v := share * k.reference
		value, _ := k.power(v, c.gradient)
		power := c.surface*value + v*perMetre
		if !(power > before) || math.IsInf(power, 1) {
			return false
		}
		before = power
	}
	return true
}
