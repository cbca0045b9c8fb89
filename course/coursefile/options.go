package coursefile

import (
	"io"
	"os"
	"path/filepath"
	"strings"

	"isoeffort.example/course"
)

// Options of the readers. The zero value is ready for a recorded or downloaded course.
type Options struct {
	// Length, Smoothing and Grid mean what they mean in course.Options.
	Length, Smoothing, Grid float64

	// File is the name of the file in errors. "" means what the reader's own Name
	// method returns, if it has one, as *os.File does.
	File string

	// MaxBytes and MaxPoints limit what is read: the size of the file and the number
	// of points in it, whether used or not. 0 or less means
	// DefaultMaxBytes and DefaultMaxPoints.
	MaxBytes  int64
	MaxPoints int
}

// Limits that a zero Options stands for, and those that always hold.
const (
	DefaultMaxBytes  = 128 << 20
	DefaultMaxPoints = 500_000 // a point every 2 m of the longest course
	MaxWaypoints     = 1000
)

// Open reads a file by its name's ending, .gpx or .csv in either case. Options.File
// is set to the name if it is "".
func Open(name string, o Options) (*course.Course, error) {
	if o.File == "" {
		o.File = name
	}
	read := ReadGPX
	switch strings.ToLower(filepath.Ext(name)) {
	case ".gpx":
	case ".csv":
		read = ReadCSV
	default:
		return nil, o.errorAt(0, ErrFormat)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, o.errorAt(0, err)
	}
	defer f.Close()
	return read(f, o)
}

// named returns the options with the name and limits filled in.
func (o Options) named(r io.Reader) Options {
	if f, ok := r.(interface{ Name() string }); ok && o.File == "" {
		o.File = f.Name()
	}
	if o.MaxBytes <= 0 {
		o.MaxBytes = DefaultMaxBytes
	}
	if o.MaxPoints <= 0 {
		o.MaxPoints = DefaultMaxPoints
	}
	return o
}
