package course

import (
	"fmt"
	"math"
	"sort"
)

// Len returns the number of points of the profile.
func (c *Course) Len() int { return len(c.distance) }

// Point returns the distance from the start and the elevation, both in metres, of
// point i. It panics unless 0 <= i < Len.
func (c *Course) Point(i int) (distance, elevation float64) { return c.distance[i], c.elevation[i] }

// Elevation returns the elevation in metres at a distance from the start. Before the
// start and beyond the finish it is that of the start and the finish; at NaN it is NaN.
func (c *Course) Elevation(distance float64) float64 { return c.at(c.elevation, distance) }

// Gradient returns the mean gradient between two distances, rise over horizontal run.
// It is NaN unless from < to.
func (c *Course) Gradient(from, to float64) float64 {
	if !(from < to) {
		return math.NaN()
	}
	return (c.Elevation(to) - c.Elevation(from)) / (to - from)
}

// at interpolates one of the profile's columns.
func (c *Course) at(column []float64, distance float64) float64 {
	n := len(c.distance)
	switch {
	case math.IsNaN(distance):
		return distance
	case distance <= 0:
		return column[0]
	case distance >= c.distance[n-1]:
		return column[n-1]
	}
	i := sort.SearchFloat64s(c.distance, distance) // c.distance[i-1] < distance <= c.distance[i]
	if c.distance[i] == distance {                 // to the last bit
		return column[i]
	}
	share := (distance - c.distance[i-1]) / (c.distance[i] - c.distance[i-1])
	return column[i-1] + share*(column[i]-column[i-1])
}

// maxGradient is the gradient above which a profile is reported as doubtful: steeper
// than any path that is run, so a bridge, a tunnel or a fault in the elevations.
const maxGradient = 0.6

// steep is the warning of ground steeper than that, "" for none.
func (c *Course) steep() string {
	worst, where := 0.0, 0.0
	for i := 1; i < len(c.distance); i++ {
		g := (c.elevation[i] - c.elevation[i-1]) / (c.distance[i] - c.distance[i-1])
		if math.Abs(g) > math.Abs(worst) {
			worst, where = g, c.distance[i]
		}
	}
	if !(math.Abs(worst) > maxGradient) {
		return ""
	}
	return fmt.Sprintf("gradient of %+.0f %% at %.2f km: check the elevations there", 100*worst, where/1000)
}
