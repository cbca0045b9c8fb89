package coursefile

import "encoding/xml"

// element is one of the elements of GPX that a course is read from, with those of them
// that it may hold. All others are passed over with everything inside them, so that no
// extension can pass for a point and no field that is not needed can fail the file.
type element struct {
	name  string
	role  role
	inner []*element

	start, end xml.Token // as handed on to gpxgo, without attributes
}

type role int

const (
	group      role = iota // holds other elements
	trackPoint             // a group with a place, as the next two are
	routePoint
	waypoint
	text
	elevation
	timestamp
)

// gpxRoot is the tree of GPX 1.0 and 1.1 alike: the one keeps its name in the root, the
// other in the metadata, and gpxgo takes the right one.
var gpxRoot = newElement("gpx", group,
	newElement("name", text),
	newElement("metadata", group, newElement("name", text)),
	newElement("wpt", waypoint,
		newElement("name", text), newElement("cmt", text), newElement("desc", text),
		newElement("sym", text), newElement("type", text)),
	newElement("rte", group,
		newElement("name", text),
		newElement("rtept", routePoint, newElement("ele", elevation), newElement("time", timestamp))),
	newElement("trk", group,
		newElement("name", text),
		newElement("trkseg", group,
			newElement("trkpt", trackPoint, newElement("ele", elevation), newElement("time", timestamp)))),
)

func newElement(name string, r role, inner ...*element) *element {
	return &element{
		name: name, role: r, inner: inner,
		start: xml.StartElement{Name: xml.Name{Local: name}},
		end:   xml.EndElement{Name: xml.Name{Local: name}},
	}
}

// child returns the element of that name inside e, nil if there is none.
func (e *element) child(name string) *element {
	for _, c := range e.inner {
		if c.name == name {
			return c
		}
	}
	return nil
}

// isLeaf reports whether e holds text.
func (e *element) isLeaf() bool { return e.role >= text }
