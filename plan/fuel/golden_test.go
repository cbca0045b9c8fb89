package fuel_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

var update = flag.Bool("update", false, "write the golden files anew")

// sheets are four races as they are printed, with what must and must not be said in each.
func sheets(t *testing.T) map[string]*fuel.Table {
	t.Helper()
	saturday := func(hour int) time.Time { return time.Date(2026, 7, 4, hour, 0, 0, 0, time.UTC) }
	air := &fuel.Air{Temperature: 14}
	post := func(name string, x float64) course.Landmark {
		return course.Landmark{Name: name, Distance: x, Kind: course.Station}
	}
	return map[string]*fuel.Table{
		"short": table(t, planned(t, 10_000, effort.Usual(15), plan.Race{Goal: 52 * time.Minute}), fuel.Options{Air: air}),
		"fast": table(t, planned(t, 42_195, effort.Usual(18), plan.Race{Goal: 2*time.Hour + 34*time.Minute, Start: saturday(9)},
			post("Tide Gate", 15_000), post("Far Quay", 28_000)), fuel.Options{Rehearsed: 90, Mass: 65, Air: air}),
		"day": table(t, planned(t, 145_000, effort.Usual(10), plan.Race{Goal: 22 * time.Hour, Start: saturday(6)},
			post("Anvil Barn", 40_000), post("Low Door", 80_000)), fuel.Options{Rehearsed: 40, Mass: 70, Air: air}),
		"dry": table(t, planned(t, 42_000, effort.Usual(10), plan.Race{Goal: 5*time.Hour + 39*time.Minute}),
			fuel.Options{Mass: 70, MaxFluid: 1000, Air: &fuel.Air{Temperature: 28}}),
	}
}

func printed(t *testing.T, of *fuel.Table) string {
	t.Helper()
	var b bytes.Buffer
	if err := of.WriteText(&b, fuel.Metric); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The golden files were read on 2026-11-25. When one changes, read it again.
func TestGolden(t *testing.T) {
	t.Parallel()
	for name, of := range sheets(t) {
		got, file := printed(t, of), filepath.Join("testdata", name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s: read it, then -update\ngot\n%s\nwant\n%s", name, got, want)
		}
	}
}

func TestSheetsSay(t *testing.T) {
	t.Parallel()
	of := sheets(t)
	for name, say := range map[string]struct{ with, without []string }{
		"short": {[]string{"Drink: nothing needed. A mouthful if you are thirsty.", "no food", "fever"}, []string{" ml", "When to eat", "kJ"}},
		// 30 g at 0:20, 0:40 … 2:00 are 180 g, over 2:34 70 g an hour.
		"fast": {[]string{"180 g in all, about 70 g an hour", "11:34", "  30 g\n"}, []string{"60 g\n", "Saturday"}},
		"day":  {[]string{"Planned finish: Sunday 04:00", "About one portion (20 g) every half hour", "04:00 +1"}, []string{"0:30   "}},
		"dry":  {[]string{"Long way without a station: you cannot carry all you may want.", "where there is water"}, []string{"to 1000 ml"}},
	} {
		text := strings.Join(strings.Fields(printed(t, of[name])), " ")
		raw := printed(t, of[name])
		for _, s := range say.with {
			if !strings.Contains(raw, s) && !strings.Contains(text, s) {
				t.Errorf("%s without %q:\n%s", name, s, raw)
			}
		}
		for _, s := range say.without {
			if strings.Contains(raw, s) {
				t.Errorf("%s with %q:\n%s", name, s, raw)
			}
		}
	}
}
