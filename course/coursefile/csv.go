package coursefile

import (
	"encoding/csv"
	"errors"
	"io"
	"math"
	"strings"

	"isoeffort.example/course"
)

// The columns of a CSV profile.
const (
	distanceColumn  = "distance_m"
	elevationColumn = "elevation_m"
)

// ReadCSV reads a profile as the package's comment describes: columns in any order,
// further ones ignored, a byte order mark and either end of line allowed, packed by gzip
// or not. Every error is an *Error. The course has no name.
func ReadCSV(r io.Reader, o Options) (*course.Course, error) {
	o = o.named(r)
	t := newTable(r, o)
	if err := t.readHeader(ErrColumns, []string{distanceColumn, elevationColumn}, nil); err != nil {
		return nil, err
	}
	p := &profile{}
	err := t.eachRow(o.MaxPoints, "points", func(line int) error { return p.addRow(t, line) })
	if err != nil {
		return nil, err
	}
	if len(p.distance) < 2 {
		return nil, o.errorAt(t.line, course.ErrTooFewPoints)
	}
	if err := p.fill(o); err != nil {
		return nil, o.errorAt(p.lineOf(err, o), err)
	}
	return p.course(o, "", nil)
}

func (p *profile) addRow(t *table, line int) error {
	distance, err := number("distance", t.field(distanceColumn))
	if err != nil {
		return err
	}
	if n := len(p.distance); n > 0 && distance < p.distance[n-1] {
		return because(course.ErrDistanceBack, "from %g to %g m", p.distance[n-1], distance)
	}
	elevation := math.NaN()
	if text := t.field(elevationColumn); text != "" {
		if elevation, err = elevationOf(text); err != nil {
			return err
		}
	}
	p.add(distance, elevation, line)
	return nil
}

// A table is a CSV file with named columns that is being read.
type table struct {
	rows    *csv.Reader
	from    *source
	options Options
	columns map[string]int
	row     []string
	line    int // of the last row read
}

func newTable(r io.Reader, o Options) *table {
	from := newSource(r, o.MaxBytes)
	t := &table{rows: csv.NewReader(from.text), from: from, options: o, columns: map[string]int{}}
	t.rows.ReuseRecord = true
	return t
}

// readHeader reads the names of the columns: each of those that must be there once, and
// each of those that may be at most once.
func (t *table) readHeader(cause error, must, may []string) error {
	header, err := t.rows.Read()
	switch {
	case errors.Is(err, io.EOF) && t.from.err() == nil:
		return t.options.errorAt(1, ErrEmpty)
	case err != nil:
		return t.refuse(err)
	}
	t.line, _ = t.rows.FieldPos(0)
	if len(header) > MaxColumns {
		return t.options.errorAt(t.line, because(ErrTooLarge, "more than %d columns", MaxColumns))
	}
	count := map[string]int{}
	for i, name := range header {
		name = strings.TrimSpace(name)
		count[name]++
		t.columns[name] = i
	}
	bad := false
	for _, name := range must {
		bad = bad || count[name] != 1
	}
	for _, name := range may {
		bad = bad || count[name] > 1
	}
	if bad {
		return t.options.errorAt(t.line, because(cause, "it reads %s", quoted(strings.Join(header, ","))))
	}
	return nil
}

// eachRow reads the rows below the header, at most a number of them.
func (t *table) eachRow(most int, things string, take func(line int) error) error {
	for n := 0; ; n++ {
		var err error
		if t.row, err = t.rows.Read(); errors.Is(err, io.EOF) && t.from.err() == nil {
			return nil
		}
		if err != nil {
			return t.refuse(err)
		}
		t.line, _ = t.rows.FieldPos(0)
		if n == most {
			return t.options.errorAt(t.line, because(ErrTooLarge, "more than %d %s", most, things))
		}
		if err := take(t.line); err != nil {
			return t.options.errorAt(t.line, err)
		}
	}
}

// field returns the text of a column in the row at hand, "" if there is no such column.
func (t *table) field(column string) string {
	i, ok := t.columns[column]
	if !ok {
		return ""
	}
	return strings.TrimSpace(t.row[i])
}

// refuse gives an error of the csv package its place.
func (t *table) refuse(err error) error {
	var parse *csv.ParseError
	switch {
	case t.from.err() != nil:
		return t.options.reading(t.line, t.from.err())
	case errors.As(err, &parse) && errors.Is(err, csv.ErrFieldCount):
		return t.options.errorAt(parse.StartLine, ErrFields)
	case errors.As(err, &parse):
		return t.options.errorAt(parse.Line, because(ErrSyntax, "%v", parse.Err))
	}
	return t.options.errorAt(max(t.line, 1), err)
}
