package coursefile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"github.com/tkrajina/gpxgo/gpx"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

func TestLandmarksOfOddFiles(t *testing.T) {
	for _, tt := range []struct{ file, want string }{
		{"waypoints", `Knoll 55.6 top "windy"; Upper Well 166.8 station "Water, salt"`},
		{"waypoint-without-name", `Drinking Water 55.6 station ""`},
		{"out-and-back", `Mill 444.9 place ""; Lock 1334.8 place ""; Turn 2224.6 place ""; Lock 3114.4 place ""; Mill 4004.3 place ""`},
		{"out-and-back-unordered", `Yard 0.0 place ""; Post 2224.6 place ""; Turn 2224.6 place ""`},
		{"laps", `Tent 1 807.1 place ""; Tent 2 2923.0 place ""; Tent 3 5039.0 place ""; Yard 6097.0 place ""`},
		{"date-line", `Line 7169.6 place ""`},
		{"pole", `Pole 111.7 place ""`},
	} {
		c, err := Open(testdata+"gpx/odd/"+tt.file+".gpx", Options{})
		if err != nil {
			t.Error(err)
			continue
		}
		var got []string
		for _, l := range c.Landmarks() {
			got = append(got, fmt.Sprintf("%s %.1f %v %q", l.Name, l.Distance, l.Kind, l.Note))
		}
		if s := strings.Join(got, "; "); s != tt.want {
			t.Errorf("%s:\ngot  %s\nwant %s", tt.file, s, tt.want)
		}
	}
}

// The lengths on the sphere of 6371 km are 72.1 and 165.7 km; on the ellipsoid legs at
// these latitudes are up to 0.3 % longer.
func TestRealFiles(t *testing.T) {
	for _, tt := range []struct {
		file             string
		points           int
		length, ascent   float64 // m
		name             string
		landmarks, merge int // points at the place of the one before
	}{
		{"hilly-72km.gpx", 3546, 72_206, 1693, "9 Chemin de Saint-Roch - Avenue Daniel-Jeanrichard 1", 2, 69},
		{"long-route-166km.gpx", 5791, 166_037, 4798, "Cotswold Way", 0, 270},
	} {
		c, err := Open(testdata+"gpx/"+tt.file, Options{Smoothing: course.AsGiven})
		if err != nil {
			t.Error(err)
			continue
		}
		if c.Len() != tt.points-tt.merge || c.Name() != tt.name || len(c.Landmarks()) != tt.landmarks {
			t.Errorf("%s: %d points, name %q, landmarks %v", tt.file, c.Len(), c.Name(), c.Landmarks())
		}
		if !near(c.Length(), tt.length, 1) || !near(c.Relief().Ascent, tt.ascent, 0.5) {
			t.Errorf("%s: %.1f m, ascent %.1f m", tt.file, c.Length(), c.Relief().Ascent)
		}
		if len(c.Warnings()) != 0 {
			t.Errorf("%s: warnings %q", tt.file, c.Warnings())
		}
	}
}

func TestFilesOfGpxgo(t *testing.T) {
	files, err := filepath.Glob(testdata + "gpx/gpxgo/*.gpx")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	accepted := 0
	for _, f := range files {
		if c, err := Open(f, Options{}); err != nil {
			checkError(t, err, f)
			t.Log(err)
		} else {
			accepted++
			checkCourse(t, c)
		}
	}
	if accepted != 4 {
		t.Errorf("%d accepted, want the 4 that have two points and an elevation", accepted)
	}
}

