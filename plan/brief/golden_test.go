package brief_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

var (
	update = flag.Bool("update", false, "write the golden files anew")
	all    = flag.String("all", "", "write the texts of all courses and runners into this folder")
)

// kept are the texts that are golden: course and runner.
var kept = map[string]bool{
	"flat-1": true, "flat-3": true, "big-2": true, "rolling-0": true, "rolling-2": true, "mountain-2": true, "mountain-3": true,
	"laps-1": true, "laps-3": true, "ten-0": true,
}

// The texts of testdata are what is printed; -update writes them anew. They are for
// reading: whoever changes one reads it aloud as a coach would.
func TestGolden(t *testing.T) {
	t.Parallel()
	for _, e := range examples(t) {
		for i, r := range e.races {
			name := e.name + "-" + string(rune('0'+i))
			if !kept[name] && *all == "" {
				continue
			}
			p, err := plan.Even(e.course, athlete(runners[i]), r)
			if err != nil {
				t.Fatal(name, err)
			}
			b, err := brief.Make(p, brief.Options{Imperial: i == 1, Marks: e.marks})
			if err != nil {
				t.Fatal(name, err)
			}
			var text bytes.Buffer
			if err := brief.Text(&text, b); err != nil {
				t.Fatal(err)
			}
			if *all != "" {
				write(t, filepath.Join(*all, name+".txt"), text.Bytes())
			}
			if kept[name] {
				golden(t, filepath.Join("testdata", name+".txt"), text.Bytes())
			}
		}
	}
}

func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		write(t, file, got)
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from what is printed (go test -update takes it over):\n%s", file, got)
	}
}

func write(t *testing.T, file string, text []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
}
