package coursefile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
)

func multi(start string, r io.Reader) io.Reader {
	return io.MultiReader(strings.NewReader(start), r)
}

func TestReadLandmarks(t *testing.T) {
	t.Parallel()
	text := "\ufeffdistance_m,name,note,cutoff,kind,colour,elevation_m\r\n" +
		"12400,Upper Well,\"bread, salt\",2:30:00,station,blue,\r\n" +
		"\r\n" +
		" 1e4 , Knoll ,,,Top,,412.5\r\n" +
		"80000.5,\"Long\n Wall\",,26:30,Aid Station,,\r\n" +
		"0,Yard,,0:00:01,,,0\r\n"
	want := []Landmark{
		{course.Landmark{Name: "Upper Well", Distance: 12400, Kind: course.Station, Note: "bread, salt"}, Cutoff{Time: 150 * time.Minute}, Height{}, origin{"f", 2}},
		{course.Landmark{Name: "Knoll", Distance: 10000, Kind: course.Top}, Cutoff{}, Height{412.5, true}, origin{"f", 4}},
		{course.Landmark{Name: "Long Wall", Distance: 80000.5, Kind: course.Station}, Cutoff{26*time.Hour + 30*time.Minute, true}, Height{}, origin{"f", 5}},
		{course.Landmark{Name: "Yard"}, Cutoff{Time: time.Second}, Height{0, true}, origin{"f", 7}},
	}
	for _, file := range [][]byte{[]byte(text), packed([]byte(text))} {
		got, err := ReadLandmarks(bytes.NewReader(file), Options{File: "f"})
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%+v, %v", got, err)
		}
	}
	if got, err := ReadLandmarks(strings.NewReader("name,distance_m\n"), Options{}); len(got) != 0 || err != nil {
		t.Errorf("%v, %v", got, err)
	}
}

