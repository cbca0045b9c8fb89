package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
	"isoeffort.example/plan/write"
)

// batch is one run of the program.
type batch struct {
	*options
	stdout, stderr io.Writer

	best map[int]time.Duration // by entry, as printed
}

// Exit statuses.
const (
	allDone  = 0
	someDone = 1
	nothing  = 2
)

// run reads what is given, plans it, and returns the exit status.
func (b *batch) run(ctx context.Context) (int, error) {
	c, err := b.readCourse()
	if err != nil {
		return nothing, err
	}
	file, err := b.readRunners(ctx)
	if err != nil {
		return nothing, err
	}
	for _, w := range append(file.Warnings, c.Warnings()...) {
		b.say(w)
	}
	out, err := b.openOut()
	if err != nil {
		return nothing, err
	}
	status, err := b.plans(ctx, c, file.Entries, out)
	some := err == nil && status != nothing
	if some && len(b.race.Cutoffs) > 0 {
		err = b.passages(ctx, c, file.Entries, out)
	}
	if some && err == nil && len(b.groups) > 0 {
		err = b.paceGroups(ctx, c, file.Entries, out)
	}
	if closed := out.close(); err == nil {
		err = closed
	}
	if err != nil {
		status = someDone
	}
	return status, err
}

// plans plans every runner, and prints and writes what becomes of each.
func (b *batch) plans(ctx context.Context, c *course.Course, entries []field.Entry, out *folder) (status int, err error) {
	o := field.Options{Workers: b.workers, Quick: b.quick, File: b.runnersName(), Progress: b.progress()}
	fmt.Fprintf(b.stdout, "%s, %.1f km: %d runners\n\n", oneLine(title(c)), c.Length()/1000, len(entries))
	fmt.Fprintf(b.stdout, "%5s  %-20s  %9s  %9s  %6s  %8s  %s\n", "row", "name", "finish", "best", "budget", "in hand", "at")
	failed := 0
	b.best = map[int]time.Duration{}
	for outcome, err := range field.Each(ctx, c, b.race, entries, o) {
		if err != nil {
			return someDone, errors.Join(err, out.flush())
		}
		row := rowOf(outcome)
		if outcome.Plan != nil {
			b.best[outcome.Index] = outcome.Plan.Best.Gun
		}
		if outcome.Plan != nil && out != nil {
			row.file, err = out.plan(outcome.Runner.Name, page(outcome))
			row.fault = err
		}
		if row.fault != nil {
			failed++
			b.say(row.fault.Error())
		}
		fmt.Fprintln(b.stdout, row.line())
		if err := out.row(row); err != nil {
			return someDone, err
		}
	}
	fmt.Fprintf(b.stdout, "\n%d planned, %d refused\n", len(entries)-failed, failed)
	switch failed {
	case 0:
		return allDone, nil
	case len(entries):
		return nothing, nil
	}
	return someDone, nil
}

// progress reports each twentieth of the way.
func (b *batch) progress() func(done, total int) {
	return func(done, total int) {
		if step := max(total/20, 1); total >= 20 && (done%step == 0 || done == total) {
			b.say(fmt.Sprintf("%d of %d", done, total))
		}
	}
}

// title is the course's name, or a word for it.
func title(c *course.Course) string {
	if c.Name() == "" {
		return "Course"
	}
	return c.Name()
}

// page is a runner's plan as text.
func page(o field.Outcome) []byte {
	var text bytes.Buffer
	fmt.Fprintf(&text, "%s\n\n", oneLine(o.Runner.Name))
	_ = write.Text(&text, o.Plan, spacing(o.Plan.Course)) // a buffer does not fail
	return text.Bytes()
}

// spacing is where splits are taken: at landmarks where the course has any on the way,
// else every 5 km.
func spacing(c *course.Course) plan.Spacing {
	if len(c.Sections()) == 1 {
		return 5 * plan.EveryKilometre
	}
	return plan.AtLandmarks
}

// tightest is the cutoff with the least time in hand, nil without cutoffs.
func tightest(p *plan.Plan) (least *plan.Margin) {
	for i := range p.Cutoffs {
		if m := &p.Cutoffs[i]; least == nil || m.InHand < least.InHand {
			least = m
		}
	}
	return least
}

// percent writes a share.
func percent(share float64) string {
	if share > 10 {
		return "> 1000 %"
	}
	return fmt.Sprintf("%.0f %%", math.Ceil(100*share-1e-6))
}
