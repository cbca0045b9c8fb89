package coursefile

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"isoeffort.example/course"
)

const testdata = "../../testdata/"

// oddFile returns the path of an odd file, which is GPX if its name has no ending.
func oddFile(name string) string {
	if strings.HasSuffix(name, ".geojson") {
		return testdata + "geojson/odd/" + name
	}
	return testdata + "gpx/odd/" + name + ".gpx"
}

// refused are the files of testdata/*/odd that no course can be told from.
var refused = []struct {
	name  string
	text  string // behind the file's name
	cause error
}{
	{"empty", ":1: file is empty", ErrEmpty},
	{"plain-text", `:1: not XML: the file begins with "a list of places to run to"`, ErrNotXML},
	{"truncated", ":6: malformed file: unexpected EOF", ErrSyntax},
	{"mismatched-tags", ":5: malformed file: element <ele> closed by </elle>", ErrSyntax},
	{"junk-after-root", ":9: malformed file: element <gpx> after the end of the document", ErrSyntax},
	{"text-after-root", `:10: malformed file: text after the end of the document: "the end"`, ErrSyntax},
	{"cr-text-after-root", `:9: malformed file: text after the end of the document: "the end"`, ErrSyntax},
	{"no-track", ":4: no point of a track or route", ErrNoTrack},
	{"one-point", ":4: fewer than two points at different places", course.ErrTooFewPoints},
	{"one-place", ":6: fewer than two points at different places", course.ErrTooFewPoints},
	{"no-elevation", ":4: no elevation", course.ErrNoElevation},
	{"nan-latitude", `:5: bad coordinate: value is not a finite number: lat "NaN"`, ErrCoordinate},
	{"inf-longitude", `:5: bad coordinate: value is not a finite number: lon "-Inf"`, course.ErrNotFinite},
	{"latitude-91", ":5: bad coordinate: lat 91 is outside -90 to 90", ErrCoordinate},
	{"longitude-270", ":6: bad coordinate: lon 270 is outside -180 to 180", ErrCoordinate},
	{"words-for-latitude", `:5: bad coordinate: not a number: lat "50 0.06 N"`, ErrCoordinate},
	{"missing-lat", ":5: bad coordinate: lat is missing", ErrCoordinate},
	{"empty-lon", ":5: bad coordinate: lon is missing", ErrCoordinate},
	{"lat-twice", ":5: bad coordinate: lat is given twice", ErrCoordinate},
	{"waypoint-without-lat", ":3: bad coordinate: lat is missing", ErrCoordinate},
	{"gap-22km", ":6: gap of over 20 km between neighbouring points: 22.1 km", ErrGap},
	{"gap-between-tracks", ":8: gap of over 20 km between neighbouring points: 33.3 km; one can be chosen of 1 track \"Ridge Round\" 0.1 km, 2 track \"Ridge Round\" 0.1 km", ErrGap},
	{"elevation-20000", ":5: elevation outside -500 to 9000 m: 20000 m", course.ErrElevationRange},
	{"elevation-minus-20000", ":5: elevation outside -500 to 9000 m: -20000 m", course.ErrElevationRange},
	{"elevation-nan", `:5: value is not a finite number: elevation "NaN"`, course.ErrNotFinite},
	{"elevation-comma", `:5: not a number: elevation "110,5"`, ErrNumber},
	{"too-long", ":57: course longer than 1000 km: 1114.7 km", course.ErrTooLong},
	{"map-document", ":2: not a GPX document: the root element is <kml>", ErrNotGPX},
	{"web-page", ":2: not a GPX document: the root element is <html>", ErrNotGPX},
	{"unknown-encoding", `:1: character encoding is not known: "runes-7"`, ErrEncoding},
	{"unknown-entity", ":3: malformed file: invalid character entity &nbsp;", ErrSyntax},
	{"own-entity", ":4: malformed file: invalid character entity &b;", ErrSyntax},
	{"latin-1-undeclared", ":3: malformed file: invalid UTF-8", ErrSyntax},
	{"packed-cut-off", ":2: malformed file: gzip: unexpected EOF", ErrSyntax},
	{"packed-changed", ":9: malformed file: gzip: invalid checksum", ErrSyntax},
	{"hexadecimal", `:5: bad coordinate: not a number: lat "0x1.9p5"`, ErrCoordinate},
	{"comma-coordinates", `:5: bad coordinate: not a number: lat "50,001"`, ErrCoordinate},
	{"capitals", ":2: not a GPX document: the root element is <GPX>", ErrNotGPX},
	{"control-character", ":3: malformed file: illegal character code U+0001", ErrSyntax},
	{"nothing-but-spaces", ":3: not XML: no element in it", ErrNotXML},
	{"double-encoded", ":8: no point of a track or route", ErrNoTrack},
	{"unclosed-comment", ":9: malformed file: unexpected EOF", ErrSyntax},
	{"xml-1.1", `:1: not XML: unsupported version "1.1"; only version 1.0 is supported`, ErrNotXML},
	{"latitude-first.geojson", ":1: bad coordinate: lat -120 is outside -90 to 90", ErrCoordinate},
	{"projected.geojson", ":1: bad coordinate: lat 4e+06 is outside -90 to 90", ErrCoordinate},
	{"texts-for-numbers.geojson", `:2: bad coordinate: no number: "50.001"`, ErrCoordinate},
	{"uneven-depth.geojson", ":3: malformed file: arrays nested too deep for coordinates", ErrSyntax},
	{"truncated.geojson", ":2: malformed file: unexpected end", ErrSyntax},
	{"two-documents.geojson", `:4: malformed file: after the end of the document: "{"`, ErrSyntax},
	{"another-type.geojson", `:1: not a GeoJSON document: its type is "Topology"`, ErrNotGeoJSON},
	{"no-elevation.geojson", ":1: no elevation", course.ErrNoElevation},
}

