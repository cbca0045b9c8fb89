package coursefile

import (
	"math"
	"slices"
	"sort"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

// A Height is the elevation of a landmark as a map or a survey has it. The zero value is
// none.
type Height struct {
	Elevation float64 // m above sea level
	Stated    bool
}

func (h Height) check() error {
	if h.Stated && !(h.Elevation >= course.MinElevation && h.Elevation <= course.MaxElevation) {
		return because(course.ErrElevationRange, "%g m", h.Elevation)
	}
	return nil
}

// besideCourse is how far from the course a waypoint may lie whose elevation is taken for
// that of the course: where the ground falls to the side by 10 %, that is 2.5 m. [Our own]
const besideCourse = 25 // m

// A spot is a waypoint with an elevation.
type spot struct {
	place     course.Landmark // its distance being that on the profile as given
	elevation float64
	offset    float64 // m from the course
	line      int32
}

// known returns the elevations of landmarks that the options take for known ones, at their
// distances on the course as it is in the end. That of the list takes the place of that
// of a waypoint of the same name.
func (p *profile) known(o Options, k knots) []heights.Height {
	var known []heights.Height
	stated := map[string]bool{}
	for _, l := range o.Landmarks {
		if o.ListedHeights && l.Height.Stated {
			stated[nameKey(l.Name)] = true
			known = append(known, heights.Height{Distance: l.Distance, Elevation: l.Height.Elevation})
		}
	}
	if !o.WaypointHeights {
		return known
	}
	var off []spot
	for _, s := range p.spots {
		switch {
		case stated[nameKey(s.place.Name)]:
		case s.offset > besideCourse:
			off = append(off, s)
		default:
			known = append(known, heights.Height{Distance: k.forward(s.place.Distance), Elevation: s.elevation})
		}
	}
	if len(off) > 0 {
		p.warn("%s more than %d m beside the course, first %q%s: not used to clean",
			counted(len(off), "waypoint elevation"), besideCourse, off[0].place.Name, atLine(off[0].line))
	}
	return known
}

// A hole is a range of the profile as given, between two points that know their elevation
// or beyond the outer ones, in which no point does.
type hole struct{ from, to float64 }

// holeSlack is by how much the scaling of a course and of its holes may differ.
const holeSlack = 1e-6 // m

// unfilled returns the heights of a scaled profile with NaN in the holes, for what was
// filled there is no height that was seen.
func (p *profile) unfilled(distance, height []float64, k knots) []float64 {
	height = slices.Clone(height)
	for _, h := range p.holes {
		from, to := k.forward(h.from)+holeSlack, k.forward(h.to)-holeSlack
		for i := sort.SearchFloat64s(distance, from); i < len(distance) && distance[i] < to; i++ {
			height[i] = math.NaN()
		}
	}
	return height
}
