package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// outcome is what a run of the program left behind.
type outcome struct {
	status   int
	out, err string
}

// batchIn runs the program in process. In arguments @/ stands for the folder, whose name
// is left out of what the program printed.
func batchIn(ctx context.Context, dir string, args ...string) outcome {
	args = append([]string(nil), args...)
	for i := range args {
		args[i] = strings.ReplaceAll(args[i], "@/", dir+"/")
	}
	var out, errs bytes.Buffer
	status := run(ctx, args, &out, &errs)
	return outcome{status, out.String(), strings.ReplaceAll(errs.String(), dir+"/", "")}
}

// files makes a folder of files.
func files(t *testing.T, texts map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range texts {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const (
	hill    = "distance_m,elevation_m\n0,10\n3000,150\n6000,20\n"
	runners = "name,hour_power\nIlva,12\nOddo,eleven\nFenna,10\n"
)

func TestDemo(t *testing.T) {
	t.Parallel()
	o := batchIn(t.Context(), t.TempDir(), "-groups", "4:00:00,5:00:00,6:00:00,7:30:00", "-workers", "3")
	if o.status != 1 || o.err != "demo/runners.csv:7: \"Pim Okonwe-Lind\": bad number: hour_power \"twelve\" is not a finite number\n" {
		t.Errorf("status %d, standard error %q", o.status, o.err)
	}
	golden := filepath.Join("testdata", "demo.txt")
	if *update {
		if err := os.WriteFile(golden, []byte(o.out), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil || o.out != string(want) {
		t.Errorf("%v; got\n%s\nwant\n%s", err, o.out, want)
	}
}

// Bests are the same above and in the groups; a group of nobody says so and has no file; who
// is in none is said to be too slow, and by how much.
func TestGroupsOfNobody(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{"c.csv": hill, "r.csv": "name,hour_power,start_delay\nIlva,12,0:03:00\nFenna,6,0:01:00\n"})
	o := batchIn(t.Context(), dir, "-course", "@/c.csv", "-runners", "@/r.csv", "-out", "@/plans", "-groups", "0:20:00,0:40:00")
	if o.status != 0 {
		t.Fatalf("%+v", o)
	}
	checkFiles(t, filepath.Join(dir, "plans"), "Fenna.txt", "Ilva.txt", "groups.csv", "pace-group-0-40-00.txt", "summary.csv")
	above, groups, _ := strings.Cut(o.out, "Pace groups")
	for _, name := range []string{"Ilva", "Fenna"} {
		line := above[strings.Index(above, name):]
		best := strings.Fields(line)[2]
		if !strings.Contains(groups[strings.Index(groups, name):], best) {
			t.Errorf("%s's best %s is not in\n%s", name, best, groups)
		}
	}
	if !strings.Contains(groups, "0:20:00  nobody\n0:40:00\n") || !strings.Contains(groups, "\ntoo slow for 0:40:00: Fenna, best ") {
		t.Errorf("%s", groups)
	}
}

func TestFolder(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{"c.csv": hill, "r.csv": runners + "../../ILVA,11\nilva!,9\n"})
	args := []string{"-course", "@/c.csv", "-runners", "@/r.csv", "-out", "@/plans/new", "-quick"}
	o := batchIn(t.Context(), dir, args...)
	if o.status != 1 || o.err != "r.csv:3: \"Oddo\": bad number: hour_power \"eleven\" is not a finite number\n" {
		t.Fatalf("%+v", o)
	}
	checkFiles(t, filepath.Join(dir, "plans"), "new")
	checkFiles(t, filepath.Join(dir, "plans", "new"), "Fenna.txt", "ILVA-2.txt", "Ilva.txt", "ilva-3.txt", "summary.csv")
	text, err := os.ReadFile(filepath.Join(dir, "plans", "new", "Fenna.txt"))
	if err != nil || !strings.HasPrefix(string(text), "Fenna\n\nCourse: even-effort plan\n") {
		t.Errorf("%v, %.80q", err, text)
	}
	summary, err := os.ReadFile(filepath.Join(dir, "plans", "new", "summary.csv"))
	lines := strings.Split(string(summary), "\n")
	if err != nil || len(lines) != 7 || !strings.HasPrefix(lines[2], `3,Oddo,,,,,,,"`) || !strings.HasSuffix(lines[4], ",,,ILVA-2.txt,") {
		t.Errorf("%v, %q", err, lines)
	}

	again := batchIn(t.Context(), dir, args...)
	if again.status != 2 || again.err != "plans/new/summary.csv: it is there already: -force overwrites it\n" || again.out != "" {
		t.Errorf("again: %+v", again)
	}
	if o := batchIn(t.Context(), dir, append(args, "-force")...); o.status != 1 {
		t.Errorf("forced: %+v", o)
	}
}

// One file that is there already is one runner without a file, and no loss of what it holds.
func TestFolderKeepsFiles(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{"c.csv": hill, "r.csv": "name,hour_power\nIlva,12\nOddo,11\n", "Ilva.txt": "mine"})
	o := batchIn(t.Context(), dir, "-course", "@/c.csv", "-runners", "@/r.csv", "-out", "@/", "-quick")
	text, err := os.ReadFile(filepath.Join(dir, "Ilva.txt"))
	if o.status != 1 || err != nil || string(text) != "mine" || !strings.Contains(o.err, "Ilva.txt: it is there already") {
		t.Errorf("%+v, %q", o, text)
	}
	checkFiles(t, dir, "Ilva.txt", "Oddo.txt", "c.csv", "r.csv", "summary.csv")
}

// A link in the folder leads no file out of it.
func TestFolderFollowsNoLinkOut(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{"c.csv": hill, "r.csv": "name,hour_power\nIlva,12\n", "precious": "mine"})
	out := filepath.Join(dir, "plans")
	if err := os.Mkdir(out, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("../precious", filepath.Join(out, "Ilva.txt")); err != nil {
		t.Skip(err)
	}
	o := batchIn(t.Context(), dir, "-course", "@/c.csv", "-runners", "@/r.csv", "-out", "@/plans", "-quick", "-force")
	text, err := os.ReadFile(filepath.Join(dir, "precious"))
	if o.status == 0 || err != nil || string(text) != "mine" {
		t.Errorf("%+v, %q", o, text)
	}
}

func checkFiles(t *testing.T, dir string, want ...string) {
	t.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range list {
		got = append(got, f.Name())
	}
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("%s holds %q, want %q", dir, got, want)
	}
}

