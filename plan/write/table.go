package write

import (
	"fmt"
	"strings"
	"time"

	"isoeffort.example/plan"
)

// row is one line of the table of splits, a cell a column.
type row [10]string

// head names the columns; place is the one that takes what room is left.
var head = row{"", "place", "up", "down", "gait", "part", "pace", "level", "gun time", "clock"}

const (
	placeColumn  = 1
	gaitColumn   = 4
	widestPlace  = 24
	narrowestRow = 8 // of the place
)

// splits prints the table. The time of each part is the difference of the rounded gun
// times, less the planned stops in it, so that delay, parts and stops add up to the
// finish as printed.
func (t *page) splits(every plan.Spacing) {
	u, p := t.units, t.plan
	t.line("SPLITS (part: moving time; level: the pace of that effort on the level, /%s)", u.long)
	first := head
	first[0] = u.long
	if p.Race.Start.IsZero() {
		first[len(first)-1] = ""
	}
	rows := []row{first}
	left := seconds(p.Race.StartDelay)
	if left > 0 {
		rows = append(rows, row{0: "0.0", 1: "Start line", 8: hms(p.Race.StartDelay), 9: t.clock(p.Race.StartDelay)})
	}
	for _, s := range p.Splits(every) {
		arrived := seconds(s.Elapsed)
		part := time.Duration(arrived-left-seconds(s.Stop)) * time.Second
		left = arrived
		rows = append(rows, row{
			fmt.Sprintf("%.1f", s.Distance/u.distance), t.place(s),
			fmt.Sprintf("%.0f", s.Ascent/u.height), fmt.Sprintf("%.0f", s.Descent/u.height), s.Gait.String(),
			hms(part), ms(u.pace(s.Pace)), ms(u.pace(s.LevelPace)), hms(s.Elapsed), t.clock(s.Elapsed),
		})
	}
	t.rows(rows)
	t.line("")
}

// rows prints cells in columns as wide as they need, numbers to the right.
func (t *page) rows(rows []row) {
	var wide [len(head)]int
	room := pageWidth
	for c := range wide {
		for _, r := range rows {
			wide[c] = max(wide[c], columns(r[c]))
		}
		if c != placeColumn {
			room -= wide[c] + 1
		}
	}
	wide[placeColumn] = min(wide[placeColumn], max(narrowestRow, min(room, widestPlace)))
	for _, r := range rows {
		var cells []string
		for c, text := range r {
			switch {
			case c == placeColumn:
				text = pad(clip(text, wide[c]), wide[c])
			case c == gaitColumn:
				text = pad(text, wide[c])
			default:
				text = strings.Repeat(" ", wide[c]-columns(text)) + text
			}
			cells = append(cells, text)
		}
		t.line("%s", strings.Join(cells, " "))
	}
}

// place is the landmark of a split, or the last one passed on the way to it.
func (t *page) place(s plan.Split) string {
	if s.Landmark != nil {
		return plain(s.Landmark.Name)
	}
	name := ""
	for _, l := range t.plan.Course.Landmarks() {
		if l.Distance > s.Distance-s.Length && l.Distance <= s.Distance {
			name = "past " + plain(l.Name)
		}
	}
	return name
}

// clock is the time of day so long after the gun, or nothing.
func (t *page) clock(elapsed time.Duration) string {
	start := t.plan.Race.Start
	if start.IsZero() {
		return ""
	}
	return start.Add(elapsed).Round(time.Second).Format("15:04")
}
