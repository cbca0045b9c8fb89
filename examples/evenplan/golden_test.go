package main

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The files of testdata are what the program prints; -update writes them anew.
func TestGolden(t *testing.T) {
	for name, args := range map[string][]string{
		"default.txt": nil,
		"5km.json":    {"-format", "json", "-every", "5km"},
	} {
		got := planned(t, "nowhere", args...).out
		file := filepath.Join("testdata", name)
		if *update {
			if err := os.MkdirAll("testdata", 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if line, is, was := firstDifference(got, string(want)); line > 0 {
			t.Errorf("%s:%d: printed is\n%s\nnot\n%s\n(go test -update takes it over)", file, line, is, was)
		}
	}
}

// firstDifference is the first line in which two texts differ, 0 if they do not.
func firstDifference(a, b string) (line int, of, from string) {
	if a == b {
		return 0, "", ""
	}
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(as), len(bs)) {
		if as[i] != bs[i] {
			return i + 1, as[i], bs[i]
		}
	}
	return min(len(as), len(bs)) + 1, "", ""
}
