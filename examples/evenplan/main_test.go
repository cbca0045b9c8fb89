package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// outcome is what a run of the program left behind.
type outcome struct {
	status   int
	out, err string
}

// evenplan runs the program in process. In arguments @/ stands for the folder, whose
// name is left out of what the program printed.
func evenplan(dir string, args ...string) outcome {
	args = append([]string(nil), args...)
	for i := range args {
		args[i] = strings.ReplaceAll(args[i], "@/", dir+"/")
	}
	var out, errs bytes.Buffer
	status := run(args, &out, &errs)
	return outcome{status, out.String(), strings.ReplaceAll(errs.String(), dir+"/", "")}
}

// planned runs the program and fails the test unless it made a plan.
func planned(t *testing.T, dir string, args ...string) outcome {
	t.Helper()
	o := evenplan(dir, args...)
	if o.status != 0 || o.out == "" {
		t.Fatalf("evenplan %q: status %d, %d bytes of plan, standard error: %s", args, o.status, len(o.out), o.err)
	}
	return o
}

// checkRefused checks that the program said why on one line that starts so, with status
// 2 and no plan.
func checkRefused(t *testing.T, o outcome, start string) {
	t.Helper()
	line, whole := strings.CutSuffix(o.err, "\n")
	switch {
	case o.status != 2 || o.out != "":
		t.Errorf("status %d with %d bytes of plan, want 2 with none; standard error: %.200s", o.status, len(o.out), o.err)
	case !whole || line == "" || strings.ContainsFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }):
		t.Errorf("standard error is %.300q, want one printable line", o.err)
	case strings.Contains(line, "<nil>") || strings.Contains(line, "panic"):
		t.Errorf("standard error shows the program's inside: %.300s", line)
	case !strings.HasPrefix(line, start):
		t.Errorf("standard error is %.300q, want it to start with %q", line, start)
	}
}

// checkPage checks that a plan in text keeps to 80 columns and to printable characters.
func checkPage(t *testing.T, page string) {
	t.Helper()
	for i, line := range strings.Split(page, "\n") {
		if n := utf8.RuneCountInString(line); n > 80 {
			t.Errorf("line %d has %d characters: %s", i+1, n, line)
		}
		for _, r := range line {
			if !unicode.IsPrint(r) && !unicode.In(r, unicode.Mn, unicode.Me) {
				t.Errorf("line %d holds %U: %q", i+1, r, line)
			}
		}
	}
}

// folder makes a folder of files.
func folder(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// profile is a course as CSV: heights over a length in metres, a point every 10 m or so.
func profile(length float64, height func(x float64) float64) string {
	var b strings.Builder
	b.WriteString("distance_m,elevation_m\n")
	n := math.Round(length / 10)
	for i := range int(n) + 1 {
		x := length * float64(i) / n
		fmt.Fprintf(&b, "%g,%g\n", x, height(x))
	}
	return b.String()
}

func slope(gradient float64) func(float64) float64 {
	return func(x float64) float64 { return gradient * x }
}

func oneHill(x float64) float64 { return 100 * (1 - math.Cos(2*math.Pi*x/20000)) }

func waves(x float64) float64 { return 0.008*x + 60*math.Sin(2*math.Pi*x/8000) }

// point is a track point as it stands in a file.
func point(lat, lon, elevation string) string {
	return fmt.Sprintf("<trkpt lat=%q lon=%q><ele>%s</ele></trkpt>\n", lat, lon, elevation)
}

// track is a course of points, the first of which stands on line 3.
func track(points ...string) string {
	return "<gpx version=\"1.1\">\n<trk><trkseg>\n" + strings.Join(points, "") + "</trkseg></trk>\n</gpx>\n"
}

// rolling is n points 222 m apart along a meridian.
func rolling(n int) []string {
	var points []string
	for i := range n {
		points = append(points, point(fmt.Sprintf("%.3f", 0.002*float64(i)), "-150", fmt.Sprintf("%.1f", 100+60*math.Sin(float64(i)/9))))
	}
	return points
}

// with is rolling(40) with the point on line 6 replaced.
func with(replacement string) string {
	points := rolling(40)
	points[3] = replacement
	return track(points...)
}

// printed is what the tests look at in a plan printed as JSON.
type printed struct {
	Schema       string
	Intensity    float64 `json:"relative_intensity"`
	Budget       float64 `json:"budget_spent"`
	Moving       float64 `json:"moving_s"`
	FirstHalf    float64 `json:"first_half_s"`
	Delay        float64 `json:"start_delay_s"`
	Gun          float64 `json:"gun_s"`
	Net          float64 `json:"net_s"`
	WalkingShare float64 `json:"walking_share"`
	GaitChanges  int     `json:"gait_changes"`
	Course       struct {
		Length float64 `json:"length_m"`
	}
	Athlete struct {
		HourPower float64 `json:"hour_power"`
	}
	Best   struct{ Low, High *float64 }
	Splits []struct {
		Distance  float64 `json:"distance_m"`
		Split     float64 `json:"split_s"`
		Moving    float64 `json:"moving_s"`
		Elapsed   float64 `json:"elapsed_s"`
		LevelPace float64 `json:"level_pace_s_per_km"`
		Gait      string
	}
	Warnings []string
}

// plannedJSON runs the program for a plan as JSON.
func plannedJSON(t *testing.T, dir string, args ...string) printed {
	t.Helper()
	o := planned(t, dir, append([]string{"-format", "json"}, args...)...)
	var p printed
	if err := json.Unmarshal([]byte(o.out), &p); err != nil {
		t.Fatalf("evenplan %q: %v", args, err)
	}
	return p
}

// ms is a number of seconds in whole milliseconds, in which sums are exact.
func ms(seconds float64) int64 { return int64(math.Round(1000 * seconds)) }

func TestWriteFails(t *testing.T) {
	t.Parallel()
	var errs bytes.Buffer
	if status := run([]string{"-course", folderOf(t, "level.csv", profile(5000, slope(0)))}, fullDisk{}, &errs); status != 1 || errs.String() != "no room\n" {
		t.Errorf("status %d, standard error %q", status, errs.String())
	}
}

// folderOf makes a folder of one file and returns the file's name.
func folderOf(t testing.TB, name, text string) string {
	t.Helper()
	return filepath.Join(folder(t, map[string]string{name: text}), name)
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, fmt.Errorf("no\nroom") }
