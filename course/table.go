package course

import (
	"fmt"
	"math"
)

// A Row is the ground between two distances of a table.
type Row struct {
	From, To  float64    // m from the start
	Elevation float64    // m, at To
	Heading   float64    // the mean one in degrees, see Course.Heading; NaN for none
	Landmarks []Landmark // after From, up to and including To; in the first row those at the start too
	Relief
}

// Length returns the horizontal length in metres.
func (r Row) Length() float64 { return r.To - r.From }

// Gradient returns the mean gradient, which hides what goes up and down.
func (r Row) Gradient() float64 { return (r.Ascent - r.Descent) / r.Length() }

// Table cuts the course into rows of so many metres, the last one being what is left. It is
// an ErrOption unless every is 1 m or more. What is left must be longer than 1e-6 m to be
// a row. Ascents and lengths of all rows add up to those of the course.
func (c *Course) Table(every float64) ([]Row, error) {
	if !(every >= 1) {
		return nil, fmt.Errorf("course: %w: rows of %g m, below 1 m", ErrOption, every)
	}
	const least = 1e-6
	length := c.Length()
	n := max(1, int(math.Ceil((length-least)/every)))
	rows := make([]Row, n)
	landmarks := c.landmarks
	for i := range rows {
		r := Row{From: float64(i) * every, To: float64(i+1) * every}
		if i == n-1 {
			r.To = length
		}
		r.Elevation, r.Relief, r.Heading = c.Elevation(r.To), c.ReliefBetween(r.From, r.To), c.Heading(r.From, r.To)
		k := 0
		for k < len(landmarks) && landmarks[k].Distance <= r.To {
			k++
		}
		r.Landmarks, landmarks = append(r.Landmarks, landmarks[:k]...), landmarks[k:]
		rows[i] = r
	}
	return rows, nil
}
