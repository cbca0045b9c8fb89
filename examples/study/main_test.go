package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort/record"
)

// files writes a small invented field with splits and a profile, and returns their names.
func files(t *testing.T) (results, splits, profiles string) {
	t.Helper()
	folder := t.TempDir()
	list, _ := invented.Field{Runners: 40, Courses: 12, Results: 300, SplitCourses: 2}.Make(rand.New(rand.NewPCG(1, 1)))
	var text bytes.Buffer
	if err := record.Write(&text, list); err != nil {
		t.Fatal(err)
	}
	rows := [][]string{{"runner", "race", "distance_m", "ascent_m", "descent_m", "elapsed_s"}}
	race, length := "", 0.0
	for _, r := range list {
		for _, v := range r.Splits {
			rows = append(rows, []string{r.Runner, r.Race, decimal(v.Distance, 0), decimal(v.Ascent, 0), decimal(v.Descent, 0), decimal(v.Elapsed, 0)})
			race, length = r.Race, r.Distance
		}
	}
	heights := [][]string{{"race", "distance_m", "elevation_m"}}
	for i := range 41 {
		heights = append(heights, []string{race, decimal(length*float64(i)/40, 1), decimal(1000+float64(i%4)*150, 0)})
	}
	results, splits, profiles = filepath.Join(folder, "results.csv"), filepath.Join(folder, "splits.csv"), filepath.Join(folder, "profiles.csv")
	if err := os.WriteFile(results, text.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	for file, rows := range map[string][][]string{splits: rows, profiles: heights} {
		if err := writeCSV(file, rows); err != nil {
			t.Fatal(err)
		}
	}
	return results, splits, profiles
}

func table(t *testing.T, file string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = r[i]
		}
		list = append(list, m)
	}
	return list
}

// Every file is written, a row for each result held back, and any count of workers writes
// the same bytes.
func TestStudy(t *testing.T) {
	t.Parallel()
	results, splits, profiles := files(t)
	var folders []string
	for _, workers := range []string{"1", "3"} {
		folder := t.TempDir()
		folders = append(folders, folder)
		var errs bytes.Buffer
		args := []string{"-splits", splits, "-profiles", profiles, "-out", folder, "-same-day", "-workers", workers, "-groups", "1", results}
		if status := run(context.Background(), args, io.Discard, &errs); status != 0 {
			t.Fatalf("status %d: %s", status, errs.String())
		}
	}
	for _, name := range []string{"athletes.csv", "courses.csv", "population.json", "predictions.csv", "split_predictions.csv", "report.html"} {
		one, err := os.ReadFile(filepath.Join(folders[0], name))
		if err != nil {
			t.Error(err)
			continue
		}
		other, err := os.ReadFile(filepath.Join(folders[1], name))
		if err != nil || !bytes.Equal(one, other) {
			t.Errorf("%s differs by the count of workers", name)
		}
	}
	checkPredictions(t, table(t, filepath.Join(folders[0], "predictions.csv")))
	page, err := os.ReadFile(filepath.Join(folders[0], "report.html"))
	if err != nil || strings.Count(string(page), "<svg") != 4 || !strings.Contains(string(page), "SHA256") {
		t.Errorf("report: %d figures, %v", strings.Count(string(page), "<svg"), err)
	}
	if n := len(table(t, filepath.Join(folders[0], "split_predictions.csv"))); n == 0 {
		t.Error("no splits foretold")
	}
}

func checkPredictions(t *testing.T, rows []map[string]string) {
	t.Helper()
	if len(rows) != 40 {
		t.Errorf("%d rows for 40 runners", len(rows))
	}
	for _, r := range rows {
		for _, of := range []string{"", "own_", "without_course_", "with_course_", "same_day_"} {
			var low, median, top float64
			for name, v := range map[string]*float64{"p5_s": &low, "median_s": &median, "p95_s": &top} {
				if _, err := fmt.Sscan(r[of+name], v); err != nil {
					t.Fatalf("%s%s of %s: %v", of, name, r["runner"], err)
				}
			}
			if !(0 < low && low < median && median < top) {
				t.Errorf("%s of %s: %g, %g, %g", of, r["runner"], low, median, top)
			}
		}
	}
}

// Faults are told in one line, with the file and the line where there is one.
func TestFaults(t *testing.T) {
	t.Parallel()
	bad := filepath.Join(t.TempDir(), "bad.csv")
	if err := os.WriteFile(bad, []byte("runner,distance_m,time,date\na,10000,1:00:00,2020-01-01\nb,-5,1:00:00,2020-01-01\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{bad}, "bad.csv:3: "},
		{[]string{"nowhere.csv"}, "nowhere.csv"},
		{[]string{"-splits", "s.csv"}, "without a results file"},
		{[]string{"a.csv", "b.csv"}, "one results file"},
		{[]string{"-rounds", "-1", bad}, ""},
	} {
		var errs bytes.Buffer
		args := append([]string{"-out", t.TempDir()}, c.args...)
		if status := run(context.Background(), args, io.Discard, &errs); status != 2 || !strings.Contains(errs.String(), c.want) || strings.Count(errs.String(), "\n") != 1 {
			t.Errorf("%q: status %d, %q", c.args, status, errs.String())
		}
	}
}

func TestInterrupted(t *testing.T) {
	t.Parallel()
	results, _, _ := files(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if status := run(ctx, []string{"-out", t.TempDir(), results}, io.Discard, io.Discard); status != 1 {
		t.Errorf("status %d", status)
	}
}
