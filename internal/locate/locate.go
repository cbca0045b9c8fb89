// Package locate gives errors in files their place. The readers of courses and of
// results share it so that a program can print both alike.
package locate

import "fmt"

// An Error says what is wrong and where in a file.
type Error struct {
	File string // as the caller named it, may be empty
	Line int    // from 1; 0 where a line has no meaning
	Err  error
}

// Error returns "FILE:LINE: cause", without what is not known.
func (e *Error) Error() string {
	switch {
	case e.File == "" && e.Line == 0:
		return e.Err.Error()
	case e.File == "":
		return fmt.Sprintf("line %d: %v", e.Line, e.Err)
	case e.Line == 0:
		return fmt.Sprintf("%s: %v", e.File, e.Err)
	}
	return fmt.Sprintf("%s:%d: %v", e.File, e.Line, e.Err)
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }
