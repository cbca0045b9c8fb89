package course

import (
	"fmt"
	"slices"
)

// rounding is what sums and differences of distances on a course round off, at the most.
const rounding = 1e-9 // m

// Part returns the course between two distances from the start in metres, with what stands
// on it: landmarks from one end to the other, both included to 1e-9 m, the parts of stretches that
// lie on it, the direction. At its ends the ground is cut on the straight line between
// points. It keeps the name, the warnings and the smoothing; nothing is smoothed again.
//
// It is an ErrOffCourse unless 0 <= from < to <= Length. Joined again with Join, parts
// that follow each other are the whole: elevations to the last bit at its points,
// distances within 1e-9 m.
func (c *Course) Part(from, to float64) (*Course, error) {
	if !(from >= 0 && from < to && to <= c.Length()) || to-from < minLength {
		return nil, fmt.Errorf("course: part from %g to %g m of %g m: %w", from, to, c.Length(), ErrOffCourse)
	}
	start, end := from, to
	if to-from > 1000*rounding {
		start, end = c.snap(from), c.snap(to)
	}
	first, found := slices.BinarySearch(c.distance, start)
	if found {
		first++
	}
	last, _ := slices.BinarySearch(c.distance, end) // points first to last-1 lie inside
	p := &Course{name: c.name, smoothing: c.smoothing, warnings: slices.Clone(c.warnings)}
	cut := func(column []float64, zero float64) []float64 {
		if column == nil {
			return nil
		}
		out := make([]float64, 0, last-first+2)
		out = append(out, c.at(column, start)-zero)
		for _, v := range column[first:last] {
			out = append(out, v-zero)
		}
		return append(out, c.at(column, end)-zero)
	}
	p.distance = cut(c.distance, from)
	p.distance[0], p.distance[len(p.distance)-1] = 0, to-from
	p.elevation = cut(c.elevation, 0)
	if c.HasTrack() {
		p.east, p.north = cut(c.east, c.at(c.east, start)), cut(c.north, c.at(c.north, start))
		p.trail = c.trail.part(from, to)
	}
	p.settle()
	p.adopt(c, from, to, 0)
	return p, nil
}

// snap returns a point's distance where it differs from the one given by no more than
// rounding, so that a cut there makes no second point beside it.
func (c *Course) snap(distance float64) float64 {
	i, _ := slices.BinarySearch(c.distance, distance-rounding)
	if i < len(c.distance) && c.distance[i] <= distance+rounding {
		return c.distance[i]
	}
	return distance
}

// adopt appends the landmarks and stretches of another course between two distances, the
// first of which comes to lie at start.
func (c *Course) adopt(other *Course, from, to, start float64) {
	for _, l := range other.landmarks {
		if l.Distance >= from-rounding && l.Distance <= to+rounding {
			l.Distance = min(start+max(l.Distance-from, 0), c.Length())
			c.landmarks = append(c.landmarks, l)
		}
	}
	for _, s := range other.stretches {
		if s.From, s.To = max(s.From, from), min(s.To, to); s.From < s.To {
			s.From, s.To = start+(s.From-from), start+(s.To-from)
			c.stretches = append(c.stretches, s)
		}
	}
}

// StartAt returns a loop begun at another place: the course from the distance, in metres,
// to the finish and from the start back to it. It is an ErrOffCourse unless
// 0 <= distance <= Length. A landmark there stands at the new start and at the new
// finish. Where the old finish does not meet the old start in height, see Join.
func (c *Course) StartAt(distance float64) (*Course, error) {
	switch {
	case distance == 0 || distance == c.Length():
		return c.Part(0, c.Length())
	case !(distance > 0 && distance < c.Length()):
		return nil, fmt.Errorf("course: start at %g m of %g m: %w", distance, c.Length(), ErrOffCourse)
	}
	second, err := c.Part(0, distance)
	if err != nil {
		return nil, err
	}
	first, err := c.Part(distance, c.Length())
	if err != nil {
		return nil, err
	}
	return Join(first, second)
}
