package forecast

import (
	"context"
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// A Forecast is what is likely. It is plain data; times in JSON are nanoseconds.
type Forecast struct {
	Course string  `json:"course"`
	Length float64 `json:"length_m"`

	Draws     int       `json:"draws"`
	Quantiles []float64 `json:"quantiles"`

	Places   []Place  `json:"places"` // landmarks in order, the finish last
	Cutoffs  []Cutoff `json:"cutoffs"`
	Finishes Chance   `json:"finishes"` // inside every cutoff

	Goal *Goal `json:"goal,omitempty"` // nil without one

	Slowing Slowing `json:"slowing"`

	// Sources say where the spread of the finish time comes from, the largest first.
	// Their shares and Unexplained, what no sum of single numbers explains, add up to 1.
	// There are none where nothing is spread.
	Sources     []Source `json:"sources"`
	Unexplained float64  `json:"unexplained"`

	// Unfinished is the number of draws of runners who fade away before the finish at any
	// pace. They count as slower than all others.
	Unfinished int `json:"unfinished"`

	Warnings []string `json:"warnings"` // to be shown beside the forecast
}

// Finish returns the last place.
func (f *Forecast) Finish() Place { return f.Places[len(f.Places)-1] }

// A Place is a landmark of the course, or the finish.
type Place struct {
	Name     string  `json:"name"`
	Distance float64 `json:"distance_m"`

	// Times are gun times on arrival, one for each quantile, of everybody as if no cutoff
	// stopped them. The greatest Duration stands for never.
	Times []time.Duration `json:"times_ns"`

	// Reached is the probability of getting here inside every cutoff before, and InRace
	// are the quantiles among those who do; nil if nobody does.
	Reached Chance          `json:"reached"`
	InRace  []time.Duration `json:"in_race_ns"`
}

// A Goal is a finish time and its probability, inside every cutoff.
type Goal struct {
	Time   time.Duration `json:"time_ns"`
	Net    bool          `json:"net"`
	Chance Chance        `json:"chance"`
}

// Slowing says how much longer the second half of the distance takes than the first, as a
// share of the first, in moving time: the usual figure of field studies.
type Slowing struct {
	Mean      float64   `json:"mean"`      // of the runners' mean times
	Quantiles []float64 `json:"quantiles"` // of the runners
}

// A Source is a number that the draws differ in and what part of the variance of the
// logarithm of the moving time comes from it.
type Source struct {
	Name  string  `json:"name"`
	Share float64 `json:"share"`
}

// Of returns the forecast of a race from draws of an athlete. Of the race it takes the day
// and the rules: Start, StartDelay, Wave, Cutoffs, Stops, Stations, Surroundings, Goal and
// Net. What a plan decides (HoldBack, ShortestBout, Walks, WalkClimbs, Ease, Share, MakeCutoffs,
// Standards, Step) and the Basis are not looked at: the draws carry that. Halts at
// stations, and the time that heat is expected to last, are those of the athlete in the
// middle of the draws, for all.
//
// Each draw's time is within 0.2 % of that of a full solve over cells of 10 m, 1 % beyond a
// day: cells of 50 m and a search that ends early (see pacer) leave that, on level, rolling
// and alpine ground whose hills are longer than some 500 m. The gaits are chosen cell by
// cell, without a shortest bout. Smaller steps take in proportion longer.
//
// It stops with ctx.Err() when the context ends. Errors wrap ErrDraw, ErrOption or a
// sentinel of packages plan and effort.
func Of(ctx context.Context, c *course.Course, draws Drawer, r plan.Race, o Options) (*Forecast, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	all, err := draws.all(o.Draws, o.Seed)
	if err != nil {
		return nil, err
	}
	d, err := newDay(c, central(all), r, o.Step)
	if err != nil {
		return nil, err
	}
	t, err := d.run(ctx, all, o.Workers)
	if err != nil {
		return nil, err
	}
	return d.describe(t, o)
}

// describe turns times into the forecast.
func (d *day) describe(t *times, o Options) (*Forecast, error) {
	f := &Forecast{
		Course: d.course.Name(), Length: d.course.Length(),
		Draws: len(t.draws), Quantiles: o.Quantiles, Unfinished: t.unfinished(),
	}
	out := d.outAt(t)
	f.Places = d.placesOf(t, out, o.Quantiles)
	f.Cutoffs = d.cutoffsOf(t, out)
	finished := 0
	for i := range t.draws {
		if out[i] >= len(d.cutoffs) && !math.IsInf(t.moving(i, d.finish), 1) {
			finished++
		}
	}
	f.Finishes = chanceOf(finished, len(t.draws))
	f.Goal = d.goalOf(t, out)
	f.Slowing = d.slowingOf(t, o.Quantiles)
	var err error
	if f.Sources, f.Unexplained, err = d.sourcesOf(t); err != nil {
		return nil, err
	}
	f.Warnings = append(f.warn(), d.warnings...)
	return f, nil
}
