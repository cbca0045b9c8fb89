package cohort

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Data that say nothing, or nearly impossible things, end in numbers and warnings, or in an
// error, and not in NaN.
func TestOddData(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("takes seconds, and minutes under the race detector")
	}
	when := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	rows := func(n int, r func(i int) record.Result) (list []record.Result) {
		for i := range n {
			list = append(list, r(i))
		}
		return list
	}
	base := record.Result{Runner: "a", Race: "r", Course: "c", Date: when, Distance: 20_000, Ascent: 500, Descent: 500, Time: 2 * time.Hour}
	for name, results := range map[string][]record.Result{
		"one result fifty times": rows(50, func(int) record.Result { return base }),
		"everyone alike": rows(50, func(i int) record.Result {
			r := base
			r.Runner = fmt.Sprint(i)
			return r
		}),
		"one runner, no names of races": rows(300, func(i int) record.Result {
			r := base
			r.Race, r.Course, r.Date = "", "", when.AddDate(0, 0, i)
			return r
		}),
		"days on a level mile": rows(40, func(i int) record.Result {
			return record.Result{Runner: fmt.Sprint(i % 7), Race: "r", Date: when, Distance: 1609, Time: time.Duration(i+1) * 24 * time.Hour}
		}),
		"minutes and weeks": rows(40, func(i int) record.Result {
			r := base
			r.Runner = fmt.Sprint(i % 5)
			if i%2 == 0 {
				r.Time = 900 * time.Hour
			}
			return r
		}),
	} {
		m, err := Fit(context.Background(), results, Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		p := m.Population
		for _, v := range []float64{p.Prior[effort.HourPower].Median, p.Noise, p.Course, p.Edition, p.Drift, p.Freedom} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Errorf("%s: %+v", name, p)
			}
		}
		if len(m.Warnings) == 0 {
			t.Errorf("%s: no warning", name)
		}
		next, err := m.Forecast(base)
		if err != nil || !(next.Low > 0 && next.Low < next.Median && next.Median < next.High) {
			t.Errorf("%s: %+v, %v", name, next, err)
		}
	}
}
