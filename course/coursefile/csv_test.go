package coursefile

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"isoeffort.example/course"
)

func TestReadCSVRefuses(t *testing.T) {
	for _, tt := range []struct {
		name, text, want string
		cause            error
	}{
		{"empty", "", "f:1: file is empty", ErrEmpty},
		{"blank lines", "\n\n", "f:1: file is empty", ErrEmpty},
		{"no header", "0,100\n10,101\n", `f:1: first line must name distance_m and elevation_m, each once: it reads "0,100"`, ErrColumns},
		{"a column missing", "distance_m,height\n0,1\n", `f:1: first line must name distance_m and elevation_m, each once: it reads "distance_m,height"`, ErrColumns},
		{"a column twice", "distance_m,elevation_m,distance_m\n0,1,0\n", `f:1: first line must name distance_m and elevation_m, each once: it reads "distance_m,elevation_m,distance_m"`, ErrColumns},
		{"semicolons", "distance_m;elevation_m\n0;1\n", `f:1: first line must name distance_m and elevation_m, each once: it reads "distance_m;elevation_m"`, ErrColumns},
		{"header alone", "distance_m,elevation_m\n", "f:1: fewer than two points at different places", course.ErrTooFewPoints},
		{"one row", "distance_m,elevation_m\n0,1\n", "f:2: fewer than two points at different places", course.ErrTooFewPoints},
		{"one place", "distance_m,elevation_m\n7,1\n7,2\n", "f:3: fewer than two points at different places", course.ErrTooFewPoints},
		{"words", "distance_m,elevation_m\n0,1\nten,2\n", `f:3: not a number: distance "ten"`, ErrNumber},
		{"no distance", "distance_m,elevation_m\n0,1\n,2\n", `f:3: not a number: distance ""`, ErrNumber},
		{"words for elevation", "distance_m,elevation_m\n0,1\n10,high\n", `f:3: not a number: elevation "high"`, ErrNumber},
		{"NaN", "distance_m,elevation_m\n0,NaN\n10,2\n", `f:2: value is not a finite number: elevation "NaN"`, course.ErrNotFinite},
		{"Inf", "distance_m,elevation_m\n0,1\n1e999,2\n", `f:3: value is not a finite number: distance "1e999"`, course.ErrNotFinite},
		{"too high", "distance_m,elevation_m\n0,1\n10,20000\n", "f:3: elevation outside -500 to 9000 m: 20000 m", course.ErrElevationRange},
		{"back", "distance_m,elevation_m\n0,1\n\n20,2\n10,3\n", "f:5: distance goes back: from 20 to 10 m", course.ErrDistanceBack},
		{"a field more", "distance_m,elevation_m\n0,1\n10,2,3\n", "f:3: wrong number of fields", ErrFields},
		{"a field less", "distance_m,elevation_m\n0,1\n10\n", "f:3: wrong number of fields", ErrFields},
		{"a stray quote", "distance_m,elevation_m\n0,1\n1\"0,2\n", `f:3: malformed file: bare " in non-quoted-field`, ErrSyntax},
		{"an open quote", "distance_m,elevation_m\n0,\"1\n", `f:2: malformed file: extraneous or missing " in quoted-field`, ErrSyntax},
		{"no elevation", "distance_m,elevation_m\n0,\n10,\n", "f:2: no elevation", course.ErrNoElevation},
		{"too long", "distance_m,elevation_m\n0,1\n1000001,1\n", "f:3: course longer than 1000 km: 1000.0 km", course.ErrTooLong},
	} {
		_, err := ReadCSV(strings.NewReader(tt.text), Options{File: "f"})
		if err == nil || err.Error() != tt.want || !errors.Is(err, tt.cause) {
			t.Errorf("%s: got  %v\nwant %s", tt.name, err, tt.want)
			continue
		}
		checkError(t, err, "f")
	}
}

func TestReadCSV(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		warnings   []string
	}{
		{"plain", "distance_m,elevation_m\n0,100\n500,150\n1000,120\n", nil},
		{"columns in another order, another column", "note,elevation_m,distance_m\n\"a \"\"b\"\"\",100,0\n,150,500\n,120,1000\n", nil},
		{"byte order mark and CR LF", "\ufeffdistance_m,elevation_m\r\n0,100\r\n500,150\r\n1000,120\r\n", nil},
		{"white space", " distance_m , elevation_m \n 0 , 100 \n 500 , 150 \n 1000 , 120 ", nil},
		{"not from 0", "distance_m,elevation_m\n2000,100\n2500,150\n3000,120\n", nil},
		{"exponents", "distance_m,elevation_m\n0,1e2\n5e2,1.5e2\n1e3,1.2e2\n", nil},
		{"an elevation missing", "distance_m,elevation_m\n0,100\n250,\n500,150\n1000,120\n", []string{"elevation missing at 1 of 4 points, first at line 3: filled from the neighbours"}},
	} {
		c, err := ReadCSV(strings.NewReader(tt.text), Options{Smoothing: course.AsGiven})
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if c.Length() != 1000 || c.Relief().Ascent != 50 || c.Relief().Descent != 30 || c.Elevation(250) != 125 {
			t.Errorf("%s: %g m, %+v", tt.name, c.Length(), c.Relief())
		}
		if !slices.Equal(c.Warnings(), tt.warnings) {
			t.Errorf("%s: warnings %q", tt.name, c.Warnings())
		}
	}
}

func TestReadCSVLimits(t *testing.T) {
	text := "distance_m,elevation_m\n0,1\n10,2\n20,3\n"
	if _, err := ReadCSV(strings.NewReader(text), Options{File: "f", MaxPoints: 2}); err == nil || err.Error() != "f:4: file is too large: more than 2 points" {
		t.Error(err)
	}
	if _, err := ReadCSV(strings.NewReader(text), Options{File: "f", MaxBytes: 30}); err == nil || err.Error() != "f:2: file is too large: more than 30 bytes" {
		t.Error(err)
	}
	broken := errors.New("gone")
	if _, err := ReadCSV(iotest.ErrReader(broken), Options{File: "f"}); !errors.Is(err, broken) || err.Error() != "f: gone" {
		t.Error(err)
	}
}
