package forecast

import (
	"fmt"
	"io"
	"math"
	"strings"

	"isoeffort.example/internal/page"
)

// Text writes a forecast for a coach, at most 80 columns wide. Times are gun times, and
// rounded up to minutes; goals and cutoffs are exact.
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
	last := len(f.Quantiles) - 1
	if middle, ok := f.at(0.5); ok {
		t.say("The middle of the forecast is a finish at %s.", hm(finish.Times[middle]))
	}
	if last > 0 {
		t.say("%s such days end between %s and %s.", share(f.Quantiles[last]-f.Quantiles[0]), hm(finish.Times[0]), hm(finish.Times[last]))
	}
	if g := f.Goal; g != nil {
		kind := "gun"
		if g.Net {
			kind = "net"
		}
		t.say("The goal of %s (%s time) has a forecast probability of %s, give or take %.0f by the number of draws.",
			exact(g.Time), kind, percent(g.Chance.P), math.Ceil(100*g.Chance.SE))
		if w := Warning(g.Chance.P, 1); w != "" {
			t.say("%s", w)
		}
	}
	if len(f.Cutoffs) > 0 {
		t.say("Fast enough for every cutoff: %s.", percent(f.Finishes.P))
	}
	t.say("The second half takes %.0f %% longer than the first, on the mean.", 100*f.Slowing.Mean)
}

func (t *sheet) sources() {
	if len(t.f.Sources) == 0 {
		return
	}
	var parts []string
	for _, s := range t.f.Sources {
		if s.Share >= 0.005 {
			parts = append(parts, fmt.Sprintf("%s %.0f %%", s.Name, 100*s.Share))
		}
	}
	if t.f.Unexplained >= 0.005 {
		parts = append(parts, fmt.Sprintf("together in other ways %.0f %%", 100*t.f.Unexplained))
	}
	t.Line("")
	t.say("The spread of this forecast comes from: %s.", strings.Join(parts, ", "))
}

func (t *sheet) foot() {
	t.Line("")
	for _, w := range t.f.Warnings {
		t.say("Warning: %s.", strings.TrimSuffix(w, "."))
	}
	t.say("Illness, falls, weather that turns and giving up are not in this forecast. A cutoff is no " +
		"reason to run over one's effort: local rules, the race's medical team and doctors come first.")
}
