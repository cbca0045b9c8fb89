package follow

import (
	"fmt"
	"io"
)

// Text prints the card in at most 80 columns. Its error is the writer's.
func (c *Card) Text(w io.Writer) error {
	var t page
	t.line("%s", clip(fmt.Sprintf("%s: card", courseName(c.Plan)), pageWidth))
	t.line("Trust the course's markers over your watch.")
	t.line("")
	t.schedules(c)
	t.rules(c)
	t.notes(c.Warnings)
	t.cautions(c.Plan)
	_, err := io.WriteString(w, t.String())
	return err
}

// schedules prints them side by side.
func (t *page) schedules(c *Card) {
	cut := len(c.Plan.Cutoffs) > 0
	t.line("GUN TIMES ON ARRIVAL, planned stops included")
	head := []string{"place", "km"}
	for _, s := range c.Schedules {
		head = append(head, s.Name)
	}
	if cut {
		head = append(head, "latest", "closes")
	}
	rows := [][]string{head}
	for i, at := range c.Places {
		row := []string{plain(at.Name), fmt.Sprintf("%.1f", at.Distance/1000)}
		for _, s := range c.Schedules {
			row = append(row, hms(s.Times[i]))
		}
		if cut {
			row = append(row, hmsOrNone(at.Latest > 0, hms(at.Latest)), hmsOrNone(at.Closes > 0, hms(at.Closes)))
		}
		rows = append(rows, row)
	}
	budget := []string{"of the budget", ""}
	for _, s := range c.Schedules {
		budget = append(budget, percent(s.Budget))
	}
	if cut {
		budget = append(budget, "", "")
	}
	t.table(append(rows, budget))
	if cut {
		t.wrap("", "latest: arrive by then, and the plan's effort still makes every cutoff to come, with nothing in hand. closes: the cutoff.")
	}
	t.line("")
}

func hmsOrNone(ok bool, text string) string {
	if ok {
		return text
	}
	return ""
}

// rules prints what to do when late.
func (t *page) rules(c *Card) {
	if len(c.Rules) == 0 {
		return
	}
	t.line("IF YOU ARE LATE, take the minutes for lost: the effort stays as planned.")
	place := -1.0
	for _, r := range c.Rules {
		if r.Distance != place {
			place = r.Distance
			t.line("%s", clip(fmt.Sprintf("%s (%.1f km)", nameOr(r.Place, "Place"), r.Distance/1000), pageWidth))
		}
		t.wrap(pad("  "+hm(r.Late)+" late", 13), r.Words)
	}
	t.line("")
}

func nameOr(name, other string) string {
	if name = plain(name); name == "" {
		return other
	}
	return name
}
