package coursefile

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"isoeffort.example/course"
)

func TestReadGeoJSONRefuses(t *testing.T) {
	t.Parallel()
	const point = `{"type":"Point","coordinates":`
	for _, tt := range []struct {
		name, text, want string
		cause            error
	}{
		{"empty", "", "f:1: file is empty", ErrEmpty},
		{"blank", " \n\n ", "f:3: malformed file: unexpected end", ErrSyntax},
		{"cut off", "{\n\"type\":\"Feature\",\n", "f:2: malformed file: unexpected end", ErrSyntax},
		{"cut off in a text", "{\n\"type\":\"Feat", "f:2: malformed file: unexpected end", ErrSyntax},
		{"cut off among the points", "{\n\"type\":\"LineString\",\"coordinates\":\n[[1,2],", "f:3: malformed file: unexpected end", ErrSyntax},
		{"words", "\n words", "f:2: malformed file: invalid character 'w' looking for beginning of value", ErrSyntax},
		{"a comma too many", "{\"type\":\"LineString\",\n\"coordinates\":[[1,2],\n]}", "f:3: malformed file: invalid character ']' looking for beginning of value", ErrSyntax},
		{"a bracket of the wrong kind", "{\"type\":\"LineString\",\n\"coordinates\":[[1,2}]}", "f:2: malformed file: invalid character '}' after array element", ErrSyntax},
		{"two documents", "{\"type\":\"Point\"}\n{}", "f:2: malformed file: after the end of the document: \"{\"", ErrSyntax},
		{"junk behind", "{\"type\":\"Point\"}\n#", "f:2: malformed file: after the end of the document: \"#\"", ErrSyntax},
		{"an array", "[1]", `f:1: not a GeoJSON document: it begins with "["`, ErrNotGeoJSON},
		{"a number", "7", `f:1: not a GeoJSON document: it begins with "7"`, ErrNotGeoJSON},
		{"null", "null", `f:1: not a GeoJSON document: it begins with "null"`, ErrNotGeoJSON},
		{"no type", "{}", `f:1: not a GeoJSON document: its type is ""`, ErrNotGeoJSON},
		{"another type", `{"type":"Topology"}`, `f:1: not a GeoJSON document: its type is "Topology"`, ErrNotGeoJSON},
		{"type no text", `{"type":["Point"]}`, `f:1: not a GeoJSON document: its type is ""`, ErrNotGeoJSON},
		{"nothing in it", `{"type":"FeatureCollection","features":[]}`, "f:1: no point of a track or route", ErrNoTrack},
		{"no geometry", `{"type":"Feature","geometry":null,"properties":null}`, "f:1: no point of a track or route", ErrNoTrack},
		{"a point alone", point + `[1,2,3]}`, "f:1: no point of a track or route", ErrNoTrack},
		{"an area alone", `{"type":"Polygon","coordinates":[[[1,2],[3,4],[5,6],[1,2]]]}`, "f:1: no point of a track or route", ErrNoTrack},
		{"latitude first", point + "\n[50,\n100]}", "f:3: bad coordinate: lat 100 is outside -90 to 90", ErrCoordinate},
		{"metres for degrees", point + `[500000,4000000]}`, "f:1: bad coordinate: lat 4e+06 is outside -90 to 90", ErrCoordinate},
		{"beyond the date line", point + `[181,4]}`, "f:1: bad coordinate: lon 181 is outside -180 to 180", ErrCoordinate},
		{"a number too large", point + `[1e999,4]}`, `f:1: bad coordinate: value is not a finite number: coordinate "1e999"`, course.ErrNotFinite},
		{"NaN", point + `[NaN,4]}`, "f:1: malformed file: invalid character 'N' looking for beginning of value", ErrSyntax},
		{"text for a number", point + `["1","2"]}`, `f:1: bad coordinate: no number: "1"`, ErrCoordinate},
		{"text for all", point + `"1 2"}`, `f:1: bad coordinate: no number: "1 2"`, ErrCoordinate},
		{"true", point + `[true]}`, `f:1: bad coordinate: no number: "true"`, ErrCoordinate},
		{"null for a latitude", point + `[1,null]}`, "f:1: bad coordinate: null", ErrCoordinate},
		{"one number", point + `[1]}`, "f:1: bad coordinate: a position of 1 number", ErrCoordinate},
		{"no number", `{"type":"LineString","coordinates":[[1,2],[]]}`, "f:1: bad coordinate: a position of 0 numbers", ErrCoordinate},
		{"an object among them", point + `[{"lat":1}]}`, "f:1: malformed file: an object among the coordinates", ErrSyntax},
		{"an object for all", point + `{"lat":1}}`, "f:1: malformed file: an object among the coordinates", ErrSyntax},
		{"uneven depth", `{"type":"LineString","coordinates":[[1,2],3]}`, "f:1: malformed file: a number where no coordinate can stand", ErrSyntax},
		{"uneven depth down", `{"type":"LineString","coordinates":[[1,2],[[3,4]]]}`, "f:1: malformed file: arrays nested too deep for coordinates", ErrSyntax},
		{"a number alone", point + `5}`, "f:1: malformed file: a number where no coordinate can stand", ErrSyntax},
		{"a line as deep as a point", `{"type":"LineString","coordinates":[1,2]}`, "f:1: malformed file: the numbers of a LineString stand 1 deep in arrays, not 2", ErrSyntax},
		{"a point as deep as a line", point + `[[1,2]]}`, "f:1: malformed file: the numbers of a Point stand 2 deep in arrays, not 1", ErrSyntax},
		{"too deep for any", point + strings.Repeat("[", 9), "f:1: malformed file: arrays nested too deep for coordinates", ErrSyntax},
		{"too high", point + `[1,2,10000]}`, "f:1: elevation outside -500 to 9000 m: 10000 m", course.ErrElevationRange},
		{"very deep", `{"a":` + strings.Repeat("[", 100_000), "f:1: malformed file: values nested more than 256 deep", ErrSyntax},
		{"very deep collections", strings.Repeat(`{"geometries":[`, 100_000), "f:1: malformed file: values nested more than 256 deep", ErrSyntax},
		{"very deep features", strings.Repeat(`{"features":[`, 100_000), "f:1: malformed file: values nested more than 256 deep", ErrSyntax},
	} {
		_, err := ReadGeoJSON(strings.NewReader(tt.text), Options{File: "f"})
		if err == nil || err.Error() != tt.want || !errors.Is(err, tt.cause) {
			t.Errorf("%s: got  %v\nwant %s", tt.name, err, tt.want)
			continue
		}
		checkError(t, err, "f")
	}
}

