package pacing

import (
	"errors"
	"fmt"
	"math"
	"runtime"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Options of Fit. The zero value is ready.
type Options struct {
	// Groups is how many groups of speed have numbers of their own. 0 means 3; 1 leaves
	// what is shared.
	Groups int

	// Endurance is the endurance exponent, 0 means 0.10.
	Endurance float64

	// Profiles are courses by race. A race without one is put together from the ascent and
	// descent at its splits.
	Profiles map[string]record.Profile

	// Workers is how many goroutines work. 0 means GOMAXPROCS. No printed digit depends on it.
	Workers int
}

// The causes for which splits cannot be fitted.
var (
	ErrNoSplits = errors.New("no results with splits")
	ErrOption   = errors.New("option out of range")
)

func (o Options) filled() (Options, error) {
	if o.Groups == 0 {
		o.Groups = 3
	}
	if o.Endurance == 0 {
		o.Endurance = 0.10
	}
	if o.Workers == 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	if o.Groups < 1 || o.Groups > 10 || !(o.Endurance >= 0.01 && o.Endurance <= 0.4) || o.Workers < 0 {
		return o, fmt.Errorf("pacing: %w: %d groups, endurance exponent %g, %d workers", ErrOption, o.Groups, o.Endurance, o.Workers)
	}
	return o, nil
}

// A Shape is how a race is spent.
type Shape struct {
	Fade, FadeShape, Braking, Tilt float64
	Habit                          effort.Habit // all run, or run and walked by the rule
}

// shapeNumbers are those of a shape that are fitted.
const shapeNumbers = 4

// Usual is the shape that is believed before any splits, by package effort's usual
// numbers: fade 0.02 (log SD 0.5), fade shape 1 (0.25, within 0.4 and 1.3), braking 1
// (0.6), tilt 0.03 (SD 0.05). [Our own.]
func Usual() Shape { return Shape{Fade: 0.02, FadeShape: 1, Braking: 1, Tilt: 0.03} }

// shapeAt is the shape so many SDs from a centre.
func shapeAt(c Shape, z []float64) Shape {
	c.Fade *= math.Exp(0.5 * hold(z[0]))
	c.FadeShape = math.Max(0.4, math.Min(1.3, c.FadeShape*math.Exp(0.25*hold(z[1]))))
	c.Braking *= math.Exp(0.6 * hold(z[2]))
	c.Tilt = math.Max(-0.3, math.Min(0.3, c.Tilt+0.05*hold(z[3])))
	return c
}

func hold(z float64) float64 { return math.Max(-4, math.Min(4, z)) }

// between is the shape a share of the way from one to another.
func between(a, b Shape, share float64) Shape {
	mix := func(x, y float64) float64 { return x + share*(y-x) }
	a.Fade, a.FadeShape = mix(a.Fade, b.Fade), mix(a.FadeShape, b.FadeShape)
	a.Braking, a.Tilt = mix(a.Braking, b.Braking), mix(a.Tilt, b.Tilt)
	return a
}
