package cohort

import (
	"context"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"isoeffort.example/effort/record"
)

// Nothing run on a later date, nor the result's own time, changes a digit of a forecast:
// later rows are changed, or left out.
func TestForecastsDoNotLookAhead(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	results := small(3)
	middle := results[len(results)*2/3].Date
	forecasts := func(results []record.Result) map[record.RunnerRace]Forecast {
		t.Helper()
		list, err := Forecasts(context.Background(), results, ForecastOptions{SameDay: true})
		if err != nil {
			t.Fatal(err)
		}
		kept := map[record.RunnerRace]Forecast{}
		for _, f := range list {
			if !f.Result.Date.After(middle) {
				key := record.RunnerRace{Runner: f.Result.Runner, Race: f.Result.Race}
				f.Result.Time = 0
				kept[key] = f
			}
		}
		return kept
	}
	want := forecasts(results)
	if len(want) < 10 {
		t.Fatalf("only %d forecasts to compare", len(want))
	}
	changed := append([]record.Result(nil), results...)
	rng := rand.New(rand.NewPCG(4, 4))
	var fewer []record.Result
	for i := range changed {
		if changed[i].Date.After(middle) {
			changed[i].Time = time.Duration(float64(changed[i].Time) * (1.2 + rng.Float64()))
			if changed[i].Race == "" || i%3 == 0 {
				changed[i].Course += " changed"
			}
		} else {
			fewer = append(fewer, changed[i])
		}
	}
	rng.Shuffle(len(changed), func(i, j int) { changed[i], changed[j] = changed[j], changed[i] })
	if got := forecasts(changed); !reflect.DeepEqual(want, got) {
		t.Errorf("later rows changed: %d forecasts differ", differing(want, got))
	}
	if got := forecasts(fewer); !reflect.DeepEqual(want, got) {
		t.Errorf("later rows left out: %d forecasts differ", differing(want, got))
	}
}

func differing(want, got map[record.RunnerRace]Forecast) (n int) {
	for key, f := range want {
		if !reflect.DeepEqual(f, got[key]) {
			n++
		}
	}
	return n
}

// A result's own time does not change its forecast, nor by the day's field.
func TestOwnTimeIsNotSeen(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	results := small(5)
	before, err := Forecasts(context.Background(), results, ForecastOptions{SameDay: true})
	if err != nil {
		t.Fatal(err)
	}
	last := before[0]
	for _, f := range before {
		if f.Result.Date.After(last.Result.Date) {
			last = f
		}
	}
	for i := range results {
		if r := &results[i]; r.Runner == last.Result.Runner && r.Race == last.Result.Race {
			r.Time *= 2
		}
	}
	after, err := Forecasts(context.Background(), results, ForecastOptions{SameDay: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range after {
		if f.Result.Runner == last.Result.Runner && (f.Own != before[i].Own || f.With != before[i].With || f.Day != before[i].Day) {
			t.Errorf("%+v, with another time of its own %+v", before[i], f)
		}
	}
}
