package record

import (
	"encoding/csv"
	"io"
	"slices"
)

// Write writes a results file that Read reads back as equal results: times to the
// nanosecond, dates as the same instant, texts without the space around them and with
// LF for CRLF and CR in them. The column dnf is there if it is needed. Line, Stopped, Splits and Ground are not written; a result that has its
// distance from its Ground alone gets the ground's length, ascent and descent.
//
// It writes nothing unless every result passes Check, and returns what Check said
// otherwise. No results give the header alone, which Read refuses.
func Write(w io.Writer, results []Result) error {
	for _, r := range results {
		if err := r.Check(); err != nil {
			return err
		}
	}
	out, columns := csv.NewWriter(w), int(colDNF)
	if slices.ContainsFunc(results, func(r Result) bool { return r.DNF }) {
		columns++
	}
	if err := out.Write(columnNames[:columns]); err != nil {
		return err
	}
	for _, r := range results {
		if err := out.Write(r.row()[:columns]); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// row returns the fields of a result in the order of columnNames.
func (r Result) row() []string {
	if r.GPX == "" {
		r.Distance, r.Ascent, r.Descent = r.extent()
	}
	distance := ""
	if r.Distance != 0 {
		distance = formatNumber(r.Distance)
	}
	return []string{
		colDate:     formatDate(r.Date),
		colRunner:   onlyLF(r.Runner),
		colRace:     onlyLF(r.Race),
		colCourse:   onlyLF(r.Course),
		colDistance: distance,
		colAscent:   formatNumber(r.Ascent),
		colDescent:  formatNumber(r.Descent),
		colTime:     clock(r.Time),
		colRole:     r.Role.String(),
		colGPX:      onlyLF(r.GPX),
		colNote:     onlyLF(r.Note),
		colDNF:      formatDNF(r.DNF),
	}
}
