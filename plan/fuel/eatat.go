package fuel

import (
	"fmt"
	"math"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// eatAt says when to eat: time by time, or as a rule where the list would be long.
func (t *Table) eatAt(p *page.Page, u Units) {
	if len(t.Intakes) == 0 {
		return
	}
	p.Line("")
	if t.Duration > longList {
		p.Line("When to eat")
		p.Wrap("  ", t.rule())
		return
	}
	heading, rows := "When to eat (time since the gun)", [][]string{}
	if !t.Start.IsZero() {
		heading = "When to eat (time since the gun, clock)"
	}
	for _, i := range t.Intakes {
		row := []string{"", say.HM(i.Time), u.distance(i.Distance), fmt.Sprintf("%.0f g", i.Grams)}
		if clock := t.clock(i.Time); clock != "" {
			row = []string{"", row[1], clock, row[2], row[3]}
		}
		rows = append(rows, row)
	}
	p.Line("%s", heading)
	p.Table(rows, page.Table{Gap: 2})
}

// rule is the list in one sentence: a portion each time, as often as comes to what is
// eaten in all.
func (t *Table) rule() string {
	first, last := t.Intakes[0].Time, t.Finish
	times := t.Total.Eat / t.Portion
	text := fmt.Sprintf("About one portion (%.0f"+hard+"g) %s, the first at %s after the gun.",
		t.Portion, every((last-first).Minutes()/times), say.HM(first))
	if t.Total.Short > 0 {
		text += " Where food is left out above, make it last."
	}
	return text
}

// every says how often, to 5 minutes and from an hour on to 15.
func every(minutes float64) string {
	step := 5.0
	if minutes > 57.5 {
		step = 15
	}
	minutes = step * max(1, math.Round(minutes/step))
	switch {
	case minutes == 30:
		return "every half hour"
	case minutes == 60:
		return "every hour"
	}
	return fmt.Sprintf("every %.0f minutes", minutes)
}
