package forecast

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"isoeffort.example/effort"
)

// The causes for which there is no forecast. Errors of packages effort and plan come
// through as they are.
var (
	ErrDraw   = errors.New("draw out of range")
	ErrOption = errors.New("option out of range")
)

// A Draw is one athlete on one day.
type Draw struct {
	Athlete effort.Athlete

	// Tilt is the pacing tilt, as effort.Pace has it: above 0 the runner starts fast. Within
	// ±0.5.
	Tilt float64

	// Noise is the logarithm of the factor on all moving times of the day. Within ±2.
	Noise float64
}

// A Drawer makes draw i from a generator that is seeded for it. It is called from one
// goroutine, in order.
type Drawer func(i int, rng *rand.Rand) Draw

// Given draws the elements of a slice in turn, and from the start again after the last:
// Options.Draws should be a multiple of its length. It keeps the slice. An empty one gives
// nil, which Of refuses.
func Given(draws []Draw) Drawer {
	if len(draws) == 0 {
		return nil
	}
	return func(i int, _ *rand.Rand) Draw { return draws[i%len(draws)] }
}

// check returns an error that wraps ErrDraw or effort.ErrAthlete.
func (d Draw) check(i int) error {
	if err := d.Athlete.Check(); err != nil {
		return fmt.Errorf("forecast: draw %d: %w", i, err)
	}
	if !(math.Abs(d.Tilt) <= greatestTilt) {
		return fmt.Errorf("forecast: draw %d: %w: tilt %g is not within ±%g", i, ErrDraw, d.Tilt, greatestTilt)
	}
	if !(math.Abs(d.Noise) <= greatestNoise) {
		return fmt.Errorf("forecast: draw %d: %w: noise %g is not within ±%g", i, ErrDraw, d.Noise, greatestNoise)
	}
	return nil
}

// Bounds of a draw: those of effort.Pace, and a factor of 7 on the time.
const (
	greatestTilt  = 0.5
	greatestNoise = 2.0
)

// all makes the draws.
func (d Drawer) all(n int, seed uint64) ([]Draw, error) {
	if d == nil {
		return nil, fmt.Errorf("forecast: %w: there are none", ErrDraw)
	}
	out := make([]Draw, n)
	for i := range out {
		out[i] = d(i, rand.New(rand.NewPCG(seed, uint64(i))))
		if err := out[i].check(i); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// central is the athlete in the middle of the draws, by geometric means of the five
// numbers (arithmetic where one is 0); the rest is the first draw's.
func central(draws []Draw) effort.Athlete {
	a := draws[0].Athlete
	for n := range effort.Number(effort.Numbers) {
		column, logs := numberOf(draws, n)
		sum := 0.0
		for _, v := range column {
			sum += v
		}
		mean := sum / float64(len(column))
		if logs {
			mean = math.Exp(mean)
		}
		a = a.Set(n, mean)
	}
	return a
}

// numberOf is a number of every draw: its logarithm, unless one of them is 0.
func numberOf(draws []Draw, n effort.Number) (column []float64, logs bool) {
	logs = true
	for _, d := range draws {
		v := d.Athlete.Get(n)
		if n == effort.FadeShape && v == 0 {
			v = 1
		}
		column = append(column, v)
		logs = logs && v > 0
	}
	if logs {
		for i, v := range column {
			column[i] = math.Log(v)
		}
	}
	return column, logs
}
