package course

import (
	"fmt"
	"math"
	"slices"
	"sort"
)

// A Point is a place on the profile.
type Point struct {
	Distance  float64 // m from the start
	Elevation float64 // m
}

// Sample returns at most n points of the profile to draw it by, all of them where it has
// no more. They are points of the profile, in order: start and finish, and of each of
// (n−2)/2 stretches of equal length the first of its highest and the first of its
// lowest points. So the highest and the lowest point of the course are among them, no
// peak is cut, and what is left out lies between two heights drawn in its stretch. An n
// below 4 counts as 4.
func (c *Course) Sample(n int) []Point {
	n = max(n, 4)
	points := make([]Point, 0, min(n, len(c.distance)))
	add := func(i int) { points = append(points, Point{c.distance[i], c.elevation[i]}) }
	last := len(c.distance) - 1
	if last < n {
		for i := range c.distance {
			add(i)
		}
		return points
	}
	add(0)
	stretches := (n - 2) / 2
	next := 1
	for k := 1; k <= stretches; k++ {
		end := sort.SearchFloat64s(c.distance, c.Length()*float64(k)/float64(stretches))
		if k == stretches {
			end = last
		}
		if next >= end {
			continue
		}
		z := c.elevation[next:end]
		a, b := next+slices.Index(z, slices.Min(z)), next+slices.Index(z, slices.Max(z))
		add(min(a, b))
		if a != b {
			add(max(a, b))
		}
		next = end
	}
	add(last)
	return points
}

// Resample returns the course with points at equal distances, as near to spacing as the
// length allows, each on the straight line between the points that were there; nothing
// is smoothed. Spacing is 1 to 1000 m, or it is an ErrOption.
//
// The length is kept. Ascent and descent lose the same amount, 0 or more: what goes up and
// down again between two new points, so at most half the spacing, times the steepest
// gradient, for each gap in which the ground turns. The direction is the mean between
// new points.
func (c *Course) Resample(spacing float64) (*Course, error) {
	if !(spacing >= 1 && spacing <= 1000) {
		return nil, fmt.Errorf("course: %w: spacing %g m is not within 1 to 1000 m", ErrOption, spacing)
	}
	n := int(math.Max(1, math.Round(c.Length()/spacing)))
	r := *c
	r.distance, r.elevation = make([]float64, n+1), make([]float64, n+1)
	if c.HasTrack() {
		r.east, r.north = make([]float64, n+1), make([]float64, n+1)
	}
	for i := range r.distance {
		x := c.Length() * (float64(i) / float64(n)) // the length itself at n
		r.distance[i], r.elevation[i] = x, c.Elevation(x)
		if c.HasTrack() {
			r.east[i], r.north[i] = c.at(c.east, x), c.at(c.north, x)
		}
	}
	r.accumulate()
	return &r, nil
}