func TestOpenLandmarks(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "list.csv.gz")
	if err := os.WriteFile(name, packed([]byte("name,distance_m\nWell,5\n,6\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := OpenLandmarks(name, Options{}); err == nil || err.Error() != name+":3: landmark without a name" {
		t.Error(err)
	}
	if _, err := OpenLandmarks(name+"x", Options{}); !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
}

func TestReadLandmarksRefuses(t *testing.T) {
	t.Parallel()
	const header = "name,distance_m,kind,cutoff\n"
	const columns = "f:1: first line must name name and distance_m, and may name kind, cutoff, note and elevation_m, each once: it reads "
	const cutoff = "cutoff is neither a time of day HH:MM nor a time since the start H:MM:SS: "
	for _, tt := range []struct {
		name, text, want string
		cause            error
	}{
		{"empty", "", "f:1: file is empty", ErrEmpty},
		{"no header", "Well,5\n", columns + `"Well,5"`, ErrLandmarkColumns},
		{"a profile", "distance_m,elevation_m\n0,1\n", columns + `"distance_m,elevation_m"`, ErrLandmarkColumns},
		{"note twice", "name,distance_m,note,note\n", columns + `"name,distance_m,note,note"`, ErrLandmarkColumns},
		{"no name", header + "Well,5,,\n\" \",5,,\n", "f:3: landmark without a name", ErrName},
		{"no distance", header + "Well,,,\n", `f:2: not a number: distance ""`, ErrNumber},
		{"kilometres", header + "Well,5 km,,\n", `f:2: not a number: distance "5 km"`, ErrNumber},
		{"hexadecimal", header + "Well,0x10,,\n", `f:2: not a number: distance "0x10"`, ErrNumber},
		{"before the start", header + "Well,-1,,\n", "f:2: place beyond the course: -1 m is not within 0 to 1000000 m", course.ErrOffCourse},
		{"beyond all courses", header + "Well,1000001,,\n", "f:2: place beyond the course: 1.000001e+06 m is not within 0 to 1000000 m", course.ErrOffCourse},
		{"NaN", header + "Well,NaN,,\n", `f:2: value is not a finite number: distance "NaN"`, course.ErrNotFinite},
		{"kind", header + "Well,5,bar,\n", `f:2: kind is none of place, station and top: "bar"`, ErrKind},
		{"cutoff in minutes", header + "Well,5,,90\n", "f:2: " + cutoff + `"90"`, ErrCutoff},
		{"cutoff in words", header + "Well,5,,10:30 am\n", "f:2: " + cutoff + `"10:30 am"`, ErrCutoff},
		{"a field less", header + "Well,5,\n", "f:2: wrong number of fields", ErrFields},
	} {
		_, err := ReadLandmarks(strings.NewReader(tt.text), Options{File: "f"})
		if err == nil || err.Error() != tt.want || !errors.Is(err, tt.cause) {
			t.Errorf("%s: got  %v\nwant %s", tt.name, err, tt.want)
			continue
		}
		checkError(t, err, "f")
	}
	many := header + strings.Repeat("Well,5,,\n", MaxWaypoints+1)
	if _, err := ReadLandmarks(strings.NewReader(many), Options{File: "f"}); err == nil || err.Error() != "f:1002: file is too large: more than 1000 landmarks" {
		t.Error(err)
	}
}

func TestParseCutoff(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]Cutoff{
		"":          {},
		"0:00:01":   {Time: time.Second},
		"00:45:00":  {Time: 45 * time.Minute},
		"999:59:59": {Time: 1000*time.Hour - time.Second},
		"9:30":      {9*time.Hour + 30*time.Minute, true},
		"00:00":     {0, true},
		"38:00":     {38 * time.Hour, true},
	} {
		got, err := ParseCutoff(text)
		if err != nil || got != want || got.IsZero() != (text == "") {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
		if again, err := ParseCutoff(got.String()); err != nil || again != got {
			t.Errorf("%q was written as %q", text, got)
		}
	}
	for _, text := range []string{"0:00:00", "1000:00:00", "1:60:00", "1:00:60", "1:5:00", "1:5", "-1:00:00", "+1:00", "1:00:00.5", "1::00", ":30", "12.30", "1:00:00:00", "１:00"} {
		if c, err := ParseCutoff(text); !errors.Is(err, ErrCutoff) || !c.IsZero() {
			t.Errorf("%q: %+v, %v", text, c, err)
		}
	}
}

// Sums by hand.
func TestCutoffAfter(t *testing.T) {
	t.Parallel()
	// A zone of our own whose clocks do not change.
	zone := time.FixedZone("here", 3*3600)
	for _, tt := range []struct {
		start, cutoff string
		want          time.Duration
	}{
		{"2030-06-01 08:15:00", "2:30:00", 150 * time.Minute},
		{"2030-06-01 08:15:00", "10:30", 135 * time.Minute},
		{"2030-06-01 22:00:00", "06:00", 8 * time.Hour},
		{"2030-06-01 08:15:00", "08:15", 24 * time.Hour},
		{"2030-06-01 08:15:00", "08:16", time.Minute},
		{"2030-06-01 08:15:00", "26:30", 18*time.Hour + 15*time.Minute},
		{"2030-06-30 22:00:00", "30:00", 8 * time.Hour},
		{"2030-06-01 08:15:00", "", 0},
	} {
		start, err := time.ParseInLocation(time.DateTime, tt.start, zone)
		if err != nil {
			t.Fatal(err)
		}
		c, err := ParseCutoff(tt.cutoff)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.After(start); got != tt.want {
			t.Errorf("%s after %s: %v, want %v", tt.cutoff, tt.start, got, tt.want)
		}
	}
}

func TestLandmarksAreWrittenBackEqual(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Landmark {
			c := Cutoff{Clock: rapid.Bool().Draw(t, "clock")}
			if c.Clock {
				c.Time = time.Duration(rapid.IntRange(0, 59_999).Draw(t, "minutes")) * time.Minute
			} else {
				c.Time = time.Duration(rapid.IntRange(0, 3_599_999).Draw(t, "seconds")) * time.Second
			}
			return Landmark{course.Landmark{
				Name:     oneLine("a"+drawnText(t, "name"), maxName),
				Distance: rapid.Float64Range(0, course.MaxLength).Draw(t, "distance"),
				Kind:     rapid.SampledFrom([]course.Kind{course.Place, course.Station, course.Top}).Draw(t, "kind"),
				Note:     oneLine(drawnText(t, "note"), maxNote),
			}, c, drawnHeight(t), origin{}}
		}), 1, 5).Draw(t, "list")
		checkLandmarks(t, list)
	})
}

