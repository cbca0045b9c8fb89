package coursefile

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"
	"testing"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

func packedText(text string) string {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	_, _ = w.Write([]byte(text))
	_ = w.Close()
	return b.String()
}

// TestEveryRefusalNamesItsLine goes through every cause for which what was read is
// refused, by each reader that has it, packed and not, and asserts FILE:LINE: cause.
func TestEveryRefusalNamesItsLine(t *testing.T) {
	t.Parallel()
	const (
		head = "<gpx>\n<trk><trkseg>\n"
		tail = "</trkseg></trk>\n</gpx>\n"
		a    = "<trkpt lat='1' lon='2'><ele>3</ele></trkpt>\n"
		b    = "<trkpt lat='1.01' lon='2'><ele>3</ele></trkpt>\n"
		rows = "distance_m,elevation_m\n"
		list = "name,distance_m,kind,cutoff\n"
		line = "{\"type\":\"LineString\",\n\"coordinates\":"
	)
	gpx := func(r io.Reader, o Options) error { _, err := ReadGPX(r, o); return err }
	json := func(r io.Reader, o Options) error { _, err := ReadGeoJSON(r, o); return err }
	profiles := func(r io.Reader, o Options) error { _, err := ReadCSV(r, o); return err }
	landmarks := func(r io.Reader, o Options) error { _, err := ReadLandmarks(r, o); return err }
	away := []Landmark{{Landmark: course.Landmark{Name: "Far", Distance: 9e5}}}
	for _, tt := range []struct {
		read  func(io.Reader, Options) error
		text  string
		o     Options
		line  int
		cause error
	}{
		{gpx, "", Options{}, 1, ErrEmpty},
		{json, "", Options{}, 1, ErrEmpty},
		{profiles, "", Options{}, 1, ErrEmpty},
		{landmarks, "", Options{}, 1, ErrEmpty},
		{gpx, head + a + b + tail, Options{MaxBytes: 30}, 3, ErrTooLarge},
		{gpx, head + a + b + tail, Options{MaxPoints: 1}, 4, ErrTooLarge},
		{gpx, head + a + b + strings.Repeat("<a/>", 100_000) + tail, Options{MaxBytes: 2 << 20}, 5, ErrTooLarge},
		{json, line + "[[2,1,3],\n[2,1.01,3]]}", Options{MaxPoints: 1}, 3, ErrTooLarge},
		{json, line + "[[2,1,3],\n[2,1.01,3]]}", Options{MaxBytes: 30}, 2, ErrTooLarge},
		{profiles, rows + "0,1\n9,1\n", Options{MaxPoints: 1}, 3, ErrTooLarge},
		{profiles, rows + "0,1\n9,1\n", Options{MaxBytes: 5}, 1, ErrTooLarge},
		{profiles, "distance_m,elevation_m" + strings.Repeat(",x", MaxColumns) + "\n", Options{}, 1, ErrTooLarge},
		{landmarks, list + strings.Repeat("A,1,,\n", MaxWaypoints+1), Options{}, MaxWaypoints + 2, ErrTooLarge},
		{gpx, "<?xml version='1.0' encoding='runes-7'?>\n", Options{}, 1, ErrEncoding},
		{gpx, "words", Options{}, 1, ErrNotXML},
		{gpx, "\n\n", Options{}, 3, ErrNotXML},
		{gpx, "\n<html/>", Options{}, 2, ErrNotGPX},
		{gpx, head + "</trk>", Options{}, 3, ErrSyntax},
		{gpx, head, Options{}, 3, ErrSyntax},
		{json, "{\n", Options{}, 1, ErrSyntax},
		{profiles, rows + "\"0,1\n", Options{}, 2, ErrSyntax},
		{json, "\n[]", Options{}, 2, ErrNotGeoJSON},
		{json, "{\"type\":\n\"Topology\"}", Options{}, 1, ErrNotGeoJSON},
		{gpx, "<gpx>\n<wpt lat='1' lon='2'/>\n</gpx>\n", Options{}, 3, ErrNoTrack},
		{gpx, head + tail, Options{}, 2, ErrNoTrack},
		{json, "{\"type\":\"FeatureCollection\",\n\"features\":[]\n}\n\n", Options{}, 3, ErrNoTrack},
		{gpx, head + "<trkpt lat='91' lon='2'/>\n" + tail, Options{}, 3, ErrCoordinate},
		{json, line + "[[2,91],\n[2,1]]}", Options{}, 2, ErrCoordinate},
		{gpx, head + a + "<trkpt lat='3' lon='2'/>\n" + tail, Options{}, 4, ErrGap},
		{json, line + "[[2,1,3],\n[2,3,3]]}", Options{}, 3, ErrGap},
		{gpx, head + "<trkpt lat='1' lon='2'><ele>3,5</ele></trkpt>\n" + tail, Options{}, 3, ErrNumber},
		{profiles, rows + "0,1\nx,1\n", Options{}, 3, ErrNumber},
		{landmarks, list + "A,x,,\n", Options{}, 2, ErrNumber},
		{profiles, "\nkm,m\n", Options{}, 2, ErrColumns},
		{landmarks, "km,m\n", Options{}, 1, ErrLandmarkColumns},
		{profiles, rows + "0\n", Options{}, 2, ErrFields},
		{gpx, head + a + b + tail, Options{Track: 2}, 3, ErrChoice},
		{gpx, head + a + b + tail, Options{TrackName: "x"}, 3, ErrChoice},
		{landmarks, list + ",1,,\n", Options{}, 2, ErrName},
		{landmarks, list + "A,1,x,\n", Options{}, 2, ErrKind},
		{landmarks, list + "A,1,,x\n", Options{}, 2, ErrCutoff},
		{landmarks, list + "A,-1,,\n", Options{}, 2, course.ErrOffCourse},
		{landmarks, "name,distance_m,elevation_m\nA,1,x\n", Options{}, 2, ErrNumber},
		{landmarks, "name,distance_m,elevation_m\nA,1,9001\n", Options{}, 2, course.ErrElevationRange},
		{profiles, strings.ReplaceAll(rows+"0,1\nx,1\n", "\n", "\r"), Options{}, 3, ErrNumber},
		{gpx, head + a + tail, Options{}, 3, course.ErrTooFewPoints},
		{gpx, head + a + a + tail, Options{}, 4, course.ErrTooFewPoints},
		{json, line + "[[2,1,3],\n[2,1,3]]}", Options{}, 2, course.ErrTooFewPoints},
		{profiles, rows, Options{}, 1, course.ErrTooFewPoints},
		{profiles, rows + "0,1\n", Options{}, 2, course.ErrTooFewPoints},
		{profiles, rows + "0,1\n0,1\n", Options{}, 3, course.ErrTooFewPoints},
		{gpx, head + "<trkpt lat='1' lon='2'/>\n<trkpt lat='1.1' lon='2'/>\n" + tail, Options{}, 3, course.ErrNoElevation},
		{json, line + "[[2,1],\n[2,1.1]]}", Options{}, 2, course.ErrNoElevation},
		{profiles, rows + "0,\n9,\n", Options{}, 2, course.ErrNoElevation},
		{profiles, rows + "0,1\n9,NaN\n", Options{}, 3, course.ErrNotFinite},
		{profiles, rows + "0,1\n9,9999\n", Options{}, 3, course.ErrElevationRange},
		{profiles, rows + "9,1\n0,1\n", Options{}, 3, course.ErrDistanceBack},
		{profiles, rows + "0,1\n9,1\n1e7,1\n2e7,1\n", Options{}, 4, course.ErrTooLong},
		{gpx, head + a + b + tail, Options{Length: -1}, 3, course.ErrOption},
		{gpx, head + a + b + tail, Options{Smoothing: -2}, 3, course.ErrOption},
		{gpx, head + a + b + tail, Options{Clean: &heights.Options{Grid: -1}}, 3, heights.ErrOption},
		{gpx, head + a + b + tail, Options{Landmarks: away}, 3, course.ErrOffCourse},
		{gpx, packedText(head + a + b + tail)[:60], Options{}, 0, ErrSyntax},
		{gpx, "\x1f\x8b", Options{}, 1, ErrSyntax},
		{profiles, "\x1f\x8b", Options{}, 1, ErrSyntax},
		{json, "\x1f\x8b", Options{}, 1, ErrSyntax},
	} {
		for _, text := range []string{tt.text, packedText(tt.text)} {
			if tt.o.MaxBytes > 0 && text != tt.text || tt.text != "" && tt.text[0] == '\x1f' && text != tt.text {
				continue // the packed size is met first, and nothing is packed twice
			}
			tt.o.File = "f"
			err := tt.read(strings.NewReader(text), tt.o)
			where := regexp.MustCompile(`^f:[1-9][0-9]*: .`)
			if tt.line > 0 {
				where = regexp.MustCompile(fmt.Sprintf(`^f:%d: .`, tt.line))
			}
			if err == nil || !errors.Is(err, tt.cause) || !where.MatchString(err.Error()) {
				t.Errorf("%.60q %v: got %v, want %v at line %d", tt.text, tt.o, err, tt.cause, tt.line)
			}
		}
	}
}

