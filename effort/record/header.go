package record

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// column is one of the columns of a results file, in the order in which Write puts them.
// The date comes first because no date looks like a comment or a blank line.
type column int

const (
	colDate column = iota
	colRunner
	colRace
	colCourse
	colDistance
	colAscent
	colDescent
	colTime
	colRole
	colGPX
	colNote
	colDNF
	numColumns
)

var columnNames = [numColumns]string{
	"date", "runner", "race", "course", "distance_m", "ascent_m", "descent_m", "time", "role", "gpx", "note", "dnf",
}

// required lists the columns that no results file may lack.
var required = []column{colDistance, colTime, colDate}

// form is the columns that a kind of file may have, and those that none may lack.
type form struct {
	names    []string
	required []column
}

var resultsForm = form{columnNames[:], required}

// layout says where the columns stand in the rows of one file.
type layout struct {
	form
	at    []int // of each column, from 1; 0 where the file has no such column
	width int
}

// cell returns a field without the space around it, and "" for a column the file lacks.
func (l *layout) cell(row []string, c column) string {
	if l.at[c] == 0 {
		return ""
	}
	return strings.TrimSpace(row[l.at[c]-1])
}

// readHeader finds the columns and says which fields of the header are none of them.
func (f form) readHeader(row []string) (l layout, unused []string, err error) {
	l = layout{form: f, at: make([]int, len(f.names)), width: len(row)}
	nameless := 0
	for i, field := range row {
		name := strings.ToLower(strings.TrimSpace(field))
		c := slices.Index(f.names, name)
		switch {
		case name == "":
			nameless++
		case c < 0:
			unused = append(unused, fmt.Sprintf("column %s is not used", quote(strings.TrimSpace(field))))
		case l.at[c] != 0:
			return l, nil, fmt.Errorf("%w: column %q stands twice", ErrHeader, name)
		default:
			l.at[c] = i + 1
		}
	}
	if nameless > 0 {
		unused = append(unused, fmt.Sprintf("columns without a name are not used: %d", nameless))
	}
	return l, unused, l.missing()
}

func (l *layout) missing() error {
	var names []string
	for _, c := range l.required {
		if l.at[c] == 0 {
			names = append(names, l.names[c])
		}
	}
	switch len(names) {
	case 0:
		return nil
	case 1:
		return fmt.Errorf("%w: column %s is missing", ErrHeader, names[0])
	}
	return fmt.Errorf("%w: columns %s are missing", ErrHeader, strings.Join(names, ", "))
}

// delimiter returns what separates the fields of a file: a semicolon where its header
// has more of those than of commas, quoted ones aside.
func delimiter(text []byte) rune {
	var header []byte
	for line := range bytes.Lines(text) {
		if header = bytes.TrimSpace(line); len(header) > 0 && line[0] != '#' {
			break
		}
	}
	quoted, excess := false, 0
	for _, b := range header {
		switch {
		case b == '"':
			quoted = !quoted
		case b == ';' && !quoted:
			excess++
		case b == ',' && !quoted:
			excess--
		}
	}
	if excess > 0 {
		return ';'
	}
	return ','
}
