package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const header = "date,distance_m,ascent_m,time,runner,gpx,role\n"

// badResults are results files that nobody can be told from, and how the line starts
// that says so.
var badResults = []struct{ name, text, want string }{
	{"empty.csv", "", "empty.csv:1: no results"},
	{"header.csv", header, "header.csv:1: no results"},
	{"junk.csv", junk, "junk.csv:1: not UTF-8 text"},
	{"nul.csv", header + "2026-03-01,10000,0,0:47:00,A\x00,,\n", "nul.csv:2: not UTF-8 text"},
	{"course.csv", profile(5000, oneHill), "course.csv:1: bad header"},
	{"course.gpx", track(rolling(40)...), "course.gpx:"},
	{"twice.csv", strings.Replace(header, "role", "time", 1) + "2026-03-01,10000,0,0:47:00,A,,\n", "twice.csv:1: bad header"},
	{"no-time.csv", "date,distance_m\n2026-03-01,10000\n", "no-time.csv:1: bad header: column time is missing"},
	{"fields.csv", header + "2026-03-01,10000\n", "fields.csv:2: bad CSV"},
	{"quote.csv", header + "2026-03-01,\"10000,0,0:47:00,A,,\n", "quote.csv:2: bad CSV"},
	{"zero-time.csv", header + "2026-03-01,10000,0,0:00:00,A,,\n", "zero-time.csv:2: bad time"},
	{"negative-time.csv", header + "2026-03-01,10000,0,-0:47:00,A,,\n", "negative-time.csv:2: bad time"},
	{"short-time.csv", header + "2026-03-01,10000,0,47:00,A,,\n", "short-time.csv:2: bad time"},
	{"long-time.csv", header + "2026-03-01,10000,0," + strings.Repeat("9", 1_000_000) + ",A,,\n", "long-time.csv:2: bad time"},
	{"zero-distance.csv", header + "2026-03-01,0,0,0:47:00,A,,\n", "zero-distance.csv:2: bad distance"},
	{"negative-distance.csv", header + "2026-03-01,-10000,0,0:47:00,A,,\n", "negative-distance.csv:2: bad distance"},
	{"nan-distance.csv", header + "2026-03-01,NaN,0,0:47:00,A,,\n", "nan-distance.csv:2: bad distance"},
	{"inf-distance.csv", header + "2026-03-01,Inf,0,0:47:00,A,,\n", "inf-distance.csv:2: bad distance"},
	{"no-distance.csv", header + "2026-03-01,,0,0:47:00,A,,\n", "no-distance.csv:2: bad distance"},
	{"negative-ascent.csv", header + "2026-03-01,10000,-4,0:47:00,A,,\n", "negative-ascent.csv:2: bad ascent"},
	{"fast.csv", header + "2026-03-01,10000,0,0:20:00,A,,\n", "fast.csv:2: faster than any human"},
	{"date.csv", header + "1.3.2026,10000,0,0:47:00,A,,\n", "date.csv:2: bad date"},
	{"no-date.csv", header + ",10000,0,0:47:00,A,,\n", "no-date.csv:2: bad date"},
	{"year.csv", header + "9999-01-01,10000,0,0:47:00,A,,\n", "year.csv:2: bad date"},
	{"role.csv", header + "2026-03-01,10000,0,0:47:00,A,,perhaps\n", "role.csv:2: bad role"},
	{"predict.csv", header + "2026-03-01,10000,0,0:47:00,A,,predict\n", "predict.csv: no results to fit"},
	{"two.csv", header + "2026-03-01,10000,0,0:47:00,A\x1b[31m,,\n2026-03-02,10000,0,0:47:00,\"B\nC\",,\n", "two.csv:3: results of \"A\\x1b[31m\" and of \"B\\nC\": choose one with -runner"},
	{"no-ground.csv", header + "2026-03-01,,,0:47:00,A,nowhere.gpx,\n", "nowhere.gpx: no such file or directory"},
	{"bad-ground.csv", header + "2026-03-01,,,0:47:00,A,broken.gpx,\n", "broken.gpx:9: malformed file"},
	{"odd-ground.csv", header + "2026-03-01,,,0:47:00,A,\"a\nb\x1b[31m.gpx\",\n", "a b\ufffd[31m.gpx: no such file or directory"},
	{"own-ground.csv", header + "2026-03-01,,,0:47:00,A,own-ground.csv,\n", "own-ground.csv:1: first line must name distance_m"},
	{"text-ground.csv", header + "2026-03-01,,,0:47:00,A,ground.txt,\n", "ground.txt: file name ends neither in .gpx nor in .csv"},
	{"fast-ground.csv", header + "2026-03-01,,,0:10:00,A,ground.gpx,\n", "fast-ground.csv:2: faster than any human"},
}

