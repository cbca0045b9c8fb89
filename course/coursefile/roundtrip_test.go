package coursefile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/tkrajina/gpxgo/gpx"
	"pgregory.net/rapid"

	"isoeffort.example/course"
)

// difference says where two recordings differ, "" if they are equal. Everything must be
// so to the last digit, more than the 1e-7°, 1 cm and 1 ms that are promised.
func difference(a, b *Recording) string {
	if a.Name != b.Name || a.Description != b.Description {
		return fmt.Sprintf("name %q, %q or description %q, %q", a.Name, b.Name, a.Description, b.Description)
	}
	if len(a.Tracks) != len(b.Tracks) || len(a.Waypoints) != len(b.Waypoints) {
		return fmt.Sprintf("%d and %d tracks, %d and %d waypoints", len(a.Tracks), len(b.Tracks), len(a.Waypoints), len(b.Waypoints))
	}
	for i, w := range a.Waypoints {
		v := b.Waypoints[i]
		same := w.same(v.Point)
		w.Point, v.Point, w.line, v.line = Point{}, Point{}, 0, 0
		if !same || w != v {
			return fmt.Sprintf("waypoint %+v, %+v", a.Waypoints[i], b.Waypoints[i])
		}
	}
	for i, t := range a.Tracks {
		u := b.Tracks[i]
		if t.Name != u.Name || t.Description != u.Description || t.Route != u.Route || len(t.Segments) != len(u.Segments) {
			return fmt.Sprintf("track %d: %q, %q, %q, %q, %v, %v or %d, %d segments", i, t.Name, u.Name, t.Description, u.Description, t.Route, u.Route, len(t.Segments), len(u.Segments))
		}
		for j := range t.Segments {
			p, q := t.Segments[j].Points, u.Segments[j].Points
			if len(p) != len(q) {
				return fmt.Sprintf("track %d, segment %d: %d and %d points", i, j, len(p), len(q))
			}
			for k := range p {
				if !p[k].same(q[k]) {
					return fmt.Sprintf("track %d, segment %d, point %d: %+v, %+v", i, j, k, p[k], q[k])
				}
			}
		}
	}
	return ""
}

// checkRecording writes a recording in both formats and holds what comes out to their
// rules and to the recording.
func checkRecording(t testing.TB, r *Recording) {
	t.Helper()
	for _, format := range []struct {
		name  string
		write func(io.Writer, *Recording) error
		rules func([]byte) error
	}{
		{"GPX", WriteGPX, checkGPX}, {"GeoJSON", WriteGeoJSON, checkGeoJSON},
	} {
		var b bytes.Buffer
		if err := format.write(&b, r); err != nil {
			t.Fatalf("%s: %v", format.name, err)
		}
		if err := format.rules(b.Bytes()); err != nil {
			t.Fatalf("%s: %v\n%.2000s", format.name, err, b.Bytes())
		}
		// A copy of every point of a line without length is read too.
		again, err := ReadRecording(bytes.NewReader(b.Bytes()), Options{MaxPoints: 2 * DefaultMaxPoints})
		if err != nil {
			t.Fatalf("%s: %v\n%.2000s", format.name, err, b.Bytes())
		}
		if d := difference(r, again); d != "" || len(again.Warnings) > 0 {
			t.Fatalf("%s: %s\nwarnings %q\n%.2000s", format.name, d, again.Warnings, b.Bytes())
		}
	}
}

func TestFilesAreWrittenBackEqual(t *testing.T) {
	t.Parallel()
	read := 0
	for _, pattern := range []string{"gpx/*.gpx", "gpx/*/*.gpx*", "geojson/*"} {
		files, err := filepath.Glob(testdata + pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			r, err := OpenRecording(name, Options{})
			if err != nil {
				checkError(t, err, name)
				continue
			}
			read++
			checkRecording(t, r)
		}
	}
	if read < 50 {
		t.Errorf("only %d files", read)
	}
}

