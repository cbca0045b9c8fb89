package pacing

import (
	"fmt"
	"math"
	"sort"

	"isoeffort.example/effort/record"
)

// A field is the runners of a race with splits.
type field struct {
	race    string
	course  string
	trail   *trail
	at      []float64
	logTime [nodes]float64
	runners []runner
}

type runner struct {
	logTime, logPower float64
	split             []int // of the field's
	share             []float64
}

// gather sorts the results by race, those with most runners first.
func gather(results []record.Result, o Options) ([]field, error) {
	byRace := map[string][]record.Result{}
	for _, r := range results {
		if len(r.Splits) > 0 && !r.DNF && r.Role != record.Predict {
			byRace[r.Race] = append(byRace[r.Race], r)
		}
	}
	var names []string
	for name := range byRace {
		names = append(names, name)
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := len(byRace[names[i]]), len(byRace[names[j]])
		return a > b || a == b && names[i] < names[j]
	})
	if len(names) == 0 {
		return nil, fmt.Errorf("pacing: %w", ErrNoSplits)
	}
	var fields []field
	for _, name := range names[:min(len(names), mostRaces)] {
		race := byRace[name]
		sort.Slice(race, func(i, j int) bool {
			a, b := race[i], race[j]
			return a.Time < b.Time || a.Time == b.Time && a.Runner < b.Runner
		})
		t, err := newTrail(race, o.Profiles[name])
		if err != nil {
			return nil, fmt.Errorf("pacing: race %q: %w", name, err)
		}
		fields = append(fields, newField(name, race, t, o))
	}
	return fields, nil
}

func newField(name string, race []record.Result, t *trail, o Options) field {
	f := field{race: name, course: race[0].Course, trail: t, at: distances(race)}
	for k := range f.logTime {
		i := k * (len(race) - 1) / (nodes - 1)
		f.logTime[k] = math.Log(race[i].Time.Seconds())
	}
	for _, r := range race {
		v := runner{logTime: math.Log(r.Time.Seconds())}
		v.logPower = math.Log(t.hourPower(Usual(), o.Endurance, r.Time.Seconds()))
		for _, s := range r.Splits {
			v.split = append(v.split, sort.SearchFloat64s(f.at, s.Distance))
			v.share = append(v.share, s.Elapsed/r.Time.Seconds())
		}
		f.runners = append(f.runners, v)
	}
	return f
}
