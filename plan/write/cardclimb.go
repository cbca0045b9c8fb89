package write

import (
	"fmt"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// cardClimbs are the climbs for the back, the hardest ones where there are many.
func (t *sheet) cardClimbs(room int) []string {
	room = max(room, fewClimbs)
	least := 0.0
	for len(t.climbsFrom(least)) > room {
		least += 0.25
	}
	var lines []string
	for _, c := range t.lapped(t.climbsFrom(least)) {
		if len(c.again) > 0 {
			lines = append(lines, t.lapLine(c))
			continue
		}
		name := page.Plain(c.Name)
		if name == "" {
			name = "climb"
		}
		lines = append(lines, fmt.Sprintf("%.1f-%.1f %s: %s, %.0f %s up, rated %.0f. %s", c.Climb.Climb.Start/t.units.Distance, c.Climb.Climb.Top/t.units.Distance,
			t.units.Long, page.Clip(name, 24), c.Rise/t.units.Height, t.units.Short, c.Rating.Value, say.Sentence(c.Describe(t.units.Distance, t.units.Long))))
	}
	return lines
}

// lapClimb is a climb and the same one of later laps.
type lapClimb struct {
	plan.Climb
	again []plan.Climb
}

// lapped joins climbs of one name and height: those of laps.
func (t *sheet) lapped(climbs []plan.Climb) (out []lapClimb) {
	at := map[string]int{}
	for _, c := range climbs {
		key := fmt.Sprintf("%s %.0f", c.Name, c.Rise)
		if i, known := at[key]; known && c.Name != "" {
			out[i].again = append(out[i].again, c)
			continue
		}
		at[key] = len(out)
		out = append(out, lapClimb{Climb: c})
	}
	return out
}

// lapLine tells of a climb that comes again.
func (t *sheet) lapLine(c lapClimb) string {
	last := c.again[len(c.again)-1]
	what := say.Sentence(c.Describe(t.units.Distance, t.units.Long))
	if then := last.Describe(t.units.Distance, t.units.Long); c.Gait == plan.Mixed || last.Gait == plan.Mixed {
		what = "Walk where it is steepest."
	} else if last.Gait != c.Gait {
		what += " The last time: " + then + "."
	}
	return fmt.Sprintf("%s, %d times from %.1f %s on: %.0f %s up, rated %.0f to %.0f. %s", page.Clip(page.Plain(c.Name), 24), len(c.again)+1,
		c.Climb.Climb.Start/t.units.Distance, t.units.Long, c.Rise/t.units.Height, t.units.Short, c.Rating.Value, last.Rating.Value, what)
}

// climbsFrom are the climbs rated so hard or harder.
func (t *sheet) climbsFrom(least float64) (out []plan.Climb) {
	for _, c := range t.plan.Climbs {
		if c.Rating.Value >= least {
			out = append(out, c)
		}
	}
	return out
}
