package course

import (
	"math"
	"slices"
	"sort"
)

// A fix is a position of the track at a distance from the start.
type fix struct {
	distance float64 // m
	x, y, z  float64 // Earth-centred, m
}

// A trail is where a course runs, fix by fix in order of distance; nil if unknown.
type trail []fix

// newTrail puts the positions of a track at its distances, scaled.
func newTrail(track []Position, distance []float64, by scaling) trail {
	if track == nil {
		return nil
	}
	t := make(trail, len(track))
	for i, p := range track {
		t[i] = fix{distance[i] - distance[0], p.x, p.y, p.z}
	}
	return t.scaled(by)
}

// Position returns where the course is at a distance from the start in metres, which is
// taken to lie on the course. Between two points of Options.Track it is on the straight
// line, which is off the geodesic by under 0.01 mm for points 100 m apart. ok is false for a
// course without a track and at NaN.
func (c *Course) Position(distance float64) (p Position, ok bool) {
	if c.trail == nil || math.IsNaN(distance) {
		return Position{}, false
	}
	return c.trail.at(min(max(distance, 0), c.Length())).position(), true
}

// at is the fix at a distance, straight between its neighbours.
func (t trail) at(distance float64) fix {
	j := sort.Search(len(t), func(i int) bool { return t[i].distance >= distance })
	switch {
	case j == len(t):
		return t[j-1]
	case j == 0 || t[j].distance == distance:
		return t[j]
	}
	a, b := t[j-1], t[j]
	share := (distance - a.distance) / (b.distance - a.distance)
	return fix{distance, a.x + share*(b.x-a.x), a.y + share*(b.y-a.y), a.z + share*(b.z-a.z)}
}

// position is the place on the ellipsoid under a fix, whose normal there is along
// (x, y, z/(1−e²)).
func (f fix) position() Position {
	lat := math.Atan2(f.z/(1-wgs84E), math.Hypot(f.x, f.y)) * 180 / math.Pi
	return NewPosition(lat, math.Atan2(f.y, f.x)*180/math.Pi)
}

// part is the trail between two distances, counted from the first.
func (t trail) part(from, to float64) trail {
	if t == nil {
		return nil
	}
	first := sort.Search(len(t), func(i int) bool { return t[i].distance > from })
	last := sort.Search(len(t), func(i int) bool { return t[i].distance >= to })
	p := append(append(trail{t.at(from)}, t[first:max(first, last)]...), t.at(to))
	for i := range p {
		p[i].distance = min(max(p[i].distance-from, 0), to-from)
	}
	return p
}

// reversed is the trail of a course of that length from its end.
func (t trail) reversed(length float64) trail {
	r := slices.Clone(t)
	slices.Reverse(r)
	for i := range r {
		r[i].distance = max(length-r[i].distance, 0)
	}
	return r
}

// then is the trail with another behind it.
func (t trail) then(other trail, start float64) trail {
	for _, f := range other {
		f.distance += start
		t = append(t, f)
	}
	return t
}

// scaled is the trail on race distances, with a fix wherever their scale changes.
func (t trail) scaled(by scaling) trail {
	s := slices.Clone(t)
	for k := 1; k+1 < len(by.profile); k++ {
		at := by.profile[k]
		j := sort.Search(len(s), func(i int) bool { return s[i].distance >= at })
		if j > 0 && j < len(s) && s[j].distance != at {
			f := s.at(at)
			f.distance = at
			s = slices.Insert(s, j, f)
		}
	}
	for i := range s {
		s[i].distance = by.at(s[i].distance)
	}
	return s
}
