package forecast_test

import (
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

func text(t *testing.T, f *forecast.Forecast) string {
	t.Helper()
	var b strings.Builder
	if err := forecast.Text(&b, f); err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// A time that no cutoff allows is not printed; one beyond the last cutoff's place is.
func TestSlowerThanTheCutoff(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, hills)
	draws := drawer(t, effort.Usual(9), prior(), forecast.FieldTilt())
	end := func(distance float64, limit time.Duration) string {
		r := plan.Race{Cutoffs: []plan.Cutoff{{Distance: distance, Time: limit}}}
		return text(t, of(t, c, draws, r, forecast.Options{Draws: 100}))
	}
	for _, c := range []struct {
		name, text string
		want, none []string
	}{
		{"never reached", end(30_000, time.Hour), []string{"The middle of the forecast is slower than the last cutoff, 1:00.", "Nearly all such days are slower than the last cutoff", "slower slower slower slower slower"}, []string{"a finish at"}},
		{"half way only", end(15_000, time.Hour), []string{"The middle of the forecast is a finish at"}, []string{"slower"}},
		{"ample", end(30_000, 40*time.Hour), []string{"such days end between", "reaches"}, []string{"slower", "in race", "Slower"}},
	} {
		for _, want := range c.want {
			if !strings.Contains(c.text, want) {
				t.Errorf("%s: no %q in %s", c.name, want, c.text)
			}
		}
		for _, none := range c.none {
			if strings.Contains(c.text, none) {
				t.Errorf("%s: %q in %s", c.name, none, c.text)
			}
		}
	}
}

// What is nothing is said in words, and the cautions stand below.
func TestPlainWords(t *testing.T) {
	t.Parallel()
	level := profile(t, 10_000, func(float64) float64 { return 0 })
	got := text(t, of(t, level, drawer(t, effort.Usual(12), prior(), forecast.Tilt{}), plan.Race{Goal: 20 * time.Minute}, forecast.Options{Draws: 100}))
	for _, want := range []string{"The goal of 0:20 (gun time) is hardly ever met.", "NOT ADVISED", "the day itself", "fever", "painkillers", "Drink to thirst"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	for _, none := range []string{" 0 %", "give or take", "together in other ways", "endurance exponent"} {
		if strings.Contains(got, none) {
			t.Errorf("%q in %s", none, got)
		}
	}
	steady := effort.Usual(12)
	steady.Fade = 0
	if got := text(t, of(t, level, forecast.Given([]forecast.Draw{{Athlete: steady}}), plan.Race{}, forecast.Options{Draws: 1})); !strings.Contains(got, "The second half takes about as long as the first") {
		t.Errorf("%s", got)
	}
}
