package chart_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"isoeffort.example/plan/chart"
)

var look = flag.String("look", "", "a folder for a PNG of every figure, for someone to look at")

// TestLook draws all figures of six courses and four runners, and crowded ones:
//
//	go test ./plan/chart -run TestLook -look DIR
func TestLook(t *testing.T) {
	t.Parallel()
	if *look == "" {
		t.Skip("no -look")
	}
	kinds := []string{"profile", "against", "fan", "alone"}
	for _, s := range append(scenes(t), crowded(t, 40)) {
		for _, r := range runners {
			for i, f := range figures(t, planFor(t, s, r), chart.Options{}) {
				save(t, f, fmt.Sprintf("%s-%s-%s.png", kinds[i], s.name, r.name))
			}
		}
	}
}

func save(t *testing.T, f *chart.Figure, name string) {
	t.Helper()
	w, err := os.Create(filepath.Join(*look, name))
	if err != nil {
		t.Fatal(err)
	}
	if err := f.PNG(w, 170); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
}
