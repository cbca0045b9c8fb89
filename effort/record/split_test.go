package record_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort/record"
)

var may = time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)

const twoSplits = "runner,race,distance_m,ascent_m,descent_m,elapsed_s\n" +
	"Ann,Lamp 2025,10000,200,150,3600\nAnn,Lamp 2025,20000,,,2:05:00\nBen,Lamp 2025,10000,,,3300.5\n"

func TestReadSplits(t *testing.T) {
	t.Parallel()
	splits, warnings, err := record.ReadSplits(strings.NewReader(twoSplits), record.Options{File: "splits.csv"})
	if err != nil || len(warnings) > 0 || len(splits) != 2 {
		t.Fatalf("%v, %q, %v", splits, warnings, err)
	}
	ann := splits[record.RunnerRace{Runner: "Ann", Race: "Lamp 2025"}]
	if len(ann) != 2 || ann[0] != (record.Split{Distance: 10_000, Elapsed: 3600, Ascent: 200, Descent: 150, Line: 2}) {
		t.Errorf("%+v", ann)
	}
	if s := ann[1]; s.Elapsed != 7500 || !math.IsNaN(s.Ascent) || !math.IsNaN(s.Descent) || s.Line != 3 {
		t.Errorf("%+v", s)
	}
}

func TestAttachSplits(t *testing.T) {
	t.Parallel()
	splits, _, err := record.ReadSplits(strings.NewReader(twoSplits+
		"Ann,Lamp 2025,30000,,,3:10:00\nCid,Lamp 2025,10000,,,9000\nDan,Lamp 2025,10000,,,3600\nDan,Lamp 2025,9000,,,3700\n"), record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	run := func(runner string, line int) record.Result {
		return record.Result{Runner: runner, Race: "Lamp 2025", Date: may, Distance: 30_000, Ascent: 600, Descent: 600, Time: 3*time.Hour + 10*time.Minute, Line: line}
	}
	results := []record.Result{run("Ann", 2), run("Ben", 3), run("Dan", 4), run("Eve", 5)}
	warnings := record.AttachSplits(results, splits)
	for i, want := range []int{2, 1, 0, 0} { // Ann's third is her finish, Dan's go back
		if got := len(results[i].Splits); got != want {
			t.Errorf("%s has %d splits", results[i].Runner, got)
		}
		if err := results[i].Check(); err != nil {
			t.Error(err)
		}
	}
	if len(warnings) != 2 || !strings.HasPrefix(warnings[0], "line 4: splits are not used") || warnings[1] != "splits of 1 races belong to no result" {
		t.Errorf("%q", warnings)
	}
}

func TestBadSplitFiles(t *testing.T) {
	t.Parallel()
	const head = "runner,race,distance_m,ascent_m,descent_m,elapsed_s\nA,R,1000,,,300\n"
	for _, tt := range []struct {
		text, where string
		want        error
	}{
		{"", "s.csv:1: ", record.ErrNoResults},
		{"runner,race,elapsed_s\n", "s.csv:1: ", record.ErrHeader},
		{head + "A,R,far,,,600\n", "s.csv:3: ", record.ErrDistance},
		{head + "A,R,-1,,,600\n", "s.csv:3: ", record.ErrDistance},
		{head + "A,R,NaN,,,600\n", "s.csv:3: ", record.ErrDistance},
		{head + "A,R,2000,,,10:00\n", "s.csv:3: ", record.ErrTime},
		{head + "A,R,2000,,,0\n", "s.csv:3: ", record.ErrTime},
		{head + "A,R,2000,-5,,600\n", "s.csv:3: ", record.ErrAscent},
		{head + "A,R,2000,x,,600\n", "s.csv:3: ", record.ErrAscent},
		{head + "A,R,2000,600\n", "s.csv:3: ", record.ErrSyntax},
		{head + "A,R,\"2000,,,600\n", "s.csv:3: ", record.ErrSyntax},
		{head + "A\x00,R,2000,,,600\n", "s.csv:3: ", record.ErrText},
	} {
		_, _, err := record.ReadSplits(strings.NewReader(tt.text), record.Options{File: "s.csv"})
		if !errors.Is(err, tt.want) || !strings.HasPrefix(err.Error(), tt.where) {
			t.Errorf("%q: %v", tt.text, err)
		}
	}
	splits, _, err := record.ReadSplits(strings.NewReader(head+"A,R,x,,,1\nA,R,2000,,,600\nA,R,3000,,,y\n"), record.Options{Every: true})
	var all record.Errors
	if !errors.As(err, &all) || len(all) != 2 || len(splits[record.RunnerRace{Runner: "A", Race: "R"}]) != 2 {
		t.Errorf("every: %v, %v", splits, err)
	}
}

func TestSplitsInCheck(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, splits := range [][]record.Split{
		{{Distance: 5000, Elapsed: 1800}, {Distance: 4000, Elapsed: 2000}},
		{{Distance: 5000, Elapsed: 1800}, {Distance: 6000, Elapsed: 1700}},
		{{Distance: 10_000, Elapsed: 1800}},
		{{Distance: 5000, Elapsed: 3600}},
		{{Distance: nan, Elapsed: 1800}},
		{{Distance: 5000, Elapsed: nan}},
		{{Distance: 5000, Elapsed: 1800, Ascent: 500}},
		{{Distance: 2000, Elapsed: 800, Ascent: 80, Descent: nan}, {Distance: 3000, Elapsed: 900, Ascent: 70, Descent: nan}},
	} {
		r := record.Result{Date: may, Distance: 10_000, Ascent: 100, Descent: 100, Time: time.Hour, Splits: splits}
		if err := r.Check(); !errors.Is(err, record.ErrSplit) {
			t.Errorf("%+v: %v", splits, err)
		}
	}
}

func TestReadProfiles(t *testing.T) {
	t.Parallel()
	profiles, _, err := record.ReadProfiles(strings.NewReader("race,distance_m,elevation_m\nA,0,100\nB,0,5\nA,50,101.5\n"), record.Options{})
	if err != nil || len(profiles) != 2 || profiles["A"].Elevation[1] != 101.5 || profiles["B"].Distance[0] != 0 {
		t.Errorf("%v, %v", profiles, err)
	}
	for _, text := range []string{"race,distance_m,elevation_m\nA,0,100\nA,0,101\n", "race,distance_m,elevation_m\nA,x,100\n", "race,distance_m\nA,0\n"} {
		if _, _, err := record.ReadProfiles(strings.NewReader(text), record.Options{File: "p.csv"}); err == nil || !strings.HasPrefix(err.Error(), "p.csv:") {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A race not finished is written and read again.
func TestDNF(t *testing.T) {
	t.Parallel()
	read, err := record.Read(strings.NewReader("date,distance_m,time,dnf\n2026-05-01,42000,5:00:00,yes\n2026-05-02,42000,5:00:00,\n"), record.Options{})
	if err != nil || !read.Results[0].DNF || read.Results[1].DNF {
		t.Fatalf("%+v, %v", read, err)
	}
	var out strings.Builder
	if err := record.Write(&out, read.Results); err != nil {
		t.Fatal(err)
	}
	again, err := record.Read(strings.NewReader(out.String()), record.Options{})
	if err != nil || !again.Results[0].DNF || again.Results[1].DNF {
		t.Errorf("%+v, %v", again, err)
	}
	if _, err := record.Read(strings.NewReader("date,distance_m,time,dnf\n2026-05-01,42000,5:00:00,perhaps\n"), record.Options{}); err == nil {
		t.Error("perhaps is taken")
	}
}

func FuzzReadSplits(f *testing.F) {
	f.Add(twoSplits)
	f.Add("runner;race;distance_m;elapsed_s\nA;R;1000,5;300\n")
	f.Fuzz(func(t *testing.T, text string) {
		splits, _, err := record.ReadSplits(strings.NewReader(text), record.Options{Every: true})
		var all record.Errors
		if err != nil && !errors.As(err, &all) {
			return
		}
		for _, list := range splits {
			for _, s := range list {
				if !(s.Distance > 0 && s.Elapsed > 0) || s.Ascent < 0 || s.Descent < 0 || s.Line < 2 {
					t.Errorf("%+v", s)
				}
			}
		}
	})
}
