package coursefile

// element is one of the elements of GPX that a recording is read from, with those of
// them that it may hold. All others are passed over with everything inside them, so that
// no extension can pass for a point and no field that is not needed can fail the file.
type element struct {
	name  string
	role  role
	field func(*gate) *string // of a text: where it goes
	inner []*element
}

type role int

const (
	group role = iota // holds other elements
	track             // as the next ones do
	route
	segment
	trackPoint
	routePoint
	waypoint
	text // and the leaves
	elevation
	timestamp
)

// gpxRoot is the tree of GPX 1.0 and 1.1 alike: the one keeps its name in the root, the
// other in the metadata.
var gpxRoot = holding("gpx", group,
	textOf("name", func(g *gate) *string { return &g.made.recording.Name }),
	textOf("desc", func(g *gate) *string { return &g.made.recording.Description }),
	holding("metadata", group,
		textOf("name", func(g *gate) *string { return &g.made.recording.Name }),
		textOf("desc", func(g *gate) *string { return &g.made.recording.Description })),
	holding("wpt", waypoint, leaf("ele", elevation), leaf("time", timestamp),
		textOf("name", func(g *gate) *string { return &g.waypoint.Name }),
		textOf("cmt", func(g *gate) *string { return &g.waypoint.Comment }),
		textOf("desc", func(g *gate) *string { return &g.waypoint.Description }),
		textOf("sym", func(g *gate) *string { return &g.waypoint.Symbol }),
		textOf("type", func(g *gate) *string { return &g.waypoint.Type })),
	holding("rte", route, trackName, trackDescription,
		holding("rtept", routePoint, leaf("ele", elevation), leaf("time", timestamp))),
	holding("trk", track, trackName, trackDescription,
		holding("trkseg", segment,
			holding("trkpt", trackPoint, leaf("ele", elevation), leaf("time", timestamp)))),
)

var (
	trackName        = textOf("name", func(g *gate) *string { return &g.made.track.Name })
	trackDescription = textOf("desc", func(g *gate) *string { return &g.made.track.Description })
)

func holding(name string, r role, inner ...*element) *element {
	return &element{name: name, role: r, inner: inner}
}

func leaf(name string, r role) *element { return &element{name: name, role: r} }

func textOf(name string, field func(*gate) *string) *element {
	return &element{name: name, role: text, field: field}
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