func TestStatus(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{
		"c.csv": hill, "r.csv": "name,hour_power\nIlva,12\n", "bad.csv": "name,hour_power\nIlva,x\n", "head.csv": "nom\nIlva\n",
		"past.csv":    "name,results\nIlva,none.csv\nOddo,results.csv\nFenna,results.csv\n",
		"results.csv": "runner,date,distance_m,time\nFenna,2026-03-01,10000,0:50:00\n",
		"marks.csv":   "name,distance_m,cutoff\nTop,3000,0:20:00\n", "day.csv": "name,distance_m,cutoff\nTop,3000,09:30\n",
	})
	for name, v := range map[string]struct {
		args   string
		status int
		err    string
	}{
		"all done":        {"-course @/c.csv -runners @/r.csv", 0, ""},
		"none done":       {"-course @/c.csv -runners @/bad.csv", 2, "bad.csv:2: "},
		"bad header":      {"-course @/c.csv -runners @/head.csv", 2, "head.csv:1: bad header: column name is missing"},
		"past results":    {"-course @/c.csv -runners @/past.csv", 1, "past.csv:2: \"Ilva\": none.csv: no such file or directory\npast.csv:3: \"Oddo\": results.csv: no results of that runner\n"},
		"no course":       {"-course @/none.csv -runners @/r.csv", 2, "none.csv: "},
		"no runners":      {"-course @/c.csv -runners @/none.csv", 2, "none.csv: no such file or directory"},
		"a folder":        {"-course @/c.csv -runners @/", 2, ""},
		"cutoffs":         {"-course @/c.csv -runners @/r.csv -landmarks @/marks.csv", 0, ""},
		"by the clock":    {"-course @/c.csv -runners @/r.csv -landmarks @/day.csv", 2, "day.csv: the cutoff at Top is a time of day: it needs -start"},
		"with a start":    {"-course @/c.csv -runners @/r.csv -landmarks @/day.csv -start 2026-06-14T09:00:00Z", 0, ""},
		"half":            {"-course @/c.csv", 2, "batch: -course and -runners: give both"},
		"flag":            {"-fast", 2, "batch: flag provided but not defined: -fast"},
		"argument":        {"x", 2, "batch: unexpected argument \"x\""},
		"workers":         {"-workers -1", 2, "batch: -workers -1: not within"},
		"length":          {"-length 5", 2, "batch: -length 5: not within"},
		"force":           {"-force", 2, "batch: -force: "},
		"delay":           {"-start-delay -1s", 2, "batch: -start-delay -1s: not within"},
		"groups":          {"-groups 4:00", 2, "batch: invalid value \"4:00\" for flag -groups: not times such as"},
		"start":           {"-start noon", 2, "batch: invalid value \"noon\" for flag -start: not a date and time"},
		"landmarks alone": {"-landmarks @/marks.csv", 2, "batch: -landmarks: needs -course"},
		"help":            {"-h", 0, ""},
	} {
		o := batchIn(t.Context(), dir, strings.Fields(v.args)...)
		if o.status != v.status || !strings.HasPrefix(o.err, v.err) || v.status == 0 && (o.err != "" || o.out == "") {
			t.Errorf("%s: status %d, standard error %q", name, o.status, o.err)
		}
	}
}

