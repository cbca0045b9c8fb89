package pacing

import (
	"context"
	"fmt"
	"math"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// A Group is runners about one hour power.
type Group struct {
	HourPower float64 // W/kg, of its middle, at the usual numbers
	Shape     Shape
	Runners   int
}

// A Model is a field's pacing. It does not change and may be shared between goroutines.
type Model struct {
	Shared   Shape
	Groups   []Group // in order of hour power
	Error    float64 // mean absolute error of the shares fitted, of the finish time
	Even     float64 // that of shares in proportion to distance
	Runners  int
	Warnings []string

	o      Options
	places map[string]*place // by course
}

// NewUsual is a model of the usual shape alone, for a field without splits.
func NewUsual(o Options) (*Model, error) {
	o, err := o.filled()
	return &Model{Shared: Usual(), Groups: []Group{{HourPower: 10, Shape: Usual()}}, o: o}, err
}

const (
	nodes     = 5     // finish times of a race at which curves are computed; between them they run straight
	mostRaces = 8     // races used, those with most runners
	likely    = 0.008 // mean error of a share by which the likelihood is scaled. [Our own]
	rounded   = 0.002 // within which errors count by their square
)

// Fit fits the pacing of results with splits and with role fit or none. The same results
// in another order, or other workers, give the same.
//
// Errors: ErrNoSplits, ErrOption, what course.New says of a profile, or the context's.
func Fit(ctx context.Context, results []record.Result, o Options) (*Model, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	fields, err := gather(results, o)
	if err != nil {
		return nil, err
	}
	f := &fitting{ctx: ctx, o: o, fields: fields}
	m := &Model{o: o}
	for i := range fields {
		m.Runners += len(fields[i].runners)
	}
	best := math.Inf(1)
	for _, habit := range []effort.Habit{effort.RunAndWalk, effort.RunOnly} {
		start := Usual()
		start.Habit = habit
		shape, value := f.search(start, make([]float64, shapeNumbers), func(s Shape) []Group { return []Group{{Shape: s}} })
		if value < best {
			best, m.Shared = value, shape
		}
	}
	m.Groups = f.group(m.Shared)
	m.Error, m.Even = f.errors(m.Groups)
	m.places = f.places(m.Groups)
	if m.Runners < 30 {
		m.Warnings = append(m.Warnings, fmt.Sprintf("only %d runners with splits: their pacing is mostly what is usual", m.Runners))
	}
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return m, nil
}

type fitting struct {
	ctx    context.Context
	o      Options
	fields []field
}
