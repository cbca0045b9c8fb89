package coursefile

import (
	"io"
	"path/filepath"
	"strings"

	"isoeffort.example/course"
	heights "isoeffort.example/course/elevation"
)

// Options of the readers. The zero value is ready for a recorded or downloaded course.
type Options struct {
	// Length, Smoothing and Grid mean what they mean in course.Options.
	Length, Smoothing, Grid float64

	// Track and TrackName choose among the tracks and routes of a file. TrackName leaves
	// only those of that name, and Track takes one of what is left, counted from 1 in
	// the order of Recording.Tracks. With 0 and "" the course runs through all tracks or,
	// where there are none, through all routes; with a name alone, through all of that
	// name.
	Track     int
	TrackName string

	// Clean, if not nil, has the heights cleaned by package course/elevation, after
	// scaling to Length, in the place of Smoothing and Grid: outliers are repaired, noise
	// is told from ground and smoothed away, and the course knows how far its ascent may
	// be out. What is missing is filled there and counts as not seen. What was changed is
	// a warning each. A pointer to zero Options is ready.
	Clean *heights.Options

	// ListedHeights and WaypointHeights have the cleaning remove a drift of the recording
	// against elevations of landmarks: against those stated in Landmarks, and against
	// those of the file's waypoints that lie within 25 m of the course. Each counts with
	// an SD of 1 m (elevation.DefaultHeightSD), besides those in Clean.Known, whose
	// distances are those of the course as it is in the end. They are for elevations from
	// a better source than the recording, as a map or a survey. That of a waypoint often
	// is the recording's own: then it removes nothing, and what may be out of the ascent
	// is understated. Without Clean they do nothing, with a warning.
	ListedHeights, WaypointHeights bool

	// Landmarks are added to those of the file, at their distances on the course as it
	// is in the end: with Length, on the measured one. They take the place of the
	// file's own landmarks of the same names. With Length, the place of a waypoint whose
	// name just one waypoint has is that of the stated distance: the ground between such
	// waypoints is scaled piece by piece (course.Options.Marks). One whose piece would be
	// stretched to under 0.8 or over 1.25 times what the whole course is does not scale,
	// with a warning; it stands at its stated distance all the same. One off the course is
	// refused with the line of the list that it was read from. Cutoffs do not matter here.
	Landmarks []Landmark

	// File is the name of the file in errors. "" means what the reader's own Name
	// method returns, if it has one, as *os.File does.
	File string

	// MaxBytes and MaxPoints limit what is read: the size of the file, unpacked as well
	// as packed, and the number of points in it, waypoints included, whether used or
	// not. 0 or less means DefaultMaxBytes and DefaultMaxPoints.
	MaxBytes  int64
	MaxPoints int
}

// Limits that a zero Options stands for, and those that always hold.
const (
	DefaultMaxBytes  = 56 << 20  // a recording of 50 MB, whichever megabytes are meant
	DefaultMaxPoints = 1_000_000 // a point every metre of the longest course
	MaxWaypoints     = 1000      // that become landmarks; further ones are left out

	// MaxTokens bounds the brackets, names and values of a GeoJSON file, MaxNameSpaces the
	// name space declarations of a GPX file and MaxColumns the columns of a CSV file:
	// what takes time without being ground. The elements of a GPX file are bounded to one
	// for every 28 bytes of Options.MaxBytes, or 100 000 where that is more: a point with
	// an elevation has two and takes 60 bytes. [Our own]
	MaxTokens     = 10_000_000
	MaxNameSpaces = 1_000_000
	MaxColumns    = 1000
)

// Open reads a course from a file by its name's ending, in either case: .gpx as ReadGPX
// does, .geojson or .json as ReadGeoJSON, .csv as ReadCSV, with or without a further
// .gz. Options.File is set to the name if it is "".
func Open(name string, o Options) (*course.Course, error) {
	ending := strings.TrimSuffix(strings.ToLower(name), ".gz")
	switch filepath.Ext(ending) {
	case ".gpx":
		return open(name, o, ReadGPX)
	case ".geojson", ".json":
		return open(name, o, ReadGeoJSON)
	case ".csv":
		return open(name, o, ReadCSV)
	}
	if o.File == "" {
		o.File = name
	}
	return nil, o.errorAt(0, ErrFormat)
}

// maxElements is the most elements of a GPX file.
func (o Options) maxElements() int64 { return max(o.MaxBytes/28, 100_000) }

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
