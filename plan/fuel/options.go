package fuel

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
)

// The causes for which no table can be made.
var (
	ErrStation = errors.New("aid station off the course or out of order")
	ErrOption  = errors.New("option out of range")
	ErrPlan    = errors.New("no plan")
)

// Defaults that zero Options stand for.
const (
	DefaultPortion  = 20 // g of carbohydrate, common practice, no source
	DefaultHumidity = 50 // % [Our own]
	DefaultMass     = 60 // kg, a light runner, so as to advise less [Our own]
)

// Options say what the runner has rehearsed and can carry. The zero value is a novice on a
// course whose landmarks of kind course.Station are the aid stations.
type Options struct {
	// Stations are the aid stations in m from the start, ascending, between the start and
	// the finish. nil takes the course's landmarks of kind course.Station; an empty slice
	// is a race without any.
	Stations []float64

	// Rehearsed is the carbohydrate in g/h that the runner has eaten in training at race
	// effort and kept down, up to 150. 0 is a novice, who gets 60 g/h at most. What is above 90 counts
	// as 90.
	Rehearsed float64

	// Mass is the runner's body mass in kg, 20 to 250. 0 takes that of the plan's athlete
	// or, failing that, DefaultMass.
	Mass float64

	// MaxCarry is the most carbohydrate in g, and MaxFluid the most fluid in ml, that the
	// runner can carry. 0 is no bound. MaxFluid bounds no advice: Section.FluidShort says
	// where the way is too long for it.
	MaxCarry float64
	MaxFluid float64

	// Interval is the time between two intakes, 10 minutes to an hour. 0 is as long as one
	// portion lasts, and 20 minutes above 60 g/h.
	Interval time.Duration

	// Portion is the carbohydrate in g of the smallest piece eaten at a time, 5 to
	// MostAtOnce. 0 means DefaultPortion, and what it takes above 60 g/h.
	Portion float64

	// Air is used where the plan has no weather. nil means that it is not known, for
	// which the middle of the range of heat stands, with a note.
	Air *Air
}

// Air is the weather of a race as one figure.
type Air struct {
	Temperature float64 // °C, −60 to 60
	Humidity    float64 // %, 0 to 100; 0 means DefaultHumidity
}

// check returns the options with defaults filled in.
func (o Options) check(c *course.Course) (Options, error) {
	for _, b := range []struct {
		name          string
		value         *float64
		low, high, or float64
	}{
		{"rehearsed g/h", &o.Rehearsed, 0, 150, 0},
		{"mass in kg", &o.Mass, 20, 250, 0},
		{"carried carbohydrate in g", &o.MaxCarry, 0, math.MaxFloat64, 0},
		{"carried fluid in ml", &o.MaxFluid, 0, math.MaxFloat64, 0},
		{"portion in g", &o.Portion, 5, MostAtOnce, 0},
	} {
		v := *b.value
		if v != 0 && !(v >= b.low && v <= b.high) {
			return o, fmt.Errorf("fuel: %s %g: %w", b.name, v, ErrOption)
		}
		if v == 0 {
			*b.value = b.or
		}
	}
	if o.Interval != 0 && (o.Interval < 10*time.Minute || o.Interval > time.Hour) {
		return o, fmt.Errorf("fuel: interval %v: %w", o.Interval, ErrOption)
	}
	if a := o.Air; a != nil && !(a.Temperature >= -60 && a.Temperature <= 60 && a.Humidity >= 0 && a.Humidity <= 100) {
		return o, fmt.Errorf("fuel: air of %g °C and %g %%: %w", a.Temperature, a.Humidity, ErrOption)
	}
	return o, o.checkStations(c)
}

func (o Options) checkStations(c *course.Course) error {
	before := 0.0
	for i, x := range o.Stations {
		switch {
		case !(x > 0 && x < c.Length()):
			return fmt.Errorf("fuel: station %d at %g m of %g m: %w", i, x, c.Length(), ErrStation)
		case x <= before:
			return fmt.Errorf("fuel: station %d at %g m, after one at %g m: %w", i, x, before, ErrStation)
		}
		before = x
	}
	return nil
}
