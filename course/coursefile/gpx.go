package coursefile

import (
	"io"

	"isoeffort.example/course"
)

// ReadGPX reads a course from a GPX 1.0 or 1.1 file as the package's comment describes.
// Every error is an *Error. The course's name is that of its first track (or route)
// that has one, else the document's, else "".
func ReadGPX(r io.Reader, o Options) (*course.Course, error) {
	o = o.named(r)
	recording, err := readGPX(newSource(r, o.MaxBytes), o)
	if err != nil {
		return nil, err
	}
	return recording.Course(o)
}
