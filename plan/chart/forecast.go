package chart

import (
	"fmt"
	"math"
	"time"
)

// A Forecast is what may come: arrival times at places by their quantiles. The package
// makes none; it draws what it is given.
type Forecast struct {
	// Quantiles are shares of races, ascending, over 0 and under 1: two at least. 0.05 is
	// the time that a twentieth of races undercut.
	Quantiles []float64

	// Points are the places, in ascending distance.
	Points []FanPoint
}

// A FanPoint is a place of a forecast.
type FanPoint struct {
	Name     string          // one with a name gets a label and a line in the table
	Distance float64         // m from the start, over 0
	Times    []time.Duration // since the runner's gun, on arrival, one for each quantile
}

// check says why a forecast cannot be drawn over a course of a length, +Inf if unknown.
func (f Forecast) check(length float64) error {
	if len(f.Quantiles) < 2 || len(f.Points) == 0 {
		return fmt.Errorf("chart: %d quantiles at %d points: %w", len(f.Quantiles), len(f.Points), ErrFan)
	}
	before := 0.0
	for i, q := range f.Quantiles {
		if !(q > before && q < 1) {
			return fmt.Errorf("chart: quantile %d is %g: %w", i+1, q, ErrFan)
		}
		before = q
	}
	before = 0
	for i, pt := range f.Points {
		if !(pt.Distance > before && pt.Distance <= length+1) || math.IsInf(pt.Distance, 1) {
			return fmt.Errorf("chart: point %d at %g m: %w", i+1, pt.Distance, ErrFan)
		}
		before = pt.Distance
		if err := pt.check(i, len(f.Quantiles)); err != nil {
			return err
		}
	}
	return nil
}

func (pt FanPoint) check(i, quantiles int) error {
	if len(pt.Times) != quantiles {
		return fmt.Errorf("chart: point %d has %d times for %d quantiles: %w", i+1, len(pt.Times), quantiles, ErrFan)
	}
	var before time.Duration
	for _, t := range pt.Times {
		if t < before || t > longest {
			return fmt.Errorf("chart: point %d at %.0f m: a time of %v: %w", i+1, pt.Distance, t, ErrFan)
		}
		before = t
	}
	return nil
}

// median returns the index of the quantile 0.5, or -1.
func (f Forecast) median() int {
	for i, q := range f.Quantiles {
		if math.Abs(q-0.5) < 1e-9 {
			return i
		}
	}
	return -1
}

// middle returns the index of the quantile nearest to 0.5.
func (f Forecast) middle() int {
	best := 0
	for i, q := range f.Quantiles {
		if math.Abs(q-0.5) < math.Abs(f.Quantiles[best]-0.5) {
			best = i
		}
	}
	return best
}
