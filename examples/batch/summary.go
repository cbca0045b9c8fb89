package main

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// summaryColumns are those of summary.csv. Times are H:MM:SS; in_hand is that at the
// tightest cutoff, and at its name; budget is a share.
var summaryColumns = []string{"row", "name", "finish", "best", "budget", "in_hand", "at", "file", "error"}

// A row is one of the summary.
type row struct {
	number int // of the runners file's line
	name   string
	plan   *plan.Plan // nil where there is a fault
	file   string
	fault  error
}

func rowOf(o field.Outcome) row {
	return row{number: o.Line, name: o.Runner.Name, plan: o.Plan, fault: o.Err}
}

// fields are those of summary.csv.
func (r row) fields() []string {
	out := make([]string, len(summaryColumns))
	out[0], out[1], out[7] = strconv.Itoa(r.number), unformula(r.name), r.file
	if r.fault != nil {
		out[8] = unformula(r.fault.Error())
	}
	if r.plan != nil {
		out[2], out[3], out[4] = clock(r.plan.Gun), clock(r.plan.Best.Gun), fmt.Sprintf("%.3f", r.plan.Budget)
		if m := tightest(r.plan); m != nil {
			out[5], out[6] = clock(m.InHand), unformula(m.Name)
		}
	}
	return out
}

// unformula keeps a spreadsheet program from computing a text that somebody else wrote:
// a leading sign gets an apostrophe before it.
func unformula(s string) string {
	if strings.IndexAny(s, "=+-@\t") == 0 {
		return "'" + s
	}
	return s
}

// line is that of the printed summary.
func (r row) line() string {
	name := pad(oneLine(r.name), 20)
	if r.plan == nil {
		return strings.TrimRight(fmt.Sprintf("%5d  %s  no plan", r.number, name), " ")
	}
	hand, at := "", ""
	if m := tightest(r.plan); m != nil {
		hand, at = clock(m.InHand), oneLine(m.Name)
	}
	if r.fault != nil {
		at += "  not written"
	}
	return strings.TrimRight(fmt.Sprintf("%5d  %s  %9s  %9s  %6s  %8s  %s", r.number, name,
		clock(r.plan.Gun), clock(r.plan.Best.Gun), percent(r.plan.Budget), hand, at), " ")
}

// pad brings a text to a width in characters.
func pad(s string, width int) string {
	n := utf8.RuneCountInString(s)
	if n > width {
		return string([]rune(s)[:width-1]) + "…"
	}
	return s + strings.Repeat(" ", width-n)
}
