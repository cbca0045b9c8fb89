package coursefile

import (
	"bufio"
	"encoding/json"
	"io"
	"math"
	"strconv"
	"time"
)

// WriteGeoJSON writes a recording as a FeatureCollection of RFC 7946: waypoints as
// Points, then tracks as LineStrings or, with several segments, MultiLineStrings, each
// Feature on a line of its own. Elevations are the third number of a position, which has
// only two where there is none. The properties are those of the package's comment. What
// it says of reading again and of refusals is as for WriteGPX.
func WriteGeoJSON(w io.Writer, r *Recording) error {
	if err := r.check(Options{}); err != nil {
		return err
	}
	out := &geoWriter{Writer: bufio.NewWriterSize(w, 1<<16)}
	out.put(`{"type":"FeatureCollection"`)
	out.member("name", r.Name)
	out.member("desc", r.Description)
	out.put(`,"features":[`)
	for _, p := range r.Waypoints {
		out.waypoint(p)
	}
	for _, t := range r.Tracks {
		if t.points() > 0 {
			out.track(t)
		}
	}
	out.put("\n]}\n")
	return out.Flush() // with the first error of all
}

type geoWriter struct {
	*bufio.Writer
	begun  bool // with the features
	number []byte
}

func (w *geoWriter) put(s string) { _, _ = w.WriteString(s) }

// member writes a further member of an object unless it is empty.
func (w *geoWriter) member(name, s string) {
	if s = cleaned(s); s != "" {
		w.put(`,"` + name + `":`)
		w.quote(s)
	}
}

func (w *geoWriter) quote(s string) {
	text, _ := json.Marshal(s) // a string has no error
	_, _ = w.Write(text)
}

// feature opens a Feature and its properties.
func (w *geoWriter) feature(kind string) {
	if w.begun {
		w.put(",")
	}
	w.begun = true
	w.put("\n" + `{"type":"Feature","properties":{"kind":"` + kind + `"`)
}

// geometry closes the properties and opens the coordinates.
func (w *geoWriter) geometry(kind string) {
	w.put(`},"geometry":{"type":"` + kind + `","coordinates":`)
}

func (w *geoWriter) waypoint(p Waypoint) {
	w.feature("waypoint")
	w.member("name", p.Name)
	w.member("cmt", p.Comment)
	w.member("desc", p.Description)
	w.member("sym", p.Symbol)
	w.member("type", p.Type)
	if !p.Time.IsZero() {
		w.put(`,"time":`)
		w.time(p.Time)
	}
	w.geometry("Point")
	w.position(p.Point)
	w.put("}}")
}

func (w *geoWriter) track(t Track) {
	pieces := t.pieces()
	kind := "track"
	if t.Route {
		kind = "route"
	}
	w.feature(kind)
	w.member("name", t.Name)
	w.member("desc", t.Description)
	w.times(pieces)
	if len(pieces) == 1 {
		w.geometry("LineString")
		w.line(pieces[0])
	} else {
		w.geometry("MultiLineString")
		w.list(len(pieces), func(i int) { w.line(pieces[i]) })
	}
	w.put("}}")
}

// pieces returns the lines of a track; a route has one.
func (t Track) pieces() [][]Point {
	var pieces [][]Point
	for _, s := range t.Segments {
		switch {
		case len(s.Points) == 0:
		case t.Route && len(pieces) > 0:
			pieces[0] = append(pieces[0][:len(pieces[0]):len(pieces[0])], s.Points...)
		default:
			pieces = append(pieces, s.Points)
		}
	}
	for i := range pieces {
		pieces[i] = atLeastTwo(pieces[i])
	}
	return pieces
}

// times writes the times of all positions, if there is one.
func (w *geoWriter) times(pieces [][]Point) {
	var all []time.Time
	known := false
	for _, points := range pieces {
		for _, p := range points {
			all = append(all, p.Time)
			known = known || !p.Time.IsZero()
		}
	}
	if known {
		w.put(`,"times":`)
		w.list(len(all), func(i int) { w.time(all[i]) })
	}
}

func (w *geoWriter) line(points []Point) {
	w.list(len(points), func(i int) { w.position(points[i]) })
}

func (w *geoWriter) list(n int, item func(int)) {
	w.put("[")
	for i := range n {
		if i > 0 {
			w.put(",")
		}
		item(i)
	}
	w.put("]")
}

func (w *geoWriter) position(p Point) {
	b := append(w.number[:0], '[')
	b = strconv.AppendFloat(b, westernLine(p.Lon), 'f', -1, 64)
	b = strconv.AppendFloat(append(b, ','), p.Lat, 'f', -1, 64)
	if !math.IsNaN(p.Elevation) {
		b = strconv.AppendFloat(append(b, ','), p.Elevation, 'f', -1, 64)
	}
	w.number = append(b, ']')
	_, _ = w.Write(w.number)
}

func (w *geoWriter) time(t time.Time) {
	if t.IsZero() {
		w.put("null")
		return
	}
	w.number = append(w.number[:0], '"')
	w.number = t.UTC().AppendFormat(w.number, time.RFC3339Nano)
	w.number = append(w.number, '"')
	_, _ = w.Write(w.number)
}
