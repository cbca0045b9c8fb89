package chart_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"isoeffort.example/plan/chart"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The golden files were looked at, as PNG, on 2026-11-25. When one changes, look again.
func TestGolden(t *testing.T) {
	t.Parallel()
	for name, draw := range map[string]func() (*chart.Figure, error){
		"profile-city": func() (*chart.Figure, error) { return chart.Profile(planFor(t, city(t), runners[3]), chart.Options{}) },
		"profile-climb": func() (*chart.Figure, error) {
			return chart.Profile(planFor(t, bigClimb(t), runners[1]), chart.Options{})
		},
		"profile-rolling": func() (*chart.Figure, error) {
			return chart.Profile(planFor(t, rolling(t), runners[1]), chart.Options{})
		},
		"profile-mountain": func() (*chart.Figure, error) {
			return chart.Profile(planFor(t, mountain(t), runners[0]), chart.Options{})
		},
		"profile-laps": func() (*chart.Figure, error) {
			return chart.Profile(planFor(t, laps(t), runners[3]), chart.Options{Imperial: true})
		},
		"profile-short": func() (*chart.Figure, error) { return chart.Profile(planFor(t, short(t), runners[0]), chart.Options{}) },
		"against-rolling": func() (*chart.Figure, error) {
			p := planFor(t, rolling(t), runners[1])
			return chart.Against(p, actual(p), chart.Options{})
		},
		"fan-climb": func() (*chart.Figure, error) {
			p := planFor(t, bigClimb(t), runners[2])
			return chart.Fan(forecast(p), p, chart.Options{})
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f, err := draw()
			if err != nil {
				t.Fatal(err)
			}
			var b bytes.Buffer
			if err := f.SVG(&b); err != nil {
				t.Fatal(err)
			}
			file := filepath.Join("testdata", name+".svg")
			if *update {
				if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			was, is := strings.Split(string(want), "\n"), strings.Split(b.String(), "\n")
			for i := range max(len(was), len(is)) {
				if i >= len(was) || i >= len(is) || was[i] != is[i] {
					t.Fatalf("line %d of %d differs, %d are had: look at it, then -update\n%.500s\n%.500s",
						i+1, len(was), len(is), strings.Join(was[min(i, len(was)):], "\n"), strings.Join(is[min(i, len(is)):], "\n"))
				}
			}
		})
	}
}
