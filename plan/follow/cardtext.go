package follow

import (
	"fmt"
	"io"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// Text prints the card in at most 80 columns. Its error is the writer's.
func (c *Card) Text(w io.Writer) error {
	var t sheet
	t.Line("%s", page.Clip(fmt.Sprintf("%s: card", courseName(c.Plan)), page.Width))
	t.Line("Trust the course's markers over your watch.")
	t.Line("")
	t.schedules(c)
	t.rules(c)
	t.notes(c.Warnings)
	t.cautions(c.Plan)
	return t.Print(w)
}

// schedules prints them side by side.
func (t *sheet) schedules(c *Card) {
	cut := len(c.Plan.Cutoffs) > 0
	t.Line("GUN TIMES ON ARRIVAL, planned stops included")
	head := []string{"place", "km"}
	for _, s := range c.Schedules {
		head = append(head, s.Name)
	}
	if cut {
		head = append(head, "latest", "closes")
	}
	rows := [][]string{head}
	for i, at := range c.Places {
		row := []string{page.Plain(at.Name), fmt.Sprintf("%.1f", at.Distance/1000)}
		for _, s := range c.Schedules {
			row = append(row, say.HMS(s.Times[i]))
		}
		if cut {
			row = append(row, hmsOrNone(at.Latest > 0, say.HMS(at.Latest)), hmsOrNone(at.Closes > 0, say.HMS(at.Closes)))
		}
		rows = append(rows, row)
	}
	budget := []string{"of the budget", ""}
	for _, s := range c.Schedules {
		budget = append(budget, say.Percent(s.Budget))
	}
	if cut {
		budget = append(budget, "", "")
	}
	t.places(append(rows, budget))
	if cut {
		t.Wrap("", "latest: arrive by then, and the plan's effort still makes every cutoff to come, with nothing in hand. closes: the cutoff.")
	}
	t.Line("")
}

func hmsOrNone(ok bool, text string) string {
	if ok {
		return text
	}
	return ""
}

// rules prints what to do when late.
func (t *sheet) rules(c *Card) {
	if len(c.Rules) == 0 {
		return
	}
	t.Line("IF YOU ARE LATE, take the minutes for lost: the effort stays as planned.")
	place := -1.0
	for _, r := range c.Rules {
		if r.Distance != place {
			place = r.Distance
			t.Line("%s", page.Clip(fmt.Sprintf("%s (%.1f km)", nameOr(r.Place, "Place"), r.Distance/1000), page.Width))
		}
		t.Wrap(page.Pad("  "+say.HM(r.Late)+" late", 13), r.Words)
	}
	t.Line("")
}

func nameOr(name, other string) string {
	if name = page.Plain(name); name == "" {
		return other
	}
	return name
}
