package effort

import (
	"fmt"
	"math"
	"time"
)

// A Night is a runner's own factor on capability in the dark, for those who know theirs.
type Night struct {
	From, To time.Duration // times of day; each change takes half an hour around it. Equal: no night
	Factor   float64       // on capability. 0 means 1: no loss
}

func (n Night) check() error {
	if !(n.Factor == 0 || n.Factor >= 0.3 && n.Factor <= 1.5) {
		return fmt.Errorf("%w: factor %g is not within 0.3 to 1.5", ErrDay, n.Factor)
	}
	if n.From == n.To && n.factor() != 1 {
		return fmt.Errorf("%w: a factor of %g without the times of the night", ErrDay, n.Factor)
	}
	if n.From < 0 || n.To < 0 || n.From > 24*time.Hour || n.To > 24*time.Hour {
		return fmt.Errorf("%w: %v to %v are not times of day", ErrDay, n.From, n.To)
	}
	dark := (n.To - n.From + 24*time.Hour) % (24 * time.Hour)
	if n.From != n.To && (dark < 30*time.Minute || dark > 24*time.Hour-30*time.Minute) {
		return fmt.Errorf("%w: a night from %v to %v leaves less than half an hour of dark or of light", ErrDay, n.From, n.To)
	}
	return nil
}

// factor is on capability in the dark.
func (n Night) factor() float64 {
	if n.Factor == 0 {
		return 1
	}
	return n.Factor
}

// darkness is the share of the dark at a clock time in seconds, and its slope.
func (n Night) darkness(t float64) (value, slope float64) {
	if n.From == n.To {
		return 0, 0
	}
	// since is how long ago in seconds an event was, from half an edge before it on.
	since := func(event time.Duration) float64 {
		s := t - event.Seconds() + nightEdge/2
		return s - dayLength*math.Floor(s/dayLength)
	}
	from, to := since(n.From), since(n.To)
	if from <= to { // the night fell last
		return ramp(from)
	}
	value, slope = ramp(to)
	return 1 - value, -slope
}

// ramp goes smoothly from 0 to 1 over an edge, s seconds on.
func ramp(s float64) (value, slope float64) {
	u := math.Min(1, s/nightEdge)
	return u * u * (3 - 2*u), 6 * u * (1 - u) / nightEdge
}