// A straight course of four points, 333.7 m, in many wrappings.
func TestReadGeoJSON(t *testing.T) {
	t.Parallel()
	const line = `[[-20,50,100],[-20,50.001,110],[-20,50.002,105],[-20,50.003,105]]`
	const feature = `{"type":"Feature","properties":{"name":"Ridge Round"},"geometry":{"type":"LineString","coordinates":` + line + `}}`
	for _, tt := range []struct {
		name, text, course string
		warnings           []string
	}{
		{"geometry", `{"type":"LineString","coordinates":` + line + `}`, "", nil},
		{"type last", `{"coordinates":` + line + `,"type":"LineString"}`, "", nil},
		{"white space before", "\ufeff \n\t{\"type\":\"LineString\",\"coordinates\":" + line + "}\n\n", "", nil},
		{"feature", feature, "Ridge Round", nil},
		{"properties last", `{"geometry":{"coordinates":` + line + `,"type":"LineString"},"properties":{"title":"Ridge\nRound"},"type":"Feature"}`, "Ridge Round", nil},
		{"collection", `{"features":[` + feature + `],"type":"FeatureCollection","name":"Old"}`, "Ridge Round", nil},
		{"name of the collection", `{"type":"FeatureCollection","name":"Old","features":[{"type":"Feature","properties":{},"geometry":{"type":"LineString","coordinates":` + line + `}}]}`, "Old", nil},
		{"two lines", `{"type":"MultiLineString","coordinates":[[[-20,50,100],[-20,50.001,110]],[],[[-20,50.002,105],[-20,50.003,105]]]}`, "", nil},
		{"collection of geometries", `{"type":"GeometryCollection","geometries":[{"type":"LineString","coordinates":` + line + `}]}`, "", nil},
		{"collection in a feature", `{"type":"Feature","properties":{"name":"Ridge Round","name":"no"},"geometry":{"type":"GeometryCollection","geometries":[{"type":"LineString","coordinates":` + line + `}]}}`, "Ridge Round", nil},
		{"further numbers and members", `{"bbox":[1,2,3,4],"crs":{"type":"name","properties":{"name":"x"}},"type":"LineString","coordinates":[[-20,50,100,7],[-20,50.001,110,"x"],[-20,50.002,105],[-20,50.003,105]]}`, "", nil},
		{
			"an elevation missing, one null", `{"type":"LineString","coordinates":[[-20,50,100],[-20,50.001,110],[-20,50.002],[-20,50.0025,null,5],[-20,50.003,105]]}`, "",
			[]string{"elevation missing at 2 of 5 points, first at line 1: filled from the neighbours"},
		},
		{
			"an area beside it", `{"type":"FeatureCollection","features":[` + feature + `,` + "\n" + `{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[1,2],[3,4],[5,6],[1,2]]]}}]}`, "Ridge Round",
			[]string{"1 surface left out, first up to line 2: no line on the ground"},
		},
		{
			"an unknown geometry beside it", `{"type":"GeometryCollection","geometries":[{"type":"Arc","coordinates":[[1,2]]},{"type":"LineString","coordinates":` + line + `}]}`, "",
			[]string{"1 object of unknown type left out, first up to line 1"},
		},
		{
			"times that do not fit", `{"type":"Feature","properties":{"times":["2020-06-01T08:00:00Z"]},"geometry":{"type":"LineString","coordinates":` + line + `}}`, "",
			[]string{"times that are not one for each position left out at 1 line, first up to line 1"},
		},
		{
			"odd times", `{"type":"Feature","properties":{"times":["soon",null,[7],"2020-06-01T08:00:00Z"],"time":{"a":1}},"geometry":{"type":"LineString","coordinates":` + line + `}}`, "",
			[]string{"time could not be read at 3 points, first at line 1: left out"},
		},
		{"odd members", `{"type":"Feature","properties":[7],"features":{"type":7},"geometries":7,"geometry":{"type":"LineString","coordinates":` + line + `}}`, "", nil},
		{"odd properties", `{"type":"Feature","properties":{"name":7,"desc":["a"],"kind":{},"times":{},"a":{"name":"b"}},"geometry":{"type":"LineString","coordinates":` + line + `}}`, "", nil},
	} {
		tt.text = strings.ReplaceAll(tt.text, `,"x"],[-20,50.002`, `,8],[-20,50.002`)
		c, err := ReadGeoJSON(strings.NewReader(tt.text), Options{Smoothing: course.AsGiven})
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if r := c.Relief(); c.Name() != tt.course || !near(c.Length(), 333.7, 0.05) || r.Ascent != 10 || !near(r.Descent, 5, 1e-9) {
			t.Errorf("%s: %q, %.1f m, %+v", tt.name, c.Name(), c.Length(), r)
		}
		if !slices.Equal(c.Warnings(), tt.warnings) {
			t.Errorf("%s: warnings %q", tt.name, c.Warnings())
		}
	}
}

