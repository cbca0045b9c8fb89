package write

import (
	"fmt"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// columns of the table of splits; the place is the one that takes what room is left.
const (
	placeColumn = 1
	gaitColumn  = 4
	numColumns  = 10

	widestPlace = 24
)

// splits prints the table. The time of each part is the difference of the rounded gun
// times, less the planned stops in it, so that delay, parts and stops add up to the
// finish as printed.
func (t *sheet) splits(every plan.Spacing) {
	u, p := t.units, t.plan
	t.Line("SPLITS (up, down: %s; part: moving time; level: its pace on the level, /%s)", u.Short, u.Long)
	head := []string{u.Long, "place", "up", "down", "gait", "part", "pace", "level", "gun time", "clock"}
	if p.Race.Start.IsZero() {
		head[numColumns-1] = ""
	}
	rows := [][]string{head}
	left := p.Race.StartDelay.Round(time.Second)
	if left > 0 {
		rows = append(rows, []string{0: "0.0", placeColumn: "Start line", 8: say.HMS(p.Race.StartDelay), numColumns - 1: t.clock(p.Race.StartDelay)})
	}
	for _, s := range p.Splits(every) {
		arrived := s.Elapsed.Round(time.Second)
		part := arrived - left - s.Stop.Round(time.Second)
		left = arrived
		rows = append(rows, []string{
			fmt.Sprintf("%.1f", s.Distance/u.Distance), t.place(s),
			fmt.Sprintf("%.0f", s.Ascent/u.Height), fmt.Sprintf("%.0f", s.Descent/u.Height), s.Gait.String(),
			say.HMS(part), say.MS(u.Pace(s.Pace)), t.levelPace(s), say.HMS(s.Elapsed), t.clock(s.Elapsed),
		})
	}
	t.Table(rows, page.Table{Gap: 1, Place: placeColumn, Left: []int{gaitColumn}, Most: widestPlace})
	t.Line("")
}

// levelPace is what a runner would run on the level; a walk has none.
func (t *sheet) levelPace(s plan.Split) string {
	if s.WalkingShare > 0.5 {
		return "-"
	}
	return say.MS(t.units.Pace(s.LevelPace))
}

// place is the landmark of a split, or the last one passed on the way to it.
func (t *sheet) place(s plan.Split) string {
	if s.Landmark != nil {
		return page.Plain(s.Landmark.Name)
	}
	name := ""
	for _, l := range t.plan.Course.Landmarks() {
		if l.Distance > s.Distance-s.Length && l.Distance <= s.Distance {
			name = "past " + page.Plain(l.Name)
		}
	}
	return name
}
