package page

import (
	"slices"
	"strings"
)

// A Table says how rows are printed. Columns are as wide as their widest cell. The zero
// value sets them without a gap, all to the right but the first one, which is clipped to the
// room that the others leave.
type Table struct {
	Gap   int   // columns of space between two cells
	Left  []int // numbers from 0 of the columns that are set to the left, besides that of Place
	Place int   // number of the column that gives way when the page is too narrow, set to the left

	// Least and Most bound the width of Place in columns; a Most of 0 is no bound.
	Least, Most int
}

// narrowest is the width that Place keeps though the page is then too narrow.
const narrowest = 8

// Table prints rows of as many cells each.
func (p *Page) Table(rows [][]string, t Table) {
	if len(rows) == 0 {
		return
	}
	wide := t.widths(rows)
	for _, row := range rows {
		cells := make([]string, len(row))
		for c, text := range row {
			switch {
			case c == t.Place:
				cells[c] = Pad(Clip(text, wide[c]), wide[c])
			case slices.Contains(t.Left, c):
				cells[c] = Pad(text, wide[c])
			default:
				cells[c] = PadLeft(text, wide[c])
			}
		}
		p.Line("%s", strings.Join(cells, blank(t.Gap)))
	}
}

func (t Table) widths(rows [][]string) []int {
	wide := make([]int, len(rows[0]))
	room := Width
	for c := range wide {
		for _, row := range rows {
			wide[c] = max(wide[c], Columns(row[c]))
		}
		if c != t.Place {
			room -= wide[c] + t.Gap
		}
	}
	if t.Most > 0 {
		room = min(room, t.Most)
	}
	wide[t.Place] = max(t.Least, min(wide[t.Place], max(narrowest, room)))
	return wide
}