// checkCourse holds what every course that was read must hold.
func checkCourse(t *testing.T, c *course.Course) {
	t.Helper()
	low, top := float64(course.MinElevation), float64(course.MaxElevation)
	if c.Smoothing() > 0 {
		low, top = low-(top-low), top+(top-low) // the line fitted at an end may overshoot
	}
	last := -1.0
	for i := range c.Len() {
		x, z := c.Point(i)
		if !(x > last) || math.IsInf(x, 0) || !(z >= low && z <= top) {
			t.Fatalf("point %d at %g m, %g m high, after one at %g m", i, x, z, last)
		}
		last = x
	}
	for _, l := range c.Landmarks() {
		if !(l.Distance >= 0 && l.Distance <= c.Length()) || l.Name == "" || strings.ContainsAny(l.Name+l.Note, "\n\r\t") {
			t.Fatalf("landmark %+v", l)
		}
	}
	for _, w := range c.Warnings() {
		if strings.ContainsAny(w, "\n\r") {
			t.Fatalf("warning %q", w)
		}
	}
	checkDirections(t, c)
}

// checkError holds what every refusal must hold.
func checkError(t *testing.T, err error, file string) {
	t.Helper()
	var located *Error
	if !errors.As(err, &located) || located.File != file || located.Line < 0 {
		t.Fatalf("not located in %s: %#v", file, err)
	}
	text := err.Error()
	if !strings.HasPrefix(text, file) || strings.ContainsAny(text, "\n\r") || len(located.Err.Error()) > 1300 || strings.HasPrefix(located.Err.Error(), "course: ") {
		t.Fatalf("text %q", text)
	}
}

func TestDeepNesting(t *testing.T) {
	for _, place := range []string{"<gpx>", "<gpx><trk><trkseg><trkpt lat='1' lon='1'><extensions>", "<gpx><trk><name>"} {
		begin := time.Now()
		_, err := ReadGPX(strings.NewReader(place+strings.Repeat("<a>", 100_000)), Options{File: "deep"})
		if !errors.Is(err, ErrSyntax) || err.Error() != "deep:1: malformed file: elements nested more than 256 deep" || time.Since(begin) > time.Second {
			t.Errorf("%v after %v", err, time.Since(begin))
		}
	}
}

func TestNotXML(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"<?xml version='1.1'?>\n<gpx/>", "f:1: not XML: unsupported version \"1.1\"; only version 1.0 is supported"},
		{"<!-- nothing -->\n", "f:2: not XML: no element in it"},
		{"\x1f\x8b\x08\x00", "f:1: malformed file: gzip: unexpected EOF"},
		{"PK\x03\x04", "f:1: not XML: illegal character code U+0003"},
		{"<" + strings.Repeat("a", 1e6) + "/>", "f:1: not a GPX document: the root element is <" + strings.Repeat("a", 40) + "…>"},
	} {
		if _, err := ReadGPX(strings.NewReader(tt.text), Options{File: "f"}); err == nil || err.Error() != tt.want {
			t.Errorf("got  %v\nwant %s", err, tt.want)
		}
	}
}

func TestLimits(t *testing.T) {
	text := string(generated(100))
	for _, tt := range []struct {
		o    Options
		want string
	}{
		{Options{MaxBytes: 1000}, fmt.Sprintf("f:%d: file is too large: more than 1000 bytes", 1+strings.Count(text[:1000], "\n"))},
		{Options{MaxPoints: 99}, "f:102: file is too large: more than 99 points"},
		{Options{Length: -1}, "f:3: option out of range: length -1 m is not within 0 to 1e+06 m"},
	} {
		tt.o.File = "f"
		if _, err := ReadGPX(strings.NewReader(text), tt.o); err == nil || err.Error() != tt.want {
			t.Errorf("got  %v\nwant %s", err, tt.want)
		}
	}
	if _, err := ReadGPX(strings.NewReader(text), Options{MaxPoints: 100, MaxBytes: int64(len(text))}); err != nil {
		t.Error(err)
	}
}

func TestReaderFails(t *testing.T) {
	broken := errors.New("line cut\noff")
	for _, start := range []string{"", "<?xml version='1.0' encoding='latin1'?><gpx><trk>", string(generated(50))} {
		_, err := ReadGPX(io.MultiReader(strings.NewReader(start), iotest.ErrReader(broken)), Options{File: "f"})
		if !errors.Is(err, broken) || err.Error() != "f: line cut off" {
			t.Errorf("after %d bytes: %v", len(start), err)
		}
	}
	if _, err := ReadGPX(iotest.OneByteReader(bytes.NewReader(generated(50))), Options{}); err != nil {
		t.Error(err)
	}
}