func drawnHeight(t *rapid.T) Height {
	if !rapid.Bool().Draw(t, "stated") {
		return Height{}
	}
	return Height{rapid.Float64Range(course.MinElevation, course.MaxElevation).Draw(t, "elevation"), true}
}

func checkLandmarks(t rapid.TB, list []Landmark) {
	t.Helper()
	var b bytes.Buffer
	if err := WriteLandmarks(&b, list); err != nil {
		t.Fatal(err)
	}
	again, err := ReadLandmarks(strings.NewReader(b.String()), Options{})
	if err != nil || !slices.EqualFunc(again, list, func(a, b Landmark) bool { a.from, b.from = origin{}, origin{}; return a == b }) {
		t.Fatalf("%+v\n%+v\n%v\n%s", list, again, err, b.String())
	}
}

func TestWriteLandmarksRefuses(t *testing.T) {
	t.Parallel()
	good := Landmark{Landmark: course.Landmark{Name: "Well", Distance: 5}}
	for _, change := range []func(*Landmark){
		func(l *Landmark) { l.Name = "\n" },
		func(l *Landmark) { l.Distance = -1 },
		func(l *Landmark) { l.Distance = math.NaN() },
		func(l *Landmark) { l.Kind = 7 },
		func(l *Landmark) { l.Height = Height{9001, true} },
		func(l *Landmark) { l.Height = Height{math.NaN(), true} },
		func(l *Landmark) { l.Cutoff.Time = -time.Second },
		func(l *Landmark) { l.Cutoff.Time = time.Second / 2 },
		func(l *Landmark) { l.Cutoff = Cutoff{time.Second, true} },
		func(l *Landmark) { l.Cutoff.Time = 1000 * time.Hour },
	} {
		bad := good
		change(&bad)
		var located *Error
		if err := WriteLandmarks(io.Discard, []Landmark{good, bad}); !errors.As(err, &located) || !strings.HasSuffix(err.Error(), ": landmark 2") {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

// Landmarks of a list stand at their distances on the measured course, and in place of
// waypoints of the same name.
func TestLandmarksOnACourse(t *testing.T) {
	t.Parallel()
	list := []Landmark{
		{Landmark: course.Landmark{Name: "Knoll", Distance: 300, Kind: course.Top}},
		{Landmark: course.Landmark{Name: "Gate", Distance: 0}},
		{Landmark: course.Landmark{Name: "Square", Distance: 1000}},
	}
	c, err := Open(testdata+"gpx/odd/waypoints.gpx", Options{Length: 1000, Landmarks: list})
	if err != nil {
		t.Fatal(err)
	}
	got := ""
	for _, l := range LandmarksOf(c) {
		got += fmt.Sprintf("%s %.1f %v; ", l.Name, l.Distance, l.Kind)
	}
	// Knoll's waypoint stands at a quarter, the well's at three: two thirds of the way from
	// Knoll to the end, so at 300 + 700·2/3 m.
	if got != "Gate 0.0 place; Knoll 300.0 top; Upper Well 766.7 station; Square 1000.0 place; " {
		t.Error(got)
	}
	c, err = ReadCSV(strings.NewReader("distance_m,elevation_m\n500,1\n1500,2\n"), Options{Landmarks: list})
	if err != nil {
		t.Fatal(err)
	}
	if l := c.Landmarks(); len(l) != 3 || l[1].Distance != 300 {
		t.Errorf("%+v", l)
	}
	list[2].Distance = 1001
	if _, err = ReadCSV(strings.NewReader("distance_m,elevation_m\n500,1\n1500,2\n"), Options{File: "f", Landmarks: list}); !errors.Is(err, course.ErrOffCourse) {
		t.Error(err)
	}
}
