package treadmill

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"isoeffort.example/internal/locate"
)

// A FileError says why a file was refused, and where: "FILE:LINE: cause". It wraps one of
// the sentinels or, where reading itself failed, the reader's error.
type FileError = locate.Error

// columns of a file of points, in the order of row.fields; the first two must be there.
var columns = []string{"gradient", "cost_j_per_kg_m", "weight", "speed_m_per_s"}

// maxSize in bytes is far above any study.
const maxSize = 16 << 20

// ReadCSV reads points from CSV after RFC 4180, in UTF-8, one to a row. The first row
// names the columns, in any order and any case:
//
//	gradient         rise over run, not percent
//	cost_j_per_kg_m  net cost, J/(kg m)
//	weight           may be missing or empty: no weight; a 0 is refused
//	speed_m_per_s    may be missing or empty: not known; a 0 is refused
//
// Other columns are not used, and a warning names them. Blank lines and those that start
// with # are left out. Commas separate fields and points decimals. It stops at the first
// fault and returns a *FileError with the line it stands on; every point that it returns
// passes Check. file names the file in errors and warnings and is not opened.
func ReadCSV(r io.Reader, file string) (points []Point, warnings []string, err error) {
	text, err := io.ReadAll(io.LimitReader(r, maxSize+1))
	if err == nil && len(text) > maxSize {
		err = ErrTooLarge
	}
	if err != nil {
		return nil, nil, &FileError{File: file, Err: err}
	}
	t := newTable(text, file)
	if err := t.readHeader(); err != nil {
		return nil, nil, err
	}
	for t.next() {
		p, err := t.point()
		if err != nil {
			return nil, nil, t.fault(err)
		}
		points = append(points, p)
	}
	if len(points) == 0 {
		return nil, nil, t.fault(fmt.Errorf("%w: nothing stands below the header", ErrNoPoints))
	}
	return points, t.warnings, nil
}

// table steps through the rows of a file.
type table struct {
	csv      *csv.Reader
	file     string
	at       []int // of each of columns, −1 where the file lacks it
	width    int
	warnings []string

	row  []string
	line int   // on which row starts
	err  error // that row could not be split into fields
}

func newTable(text []byte, file string) *table {
	t := &table{csv: csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff")))), file: file, line: 1}
	t.csv.Comment = '#'
	t.csv.FieldsPerRecord = -1
	t.csv.TrimLeadingSpace = true
	return t
}

func (t *table) fault(cause error) error { return &FileError{File: t.file, Line: t.line, Err: cause} }

// next steps to the next row that has anything in it, and reports whether there is one.
func (t *table) next() bool {
	for {
		row, err := t.csv.Read()
		var syntax *csv.ParseError
		switch {
		case errors.As(err, &syntax):
			t.line, t.err = syntax.StartLine, fmt.Errorf("%w: %v", ErrSyntax, syntax.Err)
		case err != nil:
			return false // the text is in memory: this is its end
		case strings.TrimSpace(strings.Join(row, "")) == "":
			continue
		default:
			t.row, t.err = row, nil
			t.line, _ = t.csv.FieldPos(0)
		}
		return true
	}
}

// readHeader finds the columns.
func (t *table) readHeader() error {
	if !t.next() {
		return t.fault(fmt.Errorf("%w: the file is empty", ErrNoPoints))
	}
	if t.err != nil {
		return t.fault(t.err)
	}
	t.width, t.at = len(t.row), slices.Repeat([]int{-1}, len(columns))
	for i, field := range t.row {
		name := strings.ToLower(strings.TrimSpace(field))
		k := slices.Index(columns, name)
		switch {
		case k < 0:
			place := FileError{File: t.file, Line: t.line, Err: fmt.Errorf("column %.40q is not used", name)}
			t.warnings = append(t.warnings, place.Error())
		case t.at[k] >= 0:
			return t.fault(fmt.Errorf("%w: column %s stands twice", ErrHeader, name))
		default:
			t.at[k] = i
		}
	}
	for k, name := range columns[:2] {
		if t.at[k] < 0 {
			return t.fault(fmt.Errorf("%w: column %s is missing; commas separate columns", ErrHeader, name))
		}
	}
	return nil
}

// point makes a point of the current row.
func (t *table) point() (p Point, err error) {
	if t.err != nil {
		return p, t.err
	}
	if len(t.row) != t.width {
		return p, fmt.Errorf("%w: the header has %d fields, this row %d", ErrSyntax, t.width, len(t.row))
	}
	causes := []error{ErrGradient, ErrCost, ErrWeight, ErrSpeed}
	for k, value := range []*float64{&p.Gradient, &p.Cost, &p.Weight, &p.Speed} {
		if t.at[k] < 0 {
			continue
		}
		field := strings.TrimSpace(t.row[t.at[k]])
		if k >= 2 && field == "" {
			continue
		}
		if *value, err = parse(field); err == nil && k >= 2 && *value == 0 {
			err = errors.New("it is 0; leave the field empty or the row out")
		}
		if err != nil {
			return p, fmt.Errorf("%w: %w", causes[k], err)
		}
	}
	return p, p.Check()
}

// parse reads a decimal number.
func parse(field string) (float64, error) {
	x, err := strconv.ParseFloat(field, 64)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return 0, fmt.Errorf("%.40q is not a finite number", field)
	case err != nil || strings.ContainsAny(field, "xX_"):
		return 0, fmt.Errorf("%.40q is not a number", field)
	}
	return x, nil
}
