package coursefile

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"

	"github.com/tkrajina/gpxgo/gpx"

	"isoeffort.example/course"
)

// ReadGPX reads a GPX 1.0 or 1.1 file as the package's comment describes. Every error
// is an *Error. The course's name is that of its first track (or route) that has one,
// else the document's, else "".
func ReadGPX(r io.Reader, o Options) (*course.Course, error) {
	o = o.named(r)
	g, err := newGate(r, o)
	if err != nil {
		return nil, err
	}
	document, err := g.parse()
	if err != nil {
		return nil, err
	}
	points, err := pathOf(document, g)
	if err != nil {
		return nil, err
	}
	p, err := points.profile(o)
	if err != nil {
		return nil, err
	}
	waypoints, err := waypointsOf(document, g)
	if err != nil {
		return nil, err
	}
	landmarks := p.place(waypoints, points.at)
	return p.course(o, points.name, landmarks)
}

// parse has gpxgo read the document through the gate.
func (g *gate) parse() (*gpx.GPX, error) {
	// gpxgo looks for the version in the file's first bytes, where a comment, an
	// encoding or a prefix can hide it; it gets what the gate has read instead.
	version := fmt.Sprintf("<gpx version=%q", g.version)
	document, err := gpx.ParseDecoder(xml.NewTokenDecoder(g), []byte(version))
	if err := g.drain(); err != nil {
		return nil, err // the cause, which gpxgo may have replaced or swallowed
	}
	if err != nil {
		return nil, g.options.errorAt(g.line, because(ErrSyntax, "%v", err))
	}
	return document, nil
}

// A path is the points of a course in order.
type path struct {
	name      string
	at        []course.Position
	elevation []float64 // NaN where missing
	marks     []mark
	parts     int    // tracks or routes that have points
	kind      string // of the parts
}

// pathOf returns the points of all tracks or, if they have none, of all routes.
func pathOf(document *gpx.GPX, g *gate) (*path, error) {
	p := &path{marks: g.tracks, kind: "tracks"}
	for _, t := range document.Tracks {
		var points []gpx.GPXPoint
		for _, s := range t.Segments {
			points = append(points, s.Points...)
		}
		p.add(t.Name, points)
	}
	if len(p.at) == 0 {
		p = &path{marks: g.routes, kind: "routes"}
		for _, r := range document.Routes {
			p.add(r.Name, r.Points)
		}
	}
	if len(p.at) == 0 {
		return nil, g.options.errorAt(0, ErrNoTrack)
	}
	if err := checkMarks(p.marks, len(p.at), g); err != nil {
		return nil, err
	}
	if p.name == "" {
		p.name = oneLine(document.Name, maxName)
	}
	return p, nil
}

func (p *path) add(name string, points []gpx.GPXPoint) {
	if len(points) == 0 {
		return
	}
	p.parts++
	if p.name == "" {
		p.name = oneLine(name, maxName)
	}
	for _, q := range points {
		z := math.NaN()
		if q.Elevation.NotNull() {
			z = q.Elevation.Value()
		}
		p.at = append(p.at, course.NewPosition(q.Latitude, q.Longitude))
		p.elevation = append(p.elevation, z)
	}
}

// checkMarks returns the first error among the marks of points that are used.
func checkMarks(marks []mark, points int, g *gate) error {
	if len(marks) != points {
		return g.options.errorAt(0, because(ErrSyntax, "%d points marked but %d read", len(marks), points))
	}
	for _, m := range marks {
		if m.err != nil {
			return g.options.errorAt(m.line, m.err)
		}
	}
	return nil
}
