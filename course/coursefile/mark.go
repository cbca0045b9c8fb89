package coursefile

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"time"

	"isoeffort.example/course"
)

// A mark is what the gate keeps of a point for later, when it is known whether the
// point is used: a route's are not if there is a track.
type mark struct {
	line int
	time time.Time // zero if it has none or none that can be read
	err  error     // why the point cannot be used
}

// startPoint marks a point and hands it on with its place.
func (g *gate) startPoint(e *element, attributes []xml.Attr) error {
	marks := &g.tracks
	switch e.role {
	case routePoint:
		marks = &g.routes
	case waypoint:
		marks = &g.waypoints
	}
	if len(g.waypoints) == MaxWaypoints && e.role == waypoint {
		return g.errorf(ErrTooLarge, "more than %d waypoints", MaxWaypoints)
	}
	if len(g.tracks)+len(g.routes)+len(g.waypoints) >= g.options.MaxPoints {
		return g.errorf(ErrTooLarge, "more than %d points", g.options.MaxPoints)
	}
	place, err := placeOf(attributes)
	*marks = append(*marks, mark{line: g.line, err: err})
	g.current = &(*marks)[len(*marks)-1]
	g.queue = append(g.queue, xml.StartElement{Name: xml.Name{Local: e.name}, Attr: place})
	return nil
}

// placeOf returns the attributes lat and lon, of the place 0, 0 if they are not good.
func placeOf(attributes []xml.Attr) (place []xml.Attr, err error) {
	place = []xml.Attr{{Name: xml.Name{Local: "lat"}}, {Name: xml.Name{Local: "lon"}}}
	for i, limit := range []float64{90, 180} {
		place[i].Value, err = coordinate(attributes, place[i].Name.Local, limit)
		if err != nil {
			place[0].Value, place[1].Value = "0", "0"
			return place, err
		}
	}
	return place, nil
}

func coordinate(attributes []xml.Attr, name string, limit float64) (string, error) {
	value, found := "", false
	for _, a := range attributes {
		if a.Name.Space != "" || a.Name.Local != name {
			continue
		}
		if found {
			return "", because(ErrCoordinate, "%s is given twice", name)
		}
		value, found = strings.TrimSpace(a.Value), true
	}
	if value == "" {
		return "", because(ErrCoordinate, "%s is missing", name)
	}
	degrees, err := number(name, value)
	switch {
	case err != nil:
		return "", fmt.Errorf("%w: %w", ErrCoordinate, err)
	case degrees < -limit || degrees > limit:
		return "", because(ErrCoordinate, "%s %s is outside -%g to %g", name, value, limit, limit)
	}
	return value, nil
}

// endLeaf hands on a text, or keeps it where gpxgo would not do it justice. An empty
// one is none.
func (g *gate) endLeaf(e *element) {
	value := bytes.TrimSpace(g.text)
	switch {
	case len(value) == 0:
		return
	case e.role == timestamp:
		g.current.time = parseTime(string(value))
		return
	case e.role == elevation:
		if err := checkElevation(string(value)); err != nil {
			if g.current.err == nil {
				g.current.err = err
			}
			return
		}
	}
	g.queue = append(g.queue, e.start, xml.CharData(value), e.end)
}

func checkElevation(text string) error {
	z, err := number("elevation", text)
	if err == nil && (z < course.MinElevation || z > course.MaxElevation) {
		return because(course.ErrElevationRange, "%g m", z)
	}
	return err
}

// parseTime reads a time with or without fraction and zone, which is UTC if it is not
// given.
func parseTime(s string) time.Time {
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02 15:04:05Z07:00", time.DateTime} {
		if t, err := time.Parse(layout, s); err == nil {
			return t
		}
	}
	return time.Time{}
}
