package field

import (
	"errors"
	"fmt"

	"isoeffort.example/internal/locate"
)

// Error says why a runner or a file was refused, and where. Its text is one line,
// "FILE:LINE: cause", without what is not known.
type Error = locate.Error

// The causes for which a runner, a file or an option is refused.
var (
	ErrName      = errors.New("bad name")
	ErrDuplicate = errors.New("name stands twice")
	ErrNumber    = errors.New("bad number")
	ErrTime      = errors.New("bad time")
	ErrAim       = errors.New("more than one aim")
	ErrHeader    = errors.New("bad header")
	ErrSyntax    = errors.New("bad CSV")
	ErrText      = errors.New("not UTF-8 text")
	ErrNoRunners = errors.New("no runners")
	ErrTooLarge  = errors.New("file too large")
	ErrPanic     = errors.New("planning panicked")
	ErrOption    = errors.New("option out of range")
	ErrTarget    = errors.New("bad target")
	ErrPassage   = errors.New("no passage makes the cutoff")
)

// A Panic is what a panic while planning one runner is turned into: a fault of the
// program, kept to that runner. It wraps ErrPanic.
type Panic struct {
	Value any
	Stack []byte
}

// Error returns the value, without the stack.
func (p *Panic) Error() string { return fmt.Sprintf("%v: %v", ErrPanic, p.Value) }

// Unwrap returns ErrPanic.
func (p *Panic) Unwrap() error { return ErrPanic }
