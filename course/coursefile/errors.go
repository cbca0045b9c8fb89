package coursefile

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"isoeffort.example/internal/locate"
)

// An Error says what is wrong and where in a file. It prints as one line,
// "FILE:LINE: cause", without what is not known.
type Error = locate.Error

// The causes for which a file is refused, besides those of package course. An error of
// the operating system is wrapped as it is.
var (
	ErrFormat          = errors.New("file name ends neither in .gpx nor in .csv, .geojson or .json, with or without .gz")
	ErrEmpty           = errors.New("file is empty")
	ErrTooLarge        = errors.New("file is too large")
	ErrEncoding        = errors.New("character encoding is not known")
	ErrNotXML          = errors.New("not XML")
	ErrNotGPX          = errors.New("not a GPX document")
	ErrSyntax          = errors.New("malformed file")
	ErrNotGeoJSON      = errors.New("not a GeoJSON document")
	ErrNoTrack         = errors.New("no point of a track or route")
	ErrCoordinate      = errors.New("bad coordinate")
	ErrGap             = errors.New("gap of over 20 km between neighbouring points")
	ErrNumber          = errors.New("not a number")
	ErrColumns         = errors.New("first line must name distance_m and elevation_m, each once")
	ErrLandmarkColumns = errors.New("first line must name name and distance_m, and may name kind, cutoff, note and elevation_m, each once")
	ErrFields          = errors.New("wrong number of fields")
	ErrChoice          = errors.New("no such track")
	ErrTime            = errors.New("time cannot be written")
	ErrName            = errors.New("landmark without a name")
	ErrKind            = errors.New("kind is none of place, station and top")
	ErrCutoff          = errors.New("cutoff is neither a time of day HH:MM nor a time since the start H:MM:SS")
)

// errorAt gives a cause its place; line 0 stands for none.
func (o Options) errorAt(line int, cause error) *Error {
	var located *Error
	if errors.As(cause, &located) {
		return located
	}
	var path *fs.PathError
	if errors.As(cause, &path) {
		cause = path.Err // the name would stand twice in the text
	}
	return &Error{File: o.File, Line: line, Err: oneLineError{cause}}
}

// reading gives what ended the reading of a file its place. An error from outside, as of
// the operating system, has none in the text.
func (o Options) reading(line int, cause error) error {
	if !errors.Is(cause, ErrTooLarge) && !errors.Is(cause, ErrSyntax) {
		return o.errorAt(0, cause)
	}
	return o.errorAt(max(line, 1), cause)
}

// oneLineError shows a cause on one line, without the prefix of package course: the
// name of the file stands there already.
type oneLineError struct{ cause error }

func (e oneLineError) Error() string {
	return oneLine(strings.TrimPrefix(e.cause.Error(), "course: "), 1000)
}

func (e oneLineError) Unwrap() error { return e.cause }

// because adds a detail to a cause.
func because(cause error, format string, args ...any) error {
	return fmt.Errorf("%w: %s", cause, fmt.Sprintf(format, args...))
}

// atLine, onLine and firstAt say where a point stands in its file, if that is known.
func atLine(line int32) string { return knownLine(" at line", line) }

func onLine(line int32) string { return knownLine(", line", line) }

func firstAt(line int32) string { return knownLine(", first at line", line) }

func knownLine(before string, line int32) string {
	if line <= 0 {
		return ""
	}
	return fmt.Sprintf("%s %d", before, line)
}
