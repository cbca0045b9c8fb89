package follow

import (
	"fmt"
	"io"
	"strings"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// Text prints the card in at most 80 columns. Its error is the writer's.
func (c *Card) Text(w io.Writer) error {
	var t sheet
	t.Line("%s", page.Clip(fmt.Sprintf("%s: if you are late", courseName(c.Plan)), page.Width))
	t.Line("Trust the course's markers over your watch.")
	t.Line("")
	if c.beyond {
		t.Wrap("", strings.Join(c.Warnings, " "))
		t.Line("")
		t.Wrap("", fmt.Sprintf("So there are no times here. The best that this runner can plan for is a finish at about %s: make that plan, or an easier one.", about(c.Plan, c.Plan.Best.Gun)))
		t.Line("")
	} else {
		t.notes(c.Warnings)
		t.schedules(c)
		t.List("IF YOU ARE LATE, take the minutes for lost: the effort stays as planned.", c.Lines())
		t.Line("")
	}
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
	t.places(rows)
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
