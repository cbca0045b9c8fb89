package field

import (
	"fmt"

	"isoeffort.example/internal/csvtext"
)

// column is one of the columns of a runners file.
type column int

const (
	colName column = iota
	colHourPower
	colEndurance
	colFade
	colFadeShape
	colBraking
	colEconomy
	colFastestWalk
	colResults
	colGoal
	colNetGoal
	colShare
	colStartDelay
	colWave
	colNote
	numColumns
)

var columnNames = [numColumns]string{
	"name", "hour_power", "endurance", "fade", "fade_shape", "braking", "economy", "fastest_walk", "results",
	"goal", "net_goal", "share", "start_delay", "wave", "note",
}

// layout says where the columns stand in the rows of one file.
type layout struct {
	at    [numColumns]int // from 1; 0 where the file has no such column
	width int
}

// readHeader finds the columns and warns of those that are not used.
func (t *table) readHeader() error {
	if !t.next() {
		t.line = 1
		return fmt.Errorf("%w: the file is empty", ErrNoRunners)
	}
	if t.err != nil {
		return t.err
	}
	at, unused, err := csvtext.Columns(columnNames[:], t.row)
	if err != nil {
		return fmt.Errorf("%w: %w", ErrHeader, err)
	}
	t.layout = layout{at: [numColumns]int(at), width: len(t.row)}
	for _, text := range unused {
		t.warn(text)
	}
	switch {
	case at[colName] == 0:
		return fmt.Errorf("%w: column name is missing", ErrHeader)
	case at[colHourPower] == 0 && at[colResults] == 0:
		return fmt.Errorf("%w: columns hour_power and results are both missing", ErrHeader)
	}
	return nil
}

// warn notes a warning about the whole file in the form that errors have.
func (t *table) warn(text string) {
	place := ""
	if t.file != "" {
		place = t.file + ": "
	}
	t.warnings = append(t.warnings, place+text)
}

// cell returns a field of the current row, "" for a column that the file lacks.
func (t *table) cell(c column) string {
	if t.layout.at[c] == 0 {
		return ""
	}
	return t.row[t.layout.at[c]-1]
}