func TestOddFilesRefused(t *testing.T) {
	for _, tt := range refused {
		path := oddFile(tt.name)
		name := filepath.Base(path)
		_, err := Open(path, Options{File: name})
		if err == nil || err.Error() != name+tt.text || !errors.Is(err, tt.cause) {
			t.Errorf("got  %v\nwant %s", err, name+tt.text)
		}
	}
}

// mended are the files of testdata/*/odd that are read, with what is warned of.
var mended = []struct {
	name     string
	course   string
	length   float64 // m, to the decimetre
	relief   course.Relief
	warnings []string
}{
	{"elevation-missing", "Ridge Round", 444.9, course.Relief{Ascent: 30}, []string{"elevation missing at 3 of 5 points, first at line 4: filled from the neighbours"}},
	{"elevation-empty", "Ridge Round", 222.5, course.Relief{Ascent: 5}, []string{"elevation missing at 2 of 4 points, first at line 5: filled from the neighbours"}},
	{"elevation-white-space", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"elevation-in-pieces", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"times-back", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"time goes back at 2 of 3 points, first at line 5: the order of the file was kept"}},
	{"times-odd", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"time could not be read at 1 point, first at line 6: left out"}},
	{"gap-3km", "", 3225.7, course.Relief{Ascent: 10, Descent: 10}, []string{"gap of over 2 km between neighbouring points at 1 place, the widest 3.0 km up to km 3.1, line 7: bridged by a straight line"}},
	{"waypoints", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{`1 of 3 waypoints left out, being over 500 m from the course, first "Inn" at line 7`}},
	{"waypoint-without-name", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"1 of 2 waypoints left out for want of a name, first at line 4"}},
	{"out-and-back", "Ridge Round", 4449.2, course.Relief{Ascent: 100, Descent: 100}, []string{`4 of 5 waypoints lie where the course comes by more than once, first "Mill" by km 0.4 and 4.0: placed by their order in the file, that one at km 0.4`}},
	{"out-and-back-unordered", "Ridge Round", 4449.2, course.Relief{Ascent: 100, Descent: 100}, []string{`1 of 3 waypoints lie where the course comes by more than once, first "Yard" by km 0.0 and 4.4: placed by their order in the file, that one at km 0.0`}},
	{"laps", "Ridge Round", 6347.9, course.Relief{Ascent: 12}, []string{`4 of 4 waypoints lie where the course comes by more than once, first "Tent 1" by km 0.8 and 2.9: placed by their order in the file, that one at km 0.8`}},
	{"byte-order-mark", "Höhe", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"utf-16-le", "Höhe", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"utf-16-be", "Höhe", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"utf-16-in-name-only", "Höhe", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"latin-1", "Höhe", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"prefixed", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"long-comment", "Old Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"extension", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"bad-fields", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"one-line", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"crlf", "Ridge Round", 222.5, course.Relief{Ascent: 5}, []string{"elevation missing at 1 of 3 points, first at line 5: filled from the neighbours"}},
	{"cr", "Ridge Round", 222.5, course.Relief{Ascent: 5}, []string{"elevation missing at 1 of 3 points, first at line 5: filled from the neighbours"}},
	{"utf-16-unmarked", "Höhe", 222.5, course.Relief{Ascent: 5}, []string{"elevation missing at 1 of 3 points, first at line 5: filled from the neighbours"}},
	{"track-and-bad-route", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"1 route left out for a fault, first at line 3: bad coordinate: lat is missing"}},
	{"route", "Old Round", 111.2, course.Relief{Ascent: 10}, nil},
	{"two-tracks", "Second Half", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"2 tracks were joined in the order of the file"}},
	{"date-line", "Ridge Round", 14339.1, course.Relief{Ascent: 10}, []string{"gap of over 2 km between neighbouring points at 1 place, the widest 14.3 km up to km 14.3, line 6: bridged by a straight line"}},
	{"pole", "Ridge Round", 223.4, course.Relief{Ascent: 10}, nil},
	{"repeated-points", "Ridge Round", 222.5, course.Relief{Ascent: 9, Descent: 5}, nil},
	{"no-name-space", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"packed", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"waypoint-elevation", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"elevation could not be read at 2 waypoints, first at line 3: left out"}},
	{"date-line-both", "Ridge Round", 222.6, course.Relief{Ascent: 2}, nil},
	{"single-points", "Ridge Round", 222.5, course.Relief{Ascent: 10}, nil},
	{"exponents", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"year-0", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"time could not be read at 2 points, first at line 4: left out"}},
	{"alternatives", "Long Way", 2669.5, course.Relief{Ascent: 16, Descent: 8}, []string{`2 tracks were joined in the order of the file, but may be alternatives or separate days (2 starts 0.9 km from the end of 1, 2 runs over ground of earlier ones for 100 %); one can be chosen of 1 track "Long Way" 0.9 km, 2 track "Short Way" 0.9 km`}},
	{"two-days", "One", 889.8, course.Relief{Ascent: 6, Descent: 2}, []string{`2 tracks were joined in the order of the file, but may be alternatives or separate days (2 starts 24 h after the end of 1); one can be chosen of 1 track "One" 0.4 km, 2 track "Two" 0.4 km`}},
	{"names-everywhere", "A <b>& B", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"points-outside-segments", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"point-in-point", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"elevation-twice", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"doctype", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"plain.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"collection.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"members-in-any-order.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"times.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"byte-order-mark.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"utf-16.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"packed.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"several-lines.geojson", "", 222.5, course.Relief{Ascent: 10, Descent: 5}, nil},
	{"null-elevation.geojson", "Ridge Round", 222.5, course.Relief{Ascent: 5}, []string{"elevation missing at 1 of 3 points, first at line 2: filled from the neighbours"}},
	{"area.geojson", "", 222.5, course.Relief{Ascent: 10, Descent: 5}, []string{"1 surface left out, first up to line 1: no line on the ground"}},
}

