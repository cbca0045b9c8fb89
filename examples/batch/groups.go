package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
	"isoeffort.example/plan/write"
)

// paceGroups prints who fits which pace group, and writes groups.csv and a plan for each
// leader.
func (b *batch) paceGroups(ctx context.Context, c *course.Course, entries []field.Entry, out *folder) error {
	o := field.GroupOptions{Targets: b.groups, Every: spacing(c), Options: field.Options{Workers: b.workers, File: b.runnersName()}}
	g, err := field.Groups(ctx, c, b.race, entries, o)
	if err != nil {
		return err
	}
	rows := [][]string{{"group", "row", "name", "best", "budget"}}
	fmt.Fprintf(b.stdout, "\nPace groups, with each one's best and what of their budget the schedule takes. A group\nstarts together; the best counts from each one's own start.\n\n")
	for _, group := range g.Groups {
		fmt.Fprintf(b.stdout, "%s%s\n", clock(group.Target), map[bool]string{true: "  nobody"}[len(group.Members) == 0])
		for _, m := range group.Members {
			fmt.Fprintf(b.stdout, "%5d  %s  %9s  %6s\n", m.Line, pad(oneLine(m.Runner.Name), 20), clock(b.best[m.Index]), percent(m.Budget))
			rows = append(rows, []string{clock(group.Target), strconv.Itoa(m.Line), unformula(m.Runner.Name), clock(b.best[m.Index]), fmt.Sprintf("%.3f", m.Budget)})
		}
		if err := out.leader(group, spacing(c)); err != nil {
			return err
		}
	}
	slowest := g.Groups[len(g.Groups)-1].Target
	for _, other := range g.Others {
		if other.Err == nil {
			why := "too slow for " + clock(slowest)
			if b.best[other.Index] <= slowest {
				why = "no group's schedule suits"
			}
			fmt.Fprintf(b.stdout, "%s: %s, best %s\n", why, oneLine(other.Runner.Name), clock(b.best[other.Index]))
			rows = append(rows, []string{"", strconv.Itoa(other.Line), unformula(other.Runner.Name), clock(b.best[other.Index]), ""})
		}
	}
	return out.table("groups.csv", rows)
}

// leader writes the plan of a group's leader, if anybody is to be led.
func (f *folder) leader(g field.Group, every plan.Spacing) error {
	if f == nil || g.Plan == nil || len(g.Members) == 0 {
		return nil
	}
	var text bytes.Buffer
	fmt.Fprintf(&text, "Pace group %s: %s\n\n", clock(g.Target), say.Count(len(g.Members), "runner", "runners"))
	_ = write.Text(&text, g.Plan, every) // a buffer does not fail
	_, err := f.plan("pace group "+strings.ReplaceAll(clock(g.Target), ":", " "), text.Bytes())
	return err
}

// passages prints and writes until when each place may be passed, for every kind of runner
// in the field.
func (b *batch) passages(ctx context.Context, c *course.Course, entries []field.Entry, out *folder) error {
	list, err := field.LatestPassages(ctx, c, b.race, kinds(entries), field.PassageOptions{})
	if errors.Is(err, field.ErrPassage) {
		b.say(err.Error())
		return nil
	}
	if err != nil {
		return err
	}
	rows := [][]string{{"place", "distance_km", "latest", "cutoff", "for"}}
	fmt.Fprintf(b.stdout, "\nLatest passages from which even effort still makes the cutoffs. Officials and the\nmedical team decide who goes on: nobody is to chase a time.\n\n")
	for _, p := range list {
		limit := ""
		if p.Limit > 0 {
			limit = clock(p.Limit)
		}
		fmt.Fprintf(b.stdout, "%5.1f  %s  %9s  %9s  for %s\n", p.Distance/1000, pad(oneLine(p.Name), 20), clock(p.Latest), limit, oneLine(p.For.Name))
		rows = append(rows, []string{unformula(p.Name), fmt.Sprintf("%.2f", p.Distance/1000), clock(p.Latest), limit, unformula(p.For.Name)})
	}
	return out.table("passages.csv", rows)
}

// kinds are different runners of the field who fade or brake most: a slow one of each is
// the first to be late.
func kinds(entries []field.Entry) (list []effort.Athlete) {
	for _, n := range []effort.Number{effort.Endurance, effort.Fade, effort.Braking} {
		var most *effort.Athlete
		for i := range entries {
			if a := &entries[i].Runner.Athlete; entries[i].Err == nil && (most == nil || a.Get(n) > most.Get(n)) {
				most = a
			}
		}
		if most != nil {
			list = append(list, *most)
		}
	}
	return list
}

// table writes a CSV file.
func (f *folder) table(name string, rows [][]string) error {
	if f == nil {
		return nil
	}
	var text bytes.Buffer
	if err := csv.NewWriter(&text).WriteAll(rows); err != nil {
		return err
	}
	return f.write(name, text.Bytes())
}
