package coursefile

import (
	"cmp"
	"fmt"
	"slices"
)

// A maker gathers what a reader finds into a recording and holds it to the limits.
type maker struct {
	options   Options
	recording *Recording
	points    int // met, whether kept or not
	track     Track
	trackLine int    // where it starts
	fault     *Error // the first of a point of the route in hand
	faulty    *Error // the first of a point of any route
	leftOut   int    // routes with a fault

	lostTimes, lostElevations lost
}

// lost counts what could not be read.
type lost struct{ count, first int }

func (l *lost) add(line int) {
	if l.count == 0 {
		l.first = line
	}
	l.count++
}

func newMaker(o Options) *maker {
	return &maker{options: o, recording: &Recording{file: o.File}}
}

// count counts a point that stands on a line.
func (m *maker) count(line int) error {
	m.points++
	if m.points > m.options.MaxPoints {
		return m.options.errorAt(line, because(ErrTooLarge, "more than %d points", m.options.MaxPoints))
	}
	return nil
}

// segment opens a piece of the track in hand, unless an empty one is open.
func (m *maker) segment() {
	if n := len(m.track.Segments); n == 0 || len(m.track.Segments[n-1].Points) > 0 {
		m.track.Segments = append(m.track.Segments, Segment{})
	}
}

// point adds a point to the piece in hand.
func (m *maker) point(p Point, line int) {
	s := &m.track.Segments[len(m.track.Segments)-1]
	s.Points = append(s.Points, p)
	s.lines = append(s.lines, int32(line))
}

// endTrack adds the track in hand. A route with a fault is left out: another track may
// do without it.
func (m *maker) endTrack() {
	t := m.track
	fault := m.fault
	m.track, m.fault = Track{}, nil
	switch n := len(t.Segments); {
	case fault != nil:
		m.faulty = cmp.Or(m.faulty, fault)
		m.leftOut++
		return
	case n > 0 && len(t.Segments[n-1].Points) == 0:
		t.Segments = t.Segments[:n-1]
	}
	if len(t.Segments) > 0 {
		m.recording.Tracks = append(m.recording.Tracks, t)
	} else {
		m.recording.vacant = cmp.Or(m.recording.vacant, m.trackLine)
	}
}

// finish returns the recording. A route at fault fails it where no track is there
// instead.
func (m *maker) finish() (*Recording, error) {
	r := m.recording
	tracked := slices.ContainsFunc(r.Tracks, func(t Track) bool { return !t.Route })
	if m.faulty != nil && !tracked {
		return nil, m.faulty
	}
	slices.SortStableFunc(r.Tracks, func(a, b Track) int {
		return cmp.Compare(rank(a), rank(b))
	})
	if m.leftOut > 0 {
		m.warn("%s left out for a fault, first%s: %v", counted(m.leftOut, "route"), atLine(int32(m.faulty.Line)), m.faulty.Err)
	}
	if l := m.lostTimes; l.count > 0 {
		m.warn("time could not be read at %s, first at line %d: left out", counted(l.count, "point"), l.first)
	}
	if l := m.lostElevations; l.count > 0 {
		m.warn("elevation could not be read at %s, first at line %d: left out", counted(l.count, "waypoint"), l.first)
	}
	return r, nil
}

// rank puts tracks before routes.
func rank(t Track) int {
	if t.Route {
		return 1
	}
	return 0
}

func (m *maker) warn(format string, args ...any) {
	m.recording.Warnings = append(m.recording.Warnings, fmt.Sprintf(format, args...))
}
