package forecast

import (
	"fmt"
	"math"
)

// places prints the table of times, five quantiles at most.
func (t *page) places() {
	f := t.f
	shown := t.shown()
	fmt.Fprintf(t.w, "\n%-24s %7s", "forecast times", "km")
	for _, i := range shown {
		fmt.Fprintf(t.w, " %6s", fmt.Sprintf("%.3g %%", 100*f.Quantiles[i]))
	}
	if len(f.Cutoffs) > 0 {
		fmt.Fprintf(t.w, " %s", "in race")
	}
	fmt.Fprintln(t.w)
	for _, p := range f.Places {
		fmt.Fprintf(t.w, "%-24s %7.1f", cut(p.Name, 24), p.Distance/1000)
		for _, i := range shown {
			fmt.Fprintf(t.w, " %6s", hm(p.Times[i]))
		}
		if len(f.Cutoffs) > 0 {
			fmt.Fprintf(t.w, " %7s", short(p.Reached.P))
		}
		fmt.Fprintln(t.w)
	}
	t.say("In a column of 5 %%, one in twenty days is faster. Times count everybody, as if no cutoff stopped them.")
	if len(f.Cutoffs) > 0 {
		t.say("In race: the probability of getting there inside every cutoff before it.")
	}
}

// shown are the indices of at most five quantiles, the outer ones among them.
func (t *page) shown() (out []int) {
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

func (t *page) cutoffs() {
	if len(t.f.Cutoffs) == 0 {
		return
	}
	fmt.Fprintf(t.w, "\n%-24s %7s %8s %10s %10s\n", "forecast at cutoffs", "km", "limit", "made", "of those")
	for _, c := range t.f.Cutoffs {
		fmt.Fprintf(t.w, "%-24s %7.1f %8s %10s %10s\n", cut(either(c.Name, "cutoff"), 24), c.Distance/1000, exact(c.Limit), short(c.Inside.P), short(c.Given.P))
	}
	t.say("Made: this cutoff and all before it. Of those: of the runners still in the race there.")
}
