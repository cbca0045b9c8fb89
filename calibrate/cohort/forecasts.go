package cohort

import (
	"context"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// ForecastOptions of Forecasts. The zero value is ready.
type ForecastOptions struct {
	Options

	// SameDay also forecasts from the results of others in the same race on the same day.
	SameDay bool

	// FitOnly leaves every result with role predict out of all forecasts of others. Without
	// it dates alone decide: what was run on an earlier date may be used later.
	FitOnly bool
}

// An Interval is a time foretold: its median and the ends of the central 90 %, and of the
// central 50 %.
type Interval struct{ Median, Low, High, InnerLow, InnerHigh time.Duration }

// interval is that of a foretold row, so many times as wide as the model has it.
func (v *view) interval(f *foretold, stretch float64) Interval {
	half := stretch * v.mixture.half(0.9, f.variance, f.scale)
	inner := stretch * v.mixture.half(0.5, f.variance, f.scale)
	at := func(x float64) time.Duration { return effort.Seconds(math.Exp(f.mean + x)) }
	return Interval{at(0), at(-half), at(half), at(-inner), at(inner)}
}

// A Forecast is a result with role predict, foretold.
type Forecast struct {
	Result record.Result

	// Own is from the athlete's own earlier results and the population.
	Own Interval

	// Without is from the athlete's own earlier results, cleared of the effects of the
	// courses that they were run on, and knows the course to come by its kind alone.
	Without Interval

	// With adds the effect of the course to come by everyone's earlier results on it.
	With Interval

	// Day adds the others' results of the day. It is zero without SameDay.
	Day Interval

	Used  int // earlier results of the athlete
	Field int // others' results of the day
}

// Forecasts foretells each result with role predict, in the order given, from results of
// earlier dates alone (calendar days in UTC), and under SameDay those of others in its own
// race: nothing that is run on a later date changes a digit of it, and neither does its
// own time. Intervals are made wider or narrower by how the forecasts of earlier dates
// fared.
//
// The errors are Fit's.
func Forecasts(ctx context.Context, results []record.Result, o ForecastOptions) ([]Forecast, error) {
	var err error
	if o.Options, err = o.Options.filled(); err != nil {
		return nil, err
	}
	t, _, err := newTable(results)
	if err != nil {
		return nil, err
	}
	q := &sequence{ctx: ctx, t: t, o: o, spreads: usualSpreads(), out: map[int]Forecast{}}
	for m := range q.stretch {
		q.stretch[m] = 1
	}
	if err := q.run(); err != nil {
		return nil, fmt.Errorf("cohort: %w", err)
	}
	var list []Forecast
	for i, r := range results {
		if f, ok := q.out[i]; ok {
			f.Result = r
			list = append(list, f)
		}
	}
	return list, nil
}
