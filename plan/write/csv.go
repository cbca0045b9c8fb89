package write

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan"
)

// csvHeader names the columns of CSV.
var csvHeader = []string{
	"place", "distance_m", "length_m", "ascent_m", "descent_m",
	"split_s", "stop_s", "moving_s", "elapsed_s", "clock",
	"pace_s_per_km", "level_pace_s_per_km", "gait", "walking_share",
}

// CSV prints the splits of a plan as comma-separated values with a header line. A column
// that ends in _m is in metres, in _s in seconds; moving_s and elapsed_s are running
// totals, elapsed_s counting from the gun; stop_s are planned stops since the split
// before; clock is RFC 3339, empty without a start time. Delay, split_s and stop_s add
// up to the last elapsed_s.
//
// CSV panics where plan.Splits does; its error is the writer's.
func CSV(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	out := csv.NewWriter(w)
	if err := out.Write(csvHeader); err != nil {
		return err
	}
	for _, s := range p.Splits(every) {
		name, clock := "", ""
		if s.Landmark != nil {
			name = cell(s.Landmark.Name)
		}
		if !s.Clock.IsZero() {
			clock = s.Clock.Round(time.Second).Format(time.RFC3339)
		}
		row := []string{
			name, decimal(s.Distance, 1), decimal(s.Length, 1), decimal(s.Ascent, 1), decimal(s.Descent, 1),
			decimal(s.Took.Seconds(), 3), decimal(s.Stop.Seconds(), 3), decimal(s.Moving.Seconds(), 3), decimal(s.Elapsed.Seconds(), 3), clock,
			decimal(s.Pace.Seconds(), 1), decimal(s.LevelPace.Seconds(), 1), s.Gait.String(), decimal(s.WalkingShare, 4),
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// cell is a text without control characters, and set off by an apostrophe where a
// spreadsheet would take it for a formula.
func cell(s string) string {
	s = page.Plain(s)
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}

// decimal writes a number with so many places.
func decimal(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
