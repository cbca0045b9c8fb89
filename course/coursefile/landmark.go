package coursefile

import (
	"cmp"
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"isoeffort.example/course"
)

// A Landmark is a landmark of a list: one of a course with its cutoff and its elevation,
// if it has them. One that was read remembers the line, for errors.
type Landmark struct {
	course.Landmark
	Cutoff Cutoff
	Height Height

	from origin
}

// An origin is the line of a file. The zero value is none.
type origin struct {
	file string
	line int
}

// The further columns of a CSV list of landmarks.
const (
	nameColumn   = "name"
	kindColumn   = "kind"
	cutoffColumn = "cutoff"
	noteColumn   = "note"
)

// ReadLandmarks reads a list of landmarks, as the package's comment describes, packed by
// gzip or not. It returns them in the order of the file; whether they lie on a course is
// seen when one is made with Options.Landmarks. Of the options it heeds File and
// MaxBytes; more than MaxWaypoints landmarks are refused. Every error is an *Error.
func ReadLandmarks(r io.Reader, o Options) ([]Landmark, error) {
	o = o.named(r)
	t := newTable(r, o)
	err := t.readHeader(ErrLandmarkColumns, []string{nameColumn, distanceColumn}, []string{kindColumn, cutoffColumn, noteColumn, elevationColumn})
	if err != nil {
		return nil, err
	}
	var list []Landmark
	err = t.eachRow(MaxWaypoints, "landmarks", func(line int) error {
		l, err := t.landmark()
		l.from = origin{o.File, line}
		list = append(list, l)
		return err
	})
	if err != nil {
		return nil, err
	}
	return list, nil
}

// OpenLandmarks reads a list from a file as ReadLandmarks does. Options.File is set to
// the name if it is "".
func OpenLandmarks(name string, o Options) ([]Landmark, error) {
	return open(name, o, ReadLandmarks)
}

// landmark reads the row at hand.
func (t *table) landmark() (l Landmark, err error) {
	l.Name = oneLine(t.field(nameColumn), maxName)
	l.Note = oneLine(t.field(noteColumn), maxNote)
	if l.Name == "" {
		return l, ErrName
	}
	if l.Distance, err = number("distance", t.field(distanceColumn)); err != nil {
		return l, err
	}
	if l.Distance < 0 || l.Distance > course.MaxLength {
		return l, because(course.ErrOffCourse, "%g m is not within 0 to %d m", l.Distance, course.MaxLength)
	}
	l.Distance += 0 // no negative zero
	if l.Kind, err = parseKind(t.field(kindColumn)); err != nil {
		return l, err
	}
	if l.Cutoff, err = ParseCutoff(t.field(cutoffColumn)); err != nil {
		return l, err
	}
	if text := t.field(elevationColumn); text != "" {
		l.Height.Stated = true
		l.Height.Elevation, err = elevationOf(text)
	}
	return l, err
}

// parseKind reads a kind, by its name or by a word that tells it in waypoints too.
func parseKind(text string) (course.Kind, error) {
	if text == "" || strings.EqualFold(text, course.Place.String()) {
		return course.Place, nil
	}
	kind := kindOf(text)
	if kind == course.Place {
		return kind, because(ErrKind, "%s", quoted(text))
	}
	return kind, nil
}

// WriteLandmarks writes a list that ReadLandmarks reads as the same one, with names and
// notes on one line each and shortened to 100 and 1000 characters. There is a column of
// elevations if one is stated. It returns an *Error for a landmark that ReadLandmarks
// would refuse.
func WriteLandmarks(w io.Writer, list []Landmark) error {
	rows := csv.NewWriter(w)
	columns := []string{nameColumn, distanceColumn, kindColumn, cutoffColumn, noteColumn}
	if slices.ContainsFunc(list, func(l Landmark) bool { return l.Height.Stated }) {
		columns = append(columns, elevationColumn)
	}
	_ = rows.Write(columns) // errors stick
	for i, l := range list {
		if err := l.check(); err != nil {
			return Options{}.errorAt(0, because(err, "landmark %d", i+1))
		}
		_ = rows.Write(l.row()[:len(columns)])
	}
	rows.Flush()
	return rows.Error()
}

// row is the landmark as a row of a list with all columns.
func (l Landmark) row() []string {
	elevation := ""
	if l.Height.Stated {
		elevation = strconv.FormatFloat(l.Height.Elevation, 'f', -1, 64)
	}
	return []string{
		oneLine(l.Name, maxName), strconv.FormatFloat(l.Distance, 'f', -1, 64),
		l.Kind.String(), l.Cutoff.String(), oneLine(l.Note, maxNote), elevation,
	}
}

func (l Landmark) check() error {
	switch {
	case oneLine(l.Name, maxName) == "":
		return ErrName
	case !(l.Distance >= 0 && l.Distance <= course.MaxLength):
		return course.ErrOffCourse
	case l.Kind < course.Place || l.Kind > course.Top:
		return ErrKind
	}
	return cmp.Or(l.Cutoff.check(), l.Height.check())
}
