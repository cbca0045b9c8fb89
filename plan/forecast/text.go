package forecast

import (
	"fmt"
	"io"
	"math"
	"strings"

	"isoeffort.example/internal/page"
	"isoeffort.example/plan/caution"
)

// Text writes a forecast for a coach, at most 80 columns wide. Times are gun times, and
// rounded to minutes; goals and cutoffs are exact. A time beyond the last cutoff at
// its place or further on is not printed: it is "slower".
func Text(w io.Writer, f *Forecast) error {
	t := sheet{f: f}
	t.head()
	t.places()
	t.cutoffs()
	t.sources()
	t.foot()
	return t.Print(w)
}

// sheet is the page that a forecast is printed on.
type sheet struct {
	page.Page
	f *Forecast
}

// say writes a paragraph. A number keeps its %.
func (t *sheet) say(format string, values ...any) {
	t.Wrap("", strings.ReplaceAll(fmt.Sprintf(format, values...), " %", page.HardSpace+"%"))
}

func (t *sheet) head() {
	f, finish := t.f, t.f.Finish()
	t.say("FORECAST, no plan: %s, %.1f km", either(f.Course, "course"), f.Length/1000)
	t.say("From %d draws. It says what is likely, not what to do: do not pace by it.", f.Draws)
	t.Line("")
	t.finishes(finish)
	if g := f.Goal; g != nil {
		kind := "gun"
		if g.Net {
			kind = "net"
		}
		if g.Chance.P < hardly {
			t.say("The goal of %s (%s time) is hardly ever met.", exact(g.Time), kind)
		} else {
			t.say("The goal of %s (%s time) has a forecast probability of %s, give or take %.0f by the number of draws.",
				exact(g.Time), kind, percent(g.Chance.P), math.Ceil(100*g.Chance.SE))
		}
		if w := Warning(g.Chance.P, 1); w != "" {
			t.say("%s", w)
		}
	}
	if len(f.Cutoffs) > 0 {
		t.say("Fast enough for every cutoff: %s.", percent(f.Finishes.P))
	}
	t.slowing()
}

// hardly is the probability below which something is hardly ever so.
const hardly = 0.01

// finishes says when the race ends on most days.
func (t *sheet) finishes(finish Place) {
	f, last := t.f, len(t.f.Quantiles)-1
	limit, _ := f.lastLimit(finish.Distance)
	if middle, ok := f.at(0.5); ok {
		if f.tooLate(finish, finish.Times[middle]) {
			t.say("The middle of the forecast is slower than the last cutoff, %s.", exact(limit))
		} else {
			t.say("The middle of the forecast is a finish at %s.", hm(finish.Times[middle]))
		}
	}
	if last <= 0 {
		return
	}
	days, first, end := share(f.Quantiles[last]-f.Quantiles[0]), finish.Times[0], finish.Times[last]
	switch {
	case f.tooLate(finish, first):
		t.say("Nearly all such days are slower than the last cutoff, %s.", exact(limit))
	case f.tooLate(finish, end):
		t.say("%s such days end between %s and too late for the last cutoff, %s.", days, hm(first), exact(limit))
	default:
		t.say("%s such days end between %s and %s.", days, hm(first), hm(end))
	}
}

// slowing compares the halves.
func (t *sheet) slowing() {
	switch slower := math.Round(100 * t.f.Slowing.Mean); {
	case slower > 0:
		t.say("The second half takes %.0f %% longer than the first, on the mean.", slower)
	case slower < 0:
		t.say("The second half takes %.0f %% less than the first, on the mean.", -slower)
	default:
		t.say("The second half takes about as long as the first, on the mean.")
	}
}

// leastSource is the share of the spread from which a source is named.
const leastSource = 0.02

func (t *sheet) sources() {
	if len(t.f.Sources) == 0 {
		return
	}
	var parts []string
	for _, s := range t.f.Sources {
		if s.Share >= leastSource {
			parts = append(parts, fmt.Sprintf("%s %.0f %%", sourceName(s.Name), 100*s.Share))
		}
	}
	if len(parts) == 0 {
		return
	}
	t.Line("")
	t.say("Why days differ, for the coach: %s.", strings.Join(parts, ", "))
}

func (t *sheet) foot() {
	t.Line("")
	for _, w := range t.f.Warnings {
		t.say("Warning: %s.", strings.TrimSuffix(w, "."))
	}
	t.say("Illness, falls, weather that turns and giving up are not in this forecast. A cutoff is no " +
		"reason to run over one's effort: local rules, the race's medical team and doctors come first.")
	t.Line("")
	texts := caution.English()
	var list []string
	for _, id := range cautions {
		list = append(list, texts[id])
	}
	t.List("CAUTIONS", list)
}

// cautions are those for any race: a forecast does not know the plan.
var cautions = [...]caution.ID{caution.Stop, caution.Illness, caution.Doctor, caution.Drink, caution.Painkillers, caution.Chase}
