package cohort

import (
	"math"
	"sort"
)

// A raceDay is one day of an edition.
type raceDay struct {
	edition int
	date    float64
}

// fields are the rows of each race day, by their places among rows.
func (q *sequence) fields(rows []int) map[raceDay][]int {
	field := map[raceDay][]int{}
	for k, i := range rows {
		if r := &q.t.rows[i]; !(q.o.FitOnly && r.predict) {
			key := raceDay{r.edition, date(r)}
			field[key] = append(field[key], k)
		}
	}
	return field
}

// tell writes the forecasts of a row down, and how they missed.
func (q *sequence) tell(v *view, r *row, told [modes]foretold, field int, fresh *[modes][]float64) {
	var intervals [modes]Interval
	for m := range told {
		f := &told[m]
		if f.scale == 0 {
			continue
		}
		if f.own > 0 {
			half := v.mixture.half(0.9, f.variance, f.scale)
			fresh[m] = append(fresh[m], math.Abs(r.log-f.mean)/half)
		}
		if r.predict {
			intervals[m] = v.interval(f, q.stretch[m])
		}
	}
	if r.predict {
		q.out[r.result] = Forecast{Own: intervals[0], Without: intervals[1], With: intervals[2], Day: intervals[3], Used: told[0].own, Field: field}
	}
}

// stretch is by how much intervals are to be wider for nine in ten misses to lie inside,
// held towards 1 as if a hundred misses had said so.
func stretch(misses []float64) float64 {
	n := len(misses)
	if n < 20 {
		return 1
	}
	sorted := append([]float64(nil), misses...)
	sort.Float64s(sorted)
	found := sorted[min(n-1, int(0.9*float64(n)))]
	return math.Pow(math.Max(found, 0.2), float64(n)/float64(n+100))
}
