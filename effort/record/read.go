package record

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"isoeffort.example/internal/csvtext"
)

// Options of Read. The zero value is ready.
type Options struct {
	// File names the file in errors and warnings. It is not opened. Empty leaves
	// them with the line alone.
	File string

	// Now is the time that no result may lie after without a warning. The zero time
	// asks for no such warning.
	Now time.Time

	// Every reads on after a row that is refused, to find every one. Read then returns
	// the results that it accepts together with an Errors of those that it does not.
	Every bool
}

// Results are the results of one file in the order of its rows, and what is doubtful
// about them, to be shown beside anything that is made of them.
type Results struct {
	Results  []Result
	Warnings []string
}

// Read reads a results file; the package comment says what that is. Each result that it
// returns passes Check and carries its line.
//
// It stops at the first fault and returns an *Error with no results, but see
// Options.Every. A row's fault is placed on the line where the row starts. A file
// without a row below the header is refused with ErrNoResults, one above 64 MiB with
// ErrTooLarge, one with a NUL or in another encoding than UTF-8 with ErrText; these and
// a bad header are *Error even under Options.Every.
//
// Within a text, LF, CRLF and CR all become LF.
func Read(r io.Reader, o Options) (Results, error) {
	text, line, err := readText(r)
	if err != nil {
		return Results{}, &Error{File: o.File, Line: line, Err: err}
	}
	t := newTable(text, o)
	if err := t.readHeader(resultsForm); err != nil {
		return Results{}, err
	}
	return t.readRows(min(bytes.Count(text, []byte{'\n'}), mostRoom))
}

// readRows reads what stands below the header, having made room for that many rows.
func (t *table) readRows(room int) (Results, error) {
	res := Results{Results: make([]Result, 0, room)}
	var faults Errors
	for t.next() {
		result, fault := t.result()
		switch {
		case fault == nil:
			res.Results = append(res.Results, result)
			t.doubt(result)
		case !t.options.Every:
			return Results{}, fault
		default:
			faults = append(faults, fault)
		}
	}
	res.Warnings = t.warnings
	switch {
	case len(faults) > 0:
		return res, faults
	case len(res.Results) == 0:
		return Results{}, t.fault(fmt.Errorf("%w: nothing stands below the header", ErrNoResults))
	}
	return res, nil
}

// mostRoom is for how many rows Read makes room at once; a file may be all line ends.
const mostRoom = 1 << 15

// table steps through the rows of a file.
type table struct {
	csv      *csv.Reader
	options  Options
	layout   layout
	warnings []string

	row  []string // valid until next
	line int      // on which row starts
	err  error    // that row could not be split into fields
}

func newTable(text []byte, o Options) *table {
	t := &table{csv: csv.NewReader(bytes.NewReader(text)), options: o}
	t.csv.Comma = rune(csvtext.Delimiter(text))
	t.csv.Comment = '#'
	t.csv.FieldsPerRecord = -1
	t.csv.TrimLeadingSpace = true
	t.csv.ReuseRecord = true
	return t
}

// fault places a cause on the current row.
func (t *table) fault(cause error) *Error {
	return &Error{File: t.options.File, Line: t.line, Err: cause}
}

// next steps to the next row that has anything in it, and reports whether there is one.
func (t *table) next() bool {
	for {
		row, err := t.csv.Read()
		var syntax *csv.ParseError
		switch {
		case err == nil && blank(row):
			continue
		case err == nil:
			t.row, t.err = row, nil
			t.line, _ = t.csv.FieldPos(0)
		case errors.As(err, &syntax):
			t.row, t.line = nil, syntax.StartLine
			t.err = fmt.Errorf("%w: %v", ErrSyntax, syntax.Err)
		default:
			return false // the text is in memory: this is its end
		}
		return true
	}
}

func blank(row []string) bool {
	for _, field := range row {
		if strings.TrimSpace(field) != "" {
			return false
		}
	}
	return true
}

func (t *table) readHeader(f form) error {
	if !t.next() {
		t.line = 1
		return t.fault(fmt.Errorf("%w: the file is empty", ErrNoResults))
	}
	if t.err != nil {
		return t.fault(t.err)
	}
	l, unused, err := f.readHeader(t.row)
	if err != nil {
		return t.fault(err)
	}
	t.layout = l
	for _, text := range unused {
		t.warn(0, text)
	}
	return nil
}

func (t *table) doubt(r Result) {
	for _, text := range r.doubts(t.options.Now) {
		t.warn(r.Line, text)
	}
}

// warn notes a warning in the form that errors have.
func (t *table) warn(line int, text string) {
	place := Error{File: t.options.File, Line: line, Err: errors.New(text)}
	t.warnings = append(t.warnings, place.Error())
}
