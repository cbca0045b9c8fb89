package record

import (
	"fmt"
	"strings"

	"isoeffort.example/internal/csvtext"
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
	at, unused, err := csvtext.Columns(f.names, row)
	if err != nil {
		return l, nil, fmt.Errorf("%w: %w", ErrHeader, err)
	}
	l = layout{form: f, at: at, width: len(row)}
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
