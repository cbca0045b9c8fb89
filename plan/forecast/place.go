package forecast

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// placesOf describes the landmarks after the start, and the finish.
func (d *day) placesOf(t *times, out []int, quantiles []float64) (list []Place) {
	length := d.course.Length()
	finish := "Finish"
	for _, l := range d.course.Landmarks() {
		if l.Distance >= length {
			finish = l.Name
		} else if l.Distance > 0 {
			list = append(list, d.placeOf(t, out, quantiles, l.Name, l.Distance))
		}
	}
	return append(list, d.placeOf(t, out, quantiles, finish, length))
}

func (d *day) placeOf(t *times, out []int, quantiles []float64, name string, distance float64) Place {
	before := 0 // cutoffs
	for before < len(d.cutoffs) && d.cutoffs[before].Distance < distance {
		before++
	}
	var all, in []float64
	fixed, at := d.fixed(distance), d.index(distance)
	for i := range t.draws {
		moving := t.moving(i, at)
		all = append(all, fixed+moving)
		if out[i] >= before && !math.IsInf(moving, 1) {
			in = append(in, fixed+moving)
		}
	}
	p := Place{Name: name, Distance: distance, Reached: chanceOf(len(in), len(all))}
	p.Times = durations(quantilesOf(all, quantiles))
	if len(in) > 0 {
		p.InRace = durations(quantilesOf(in, quantiles))
	}
	return p
}

// quantilesOf are the smallest of the values that at least such shares of them do not
// exceed. It sorts them.
func quantilesOf(values, quantiles []float64) []float64 {
	slices.Sort(values)
	out := make([]float64, len(quantiles))
	for i, q := range quantiles {
		out[i] = stat.Quantile(q, stat.Empirical, values, nil)
	}
	return out
}
