package story

import (
	"math"

	"isoeffort.example/course"
	"isoeffort.example/effort"
)

// A Climb is a climb of the course and how hard it is where it stands.
type Climb struct {
	course.Climb
	Rating

	// Left is the share of the race's effort that is left at the top.
	Left float64
}

// A Rating is how hard a climb is where it stands in the race, 0 to 10, with its pieces.
type Rating struct {
	Value float64
	Extra float64 // effort of the climb above that of level road, J/kg
	Share float64 // of the race's effort done by the top, 0 to 1
}

// The scale of the rating: J/kg of extra effort, for a course of scaleCourse J/kg, which is
// a rolling race of some 85 km.
const (
	scale       = 1333.0
	scaleCourse = 345_000.0
)

// Rate rates ground from a start to a top in metres.
func Rate(t *effort.Tally, start, top float64) Rating {
	r := Rating{Extra: math.Max(0, t.Extra(start, top)), Share: t.To(top) / t.Total()}
	r.Value = 10 * -math.Expm1(-r.Extra*r.Share/(scale*math.Sqrt(t.Total()/scaleCourse)))
	return r
}

// climbs are those of the course that are large enough, rated.
func climbs(c *course.Course, t *effort.Tally, o Options) []Climb {
	var rated []Climb
	of := course.ClimbOptions{LeastRise: o.LeastRise}
	if o.LeastExtra > 0 {
		of.Measure, of.Least = t.Extra, o.LeastExtra
	}
	for _, climb := range c.ClimbsWith(of) {
		r := Rate(t, climb.Start, climb.Top)
		rated = append(rated, Climb{Climb: climb, Rating: r, Left: 1 - r.Share})
	}
	return rated
}