// drawnText draws texts with what XML and JSON have trouble with, as a reader would
// leave them.
func drawnText(t *rapid.T, label string) string {
	return cleaned(rapid.StringOf(rapid.SampledFrom([]rune("aé<>&\"' \n\t\\]]>😀\u2028\x85\ufffd"))).Draw(t, label))
}

func drawnPoint(t *rapid.T) Point {
	p := Point{
		Lat:       rapid.Float64Range(-90, 90).Draw(t, "lat"),
		Lon:       westernLine(rapid.Float64Range(-180, 180).Draw(t, "lon")),
		Elevation: rapid.OneOf(rapid.Float64Range(course.MinElevation, course.MaxElevation), rapid.Just(math.NaN())).Draw(t, "elevation"),
	}
	if rapid.Bool().Draw(t, "timed") {
		p.Time = time.Unix(rapid.Int64Range(-62135596799, 253402300799).Draw(t, "second"), rapid.Int64Range(0, 999_999_999).Draw(t, "nanosecond")).UTC()
	}
	return p
}

func TestAnyRecordingIsWrittenBackEqual(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := &Recording{Name: drawnText(t, "name"), Description: drawnText(t, "description")}
		for range rapid.IntRange(0, 3).Draw(t, "waypoints") {
			r.Waypoints = append(r.Waypoints, Waypoint{
				drawnPoint(t), drawnText(t, "name"), drawnText(t, "comment"), drawnText(t, "description"), drawnText(t, "symbol"), drawnText(t, "type"), 0,
			})
		}
		tracks := rapid.IntRange(0, 3).Draw(t, "tracks")
		for i := range tracks {
			track := Track{Name: drawnText(t, "name"), Description: drawnText(t, "description"), Route: i > 1}
			for range rapid.IntRange(1, 3).Draw(t, "segments") {
				points := rapid.SliceOfN(rapid.Custom(drawnPoint), 1, 4).Draw(t, "points")
				if rapid.IntRange(0, 4).Draw(t, "still") == 0 {
					points = append(points[:1], points[0])
				}
				track.Segments = append(track.Segments, Segment{Points: points})
				if track.Route {
					break
				}
			}
			r.Tracks = append(r.Tracks, track)
		}
		var b bytes.Buffer
		for _, write := range []func(io.Writer, *Recording) error{WriteGPX, WriteGeoJSON} {
			b.Reset()
			if err := write(&b, r); err != nil {
				t.Fatal(err)
			}
			again, err := ReadRecording(bytes.NewReader(b.Bytes()), Options{})
			if err != nil {
				t.Fatalf("%v\n%s", err, b.Bytes())
			}
			if d := difference(r, again); d != "" {
				t.Fatalf("%s\n%s", d, b.Bytes())
			}
			rules := checkGPX
			if b.Bytes()[0] == '{' {
				rules = checkGeoJSON
			}
			if err := rules(b.Bytes()); err != nil {
				t.Fatalf("%v\n%s", err, b.Bytes())
			}
		}
	})
}

