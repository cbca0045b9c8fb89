package coursefile

import (
	"cmp"
	"fmt"
	"math"
)

// depths are the types of geometry and how deep their numbers stand in arrays.
var depths = map[string]int{
	"Point": 1, "MultiPoint": 2, "LineString": 2, "MultiLineString": 3, "Polygon": 3, "MultiPolygon": 4,
}

// A geometry is the positions of one in order.
type geometry struct {
	kind   string
	depth  int // of the numbers; 0: there are none
	line   int // where it ends
	points []Point
	lines  []int32
	ends   []int // by how many points each line of positions ends
}

// coordinates reads the next value into a geometry, whose type need not be known yet.
func (g *geoReader) coordinates(into *geometry) error {
	*into = geometry{}
	outside := g.depth
	var position []float64
	for {
		t, err := g.token()
		if err != nil {
			return err
		}
		depth := g.depth - outside
		switch t.kind {
		case '0':
			position, err = g.number(into, position, string(t.text), depth)
		case 'n':
			position, err = g.null(into, position, depth)
		case '"', 't', 'f':
			err = g.errorf(ErrCoordinate, "no number: %s", quoted(t.String()))
		default:
			err = g.bracket(into, t.kind, depth, &position)
		}
		if err != nil || depth == 0 {
			return err
		}
	}
}

// number adds a number to a position; those behind the elevation are dropped.
func (g *geoReader) number(into *geometry, position []float64, text string, depth int) ([]float64, error) {
	if depth == 0 || into.depth != 0 && into.depth != depth {
		return nil, g.errorf(ErrSyntax, "a number where no coordinate can stand")
	}
	into.depth = depth
	v, err := number("coordinate", text)
	if err != nil {
		return nil, g.options.errorAt(g.line, fmt.Errorf("%w: %w", ErrCoordinate, err))
	}
	if len(position) < 3 {
		position = append(position, v)
	}
	return position, nil
}

// null stands for no coordinates at all or for an elevation that is not known.
func (g *geoReader) null(into *geometry, position []float64, depth int) ([]float64, error) {
	switch {
	case depth > 0 && (depth != into.depth || len(position) < 2):
		return nil, g.errorf(ErrCoordinate, "null")
	case len(position) == 2:
		position = append(position, math.NaN())
	}
	return position, nil
}

// bracket opens or closes an array; depth is that inside or behind it.
func (g *geoReader) bracket(into *geometry, bracket byte, depth int, position *[]float64) error {
	switch {
	case bracket == '{' || bracket == '}':
		return g.errorf(ErrSyntax, "an object among the coordinates")
	case bracket == '[' && (into.depth > 0 && depth > into.depth || depth > maxArrays):
		return g.errorf(ErrSyntax, "arrays nested too deep for coordinates")
	case bracket == '[' || into.depth == 0:
		return nil
	case depth == into.depth-1:
		err := g.position(into, *position)
		*position = (*position)[:0]
		if err != nil {
			return err
		}
		if depth == 0 {
			into.ends = append(into.ends, 1)
		}
	case depth == into.depth-2:
		into.ends = append(into.ends, len(into.points))
	}
	return nil
}

// maxArrays is how deep the numbers of any geometry stand.
const maxArrays = 4

// position adds a position of two numbers or more.
func (g *geoReader) position(into *geometry, numbers []float64) error {
	if err := g.made.count(g.line); err != nil {
		return err
	}
	if len(numbers) < 2 {
		return g.errorf(ErrCoordinate, "a position of %s", counted(len(numbers), "number"))
	}
	p := Point{Lon: westernLine(numbers[0]), Lat: numbers[1], Elevation: math.NaN()}
	if len(numbers) > 2 {
		p.Elevation = numbers[2]
	}
	if err := p.check(); err != nil {
		return g.options.errorAt(g.line, err)
	}
	into.points = append(into.points, p)
	into.lines = append(into.lines, int32(g.line))
	return nil
}

// add takes the geometries of an object into the recording.
func (g *geoReader) add(o *object) error {
	for _, shape := range o.geometries {
		want, known := depths[shape.kind]
		switch {
		case !known:
			g.unknown.add(shape.line)
		case want != shape.depth:
			return g.options.errorAt(shape.line, because(ErrSyntax, "the numbers of a %s stand %d deep in arrays, not %d", shape.kind, shape.depth, want))
		case shape.kind == "Point" || shape.kind == "MultiPoint":
			g.addWaypoints(o, shape)
		case shape.kind == "LineString" || shape.kind == "MultiLineString":
			g.addTrack(o, shape)
		default:
			g.areas.add(shape.line)
		}
	}
	return nil
}

func (g *geoReader) addWaypoints(o *object, shape geometry) {
	for i, p := range shape.points {
		p.Time = o.time
		g.made.recording.Waypoints = append(g.made.recording.Waypoints, Waypoint{
			Point: p, Name: o.name, Comment: o.comment, Description: o.description, Symbol: o.symbol, Type: o.class,
			line: shape.lines[i],
		})
	}
}

func (g *geoReader) addTrack(o *object, shape geometry) {
	if o.times != nil && len(o.times) != len(shape.points) {
		g.untimed.add(shape.line)
	} else {
		for i, t := range o.times {
			shape.points[i].Time = t
		}
	}
	t := Track{Name: o.name, Description: o.description}
	start := 0
	for _, end := range shape.ends {
		points, lines := shape.points[start:end:end], shape.lines[start:end:end]
		start = end
		if n := len(points); n > 1 && allSame(points) { // see atLeastTwo
			points, lines = points[:n-1], lines[:n-1]
		}
		if len(points) > 0 {
			t.Segments = append(t.Segments, Segment{points, lines})
		}
	}
	t.Route = o.route && len(t.Segments) == 1
	if len(t.Segments) == 0 {
		g.made.recording.vacant = cmp.Or(g.made.recording.vacant, shape.line)
		return
	}
	g.made.recording.Tracks = append(g.made.recording.Tracks, t)
}

// allSame reports whether all points are one and the same.
func allSame(points []Point) bool {
	for _, p := range points {
		if !p.same(points[0]) {
			return false
		}
	}
	return true
}

// atLeastTwo returns the points of a segment as a line of GeoJSON, which has two
// positions at least. Where they are all one and the same, even if there is only one,
// the line has it once more than the segment; the reader takes it away again.
func atLeastTwo(points []Point) []Point {
	if len(points) > 0 && allSame(points) {
		return append(points[:len(points):len(points)], points[0])
	}
	return points
}
