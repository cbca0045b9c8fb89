package coursefile

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
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