// What is written by hand differs from what a reader makes only as the comments say.
func TestWritersMendWhatTheySay(t *testing.T) {
	t.Parallel()
	at := func(lon float64) Point { return Point{Lat: 1, Lon: lon, Elevation: 5} }
	r := &Recording{
		Name: " a\r\n\x00b\xff ",
		Tracks: []Track{
			{Name: "gone"},
			{Name: "r", Route: true, Segments: []Segment{{Points: []Point{at(1)}}, {}, {Points: []Point{at(2)}}}},
			{Name: "t", Segments: []Segment{{}, {Points: []Point{at(180), at(-180)}}}},
		},
	}
	want := &Recording{
		Name: "a\nb\ufffd",
		Tracks: []Track{
			{Name: "t", Segments: []Segment{{Points: []Point{at(-180), at(-180)}}}},
			{Name: "r", Route: true, Segments: []Segment{{Points: []Point{at(1), at(2)}}}},
		},
	}
	for _, write := range []func(io.Writer, *Recording) error{WriteGPX, WriteGeoJSON} {
		var b bytes.Buffer
		if err := write(&b, r); err != nil {
			t.Fatal(err)
		}
		got, err := ReadRecording(&b, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if d := difference(want, got); d != "" {
			t.Error(d)
		}
	}
}

func TestWritersRefuse(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, tt := range []struct {
		p    Point
		want string
	}{
		{Point{Lat: nan}, "track 1, segment 2, point 2: bad coordinate: lat NaN is outside -90 to 90"},
		{Point{Lat: 90.5}, "track 1, segment 2, point 2: bad coordinate: lat 90.5 is outside -90 to 90"},
		{Point{Lon: math.Inf(1)}, "track 1, segment 2, point 2: bad coordinate: lon +Inf is outside -180 to 180"},
		{Point{Elevation: math.Inf(-1)}, "track 1, segment 2, point 2: value is not a finite number: elevation -Inf"},
		{Point{Elevation: 9001}, "track 1, segment 2, point 2: elevation outside -500 to 9000 m: 9001 m"},
		{Point{Time: time.Date(10000, 1, 1, 0, 0, 0, 0, time.UTC)}, "track 1, segment 2, point 2: time cannot be written: 10000-01-01 00:00:00 +0000 UTC"},
		{Point{Time: time.Date(0, 1, 1, 0, 0, 0, 0, time.UTC)}, "track 1, segment 2, point 2: time cannot be written: 0000-01-01 00:00:00 +0000 UTC"},
	} {
		r := &Recording{Tracks: []Track{{Segments: []Segment{{}, {Points: []Point{{}, tt.p}}}}}}
		var b bytes.Buffer
		for _, err := range []error{WriteGPX(&b, r), WriteGeoJSON(&b, r)} {
			if err == nil || err.Error() != tt.want || b.Len() > 0 {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		}
		if _, err := r.Course(Options{File: "made"}); err == nil || err.Error() != "made: "+tt.want {
			t.Error(err)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWritersReportTheDisk(t *testing.T) {
	t.Parallel()
	r, err := ReadRecording(bytes.NewReader(generated(3000)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	c, err := r.Course(Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, err := range []error{
		WriteGPX(full{}, r), WriteGeoJSON(full{}, r), WriteCSV(full{}, c), WriteLandmarks(full{}, nil),
	} {
		if err == nil {
			t.Errorf("writer %d says nothing", i)
		}
	}
}

// gpxgo, which shares no code with this package but Go's XML, reads the same points from
// the files of this repository and from what is written.
func TestGpxgoReadsTheSame(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob(testdata + "gpx/gpxgo/*.gpx")
	if err != nil {
		t.Fatal(err)
	}
	files = append(files, testdata+"gpx/hilly-72km.gpx", testdata+"gpx/long-route-166km.gpx")
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := ReadRecording(bytes.NewReader(text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := WriteGPX(&b, r); err != nil {
			t.Fatal(err)
		}
		for _, text := range [][]byte{text, b.Bytes()} {
			document, err := gpx.ParseBytes(text)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if d := difference(fromGpxgo(document), withWholeSeconds(r)); d != "" {
				t.Errorf("%s: %s", name, d)
			}
		}
	}
}

// withWholeSeconds drops what gpxgo drops.
func withWholeSeconds(r *Recording) *Recording {
	for i := range r.Waypoints {
		r.Waypoints[i].Time = r.Waypoints[i].Time.Truncate(time.Second)
	}
	for _, t := range r.Tracks {
		for _, s := range t.Segments {
			for i := range s.Points {
				s.Points[i].Time = s.Points[i].Time.Truncate(time.Second)
			}
		}
	}
	return r
}

func fromGpxgo(document *gpx.GPX) *Recording {
	point := func(p gpx.GPXPoint) Point {
		z := math.NaN()
		if p.Elevation.NotNull() {
			z = p.Elevation.Value()
		}
		return Point{p.Latitude, p.Longitude, z, p.Timestamp.UTC()}
	}
	r := &Recording{Name: cleaned(document.Name), Description: cleaned(document.Description)}
	for _, w := range document.Waypoints {
		r.Waypoints = append(r.Waypoints, Waypoint{
			Point: point(w), Name: cleaned(w.Name), Comment: cleaned(w.Comment), Description: cleaned(w.Description),
			Symbol: cleaned(w.Symbol), Type: cleaned(w.Type),
		})
	}
	for _, t := range document.Tracks {
		track := Track{Name: cleaned(t.Name), Description: cleaned(t.Description)}
		for _, s := range t.Segments {
			var segment Segment
			for _, p := range s.Points {
				segment.Points = append(segment.Points, point(p))
			}
			if len(s.Points) > 0 {
				track.Segments = append(track.Segments, segment)
			}
		}
		if len(track.Segments) > 0 {
			r.Tracks = append(r.Tracks, track)
		}
	}
	for _, t := range document.Routes {
		var segment Segment
		for _, p := range t.Points {
			segment.Points = append(segment.Points, point(p))
		}
		if len(segment.Points) > 0 {
			r.Tracks = append(r.Tracks, Track{Name: cleaned(t.Name), Description: cleaned(t.Description), Route: true, Segments: []Segment{segment}})
		}
	}
	return r
}

func TestProfilesAreWrittenBackEqual(t *testing.T) {
	t.Parallel()
	for _, smoothing := range []float64{0, course.AsGiven} {
		c, err := Open(testdata+"gpx/hilly-72km.gpx", Options{Smoothing: smoothing})
		if err != nil {
			t.Fatal(err)
		}
		checkProfile(t, c)
	}
}

// checkProfile writes a course as CSV and reads it again.
func checkProfile(t *testing.T, c *course.Course) {
	t.Helper()
	var b bytes.Buffer
	if err := WriteCSV(&b, c); err != nil {
		t.Fatal(err)
	}
	again, err := ReadCSV(strings.NewReader(b.String()), Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	if again.Len() != c.Len() {
		t.Fatalf("%d points, then %d", c.Len(), again.Len())
	}
	for i := range c.Len() {
		x, z := c.Point(i)
		if x2, z2 := again.Point(i); x2 != x || z2 != z {
			t.Fatalf("point %d at %g m, %g m high, then %g and %g", i, x, z, x2, z2)
		}
	}
}

// checkGeoJSON holds a document to RFC 7946: its types, the least numbers of positions
// and of numbers in each, and the range of coordinates.
func checkGeoJSON(text []byte) error {
	var document struct {
		Type     string
		Features []struct {
			Type       string
			Properties map[string]any
			Geometry   struct {
				Type        string
				Coordinates json.RawMessage
			}
		}
	}
	if err := json.Unmarshal(text, &document); err != nil {
		return err
	}
	if document.Type != "FeatureCollection" {
		return fmt.Errorf("type %q", document.Type)
	}
	for i, f := range document.Features {
		var lines [][][]float64
		var line [][]float64
		var position []float64
		var err error
		switch f.Geometry.Type {
		case "Point":
			err = json.Unmarshal(f.Geometry.Coordinates, &position)
			line, lines = [][]float64{position, position}, [][][]float64{{position, position}}
		case "LineString":
			err = json.Unmarshal(f.Geometry.Coordinates, &line)
			lines = [][][]float64{line}
		case "MultiLineString":
			err = json.Unmarshal(f.Geometry.Coordinates, &lines)
		default:
			err = fmt.Errorf("geometry %q", f.Geometry.Type)
		}
		if err != nil || f.Type != "Feature" || f.Properties == nil {
			return fmt.Errorf("feature %d of type %q: %w", i, f.Type, err)
		}
		for _, line := range lines {
			if len(line) < 2 {
				return fmt.Errorf("feature %d: a line of %d positions", i, len(line))
			}
			for _, p := range line {
				if len(p) != 2 && len(p) != 3 || math.Abs(p[0]) > 180 || math.Abs(p[1]) > 90 {
					return fmt.Errorf("feature %d: position %v", i, p)
				}
			}
		}
	}
	return nil
}
