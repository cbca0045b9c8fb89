package course

import (
	"errors"
	"fmt"
	"math"
)

// Cleaned is what Options.Clean makes of a profile.
type Cleaned struct {
	// Distance and Elevation are the profile, from 0 to the length that was given.
	Distance, Elevation []float64

	// Smoothing is the width or wavelength in metres that was smoothed over, 0 for none.
	Smoothing float64

	// AscentSD and DescentSD are how far the course's ascent and descent may be out, one
	// SD in metres; both 0 if that is not known.
	AscentSD, DescentSD float64

	Warnings []string // what was changed
}

// ErrCleaned is wrapped by the error for a Cleaned that is no profile of the length asked
// for: a programmer's mistake in Options.Clean.
var ErrCleaned = errors.New("cleaned profile does not fit the course")

// take takes over a profile that Options.Clean made.
func (c *Course) take(p Cleaned, length float64) error {
	if err := p.check(length); err != nil {
		return err
	}
	c.distance, c.elevation, c.smoothing = p.Distance, p.Elevation, p.Smoothing
	c.ascentSD, c.descentSD = p.AscentSD, p.DescentSD
	c.warnings = append(c.warnings, p.Warnings...)
	c.accumulate()
	return nil
}

func (p Cleaned) check(length float64) error {
	n := len(p.Distance)
	if n < 2 || n != len(p.Elevation) {
		return fmt.Errorf("course: %w: %d distances, %d elevations", ErrCleaned, n, len(p.Elevation))
	}
	if p.Distance[0] != 0 || math.Abs(p.Distance[n-1]-length) > 1e-9*length {
		return fmt.Errorf("course: %w: from %g to %g m of %g m", ErrCleaned, p.Distance[0], p.Distance[n-1], length)
	}
	for i, d := range p.Distance {
		if i > 0 && !(d > p.Distance[i-1]) {
			return fmt.Errorf("course: %w: distances do not grow at point %d", ErrCleaned, i+1)
		}
		if err := checkPoint(d, p.Elevation[i]); err != nil {
			return fmt.Errorf("course: %w: point %d: %w", ErrCleaned, i+1, err)
		}
	}
	return nil
}

// ReliefSD returns how far the ascent and the descent of the whole course may be out, one
// SD in metres. ok is false where that is not known: only Options.Clean tells it, and the
// operations that make new courses lose it.
func (c *Course) ReliefSD() (ascent, descent float64, ok bool) {
	return c.ascentSD, c.descentSD, c.ascentSD > 0 || c.descentSD > 0
}
