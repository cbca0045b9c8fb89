package coursefile

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"isoeffort.example/course"
)

func FuzzReadGPX(f *testing.F) {
	for _, folder := range []string{"odd", "gpxgo"} {
		files, err := filepath.Glob(testdata + "gpx/" + folder + "/*.gpx")
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
	fuzz(f, ReadGPX)
}

func FuzzReadCSV(f *testing.F) {
	for _, text := range []string{
		"distance_m,elevation_m\n0,100\n500,150\n1000,120\n",
		"\ufeffa,elevation_m,distance_m\r\n\"x\ny\",,1e-300\r\n,5,2e-300\r\n,\"6\",7",
	} {
		f.Add([]byte(text))
	}
	fuzz(f, ReadCSV)
}

// fuzz holds a reader to its contract, with each kind of smoothing.
func fuzz(f *testing.F, read func(io.Reader, Options) (*course.Course, error)) {
	f.Fuzz(func(t *testing.T, text []byte) {
		for _, smoothing := range []float64{course.AsGiven, 0} {
			c, err := read(bytes.NewReader(text), Options{File: "f", Smoothing: smoothing})
			if err != nil {
				checkError(t, err, "f")
			} else {
				checkCourse(t, c)
			}
		}
	})
}
