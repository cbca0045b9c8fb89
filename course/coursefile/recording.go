package coursefile

import (
	"fmt"
	"io"
	"math"
	"os"
	"time"

	"isoeffort.example/course"
)

// A Recording is what a file holds of places, before a course is made of it.
//
// What is not in it is not kept: extensions, links and authors, fields of points beyond
// those of Point, names of the points of routes, properties beyond those that the
// package's comment lists. Texts are trimmed at both ends and free of characters that
// XML forbids.
type Recording struct {
	Name, Description string

	// Tracks holds first the tracks of the file and then its routes, each in file
	// order. Those without points are left out.
	Tracks    []Track
	Waypoints []Waypoint

	// Warnings say what was left out or could not be read.
	Warnings []string

	file   string // the name in errors
	vacant int    // the line of the first track without a point
	end    int    // the line on which the document ends
}

// A Track is a line on the ground in one or more pieces.
type Track struct {
	Name, Description string
	Route             bool // planned, a route of GPX; it has one segment
	Segments          []Segment
}

// A Segment is a piece of a track without interruption.
type Segment struct {
	Points []Point

	lines []int32 // where the points stand in the file; not of their number if unknown
}

// A Point is a place. Its longitude is from −180 up to but not including 180: what is
// read as 180 becomes −180, the same meridian, since GPX 1.1 knows only that.
type Point struct {
	Lat, Lon  float64   // degrees
	Elevation float64   // m above sea level; NaN: not known
	Time      time.Time // in UTC; zero: not known
}

// A Waypoint is a place with texts.
type Waypoint struct {
	Point
	Name, Comment, Description, Symbol, Type string

	line int32
}

// ReadRecording reads a GPX or a GeoJSON file, packed by gzip or not, as the package's
// comment describes. It is taken for GeoJSON if its first character that is no white
// space is a brace or a bracket. Every error is an *Error. Of the options it heeds File
// and the limits.
func ReadRecording(r io.Reader, o Options) (*Recording, error) {
	o = o.named(r)
	from := newSource(r, o.MaxBytes)
	if from.beginsLikeJSON() {
		return readGeoJSON(from, o)
	}
	return readGPX(from, o)
}

// OpenRecording reads a file as ReadRecording does. Options.File is set to the name if
// it is "".
func OpenRecording(name string, o Options) (*Recording, error) {
	return open(name, o, ReadRecording)
}

func open[T any](name string, o Options, read func(io.Reader, Options) (T, error)) (T, error) {
	var none T
	if o.File == "" {
		o.File = name
	}
	f, err := os.Open(name)
	if err != nil {
		return none, o.errorAt(0, err)
	}
	defer f.Close()
	return read(f, o)
}

// Length returns the length of a track in metres, its segments joined by straight lines.
func (t Track) Length() float64 {
	length := 0.0
	var last course.Position
	for _, s := range t.Segments {
		for _, q := range s.Points {
			at := course.NewPosition(q.Lat, q.Lon)
			if last != (course.Position{}) {
				length += last.Distance(at)
			}
			last = at
		}
	}
	return length
}

// points returns the number of points.
func (t Track) points() int {
	n := 0
	for _, s := range t.Segments {
		n += len(s.Points)
	}
	return n
}

// line returns the line of a point, 0 if it is not known.
func (s Segment) line(point int) int {
	if len(s.lines) != len(s.Points) {
		return 0
	}
	return int(s.lines[point])
}

// same reports whether two points are equal, two unknown elevations and the two sides of
// the date line being so too.
func (p Point) same(q Point) bool {
	z := p.Elevation == q.Elevation || math.IsNaN(p.Elevation) && math.IsNaN(q.Elevation)
	return z && p.Lat == q.Lat && westernLine(p.Lon) == westernLine(q.Lon) && p.Time.Equal(q.Time)
}

// check refuses what no file holds. A recording that was read passes.
func (r *Recording) check(o Options) error {
	for i, t := range r.Tracks {
		for j, s := range t.Segments {
			for k, p := range s.Points {
				if err := p.check(); err != nil {
					return o.errorAt(s.line(k), fmt.Errorf("track %d, segment %d, point %d: %w", i+1, j+1, k+1, err))
				}
			}
		}
	}
	for i, w := range r.Waypoints {
		if err := w.check(); err != nil {
			return o.errorAt(int(w.line), fmt.Errorf("waypoint %d: %w", i+1, err))
		}
	}
	return nil
}

func (p Point) check() error {
	switch {
	case !(math.Abs(p.Lat) <= maxLat):
		return because(ErrCoordinate, "lat %g is outside -90 to 90", p.Lat)
	case !(math.Abs(p.Lon) <= maxLon):
		return because(ErrCoordinate, "lon %g is outside -180 to 180", p.Lon)
	case math.IsInf(p.Elevation, 0):
		return because(course.ErrNotFinite, "elevation %g", p.Elevation)
	case p.Elevation < course.MinElevation || p.Elevation > course.MaxElevation:
		return because(course.ErrElevationRange, "%g m", p.Elevation)
	case !p.Time.IsZero() && !writable(p.Time):
		return because(ErrTime, "%s", p.Time)
	}
	return nil
}