// unmet are the causes that no file that is read can have, and why. TestNoListMakesBadMarks
// holds the readers to the second and third.
var unmet = map[string]string{
	"ErrFormat":     "the file is not opened: there is no line; see TestOpen",
	"ErrMark":       "marks are given by distance, not by name",
	"ErrMarkOrder":  "a stated distance out of order is left out with a warning",
	"ErrNoPosition": "every point has a position, and one off the globe is an ErrCoordinate",
	"ErrNotMeeting": "courses are not joined here, tracks are",
	"ErrTime":       "times that cannot be written are left out when read; see TestWritersRefuse",
}

// Every cause of this package and of package course has a row above or a reason for none.
func TestEveryCauseHasARow(t *testing.T) {
	t.Parallel()
	rows, err := os.ReadFile("located_test.go")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, file := range []string{"errors.go", "../errors.go"} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^\t(Err\w+) += errors\.New`).FindAllSubmatch(text, -1) {
			found++
			name := string(m[1])
			row := regexp.MustCompile(`(?m), (course\.)?` + name + `\},$`).Match(rows)
			if _, not := unmet[name]; row == not {
				t.Errorf("%s: row %v, exempt %v", name, row, not)
			}
		}
	}
	if found < 25 {
		t.Errorf("only %d causes found", found)
	}
}
