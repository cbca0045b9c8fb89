package main

import (
	"context"
	"sort"
	"time"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/calibrate/cohort/pacing"
	"isoeffort.example/effort/record"
)

// A splitForecast is one split of a result held back: as run, given the finish time, and
// from the fit alone; seconds.
type splitForecast struct {
	result              *record.Result
	distance            float64
	elapsed             float64
	given, there, alone float64 // there: with what the course's sections did before
	even, fromFit       bool    // given and there are by distance; alone is known
}

const (
	// more is by how much the results with splits must have grown for the pacing to be
	// fitted anew.
	more = 1.5

	// least is how many earlier results with splits make a pacing at all; enough how many
	// give a course one of its own.
	least, enough = 20, 60
)

// A pacer is the pacing of a course, or of all, by what was run so far.
type pacer struct {
	known  []record.Result // in order of date
	model  *pacing.Model
	used   int
	fields map[string]*pacing.Field // by race
}

// before fits anew, if need be, from what was run before the day of a result.
func (p *pacer) before(ctx context.Context, r *record.Result, o pacing.Options) (err error) {
	earlier := p.earlier(r)
	switch {
	case p.model == nil && earlier < least:
		p.model, err = pacing.NewUsual(o)
	case p.model == nil || earlier >= least && float64(earlier) >= more*float64(p.used) && earlier > p.used:
		p.model, err = pacing.Fit(ctx, p.known[:earlier], o)
	default:
		return nil
	}
	if p.used = earlier; earlier < least {
		p.used = 0
	}
	p.fields = map[string]*pacing.Field{}
	return err
}

// earlier is how many of the known were run before the day of a result.
func (p *pacer) earlier(r *record.Result) int {
	return sort.Search(len(p.known), func(k int) bool { return !day(p.known[k]).Before(day(*r)) })
}

func (p *pacer) field(race []record.Result) (*pacing.Field, error) {
	name := race[0].Race
	if p.fields[name] == nil {
		f, err := p.model.Field(race)
		if err != nil {
			return nil, err
		}
		p.fields[name] = f
	}
	return p.fields[name], nil
}

// foretellSplits foretells the splits of results with role predict, in order of date, each
// from the pacing of results of earlier dates that are not held back: of its own course,
// where these are enough, or of all, or the usual pacing.
func foretellSplits(ctx context.Context, results []record.Result, forecasts []cohort.Forecast, o pacing.Options, tell func(done, total int)) (list []splitForecast, err error) {
	finish := map[record.RunnerRace]float64{}
	for _, f := range forecasts {
		finish[record.RunnerRace{Runner: f.Result.Runner, Race: f.Result.Race}] = best(f).Median.Seconds()
	}
	held, known, races := sorted(results)
	all, own := &pacer{known: known}, map[string]*pacer{}
	for _, r := range known {
		if own[r.Course] == nil {
			own[r.Course] = &pacer{}
		}
		own[r.Course].known = append(own[r.Course].known, r)
	}
	for i, r := range held {
		p := all
		if o := own[r.Course]; o != nil && o.earlier(r) >= enough {
			p = o
		}
		if err := p.before(ctx, r, o); err != nil {
			return nil, err
		}
		f, err := p.field(races[r.Race])
		if err != nil {
			return nil, err
		}
		list = append(list, splitsOf(r, f, finish)...)
		tell(i+1, len(held))
	}
	return list, ctx.Err()
}

// sorted are the results with splits, held back and known, in order of date, and by race.
func sorted(results []record.Result) (held []*record.Result, known []record.Result, races map[string][]record.Result) {
	races = map[string][]record.Result{}
	for i := range results {
		r := &results[i]
		if len(r.Splits) == 0 || r.DNF {
			continue
		}
		races[r.Race] = append(races[r.Race], *r)
		if r.Role == record.Predict {
			held = append(held, r)
		} else {
			known = append(known, *r)
		}
	}
	sort.SliceStable(held, func(i, j int) bool { return held[i].Date.Before(held[j].Date) })
	sort.SliceStable(known, func(i, j int) bool { return known[i].Date.Before(known[j].Date) })
	return held, known, races
}

func day(r record.Result) time.Time { return r.Date.UTC().Truncate(24 * time.Hour) }

func splitsOf(r *record.Result, f *pacing.Field, finish map[record.RunnerRace]float64) (list []splitForecast) {
	var at []float64
	for _, s := range r.Splits {
		at = append(at, s.Distance)
	}
	given, even := f.Elapsed(r.Time.Seconds(), at)
	there := f.ElapsedThere(r.Time.Seconds(), at)
	alone, fromFit := finish[record.RunnerRace{Runner: r.Runner, Race: r.Race}]
	var own []float64
	if fromFit {
		own, _ = f.Elapsed(alone, at)
	}
	for i, s := range r.Splits {
		v := splitForecast{result: r, distance: s.Distance, elapsed: s.Elapsed, given: given[i], there: there[i], even: even, fromFit: fromFit}
		if fromFit {
			v.alone = own[i]
		}
		list = append(list, v)
	}
	return list
}