// Interrupted, it says how far it came, and leaves the summary of that.
func TestInterrupted(t *testing.T) {
	t.Parallel()
	dir := files(t, map[string]string{"c.csv": hill, "r.csv": "name,hour_power\nIlva,12\n"})
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	o := batchIn(ctx, dir, "-course", "@/c.csv", "-runners", "@/r.csv", "-out", "@/plans")
	if o.status != 1 || o.err != "field: stopped after 0 of 1 runners: context canceled\n" {
		t.Errorf("%+v", o)
	}
	summary, err := os.ReadFile(filepath.Join(dir, "plans", "summary.csv"))
	if err != nil || string(summary) != strings.Join(summaryColumns, ",")+"\n" {
		t.Errorf("%q, %v", summary, err)
	}
}

func TestFilenames(t *testing.T) {
	t.Parallel()
	names := filenames{}
	for _, v := range [][2]string{
		{"Ilva Tarn", "Ilva-Tarn.txt"},
		{"ilva tarn", "ilva-tarn-2.txt"},
		{"Ilva  Tarn!", "Ilva-Tarn-3.txt"},
		{"Ilva Tarn 2", "Ilva-Tarn-2-2.txt"},
		{"Zoë Älvdotter", "Zoë-Älvdotter.txt"},
		{"李 小龙", "李-小龙.txt"},
		{"../../etc/passwd", "etc-passwd.txt"},
		{`..\..\boot`, "boot.txt"},
		{"/", "runner.txt"},
		{"..", "runner-2.txt"},
		{"", "runner-3.txt"},
		{".hidden", "hidden.txt"},
		{"CON", "runner-CON.txt"},
		{"-rf *", "rf.txt"},
		{"a\x00b\u202ec\nd", "a-b-c-d.txt"},
		{strings.Repeat("ä", 200), strings.Repeat("ä", 50) + ".txt"},
	} {
		if got := names.next(v[0]); got != v[1] || !filepath.IsLocal(got) {
			t.Errorf("%q: %q, want %q", v[0], got, v[1])
		}
	}
}

func TestSummaryComputesNothing(t *testing.T) {
	t.Parallel()
	for given, want := range map[string]string{"=1+1": "'=1+1", "@x": "'@x", "-": "'-", "Ilva": "Ilva", "": "", "a=b": "a=b"} {
		if got := unformula(given); got != want {
			t.Errorf("%q: %q", given, got)
		}
	}
}

func FuzzFilenames(f *testing.F) {
	f.Add("Ilva Tarn", "../x")
	f.Fuzz(func(t *testing.T, a, b string) {
		names := filenames{}
		x, y := names.next(a), names.next(b)
		for _, n := range []string{x, y} {
			if !filepath.IsLocal(n) || strings.ContainsAny(n, "/\\:\x00") || n[0] == '.' || n[0] == '-' || len(n) > 150 {
				t.Fatalf("%q", n)
			}
		}
		if strings.EqualFold(x, y) {
			t.Fatalf("%q and %q are both %q", a, b, x)
		}
	})
}
