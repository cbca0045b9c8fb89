package coursefile

import (
	"math"
	"sort"

	"isoeffort.example/course"
)

const (
	reach     = 500 // m, the farthest that a waypoint may lie from the course
	tolerance = 25  // m, by which a further pass may be farther off than the nearest
	apart     = 200 // m along the course, less than which makes no further pass
)

// A pass is a place where the course comes by a waypoint.
type pass struct {
	distance float64 // m from the start
	offset   float64 // m from the waypoint
}

// passes returns the passes of a course by a place, ascending, none if the place lies
// beyond reach, and how many legs it looked at.
func passes(w course.Position, at []course.Position, distance []float64) (found []pass, legs int) {
	best := math.Inf(1)
	var near []pass // the nearest places of the legs that were near when they were seen
	legs = scan(w, at, distance, func() float64 { return min(best, reach) + tolerance }, func(p pass) {
		if p.offset <= min(best, reach)+tolerance {
			near = append(near, p)
		}
		best = min(best, p.offset)
	})
	if best > reach {
		return nil, legs
	}
	return parted(near, best+tolerance), legs
}

// parted returns the nearest place of each stretch of a course whose places, none
// farther off than limit, follow each other in less than apart.
func parted(near []pass, limit float64) []pass {
	var found []pass
	end := 0.0 // how far along the last stretch reaches
	for _, p := range near {
		switch n := len(found); {
		case p.offset > limit:
			continue
		case n == 0 || p.distance-end >= apart:
			found = append(found, p)
		case p.offset < found[n-1].offset:
			found[n-1] = p
		}
		end = p.distance
	}
	return found
}

// scan visits the nearest place of every leg that may lie within a radius of w. From a
// point that lies well outside, it leaps along the course by as much as it takes at
// the least to come near. It returns how many it visited.
func scan(w course.Position, at []course.Position, distance []float64, radius func() float64, visit func(pass)) (visited int) {
	off := w.Distance(at[0])
	for i := 0; i+1 < len(at); {
		// The one in a hundred covers what Distance is out at hundreds of kilometres.
		near := distance[i] + 0.99*off - radius()
		if distance[i+1] < near {
			i += sort.SearchFloat64s(distance[i+1:], near)
			off = w.Distance(at[i])
			continue
		}
		visited++
		next := w.Distance(at[i+1])
		visit(nearest(off, next, distance[i], distance[i+1]))
		i, off = i+1, next
	}
	return visited
}

// nearest returns the place of a leg from one distance to another that is nearest to a
// waypoint at the given distances from its ends. The triangle is taken as flat, which
// is good to 5 cm for legs up to 1 km.
func nearest(fromStart, fromEnd, start, end float64) pass {
	length := end - start
	if length <= 0 {
		return pass{start, fromStart}
	}
	along := (fromStart*fromStart - fromEnd*fromEnd + length*length) / (2 * length)
	switch {
	case along <= 0:
		return pass{start, fromStart}
	case along >= length:
		return pass{end, fromEnd}
	}
	return pass{start + along, math.Sqrt(max(0, fromStart*fromStart-along*along))}
}
