package elevation

import (
	"fmt"
	"math"
)

// AsGiven, as Options.Smoothing, leaves the heights unsmoothed: repaired, filled and put
// on the grid.
const AsGiven = -1

// Defaults that a zero Options stands for.
const (
	DefaultGrid        = 10   // m
	DefaultMaxGradient = 0.45 // the steepest that the energy cost of running was measured at (Minetti et al. 2002)
	DefaultHeightSD    = 1    // m, of a known height: a spot height on a map. [Our own]
)

// Options of Clean. The zero value is ready.
type Options struct {
	// Grid is the spacing in metres of the cleaned profile, at least 1. It is adjusted to
	// divide the length. 0 means DefaultGrid.
	Grid float64

	// Known are heights of landmarks from a better source, against which a drift of the
	// recording is removed. nil leaves the drift in.
	Known []Height

	// MaxGradient is the gradient, rise over run, above which ground is flagged. 0 means
	// DefaultMaxGradient.
	MaxGradient float64

	// Noise is the SD in metres of the noise of one recorded height, taken to be
	// independent from point to point. 0 means that the noise is estimated.
	Noise float64

	// Smoothing is the wavelength in metres of the undulations of which half is taken
	// away; longer ones are kept more fully and shorter ones less. Two spacings of the
	// grid are the least. 0 means that it is chosen by the noise; AsGiven switches
	// smoothing off.
	Smoothing float64
}

// A Height is a height known from elsewhere.
type Height struct {
	Distance  float64 // m, on the scale of the distances given
	Elevation float64 // m
	SD        float64 // m; 0 means DefaultHeightSD
}

func (o Options) check() error {
	for _, v := range []struct {
		name       string
		value      float64
		least, top float64
	}{
		{"grid", o.Grid, 1, 1000},
		{"greatest gradient", o.MaxGradient, 0.01, 10},
		{"noise", o.Noise, 1e-3, 1000},
		{"smoothing", o.Smoothing, 1, 1e5},
	} {
		off := v.value == 0 || v.name == "smoothing" && v.value == AsGiven
		if !off && !(v.value >= v.least && v.value <= v.top) {
			return fmt.Errorf("elevation: %w: %s of %g is not within %g to %g", ErrOption, v.name, v.value, v.least, v.top)
		}
	}
	for _, h := range o.Known {
		ok := !math.IsNaN(h.Distance-h.Distance) && h.Elevation >= MinElevation && h.Elevation <= MaxElevation && h.SD >= 0 && h.SD <= 1000
		if !ok {
			return fmt.Errorf("elevation: %w: known height of %g m (SD %g) at %g m", ErrOption, h.Elevation, h.SD, h.Distance)
		}
	}
	return nil
}

// filled puts the defaults in.
func (o Options) filled() Options {
	if o.Grid == 0 {
		o.Grid = DefaultGrid
	}
	if o.MaxGradient == 0 {
		o.MaxGradient = DefaultMaxGradient
	}
	return o
}