func TestPointsOfGeoJSONAreWaypoints(t *testing.T) {
	t.Parallel()
	text := `{"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"name":"Well","desc":"cold","type":"Water","cmt":"c","sym":"s","time":"2020-06-01T10:00:00.5+02:00"},"geometry":{"type":"Point","coordinates":[-20,50.001,3]}},
{"type":"Feature","properties":{"name":"Flag"},"geometry":{"type":"MultiPoint","coordinates":[[-20,50.002],[180,50]]}},
{"type":"Feature","properties":{"kind":"route"},"geometry":{"type":"LineString","coordinates":[[-20,50,100],[-20,50.003,110]]}}
]}`
	r, err := ReadRecording(strings.NewReader(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := `[{{50.001 -20 3 2020-06-01 08:00:00.5 +0000 UTC} Well c cold s Water 2} ` +
		`{{50.002 -20 NaN 0001-01-01 00:00:00 +0000 UTC} Flag     3} {{50 -180 NaN 0001-01-01 00:00:00 +0000 UTC} Flag     3}]`
	if got := fmt.Sprint(r.Waypoints); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(r.Tracks) != 1 || !r.Tracks[0].Route {
		t.Errorf("%+v", r.Tracks)
	}
	c, err := r.Course(Options{})
	if err != nil {
		t.Fatal(err)
	}
	if l := c.Landmarks(); len(l) != 2 || l[0].Kind != course.Station || l[0].Note != "cold" || !near(l[1].Distance, 222.5, 0.05) {
		t.Errorf("%+v", l)
	}
	if w := c.Warnings(); !slices.Contains(w, `1 of 3 waypoints left out, being over 500 m from the course, first "Flag" at line 3`) {
		t.Errorf("%q", w)
	}
}

func TestLinesOfGeoJSON(t *testing.T) {
	t.Parallel()
	var b strings.Builder
	b.WriteString("{\"type\":\"LineString\",\r\n\"coordinates\":[")
	for i := range 20_000 {
		if i > 0 {
			b.WriteString(",")
		}
		fmt.Fprintf(&b, "\n[\n%.5f,\n50]\n", float64(i)*1e-4)
	}
	b.WriteString(",\n[0,\n95]]}")
	for _, read := range []func(string) (*course.Course, error){
		func(s string) (*course.Course, error) {
			return ReadGeoJSON(strings.NewReader(s), Options{File: "f"})
		},
		func(s string) (*course.Course, error) {
			return ReadGeoJSON(iotest.OneByteReader(strings.NewReader(s)), Options{File: "f"})
		},
	} {
		if _, err := read(b.String()); err == nil || err.Error() != "f:80004: bad coordinate: lat 95 is outside -90 to 90" {
			t.Error(err)
		}
	}
}

func TestGeoJSONLimits(t *testing.T) {
	t.Parallel()
	text := "{\"type\":\"LineString\",\"coordinates\":[[0,50,1],\n[0,50.001,1],\n[0,50.002,1]]}"
	for _, tt := range []struct {
		o    Options
		want string
	}{
		{Options{MaxPoints: 2}, "f:3: file is too large: more than 2 points"},
		{Options{MaxBytes: 50}, "f:2: file is too large: more than 50 bytes"},
	} {
		tt.o.File = "f"
		if _, err := ReadGeoJSON(strings.NewReader(text), tt.o); err == nil || err.Error() != tt.want || !errors.Is(err, ErrTooLarge) {
			t.Errorf("got  %v\nwant %s", err, tt.want)
		}
	}
	if _, err := ReadGeoJSON(strings.NewReader(text), Options{MaxPoints: 3, MaxBytes: int64(len(text))}); err != nil {
		t.Error(err)
	}
	many := `{"type":"Feature","properties":{"times":[` + strings.Repeat("null,", 5) + `null]}}`
	if _, err := ReadGeoJSON(strings.NewReader(many), Options{File: "f", MaxPoints: 5}); err == nil || err.Error() != "f:1: file is too large: more than 5 times" {
		t.Error(err)
	}
	broken := errors.New("gone")
	for _, start := range []string{"", text[:20], text} {
		r := iotest.ErrReader(broken)
		if _, err := ReadGeoJSON(iotest.OneByteReader(bytes.NewReader([]byte(start))), Options{}); err == nil && start != text {
			t.Error("accepted")
		}
		if _, err := ReadGeoJSON(multi(start, r), Options{File: "f"}); !errors.Is(err, broken) || err.Error() != "f: gone" {
			t.Errorf("after %d bytes: %v", len(start), err)
		}
	}
}
