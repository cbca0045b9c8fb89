package coursefile

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
)

func packed(text []byte) []byte {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	_, _ = w.Write(text)
	_ = w.Close()
	return b.Bytes()
}

func TestGzip(t *testing.T) {
	t.Parallel()
	text := generated(100)
	plain, err := ReadRecording(bytes.NewReader(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, file := range map[string][]byte{
		"packed":            packed(text),
		"packed in two":     append(packed(text[:500]), packed(text[500:])...),
		"with a byte mark":  packed(append([]byte("\xef\xbb\xbf"), text...)),
		"behind an old one": append(packed(nil), packed(text)...),
	} {
		r, err := ReadRecording(bytes.NewReader(file), Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if d := difference(plain, r); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
	folder := t.TempDir()
	for _, name := range []string{"a.gpx.gz", "a.GPX.GZ", "b.gpx"} { // packed without saying so, too
		name = filepath.Join(folder, name)
		if err := os.WriteFile(name, packed(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := Open(name, Options{}); err != nil {
			t.Error(err)
		}
	}
}

func TestGzipRefused(t *testing.T) {
	t.Parallel()
	whole := packed(generated(2000))
	corrupt := bytes.Clone(whole)
	corrupt[len(corrupt)-6] ^= 1 // in the sum
	for _, tt := range []struct {
		name string
		file []byte
		want string
	}{
		{"cut off", whole[:100], "malformed file: gzip: unexpected EOF"},
		{"changed", corrupt, "malformed file: gzip: invalid checksum"},
		{"followed by words", append(bytes.Clone(whole), "words"...), "malformed file: gzip: unexpected EOF"},
		{"followed by one byte", append(bytes.Clone(whole), 'x'), "malformed file: gzip: unexpected EOF"},
		{"nothing", packed(nil), "file is empty"},
		{"twice packed", packed(packed([]byte("<gpx/>"))), "not XML: illegal character code U+001F"},
	} {
		for _, read := range []func() error{
			func() error { _, err := ReadRecording(bytes.NewReader(tt.file), Options{File: "f"}); return err },
		} {
			err := read()
			if err == nil || !strings.HasSuffix(err.Error(), ": "+tt.want) {
				t.Errorf("%s: %v", tt.name, err)
				continue
			}
			checkError(t, err, "f")
		}
	}
}

// A small file that unpacks to a large one stops at the limit.
func TestGzipBomb(t *testing.T) {
	t.Parallel()
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestSpeed)
	if err != nil {
		t.Fatal(err)
	}
	_, _ = w.Write([]byte("<gpx><!--"))
	for range 64 {
		_, _ = w.Write(bytes.Repeat([]byte{' '}, 1<<20))
	}
	_ = w.Close()
	_, err = ReadGPX(bytes.NewReader(b.Bytes()), Options{File: "f", MaxBytes: 1 << 20})
	if !errors.Is(err, ErrTooLarge) || err.Error() != "f:1: file is too large: more than 1048576 bytes" {
		t.Error(err)
	}
}

// several is a document of tracks by their names and points.
func several(tracks ...string) []byte {
	return []byte("<gpx version='1.1'>\n" + strings.Join(tracks, "\n") + "\n</gpx>\n")
}

// line is an element of points from a latitude along a meridian, 100 points a kilometre
// or so.
func line(element, name string, lat, lon float64, points int, begin string) string {
	inner, piece := element+"pt", ""
	if element == "trk" {
		piece = "trkseg"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "<%s><name>%s</name>", element, name)
	if piece != "" {
		b.WriteString("<trkseg>")
	}
	for i := range points {
		at := ""
		if start, err := time.Parse(time.DateTime, begin); err == nil {
			at = "<time>" + start.Add(time.Duration(i)*4*time.Second).Format(time.RFC3339) + "</time>"
		}
		fmt.Fprintf(&b, "<%s lat='%.5f' lon='%.5f'><ele>%d</ele>%s</%s>", inner, lat+float64(i)*9e-5, lon, 100+i%7, at, inner)
	}
	if piece != "" {
		b.WriteString("</trkseg>")
	}
	fmt.Fprintf(&b, "</%s>", element)
	return b.String()
}

func TestChoosingTracks(t *testing.T) {
	t.Parallel()
	text := several(
		line("rte", "Plan", 51, -20, 101, ""),
		line("trk", "One", 50, -20, 201, ""),
		line("trk", "Two", 50.018, -20, 301, ""),
		line("trk", "Two", 50.045, -20, 101, ""),
		"<trk><name>Nothing</name><trkseg/></trk>",
	)
	for _, tt := range []struct {
		o      Options
		name   string
		length float64 // km
		err    string
	}{
		{Options{}, "One", 6, ""},
		{Options{Track: 1}, "One", 2, ""},
		{Options{Track: 2}, "Two", 3, ""},
		{Options{Track: 4}, "Plan", 1, ""},
		{Options{TrackName: "Two"}, "Two", 4, ""},
		{Options{TrackName: "Two", Track: 2}, "Two", 1, ""},
		{Options{TrackName: " Plan "}, "Plan", 1, ""},
		{Options{Track: 5}, "", 0, `f:3: no such track: number 5 among 1 track "One" 2.0 km, 2 track "Two" 3.0 km, 3 track "Two" 1.0 km, 4 route "Plan" 1.0 km`},
		{Options{Track: -1}, "", 0, `f:3: no such track: number -1 among 1 track "One" 2.0 km, 2 track "Two" 3.0 km, 3 track "Two" 1.0 km, 4 route "Plan" 1.0 km`},
		{Options{TrackName: "two"}, "", 0, `f:3: no such track: "two" among 1 track "One" 2.0 km, 2 track "Two" 3.0 km, 3 track "Two" 1.0 km, 4 route "Plan" 1.0 km`},
		{Options{TrackName: "Two", Track: 3}, "", 0, `f:4: no such track: number 3 among 2 track "Two" 3.0 km, 3 track "Two" 1.0 km`},
	} {
		tt.o.File = "f"
		c, err := ReadGPX(bytes.NewReader(text), tt.o)
		if err != nil || tt.err != "" {
			if err == nil || err.Error() != tt.err || !errors.Is(err, ErrChoice) {
				t.Errorf("%+v: got  %v\nwant %s", tt.o, err, tt.err)
			}
			continue
		}
		if c.Name() != tt.name || !near(c.Length()/1000, tt.length, 0.01) {
			t.Errorf("%+v: %q of %.2f km", tt.o, c.Name(), c.Length()/1000)
		}
	}
}

func TestJoinedTracksMayBeAlternatives(t *testing.T) {
	t.Parallel()
	const joined = "2 tracks were joined in the order of the file"
	one := line("trk", "One", 50, -20, 201, "2020-06-01 08:00:00")
	for _, tt := range []struct {
		name, second, want string
	}{
		{"goes on", line("trk", "Two", 50.018, -20, 101, "2020-06-01 08:20:00"), joined},
		{"goes on after a meal", line("trk", "Two", 50.018, -20, 101, "2020-06-01 12:00:00"), joined},
		{"goes on after 400 m", line("trk", "Two", 50.0216, -20, 101, ""), joined},
		{
			"next day", line("trk", "Two", 50.018, -20, 101, "2020-06-02 08:00:00"),
			joined + `, but may be alternatives or separate days (2 starts 24 h after the end of 1); one can be chosen of 1 track "One" 2.0 km, 2 track "Two" 1.0 km`,
		},
		{
			"elsewhere", line("trk", "Two", 50.028, -20, 101, ""),
			joined + `, but may be alternatives or separate days (2 starts 1.1 km from the end of 1); one can be chosen of 1 track "One" 2.0 km, 2 track "Two" 1.0 km`,
		},
		{
			"over the same ground", line("trk", "Two", 50.0153, -20.0001, 101, ""),
			joined,
		},
		{
			"over much the same ground", line("trk", "Two", 50.014, -20.0001, 71, ""),
			joined + `, but may be alternatives or separate days (2 runs over ground of earlier ones for 66 %); one can be chosen of 1 track "One" 2.0 km, 2 track "Two" 0.7 km`,
		},
		{
			"beside it", line("trk", "Two", 50.0018, -20.002, 201, ""),
			joined + `, but may be alternatives or separate days (2 starts 1.8 km from the end of 1); one can be chosen of 1 track "One" 2.0 km, 2 track "Two" 2.0 km`,
		},
	} {
		c, err := ReadGPX(bytes.NewReader(several(one, tt.second)), Options{})
		if err != nil {
			t.Error(err)
			continue
		}
		if w := c.Warnings(); len(w) == 0 || w[0] != tt.want {
			t.Errorf("%s:\ngot  %q\nwant %q", tt.name, w, tt.want)
		}
	}
}

// Many tracks are listed and doubted in part only.
func TestManyTracks(t *testing.T) {
	t.Parallel()
	var tracks []string
	for i := range 30 {
		tracks = append(tracks, line("trk", strings.Repeat("long name ", 20), 50, -20+0.001*float64(i), 101, ""))
	}
	c, err := ReadGPX(bytes.NewReader(several(tracks...)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	w := c.Warnings()[0]
	if len(w) > 1200 || !strings.Contains(w, "and 26 more doubts") || !strings.HasSuffix(w, ", and 18 more") {
		t.Error(w)
	}
}

func TestJoinedTracksTooLong(t *testing.T) {
	t.Parallel()
	far := func(name string, lat float64) string {
		var b strings.Builder
		fmt.Fprintf(&b, "<trk><name>%s</name><trkseg>", name)
		for i := range 60 {
			fmt.Fprintf(&b, "<trkpt lat='%.2f' lon='0'><ele>0</ele></trkpt>", lat+0.1*float64(i))
		}
		b.WriteString("</trkseg></trk>")
		return b.String()
	}
	_, err := ReadGPX(bytes.NewReader(several(far("a", 10), far("b", 16))), Options{File: "f"})
	if !errors.Is(err, course.ErrTooLong) || !strings.Contains(err.Error(), `; one can be chosen of 1 track "a" 652.`) {
		t.Error(err)
	}
	checkError(t, err, "f")
}

// A recording made by hand has no lines to speak of.
func TestRecordingByHand(t *testing.T) {
	t.Parallel()
	var s Segment
	for i := range 50 {
		s.Points = append(s.Points, Point{Lat: 50 + 1e-3*float64(i), Lon: -20, Elevation: 100, Time: time.Unix(-int64(i), 0)})
	}
	r := &Recording{
		Name: "By Hand", Warnings: []string{"made"}, Tracks: []Track{{Segments: []Segment{s}}},
		Waypoints: []Waypoint{{Point: s.Points[10], Name: "Post"}, {Point: Point{}, Name: "Far"}, {}},
	}
	c, err := r.Course(Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"made",
		"time goes back at 49 of 50 points: the order of the file was kept",
		"1 of 3 waypoints left out for want of a name",
		`1 of 3 waypoints left out, being over 500 m from the course, first "Far"`,
	}
	if !slices.Equal(c.Warnings(), want) || c.Name() != "By Hand" || len(c.Landmarks()) != 1 {
		t.Errorf("%q %v %q", c.Name(), c.Landmarks(), c.Warnings())
	}
	if _, err := (&Recording{}).Course(Options{}); !errors.Is(err, ErrNoTrack) {
		t.Error(err)
	}
	if _, err := (&Recording{Tracks: []Track{{Segments: []Segment{{}}}}}).Course(Options{}); !errors.Is(err, ErrNoTrack) {
		t.Error(err)
	}
}

// Waypoints on a course that winds on one spot are placed as far as time allows.
func TestManyWaypointsOnAWindingCourse(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		points, waypoints, placed int
		want                      string
	}{
		{4000, 1500, MaxWaypoints, `500 of 1500 waypoints left out, there being too many to place, first "Post"`},
		{400_000, 100, 26, `74 of 100 waypoints left out, there being too many to place, first "Post"`},
	} {
		var s Segment
		for i := range tt.points { // 2 m or so apart
			angle := float64(i) / 10
			s.Points = append(s.Points, Point{Lat: 50 + 2e-4*math.Sin(angle), Lon: -20 + 3e-4*math.Cos(angle), Elevation: 100})
		}
		r := &Recording{Tracks: []Track{{Segments: []Segment{s}}}}
		for range tt.waypoints {
			r.Waypoints = append(r.Waypoints, Waypoint{Point: Point{Lat: 50, Lon: -20}, Name: "Post"})
		}
		c, err := r.Course(Options{})
		if err != nil {
			t.Fatal(err)
		}
		if w := c.Warnings(); len(c.Landmarks()) != tt.placed || !slices.Contains(w, tt.want) {
			t.Errorf("%d landmarks, %q", len(c.Landmarks()), w)
		}
	}
}
