package curve

import (
	"errors"
	"fmt"
)

// ErrParameter is wrapped by the errors of Check: a mass, load, terrain or another
// property of a curve or rule that is out of its range.
var ErrParameter = errors.New("parameter out of range")

// Check returns an error that wraps ErrParameter where a field is outside the range that
// its comment gives, or is NaN. Power and Published are NaN then. The ranges are wide and
// mean impossible, not untested. [Our own.]
func (p Pandolf) Check() error {
	p = p.filled()
	if err := within("mass", p.Mass, 30, 250, "kg"); err != nil {
		return err
	}
	if err := within("load", p.Load, 0, p.Mass, "kg"); err != nil {
		return err
	}
	return within("terrain", p.Terrain, 1, 10, "")
}

// Check is that of Pandolf.
func (p PandolfSantee) Check() error { return Pandolf(p).Check() }

// within returns an error unless low <= x <= top.
func within(what string, x, low, top float64, unit string) error {
	if x >= low && x <= top {
		return nil
	}
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Errorf("curve: %w: %s %g%s is not within %g to %g%s", ErrParameter, what, x, unit, low, top, unit)
}
