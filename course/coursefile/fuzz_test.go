package coursefile

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"isoeffort.example/course"
)

// seed adds the files of testdata that match one of the patterns.
func seed(f *testing.F, patterns ...string) {
	for _, pattern := range patterns {
		files, err := filepath.Glob(testdata + pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, name := range files {
			text, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			if len(text) < 6000 { // large seeds slow the search down
				f.Add(text)
			}
		}
	}
}

func FuzzReadGPX(f *testing.F) {
	seed(f, "gpx/odd/*.gpx", "gpx/gpxgo/*.gpx")
	f.Fuzz(func(t *testing.T, text []byte) {
		fuzzCourse(t, text, ReadGPX)
		fuzzRecording(t, text, readGPX)
	})
}

func FuzzReadGeoJSON(f *testing.F) {
	seed(f, "geojson/odd/*")
	f.Fuzz(func(t *testing.T, text []byte) {
		fuzzCourse(t, text, ReadGeoJSON)
		fuzzRecording(t, text, readGeoJSON)
	})
}

func FuzzReadCSV(f *testing.F) {
	for _, text := range []string{
		"distance_m,elevation_m\n0,100\n500,150\n1000,120\n",
		"\ufeffa,elevation_m,distance_m\r\n\"x\ny\",,1e-300\r\n,5,2e-300\r\n,\"6\",7",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		fuzzCourse(t, text, ReadCSV)
		if c, err := ReadCSV(bytes.NewReader(text), Options{Smoothing: course.AsGiven}); err == nil {
			checkProfile(t, c)
		}
	})
}

func FuzzReadLandmarks(f *testing.F) {
	for _, text := range []string{
		"name,distance_m,kind,cutoff,note\nWell,5,station,2:30:00,\"a, b\"\nKnoll,1e3,top,26:30,\n",
		"\ufeffnote,distance_m,name\r\n\"x\ny\",0,\"a\"\"b\"\r\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		list, err := ReadLandmarks(bytes.NewReader(text), Options{File: "f"})
		if err != nil {
			checkError(t, err, "f")
			return
		}
		if len(list) > 0 {
			checkLandmarks(t, list)
		}
	})
}

// FuzzReadRecording reads each file as it is and, if it is not packed, packed by gzip,
// which must come to the same.
func FuzzReadRecording(f *testing.F) {
	seed(f, "gpx/odd/*", "geojson/odd/*")
	f.Add(packed(generated(5)))
	f.Fuzz(func(t *testing.T, text []byte) {
		a, err := ReadRecording(bytes.NewReader(text), Options{File: "f"})
		if err != nil {
			checkError(t, err, "f")
		} else {
			checkRecording(t, a)
		}
		if bytes.HasPrefix(text, []byte("\x1f\x8b")) {
			return
		}
		b, err2 := ReadRecording(bytes.NewReader(packed(text)), Options{File: "f"})
		switch {
		case (err == nil) != (err2 == nil), err != nil && err.Error() != err2.Error():
			t.Fatalf("plain %v, packed %v", err, err2)
		case err == nil && difference(a, b) != "":
			t.Fatal(difference(a, b))
		}
	})
}

// fuzzCourse holds a reader of courses to its contract, with each kind of smoothing.
func fuzzCourse(t *testing.T, text []byte, read func(io.Reader, Options) (*course.Course, error)) {
	t.Helper()
	for _, smoothing := range []float64{course.AsGiven, 0} {
		c, err := read(bytes.NewReader(text), Options{File: "f", Smoothing: smoothing})
		if err != nil {
			checkError(t, err, "f")
		} else {
			checkCourse(t, c)
		}
	}
}

// fuzzRecording writes what a reader accepts and reads it again.
func fuzzRecording(t *testing.T, text []byte, read func(*source, Options) (*Recording, error)) {
	t.Helper()
	o := Options{File: "f"}.named(bytes.NewReader(nil))
	r, err := read(newSource(bytes.NewReader(text), o.MaxBytes), o)
	if err != nil {
		checkError(t, err, "f")
		return
	}
	checkRecording(t, r)
}

// FuzzJSON holds the tokens of JSON to those of encoding/json.
func FuzzJSON(f *testing.F) {
	seed(f, "geojson/odd/*")
	for _, text := range []string{
		`{"a":[1,-0.5e+7,true,false,null,"\ud83d\ude00\ud800\u0041\n\/"],"":{}}`, `[1,]`, `{"a":1,}`, `[01]`, `-`, `1.`, `1e`, "\"\x01\"", `[}`, `1 2`, `{"a" 1}`, `{1:2}`, `,`, `[,1]`, `tru`, "\"\xff\"",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		j := newJSONReader(&source{text: bufio.NewReader(bytes.NewReader(text)), file: &limited{}}, Options{})
		var got []string
		token, err := j.token()
		for err == nil {
			got = append(got, string([]rune(token.String()))) // what is no UTF-8 as U+FFFD
			if j.depth == 0 {
				break
			}
			token, err = j.token()
		}
		if err == nil {
			err = j.end()
		}
		if err != nil {
			if json.Valid(text) && !strings.Contains(err.Error(), "deep") {
				t.Fatalf("refused: %v", err)
			}
			return
		}
		if !json.Valid(text) {
			t.Fatal("accepted")
		}
		if want := jsonTokens(t, text); !slices.Equal(got, want) {
			t.Fatalf("%q, want %q", got, want)
		}
	})
}

// jsonTokens are the tokens of a valid document by encoding/json.
func jsonTokens(t *testing.T, text []byte) (tokens []string) {
	t.Helper()
	in := json.NewDecoder(bytes.NewReader(text))
	in.UseNumber()
	for {
		token, err := in.Token()
		switch {
		case errors.Is(err, io.EOF):
			return tokens
		case err != nil:
			t.Fatal(err)
		case token == nil:
			tokens = append(tokens, "null")
		default:
			tokens = append(tokens, fmt.Sprint(token))
		}
	}
}
