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
	ErrFormat     = errors.New("file name ends neither in .gpx nor in .csv")
	ErrEmpty      = errors.New("file is empty")
	ErrTooLarge   = errors.New("file is too large")
	ErrEncoding   = errors.New("character encoding is not known")
	ErrNotXML     = errors.New("not XML")
	ErrNotGPX     = errors.New("not a GPX document")
	ErrSyntax     = errors.New("malformed file")
	ErrNoTrack    = errors.New("no point of a track or route")
	ErrCoordinate = errors.New("bad coordinate")
	ErrGap        = errors.New("gap of over 20 km between neighbouring points")
	ErrNumber     = errors.New("not a number")
	ErrColumns    = errors.New("first line must name distance_m and elevation_m, each once")
	ErrFields     = errors.New("wrong number of fields")
)

// errorAt gives a cause its place; line 0 stands for none.
func (o Options) errorAt(line int, cause error) error {
	var located *Error
	if errors.As(cause, &located) {
		return cause
	}
	var path *fs.PathError
	if errors.As(cause, &path) {
		cause = path.Err // the name would stand twice in the text
	}
	return &Error{File: o.File, Line: line, Err: oneLineError{cause}}
}

// oneLineError shows a cause on one line, without the prefix of package course: the
// name of the file stands there already.
type oneLineError struct{ cause error }

func (e oneLineError) Error() string {
	return oneLine(strings.TrimPrefix(e.cause.Error(), "course: "), 300)
}

func (e oneLineError) Unwrap() error { return e.cause }

// because adds a detail to a cause.
func because(cause error, format string, args ...any) error {
	return fmt.Errorf("%w: %s", cause, fmt.Sprintf(format, args...))
}
