package coursefile

import (
	"bufio"
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"time"
)

// WriteGPX writes a recording as a GPX 1.1 document that is valid against its schema:
// elements in its order, decimal numbers without exponent, times in UTC. Read again by
// ReadRecording it is equal, every number to the last digit and every time to the
// nanosecond, but for texts, which come back trimmed and without the characters that XML
// forbids, and for segments and tracks without points, which are left out. A route is
// written in one piece.
//
// A point off the globe, an elevation outside of course.MinElevation to MaxElevation and
// a time outside the years 1 to 9999 are refused with an *Error before anything is
// written.
func WriteGPX(w io.Writer, r *Recording) error {
	if err := r.check(Options{}); err != nil {
		return err
	}
	out := &gpxWriter{Writer: bufio.NewWriterSize(w, 1<<16)}
	out.put(xml.Header, `<gpx version="1.1" creator="isoeffort" xmlns="http://www.topografix.com/GPX/1/1">`, "\n")
	if r.Name != "" || r.Description != "" {
		out.put("<metadata>")
		out.text("name", r.Name)
		out.text("desc", r.Description)
		out.put("</metadata>\n")
	}
	for _, p := range r.Waypoints {
		out.waypoint(p)
	}
	for _, t := range r.Tracks {
		if t.Route && t.points() > 0 {
			out.route(t)
		}
	}
	for _, t := range r.Tracks {
		if !t.Route && t.points() > 0 {
			out.track(t)
		}
	}
	out.put("</gpx>\n")
	return out.Flush() // with the first error of all
}

type gpxWriter struct {
	*bufio.Writer
	number []byte
}

func (w *gpxWriter) put(texts ...string) {
	for _, s := range texts {
		_, _ = w.WriteString(s)
	}
}

// text writes an element unless it is empty.
func (w *gpxWriter) text(element, s string) {
	if s = cleaned(s); s == "" {
		return
	}
	w.put("<", element, ">")
	_ = xml.EscapeText(w, []byte(s))
	w.put("</", element, ">")
}

func (w *gpxWriter) decimal(v float64) {
	w.number = strconv.AppendFloat(w.number[:0], v, 'f', -1, 64)
	_, _ = w.Write(w.number)
}

// point writes the start of a point, up to its time.
func (w *gpxWriter) point(element string, p Point) {
	w.put("<", element, ` lat="`)
	w.decimal(p.Lat)
	w.put(`" lon="`)
	w.decimal(westernLine(p.Lon))
	w.put(`">`)
	if !math.IsNaN(p.Elevation) {
		w.put("<ele>")
		w.decimal(p.Elevation)
		w.put("</ele>")
	}
	if !p.Time.IsZero() {
		w.number = p.Time.UTC().AppendFormat(w.number[:0], time.RFC3339Nano)
		w.put("<time>")
		_, _ = w.Write(w.number)
		w.put("</time>")
	}
}

func (w *gpxWriter) waypoint(p Waypoint) {
	w.point("wpt", p.Point)
	w.text("name", p.Name)
	w.text("cmt", p.Comment)
	w.text("desc", p.Description)
	w.text("sym", p.Symbol)
	w.text("type", p.Type)
	w.put("</wpt>\n")
}

func (w *gpxWriter) route(t Track) {
	w.put("<rte>")
	w.text("name", t.Name)
	w.text("desc", t.Description)
	w.put("\n")
	for _, s := range t.Segments {
		w.points("rtept", s)
	}
	w.put("</rte>\n")
}

func (w *gpxWriter) track(t Track) {
	w.put("<trk>")
	w.text("name", t.Name)
	w.text("desc", t.Description)
	w.put("\n")
	for _, s := range t.Segments {
		if len(s.Points) > 0 {
			w.put("<trkseg>\n")
			w.points("trkpt", s)
			w.put("</trkseg>\n")
		}
	}
	w.put("</trk>\n")
}

func (w *gpxWriter) points(element string, s Segment) {
	for _, p := range s.Points {
		w.point(element, p)
		w.put("</", element, ">\n")
	}
}
