package calibrate

import (
	"context"
	"fmt"

	"isoeffort.example/effort"
)

// Profile returns for each value of a number the least of the negative log posterior over
// all other unknowns, less that at the mode, the noise held: 0.5 at one standard error and
// 1.92 at the ends of a 95 % interval where the posterior is normal. Under the prior Flat it
// is the profile likelihood, all but for the fade shape.
//
// It wraps ErrOption where the number is known or a value is outside what the prior's
// unknown can reach, ErrNoFit where the search fails, or is the context's.
func (e *Estimate) Profile(ctx context.Context, n effort.Number, values []float64) ([]float64, error) {
	if e.p.known(int(n)) {
		return nil, fmt.Errorf("calibrate: %w: the %v is known", ErrOption, n)
	}
	var rises []float64
	for _, v := range values {
		z, err := e.p.unknown(n, v)
		if err != nil {
			return nil, err
		}
		p := e.p.clone(ctx)
		p.frozen, p.deaf = int(n), true
		start := append([]float64(nil), e.p.z...)
		start[n] = z
		if err := p.descend(start); err != nil {
			return nil, fmt.Errorf("the %v at %g: %w", n, v, err)
		}
		rises = append(rises, p.value-e.p.value)
	}
	return rises, nil
}

// unknown is where number n has a value.
func (p *problem) unknown(n effort.Number, value float64) (float64, error) {
	low, top := -8.0, 8.0
	if !(value >= p.number(n, low) && value <= p.number(n, top)) {
		return 0, fmt.Errorf("calibrate: %w: %v %g", ErrOption, n, value)
	}
	for range 60 {
		if middle := (low + top) / 2; p.number(n, middle) < value {
			low = middle
		} else {
			top = middle
		}
	}
	return (low + top) / 2, nil
}
