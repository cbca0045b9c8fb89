package coursefile

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
)

// maxDepth is how deep elements may be nested; GPX needs five levels and its
// extensions a few more.
const maxDepth = 256

// A gate reads a GPX document token by token. It looks at the elements of gpxRoot and
// gathers the points as they come by, so that a file never stands in memory as a tree.
//
// It reads the decoder's Token, which matches tags and resolves name spaces, where
// RawToken would leave both to the gate.
type gate struct {
	in      *xml.Decoder
	from    *source
	options Options
	made    *maker

	space    string     // the name space of the root
	open     []*element // those of gpxRoot that are open
	skipped  int        // others open inside the last of them
	elements int64      // met so far
	ended    bool       // the root has been closed
	line     int        // where the token in hand starts
	text     []byte     // of the leaf that is open

	// The point that is open. A waypoint has more to it than a Point.
	waypoint  Waypoint
	pointLine int
	fault     error // why it cannot be used
}

func readGPX(from *source, o Options) (*Recording, error) {
	g := &gate{in: xml.NewDecoder(from.text), from: from, options: o, made: newMaker(o)}
	g.in.CharsetReader = recode
	for {
		err := g.advance()
		if errors.Is(err, io.EOF) {
			return g.made.finish()
		}
		if err != nil {
			return nil, err
		}
	}
}

// advance reads one token. At the proper end of the file it returns io.EOF, and else a
// located error.
func (g *gate) advance() error {
	g.line, _ = g.in.InputPos()
	token, err := g.in.Token()
	if err != nil {
		return g.refuse(err)
	}
	switch t := token.(type) {
	case xml.StartElement:
		if g.elements++; g.elements > g.options.maxElements() {
			return g.errorf(ErrTooLarge, "more than %d elements", g.options.maxElements())
		}
		return g.startElement(t)
	case xml.EndElement:
		return g.endElement()
	case xml.CharData:
		return g.chars(t)
	}
	return nil
}

func (g *gate) startElement(t xml.StartElement) error {
	switch {
	case g.ended:
		return g.errorf(ErrSyntax, "element <%s> after the end of the document", oneLine(t.Name.Local, 40))
	case len(g.open) == 0:
		return g.root(t)
	case len(g.open)+g.skipped >= maxDepth:
		return g.errorf(ErrSyntax, "elements nested more than %d deep", maxDepth)
	}
	e := g.open[len(g.open)-1].child(t.Name.Local)
	if e == nil || g.skipped > 0 || t.Name.Space != g.space {
		g.skipped++
		return nil
	}
	g.open = append(g.open, e)
	switch e.role {
	case track, route:
		g.made.track.Route = e.role == route
		g.made.trackLine = g.line
		g.made.segment()
	case segment:
		g.made.segment()
	case trackPoint, routePoint, waypoint:
		return g.startPoint(t.Attr)
	}
	g.text = g.text[:0]
	return nil
}

func (g *gate) root(t xml.StartElement) error {
	if t.Name.Local != gpxRoot.name {
		return g.errorf(ErrNotGPX, "the root element is <%s>", oneLine(t.Name.Local, 40))
	}
	g.space = t.Name.Space
	g.open = append(g.open, gpxRoot)
	return nil
}

func (g *gate) startPoint(attributes []xml.Attr) error {
	if err := g.made.count(g.line); err != nil {
		return err
	}
	lat, lon, err := placeOf(attributes)
	g.waypoint = Waypoint{Point: Point{Lat: lat, Lon: lon, Elevation: math.NaN()}, line: int32(g.line)}
	g.pointLine, g.fault = g.line, err
	return nil
}

func (g *gate) endElement() error {
	if g.skipped > 0 {
		g.skipped--
		return nil
	}
	e := g.open[len(g.open)-1]
	g.open = g.open[:len(g.open)-1]
	if g.ended = len(g.open) == 0; g.ended {
		g.made.recording.end = g.line
	}
	switch {
	case e.isLeaf():
		g.endLeaf(e)
	case e.role == track || e.role == route:
		g.made.endTrack()
	case e.role >= trackPoint:
		return g.endPoint(e.role)
	}
	return nil
}

func (g *gate) endPoint(r role) error {
	switch {
	case g.fault != nil && r != routePoint:
		return g.options.errorAt(g.pointLine, g.fault)
	case g.fault != nil:
		if g.made.fault == nil {
			g.made.fault = g.options.errorAt(g.pointLine, g.fault)
		}
	case r == waypoint:
		g.made.recording.Waypoints = append(g.made.recording.Waypoints, g.waypoint)
	default:
		g.made.point(g.waypoint.Point, g.pointLine)
	}
	return nil
}

// endLeaf takes over a text. An empty one is none.
func (g *gate) endLeaf(e *element) {
	value := bytes.TrimSpace(g.text)
	if len(value) == 0 {
		return
	}
	switch e.role {
	case text:
		if field := e.field(g); *field == "" {
			*field = cleaned(string(value))
		}
	case timestamp:
		if g.waypoint.Time = parseTime(string(value)); g.waypoint.Time.IsZero() {
			g.made.lostTimes.add(g.line)
		}
	case elevation:
		g.endElevation(string(value))
	}
}

func (g *gate) endElevation(value string) {
	z, err := recordedElevation(value)
	switch onWaypoint := g.open[len(g.open)-1].role == waypoint; {
	case err == nil:
		g.waypoint.Elevation = z
	case onWaypoint: // no course needs it
		g.made.lostElevations.add(g.line)
	case g.fault == nil:
		g.fault = err
	}
}

func (g *gate) chars(t xml.CharData) error {
	switch {
	case len(g.open) == 0:
		text := bytes.TrimLeft(t, " \t\r\n")
		if len(text) == 0 {
			return nil
		}
		g.line += bytes.Count(t[:len(t)-len(text)], []byte("\n"))
		if g.ended {
			return g.errorf(ErrSyntax, "text after the end of the document: %s", quoted(string(t)))
		}
		return g.errorf(ErrNotXML, "the file begins with %s", quoted(string(t)))
	case g.skipped == 0 && g.open[len(g.open)-1].isLeaf():
		g.text = append(g.text, t...)
	}
	return nil
}

func (g *gate) errorf(cause error, format string, args ...any) error {
	return g.options.errorAt(g.line, because(cause, format, args...))
}

// refuse turns an error of the decoder into a located one, or passes io.EOF.
func (g *gate) refuse(err error) error {
	line, _ := g.in.InputPos()
	cause := ErrSyntax
	if len(g.open) == 0 && !g.ended {
		cause = ErrNotXML
	}
	var syntax *xml.SyntaxError
	switch {
	case g.from.err() != nil:
		return g.options.reading(line, g.from.err())
	case g.from.empty():
		return g.options.errorAt(1, ErrEmpty)
	case errors.Is(err, io.EOF) && g.ended:
		return io.EOF
	case errors.Is(err, io.EOF):
		return g.options.errorAt(line, because(cause, "no element in it"))
	case errors.Is(err, ErrEncoding):
		return g.options.errorAt(line, errors.Unwrap(err))
	case errors.As(err, &syntax):
		return g.options.errorAt(syntax.Line, because(cause, "%s", oneLine(syntax.Msg, 200)))
	}
	return g.options.errorAt(line, because(cause, "%s", strings.TrimPrefix(err.Error(), "xml: ")))
}
