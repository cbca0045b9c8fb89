package forecast

import (
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/internal/say"
)

// at finds a quantile.
func (f *Forecast) at(q float64) (int, bool) {
	for i, v := range f.Quantiles {
		if math.Abs(v-q) < 1e-9 {
			return i, true
		}
	}
	return 0, false
}

// share is a share of days in words.
func share(s float64) string {
	if math.Abs(s-0.9) < 1e-9 {
		return "Nine in ten"
	}
	return fmt.Sprintf("%.0f %% of", 100*s)
}

// hm is a time in hours and minutes, to the nearest.
func hm(d time.Duration) string {
	if d >= 10_000*time.Hour {
		return "never"
	}
	return say.HM(d)
}

// lastLimit is the time of the last cutoff that is at a place or beyond it.
func (f *Forecast) lastLimit(distance float64) (last time.Duration, ok bool) {
	for _, c := range f.Cutoffs {
		if c.Distance >= distance {
			last, ok = max(last, c.Limit), true
		}
	}
	return last, ok
}

// tooLate reports whether a time at a place is beyond the last cutoff there or further on:
// on such a day nobody is let run so long.
func (f *Forecast) tooLate(at Place, d time.Duration) bool {
	last, ok := f.lastLimit(at.Distance)
	return ok && d > last
}

// cellTime is a time in the table.
func (f *Forecast) cellTime(at Place, d time.Duration) string {
	if f.tooLate(at, d) {
		return "slower"
	}
	return hm(d)
}

// sourceNames are plain words for the numbers that draws differ in.
var sourceNames = map[string]string{
	"the day": "the day itself", "pacing tilt": "pacing", "endurance exponent": "endurance over the hours",
}

func sourceName(name string) string { return either(sourceNames[name], name) }

// exact is a time that is a rule: never rounded up, its seconds shown where it has any.
func exact(d time.Duration) string {
	if d = d.Truncate(time.Second); d%time.Minute == 0 {
		return say.HM(d)
	}
	return say.HMS(d)
}

// short is percent for a table.
func short(p float64) string {
	s := percent(p)
	s = strings.Replace(s, "less than ", "< ", 1)
	s = strings.Replace(s, "more than ", "> ", 1)
	return strings.Replace(s, "just under ", "< ", 1)
}

func either(a, b string) string {
	if a == "" {
		return b
	}
	return a
}
