package efforttest

import (
	"fmt"
	"math"
)

// A Domain is where a curve must obey the laws: the range that its documentation states.
type Domain struct {
	Gradient [2]float64 // lowest and highest, rise over run; equal ones are allowed
	Speed    [2]float64 // lowest and highest, m/s along the slope, from 0; equal ones are allowed
}

// fault says what is wrong with the domain, "" if nothing.
func (d Domain) fault() string {
	for _, r := range [][2]float64{d.Gradient, d.Speed} {
		if !(r[0] <= r[1]) || math.IsInf(r[0], 0) || math.IsInf(r[1], 0) {
			return fmt.Sprintf("%g to %g is no range", r[0], r[1])
		}
	}
	if d.Speed[0] < 0 {
		return fmt.Sprintf("the speed %g m/s is negative", d.Speed[0])
	}
	return ""
}

// gridSteps is how many steps of the grid there are between the ends of a range.
const gridSteps = 64

// grid returns the ends of a range and steps between them, and 0 if it lies inside.
func grid(r [2]float64) []float64 {
	points := []float64{r[0]}
	for j := 1; j <= gridSteps; j++ {
		x := r[0] + (r[1]-r[0])*float64(j)/gridSteps
		if j == gridSteps {
			x = r[1]
		}
		last := points[len(points)-1]
		if last < 0 && x > 0 {
			points = append(points, 0)
		}
		if x > last {
			points = append(points, x)
		}
	}
	return points
}
