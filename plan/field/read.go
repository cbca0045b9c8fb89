package field

import (
	"bytes"
	"fmt"
	"io"
	"slices"

	"isoeffort.example/internal/csvtext"
)

// Both limits are far above any field and far below what would exhaust a machine.
const (
	maxSize = 64 << 20 // bytes

	// MaxRunners is how many rows a runners file may have.
	MaxRunners = 1_000_000
)

// ReadOptions of Read. The zero value is ready.
type ReadOptions struct {
	// File names the file in errors and warnings. It is not opened. Empty leaves them with
	// the line alone.
	File string
}

// A File is the runners of one runners file.
type File struct {
	Entries  []Entry  // one for each row, in order, refused ones among them
	Warnings []string // what is doubtful about the file, to be shown beside any plan
}

// Refused returns the errors of the entries that were refused, in order.
func (f File) Refused() (errs []error) {
	for _, e := range f.Entries {
		if e.Err != nil {
			errs = append(errs, e.Err)
		}
	}
	return errs
}

// Read reads a runners file; the package comment says what that is. A row that cannot be
// right becomes an Entry with an *Error, and the rest goes on. A row is refused for
//
//   - ErrSyntax: another number of fields than the header, or a quote out of place,
//   - ErrText: bytes that are not UTF-8, or a control character,
//   - ErrName: no name, or one of more than 200 bytes,
//   - ErrNumber, ErrTime: a field that is not a number or a time, or out of range,
//   - ErrAim: two of goal, net_goal and share,
//   - effort.ErrAthlete: a number that the model cannot mean,
//   - ErrDuplicate: the name of a row before that was not refused.
//
// Whatever else of a runner's race makes no sense on its course, Each refuses.
//
// The error is an *Error about the whole file, and no entries are returned with it:
// ErrHeader, ErrNoRunners without a row below the header, ErrTooLarge above 64 MiB or
// MaxRunners, ErrText in UTF-16, or the reader's own.
func Read(r io.Reader, o ReadOptions) (File, error) {
	text, err := readText(r)
	if err != nil {
		return File{}, &Error{File: o.File, Err: err}
	}
	t := table{text: text, file: o.File, comma: csvtext.Delimiter(text)}
	if err := t.readHeader(); err != nil {
		return File{}, t.fault(err)
	}
	f := File{Warnings: t.warnings, Entries: make([]Entry, 0, min(bytes.Count(text, []byte{'\n'}), mostRoom))}
	seen := names{}
	for t.next() {
		if len(f.Entries) == MaxRunners {
			return File{}, t.fault(fmt.Errorf("%w: more than %d runners", ErrTooLarge, MaxRunners))
		}
		e := Entry{Line: t.line}
		runner, err := t.runner()
		if err == nil {
			if before, twice := seen.take(runner.Name, len(f.Entries)); twice {
				err = fmt.Errorf("%w: %s is that of line %d", ErrDuplicate, csvtext.Quote(runner.Name), f.Entries[before].Line)
			}
		}
		if e.Runner = runner; err != nil {
			e.Err = t.fault(err)
		}
		f.Entries = append(f.Entries, e)
	}
	if len(f.Entries) == 0 {
		return File{}, t.fault(fmt.Errorf("%w: nothing stands below the header", ErrNoRunners))
	}
	return f, nil
}

// mostRoom is for how many rows Read makes room at once; a file may be all line ends.
const mostRoom = 1 << 17

// readText returns the whole of a file without its byte order mark.
func readText(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxSize+1))
	switch {
	case err != nil:
		return nil, err
	case len(text) > maxSize:
		return nil, ErrTooLarge
	case bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")):
		return nil, fmt.Errorf("%w: it is UTF-16; save it as CSV in UTF-8", ErrText)
	}
	return bytes.TrimPrefix(text, []byte("\ufeff")), nil
}

// table steps through the rows of a file.
type table struct {
	text     []byte // what is left of it
	file     string
	comma    byte
	layout   layout
	warnings []string

	row  []string // without the space around its fields
	line int      // where it stands
	err  error    // that it could not be split into fields
}

// fault places a cause on the current row.
func (t *table) fault(cause error) *Error {
	return &Error{File: t.file, Line: t.line, Err: cause}
}

// next steps to the next row that has anything in it, and reports whether there is one.
func (t *table) next() bool {
	for len(t.text) > 0 {
		line, rest, _ := bytes.Cut(t.text, []byte{'\n'})
		t.text, t.line = rest, t.line+1
		if line = bytes.TrimSuffix(line, []byte{'\r'}); len(line) > 0 && line[0] == '#' {
			continue
		}
		t.row, t.err = split(t.row[:0], string(line), t.comma)
		if t.err != nil || slices.ContainsFunc(t.row, func(field string) bool { return field != "" }) {
			return true
		}
	}
	return false
}