func TestBadResults(t *testing.T) {
	t.Parallel()
	for _, bad := range badResults {
		t.Run(bad.name, func(t *testing.T) {
			t.Parallel()
			dir := folder(t, map[string]string{
				bad.name: bad.text, "broken.gpx": track(rolling(40)...)[:400], "ground.gpx": track(rolling(40)...),
			})
			checkRefused(t, evenplan(dir, "-results", "@/"+bad.name), bad.want)
		})
	}
}

func TestBadResultsFile(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{"past.csv": header + "2026-03-01,10000,0,0:47:00,A,,\n"})
	if err := os.Mkdir(filepath.Join(dir, "folder.csv"), 0o700); err != nil {
		t.Fatal(err)
	}
	checkRefused(t, evenplan(dir, "-results", "@/nowhere.csv"), "nowhere.csv: no such file or directory")
	checkRefused(t, evenplan(dir, "-results", "@/folder.csv"), "folder.csv: is a directory")
	checkRefused(t, evenplan(dir, "-results", "@/past.csv", "-runner", "B"), "past.csv: no results of a runner \"B\"")
	checkRefused(t, evenplan(dir, "-runner", "B\n\x1b"), "demo/results.csv: no results of a runner \"B\\n\\x1b\"")
}

// What is doubtful about a result but can be used is said on standard error.
func TestDoubtfulResults(t *testing.T) {
	t.Parallel()
	good := "2026-03-01,10000,0,0:47:00,A,,\n"
	for name, file := range map[string]struct{ text, want string }{
		"future.csv": {header + good + "2190-01-01,10000,0,0:47:10,A,,\n", "future.csv:3: the date 2190-01-01 lies in the future"},
		"column.csv": {strings.Replace(header, "role", "shoes", 1) + good, "column.csv: column \"shoes\" is not used"},
		"ground.csv": {header + "2026-03-01,8000,,0:47:00,A,ground.gpx,\n", "ground.gpx: the profile is 8.62 km long and was scaled by -7.2 %"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := folder(t, map[string]string{name: file.text, "ground.gpx": track(rolling(40)...), "level.csv": profile(10_000, slope(0))})
			o := planned(t, dir, "-course", "@/level.csv", "-results", "@/"+name)
			if !strings.HasPrefix(o.err, file.want) || strings.Count(o.err, "\n") != 1 {
				t.Errorf("standard error is %q, want one line that starts with %q", o.err, file.want)
			}
		})
	}
}

// The results of the runner asked for count, and no others.
func TestRunner(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"level.csv": profile(10_000, slope(0)),
		"two.csv":   header + "2026-03-01,10000,0,0:40:00,A,,\n2026-03-02,10000,0,0:60:00,B,,\n",
		"three.csv": header + "2026-03-01,10000,0,0:40:00,A,,\n2026-03-02,10000,0,1:00:00,B,,\n",
	})
	checkRefused(t, evenplan(dir, "-results", "@/two.csv", "-runner", "A"), "two.csv:3: bad time")
	fast := plannedJSON(t, dir, "-course", "@/level.csv", "-results", "@/three.csv", "-runner", "A")
	slow := plannedJSON(t, dir, "-course", "@/level.csv", "-results", "@/three.csv", "-runner", "B")
	if !(fast.Gun < 2430 && slow.Gun > 3550) {
		t.Errorf("10 km in %.0f and %.0f s, want about 2400 and 3600", fast.Gun, slow.Gun)
	}
}

// A result over known ground counts as that, not as a level one.
func TestGround(t *testing.T) {
	t.Parallel()
	dir := folder(t, map[string]string{
		"ground.gpx": track(rolling(40)...),
		"ground.csv": header + "2026-03-01,,,0:47:00,A,ground.gpx,\n",
		"level.csv":  header + "2026-03-01,8624,0,0:47:00,A,,\n",
	})
	ground := plannedJSON(t, dir, "-course", "@/ground.gpx", "-results", "@/ground.csv")
	level := plannedJSON(t, dir, "-course", "@/ground.gpx", "-results", "@/level.csv")
	if !(ground.Athlete.HourPower > level.Athlete.HourPower) {
		t.Errorf("hour power %.2f from hilly ground, %.2f from level", ground.Athlete.HourPower, level.Athlete.HourPower)
	}
	// The prior takes back a part of what the one result says.
	if !(ground.Gun > 2700 && ground.Gun < 2950) {
		t.Errorf("%.0f s over the ground that was run in 2820", ground.Gun)
	}
}
