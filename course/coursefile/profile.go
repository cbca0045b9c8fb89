package coursefile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"isoeffort.example/course"
)

// A profile is what both readers gather: the ground point by point, with the line that
// each point stands on.
type profile struct {
	distance  []float64
	elevation []float64 // NaN where missing
	line      []int32
	track     []course.Position // nil where the file has none
	holes     []hole            // where elevations were filled in
	spots     []spot
	warnings  []string
}

func (p *profile) add(distance, elevation float64, line int) {
	p.distance = append(p.distance, distance)
	p.elevation = append(p.elevation, elevation)
	p.line = append(p.line, int32(line))
}

func (p *profile) warn(format string, args ...any) {
	p.warnings = append(p.warnings, fmt.Sprintf(format, args...))
}

// manyPoints is from how many points on a recording at 0 m throughout is doubted.
const manyPoints = 10

// fill interpolates missing elevations over distance, which must not decrease. Before
// the first and after the last one known, that one holds. With cleaning, that is left to
// it, and what is filled in here only lets the profile pass through package course.
func (p *profile) fill(o Options) error {
	missing, first := 0, 0
	known := -1 // the last point before i whose elevation is known
	for i, z := range p.elevation {
		if math.IsNaN(z) {
			if missing == 0 {
				first = i
			}
			missing++
			continue
		}
		p.fillBetween(known, i)
		known = i
	}
	if known < 0 {
		return course.ErrNoElevation
	}
	p.fillBetween(known, len(p.elevation))
	if p.track != nil && len(p.elevation) >= manyPoints && !slices.ContainsFunc(p.elevation, func(z float64) bool { return z != 0 }) {
		p.warn("every elevation is 0: most likely none was recorded, and the course is taken as level")
	}
	if missing > 0 {
		by := "filled from the neighbours"
		if o.Clean != nil {
			by = "filled by the cleaning of the heights"
		}
		p.warn("elevation missing at %d of %d points%s: %s", missing, len(p.elevation), firstAt(p.line[first]), by)
	}
	return nil
}

// fillBetween fills the elevations between two points that know theirs; either may lie
// beyond the end.
func (p *profile) fillBetween(from, to int) {
	if to-from > 1 {
		p.holes = append(p.holes, p.holeBetween(from, to))
	}
	for i := from + 1; i < to; i++ {
		switch {
		case from < 0:
			p.elevation[i] = p.elevation[to]
		case to == len(p.elevation) || p.distance[to] == p.distance[from]:
			p.elevation[i] = p.elevation[from]
		default:
			share := (p.distance[i] - p.distance[from]) / (p.distance[to] - p.distance[from])
			p.elevation[i] = p.elevation[from] + share*(p.elevation[to]-p.elevation[from])
		}
	}
}

func (p *profile) holeBetween(from, to int) hole {
	h := hole{math.Inf(-1), math.Inf(1)}
	if from >= 0 {
		h.from = p.distance[from]
	}
	if to < len(p.distance) {
		h.to = p.distance[to]
	}
	return h
}

// course makes the course; landmarks are placed by distance on the profile.
func (p *profile) course(o Options, name string, landmarks []course.Landmark) (*course.Course, error) {
	marks, k := p.marks(landmarks, o)
	landmarks = p.merge(landmarks, o, k)
	clean := p.clean(o, k)
	c, err := course.New(p.distance, p.elevation, course.Options{
		Name: name, Length: o.Length, Marks: marks, Smoothing: o.Smoothing, Grid: o.Grid, Clean: clean,
		Track: p.track, Landmarks: landmarks, Warnings: p.warnings,
	})
	var point *course.PointError
	switch {
	case errors.As(err, &point):
		return nil, o.errorAt(int(p.line[point.Index]), point.Err)
	case errors.Is(err, course.ErrOffCourse):
		return nil, p.offCourse(err, o)
	case err != nil:
		return nil, o.errorAt(p.lineOf(err, o), err)
	}
	return c, nil
}

// lineOf returns the line to look at for a cause that is the whole profile's: for a
// course that is too long the one at which it gets so, for one that stays at a place the
// last one, else that where it starts.
func (p *profile) lineOf(err error, o Options) int {
	first, last := p.distance[0], len(p.distance)-1
	switch {
	case errors.Is(err, course.ErrTooLong) && !(o.Length > 0):
		i := sort.Search(last, func(i int) bool { return p.distance[i]-first > course.MaxLength })
		return int(p.line[i])
	case errors.Is(err, course.ErrTooFewPoints):
		return int(p.line[last])
	}
	return int(p.line[0])
}

// merge adds the landmarks of the options to those of the file, at the distances on the
// profile as given that scaling will move to theirs.
func (p *profile) merge(landmarks []course.Landmark, o Options, k knots) []course.Landmark {
	if len(o.Landmarks) == 0 {
		return landmarks
	}
	listed := map[string]bool{}
	for _, l := range o.Landmarks {
		listed[nameKey(l.Name)] = true
	}
	landmarks = slices.DeleteFunc(landmarks, func(l course.Landmark) bool { return listed[nameKey(l.Name)] })
	for _, l := range o.Landmarks {
		l.Distance = k.back(l.Distance)
		landmarks = append(landmarks, l.Landmark)
	}
	return landmarks
}

// nameKey is what landmarks of one name have in common: case does not count.
func nameKey(name string) string { return strings.ToLower(name) }

// offCourse says which landmark of the list lies off the course, and where it was read.
func (p *profile) offCourse(err error, o Options) error {
	length := p.distance[len(p.distance)-1] - p.distance[0]
	if o.Length > 0 {
		length = o.Length
	}
	for _, l := range o.Landmarks {
		if l.Distance >= 0 && l.Distance <= length+endSlack {
			continue
		}
		cause := fmt.Errorf("landmark %q at %g m of %.0f m: %w", oneLine(l.Name, maxName), l.Distance, length, course.ErrOffCourse)
		if l.from.line > 0 {
			return &Error{File: l.from.file, Line: l.from.line, Err: oneLineError{cause}}
		}
		return o.errorAt(p.lineOf(err, o), cause)
	}
	return o.errorAt(p.lineOf(err, o), err)
}
