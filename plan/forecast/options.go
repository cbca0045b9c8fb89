package forecast

import (
	"fmt"
	"slices"
)

// Defaults of Options.
const (
	DefaultDraws = 1000
	DefaultStep  = 50 // m
)

// Options of a forecast. The zero value is ready.
type Options struct {
	Draws int // 1 to 1 000 000. 0 means DefaultDraws

	// Seed makes other draws of the same kind. The same seed gives the same forecast
	// whatever the number of workers.
	Seed uint64

	// Step is the length in metres of the cells that are computed. 0 means DefaultStep;
	// see Of for what that costs.
	Step float64

	// Quantiles are shares of all days, ascending, over 0 and under 1: 0.05 is the time that
	// a twentieth undercut. Nil means 0.05, 0.25, 0.5, 0.75 and 0.95.
	Quantiles []float64

	Workers int // goroutines. 0 means 1
}

// filled replaces zeros and checks.
func (o Options) filled() (Options, error) {
	if o.Draws == 0 {
		o.Draws = DefaultDraws
	}
	if o.Step == 0 {
		o.Step = DefaultStep
	}
	if o.Quantiles == nil {
		o.Quantiles = []float64{0.05, 0.25, 0.5, 0.75, 0.95}
	}
	o.Quantiles = slices.Clone(o.Quantiles)
	if o.Workers == 0 {
		o.Workers = 1
	}
	if o.Draws < 1 || o.Draws > 1_000_000 {
		return o, fmt.Errorf("forecast: %w: %d draws", ErrOption, o.Draws)
	}
	if o.Workers < 1 {
		return o, fmt.Errorf("forecast: %w: %d workers", ErrOption, o.Workers)
	}
	before := 0.0
	for i, q := range o.Quantiles {
		if !(q > before && q < 1) {
			return o, fmt.Errorf("forecast: %w: quantile %d is %g, not ascending within 0 to 1", ErrOption, i+1, q)
		}
		before = q
	}
	if len(o.Quantiles) == 0 {
		return o, fmt.Errorf("forecast: %w: no quantiles", ErrOption)
	}
	return o, nil
}
