package calibrate

import (
	"errors"
	"fmt"
	"math"

	"isoeffort.example/effort"
)

const (
	// settled ends the descent: a stride as short as this, in prior SDs.
	settled = 3e-3

	// resting ends the search over the closed forms: the squared distance to the minimum of
	// the local parabola, in posterior SDs.
	resting = 1e-8

	// decrementThreshold is what a point must meet to be believed the mode, by that distance.
	// Where a walk comes to its greatest speed F has kinks, at which no gradient need vanish.
	decrementThreshold = 1e-2

	// roughThreshold is what it must meet with a warning.
	roughThreshold = 0.25

	rounds       = 25   // strides at most
	searchRounds = 60   // steps of a search at most
	gaitRounds   = 8    // in which gaits are chosen anew; then they hold, should they go to and fro
	slack        = 1e-6 // by which F may rise
	gaitSlack    = 1e-3 // where gaits change
	noiseRounds  = 30   // in which the noise is weighed
	nearby       = 0.3  // a stride, in prior SDs, that ends where residuals tell the noise
	quiet        = 1e-4 // the change of ln(scale) at which it rests
	tightest     = 1e6  // of leashes
	longStride   = 2.0  // the longest, of an unknown in prior SDs
)

// descent is a minimisation under way. Each of its strides leads to the minimum over the
// closed forms held to the model where it stands, and near enough if that led up before.
type descent struct {
	*problem
	leash    float64 // the price of the square of the distance
	near     bool    // whether the last stride was short
	stale    bool    // whether slopes were not looked at since
	holding  bool    // whether gaits are held until a minimum with them is found
	chosen   int     // how often gaits were
	filledAt []float64
}

// descend minimises F from z.
func (p *problem) descend(z []float64) error {
	p.z = append(p.z[:0], z...)
	widen := p.o.widen
	if !p.deaf {
		p.scale, p.splitScale, p.loose = p.o.Noise/widen, p.o.SplitNoise/widen, false
	}
	a, _, _ := p.athlete(z)
	for _, u := range p.runs {
		u.offset, u.free.known = 0, false
		u.closed.prepare(u.ground, a)
	}
	p.rough = 0
	d := descent{problem: p}
	if _, err := d.refresh(); err != nil {
		return err
	}
	for range rounds {
		if done, err := d.stride(); done || err != nil {
			return err
		}
	}
	return d.slowly()
}

// refresh computes residuals and slopes anew and holds the closed forms to them. After a
// short stride the slopes stay as they are beyond those of the closed forms.
func (d *descent) refresh() (changed bool, err error) {
	held := d.holding || d.chosen >= gaitRounds
	d.stale = d.near && !d.tilted
	if d.stale {
		changed, d.stale = d.revalue(held)
	}
	if !d.stale {
		changed, err = d.problem.refresh(d.z, held)
		if err != nil && d.chosen > 0 && errors.Is(err, effort.ErrDemand) { // gaits far from any answer
			d.chosen = gaitRounds
			changed, err = d.problem.refresh(d.z, true)
		}
	}
	if changed {
		d.chosen++
	}
	if err == nil {
		d.hold()
	}
	return changed, err
}

// stride takes one, and reports whether the mode is reached.
func (d *descent) stride() (done bool, err error) {
	from := d.point()
	d.settle(from.z)
	step := apart(from.z, d.z)
	if step > longStride {
		for i := range d.z {
			d.z[i] = from.z[i] + (d.z[i]-from.z[i])*longStride/step
		}
	}
	if step < settled { // and what the closed forms say of so short a step is true
		return d.rest()
	}
	changed, err := d.refresh()
	if d.ctx.Err() != nil {
		return true, d.ctx.Err()
	}
	rise := slack
	if changed {
		rise = gaitSlack
	}
	if err == nil && d.value <= d.f(from.z, from.resid)+rise {
		if d.leash /= 3; d.leash < 0.1 {
			d.leash = 0
		}
		d.near = step < nearby
		return false, nil
	}
	return d.back(from, changed)
}

// back returns to where a stride that led up started from.
func (d *descent) back(from point, changed bool) (done bool, err error) {
	d.restore(from)
	d.near = false
	if changed || d.stale {
		d.holding = d.holding || changed
		_, err := d.refresh()
		return err != nil, err
	}
	d.value = d.f(d.z, d.resid)
	d.hold()
	if d.leash = math.Max(0.5, 8*d.leash); d.leash > tightest {
		return true, d.slowly()
	}
	return false, nil
}

// rest looks again at a point from which no stride leads: at gaits held, and at grounds in
// fewer cells.
func (d *descent) rest() (done bool, err error) {
	if d.holding && d.chosen < gaitRounds {
		d.chosen++
		d.holding, d.near = false, false
		changed, err := d.refresh()
		d.holding = true
		if err != nil || changed {
			return err != nil, err
		}
	}
	moved, err := d.fill()
	return !moved, err
}

// verdict says whether the point reached will do.
func (d *descent) verdict() error {
	_, decrement := downhill(d.gradient(), d.curvature(true))
	if decrement < decrementThreshold {
		return nil
	}
	if decrement < roughThreshold {
		d.rough = math.Sqrt(decrement)
		return nil
	}
	return fmt.Errorf("calibrate: %w: the best found lies %.2g SD from where it should", ErrNoFit, math.Sqrt(decrement))
}
