package forecast

import (
	"fmt"
	"math"

	"isoeffort.example/internal/page"
)

// placeWidth is the width of the column of places.
const placeWidth = 24

// cell is the name of a place in it.
func cell(name string) string { return page.Pad(page.Clip(page.Plain(name), placeWidth), placeWidth) }

// places prints the table of times, five quantiles at most.
func (t *sheet) places() {
	f := t.f
	shown := t.shown()
	t.Line("")
	head := fmt.Sprintf("%s %7s", page.Pad("forecast times", placeWidth), "km")
	for _, i := range shown {
		head += fmt.Sprintf(" %6s", fmt.Sprintf("%.3g %%", 100*f.Quantiles[i]))
	}
	if len(f.Cutoffs) > 0 {
		head += " reaches"
	}
	t.Line("%s", head)
	for _, p := range f.Places {
		row := fmt.Sprintf("%s %7.1f", cell(p.Name), p.Distance/1000)
		for _, i := range shown {
			row += fmt.Sprintf(" %6s", f.cellTime(p, p.Times[i]))
		}
		if len(f.Cutoffs) > 0 {
			row += fmt.Sprintf(" %7s", short(p.Reached.P))
		}
		t.Line("%s", row)
	}
	t.say("In a column of 5 %%, one in twenty days is faster. Times count everybody, as if no cutoff stopped them.")
	if len(f.Cutoffs) > 0 {
		t.say("Reaches: how likely it is to get to the place inside every cutoff before it.")
		if t.anySlower(shown) {
			last, _ := f.lastLimit(0)
			t.say("Slower: than the last cutoff, %s.", exact(last))
		}
	}
}

// anySlower reports whether a time in the table is beyond the last cutoff.
func (t *sheet) anySlower(shown []int) bool {
	for _, p := range t.f.Places {
		for _, i := range shown {
			if t.f.tooLate(p, p.Times[i]) {
				return true
			}
		}
	}
	return false
}

// shown are the indices of at most five quantiles, the outer ones among them.
func (t *sheet) shown() (out []int) {
	n := len(t.f.Quantiles)
	most := min(n, 5)
	for i := range most {
		at := 0
		if most > 1 {
			at = int(math.Round(float64(i*(n-1)) / float64(most-1)))
		}
		out = append(out, at)
	}
	return out
}

func (t *sheet) cutoffs() {
	if len(t.f.Cutoffs) == 0 {
		return
	}
	t.Line("")
	t.Line("%s %7s %8s %10s %10s", page.Pad("forecast at cutoffs", placeWidth), "km", "limit", "made", "of those")
	for _, c := range t.f.Cutoffs {
		t.Line("%s %7.1f %8s %10s %10s", cell(either(c.Name, "cutoff")), c.Distance/1000, exact(c.Limit), short(c.Inside.P), short(c.Given.P))
	}
	t.say("Made: this cutoff and all before it. Of those: of the runners still in the race there.")
}