func TestOddFilesRead(t *testing.T) {
	for _, tt := range mended {
		name := filepath.Base(oddFile(tt.name))
		c, err := Open(oddFile(tt.name), Options{Smoothing: course.AsGiven})
		if err != nil {
			t.Error(err)
			continue
		}
		if c.Name() != tt.course || !near(c.Length(), tt.length, 0.05) {
			t.Errorf("%s: %q of %.1f m, want %q of %.1f m", name, c.Name(), c.Length(), tt.course, tt.length)
		}
		if r := c.Relief(); !near(r.Ascent, tt.relief.Ascent, 1e-6) || !near(r.Descent, tt.relief.Descent, 1e-6) {
			t.Errorf("%s: %+v, want %+v", name, r, tt.relief)
		}
		if !slices.Equal(c.Warnings(), tt.warnings) {
			t.Errorf("%s: warnings\n%q, want\n%q", name, c.Warnings(), tt.warnings)
		}
	}
}

func near(a, b, tolerance float64) bool { return a-b <= tolerance && b-a <= tolerance }

// TestEveryOddFileIsExplained holds the folder, the tables above and the README of
// testdata to the same files.
func TestEveryOddFileIsExplained(t *testing.T) {
	readme, err := os.ReadFile(testdata + "README.md")
	if err != nil {
		t.Fatal(err)
	}
	var tabled []string
	for _, tt := range refused {
		tabled = append(tabled, filepath.Base(oddFile(tt.name)))
	}
	for _, tt := range mended {
		tabled = append(tabled, filepath.Base(oddFile(tt.name)))
	}
	files, err := filepath.Glob(testdata + "g*/odd/*")
	if err != nil || len(files) != len(tabled) {
		t.Errorf("%d files, %d in the tables, %v", len(files), len(tabled), err)
	}
	for _, f := range files {
		name := filepath.Base(f)
		if !slices.Contains(tabled, name) || !strings.Contains(string(readme), "\n| "+name+" |") {
			t.Errorf("%s is missing in a table or in the README", name)
		}
	}
}