func TestOpen(t *testing.T) {
	folder := t.TempDir()
	upper := filepath.Join(folder, "ROUND.GPX")
	if err := os.WriteFile(upper, generated(10), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(upper, Options{}); err != nil {
		t.Error(err)
	}
	missing := filepath.Join(folder, "none.csv")
	if _, err := Open(missing, Options{}); !errors.Is(err, os.ErrNotExist) || strings.Count(err.Error(), missing) != 1 {
		t.Error(err)
	}
	if _, err := Open("round.txt", Options{}); !errors.Is(err, ErrFormat) || err.Error() != "round.txt: file name ends neither in .gpx nor in .csv, .geojson or .json, with or without .gz" {
		t.Error(err)
	}
	if err := os.Mkdir(filepath.Join(folder, "folder.gpx"), 0o700); err != nil {
		t.Fatal(err)
	}
	_, err := Open(filepath.Join(folder, "folder.gpx"), Options{})
	checkError(t, err, filepath.Join(folder, "folder.gpx"))
}

func TestErrorsTakeTheReadersName(t *testing.T) {
	f, err := os.Open(testdata + "gpx/odd/no-track.gpx")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := ReadGPX(f, Options{}); err == nil || err.Error() != f.Name()+":4: no point of a track or route" {
		t.Error(err)
	}
	if _, err := ReadGPX(strings.NewReader(""), Options{}); err == nil || err.Error() != "line 1: file is empty" {
		t.Error(err)
	}
}

func TestOptionsReachTheCourse(t *testing.T) {
	c, err := ReadGPX(bytes.NewReader(generated(1000)), Options{Length: 5000, Smoothing: 80, Grid: 20})
	if err != nil {
		t.Fatal(err)
	}
	if x, _ := c.Point(1); c.Length() != 5000 || c.Smoothing() != 80 || x != 20 {
		t.Errorf("length %g, smoothing %g, grid %g", c.Length(), c.Smoothing(), x)
	}
}

// generated is a file of one track whose points stand one to a line, the first on
// line 3.
func generated(points int) []byte {
	var b bytes.Buffer
	b.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>Ridge Round</name><trkseg>\n")
	begin := time.Date(2020, 6, 1, 8, 0, 0, 0, time.UTC)
	for i := range points {
		fmt.Fprintf(&b, "<trkpt lat=\"%.6f\" lon=\"%.6f\"><ele>%.1f</ele><time>%s</time></trkpt>\n",
			50+float64(i)*5e-5, -20+0.01*math.Sin(float64(i)/500), 600+300*math.Sin(float64(i)/1000)+2*math.Sin(float64(i*i%7919)), // some noise
			begin.Add(time.Duration(i)*time.Second).Format(time.RFC3339))
	}
	b.WriteString("</trkseg></trk></gpx>\n")
	return b.Bytes()
}

// BenchmarkReadGPX reports the shortest time that reading 100 000 points takes, and how
// many times the shortest that gpxgo takes to parse the same bytes without checking
// them.
func BenchmarkReadGPX(b *testing.B) { benchmarkRead(b, Options{}) }

// The same with the heights cleaned.
func BenchmarkReadAndClean(b *testing.B) { benchmarkRead(b, Options{Clean: &heights.Options{}}) }

func benchmarkRead(b *testing.B, o Options) {
	b.Helper()
	text := generated(100_000)
	parse, read := time.Hour, time.Hour
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		begin := time.Now()
		if _, err := gpx.ParseBytes(text); err != nil {
			b.Fatal(err)
		}
		parse = min(parse, time.Since(begin))
		begin = time.Now()
		if _, err := ReadGPX(bytes.NewReader(text), o); err != nil {
			b.Fatal(err)
		}
		read = min(read, time.Since(begin))
	}
	b.ReportMetric(float64(read)/1e6, "read-ms")
	b.ReportMetric(float64(read)/float64(parse), "read/parse")
}
