package coursefile

import (
	"io"
	"strings"
	"time"

	"isoeffort.example/course"
)

// ReadGeoJSON reads a course from a GeoJSON file as the package's comment describes.
// Every error is an *Error. The course's name is that of its first line that has one,
// else the document's, else "".
func ReadGeoJSON(r io.Reader, o Options) (*course.Course, error) {
	o = o.named(r)
	recording, err := readGeoJSON(newSource(r, o.MaxBytes), o)
	if err != nil {
		return nil, err
	}
	return recording.Course(o)
}

// A geoReader makes a recording of GeoJSON.
type geoReader struct {
	*jsonReader
	made    *maker
	areas   lost // surfaces, which are no course
	unknown lost // types
	untimed lost // lines whose times do not fit
}

func readGeoJSON(from *source, o Options) (*Recording, error) {
	g := &geoReader{jsonReader: newJSONReader(from, o), made: newMaker(o)}
	t, err := g.token()
	switch {
	case err != nil && from.empty() && from.err() == nil:
		return nil, o.errorAt(1, ErrEmpty)
	case err != nil:
		return nil, err
	case t.kind != '{':
		return nil, g.errorf(ErrNotGeoJSON, "it begins with %s", quoted(t.String()))
	}
	top, err := g.object()
	if err != nil {
		return nil, err
	}
	last := g.line
	if err := g.end(); err != nil {
		return nil, err
	}
	if !top.isGeoJSON() {
		return nil, o.errorAt(1, because(ErrNotGeoJSON, "its type is %s", quoted(top.kind)))
	}
	if err := g.add(top); err != nil {
		return nil, err
	}
	if top.kind == "FeatureCollection" {
		g.made.recording.Name, g.made.recording.Description = top.name, top.description
	}
	g.warn()
	g.made.recording.end = last
	return g.made.finish()
}

func (g *geoReader) warn() {
	if l := g.areas; l.count > 0 {
		g.made.warn("%s left out, first up to line %d: no line on the ground", counted(l.count, "surface"), l.first)
	}
	if l := g.unknown; l.count > 0 {
		g.made.warn("%s of unknown type left out, first up to line %d", counted(l.count, "object"), l.first)
	}
	if l := g.untimed; l.count > 0 {
		g.made.warn("times that are not one for each position left out at %s, first up to line %d", counted(l.count, "line"), l.first)
	}
}

// An object is a GeoJSON object of any type: what its members say, in whatever order
// they come.
type object struct {
	kind       string
	geometries []geometry
	properties
}

type properties struct {
	name, description, comment, symbol, class string
	route                                     bool
	time                                      time.Time
	times                                     []time.Time
}

func (o *object) isGeoJSON() bool {
	switch o.kind {
	case "FeatureCollection", "Feature", "GeometryCollection":
		return true
	}
	_, known := depths[o.kind]
	return known
}

// object reads an object that has been opened. Features are added as they come by.
func (g *geoReader) object() (*object, error) {
	o := &object{}
	var own geometry
	err := g.members(func(name string) (err error) {
		switch name {
		case "type":
			o.kind, err = g.text()
			return err
		case "coordinates":
			return g.coordinates(&own)
		case "geometry", "geometries":
			return g.objects(func(inner *object) error {
				o.geometries = append(o.geometries, inner.geometries...)
				return nil
			})
		case "features":
			return g.objects(g.add)
		case "properties":
			return g.objectOrSkip(func() error {
				return g.members(func(name string) error { return g.property(o, name) })
			})
		}
		return g.property(o, name)
	})
	if err != nil {
		return nil, err
	}
	if own.depth > 0 {
		own.kind, own.line = o.kind, g.line
		o.geometries = append(o.geometries, own)
	}
	return o, nil
}

// objects reads an object or an array of them.
func (g *geoReader) objects(take func(*object) error) error {
	t, err := g.token()
	if err != nil {
		return err
	}
	return g.objectsFrom(t, take)
}

func (g *geoReader) objectsFrom(t jsonToken, take func(*object) error) error {
	switch t.kind {
	case '{':
		inner, err := g.object()
		if err != nil {
			return err
		}
		return take(inner)
	case '[':
		return g.elements(func(t jsonToken) error { return g.objectsFrom(t, take) })
	}
	return nil
}

// objectOrSkip calls read for the next value if it is an object.
func (g *geoReader) objectOrSkip(read func() error) error {
	t, err := g.token()
	if err != nil {
		return err
	}
	if t.kind != '{' {
		return g.skipFrom(t)
	}
	return read()
}

// property reads a value that describes an object. The first of two names for one thing
// counts.
func (g *geoReader) property(o *object, name string) error {
	switch name {
	case "name", "title":
		return g.textInto(&o.name)
	case "desc", "description":
		return g.textInto(&o.description)
	case "cmt":
		return g.textInto(&o.comment)
	case "sym":
		return g.textInto(&o.symbol)
	case "type":
		return g.textInto(&o.class)
	case "time":
		return g.timeInto(&o.time)
	case "times":
		return g.times(o)
	case "kind":
		kind, err := g.text()
		o.route = kind == "route"
		return err
	}
	return g.skip()
}

func (g *geoReader) textInto(field *string) error {
	text, err := g.text()
	if *field == "" {
		*field = cleaned(text)
	}
	return err
}

// timeInto reads a time. What is null is not known, and what is no time neither.
func (g *geoReader) timeInto(at *time.Time) error {
	t, err := g.token()
	if err != nil {
		return err
	}
	return g.timeFrom(t, at)
}

func (g *geoReader) timeFrom(t jsonToken, at *time.Time) error {
	*at = time.Time{}
	if t.kind == '"' {
		*at = parseTime(strings.TrimSpace(string(t.text)))
	}
	if at.IsZero() && t.kind != 'n' {
		g.made.lostTimes.add(g.line)
	}
	return g.skipFrom(t)
}

// times reads an array of times.
func (g *geoReader) times(o *object) error {
	t, err := g.token()
	if err != nil {
		return err
	}
	if t.kind != '[' {
		return g.skipFrom(t)
	}
	o.times = []time.Time{}
	return g.elements(func(t jsonToken) error {
		if len(o.times) == g.options.MaxPoints {
			return g.errorf(ErrTooLarge, "more than %d times", g.options.MaxPoints)
		}
		var at time.Time
		err := g.timeFrom(t, &at)
		o.times = append(o.times, at)
		return err
	})
}
