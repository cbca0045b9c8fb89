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
// further ones ignored, a byte order mark and either end of line allowed. Every error
// is an *Error. The course has no name.
func ReadCSV(r io.Reader, o Options) (*course.Course, error) {
	o = o.named(r)
	from := &source{r: r, limit: o.MaxBytes}
	t := &table{rows: csv.NewReader(from.text()), from: from, options: o}
	t.rows.ReuseRecord = true
	if err := t.readHeader(); err != nil {
		return nil, err
	}
	p := &profile{}
	for {
		row, err := t.rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, t.refuse(err)
		}
		if err := t.addRow(p, row); err != nil {
			return nil, err
		}
	}
	if len(p.distance) < 2 {
		return nil, o.errorAt(0, course.ErrTooFewPoints)
	}
	if err := p.fill(); err != nil {
		return nil, o.errorAt(0, err)
	}
	return p.course(o, "", nil)
}

// A table is a CSV file that is being read.
type table struct {
	rows                *csv.Reader
	from                *source
	options             Options
	distance, elevation int // columns
}

func (t *table) readHeader() error {
	header, err := t.rows.Read()
	switch {
	case errors.Is(err, io.EOF) && t.from.err == nil:
		return t.options.errorAt(0, ErrEmpty)
	case err != nil:
		return t.refuse(err)
	}
	line, _ := t.rows.FieldPos(0)
	at := map[string][]int{}
	for i, name := range header {
		name = strings.TrimSpace(name)
		at[name] = append(at[name], i)
	}
	if len(at[distanceColumn]) != 1 || len(at[elevationColumn]) != 1 {
		return t.options.errorAt(line, because(ErrColumns, "it reads %s", quoted(strings.Join(header, ","))))
	}
	t.distance, t.elevation = at[distanceColumn][0], at[elevationColumn][0]
	return nil
}

func (t *table) addRow(p *profile, row []string) error {
	line, _ := t.rows.FieldPos(0)
	if len(p.distance) == t.options.MaxPoints {
		return t.options.errorAt(line, because(ErrTooLarge, "more than %d points", t.options.MaxPoints))
	}
	distance, err := number("distance", strings.TrimSpace(row[t.distance]))
	if err != nil {
		return t.options.errorAt(line, err)
	}
	if n := len(p.distance); n > 0 && distance < p.distance[n-1] {
		return t.options.errorAt(line, because(course.ErrDistanceBack, "from %g to %g m", p.distance[n-1], distance))
	}
	elevation := math.NaN()
	if text := strings.TrimSpace(row[t.elevation]); text != "" {
		if err := checkElevation(text); err != nil {
			return t.options.errorAt(line, err)
		}
		elevation, _ = number("elevation", text)
	}
	p.add(distance, elevation, line)
	return nil
}

// refuse gives an error of the csv package its place.
func (t *table) refuse(err error) error {
	var parse *csv.ParseError
	switch {
	case t.from.err != nil:
		return t.options.errorAt(0, t.from.err)
	case errors.As(err, &parse) && errors.Is(err, csv.ErrFieldCount):
		return t.options.errorAt(parse.StartLine, ErrFields)
	case errors.As(err, &parse):
		return t.options.errorAt(parse.Line, because(ErrSyntax, "%v", parse.Err))
	}
	return t.options.errorAt(0, err)
}
