package treadmill

import (
	"errors"
	"fmt"
)

// The causes for which points, options and files are refused.
var (
	ErrGradient        = errors.New("bad gradient")
	ErrCost            = errors.New("bad cost")
	ErrWeight          = errors.New("bad weight")
	ErrSpeed           = errors.New("bad speed")
	ErrDegree          = errors.New("bad degree")
	ErrTooFewGradients = errors.New("too few gradients")
	ErrIllConditioned  = errors.New("ill-conditioned")
	ErrHeader          = errors.New("bad header")
	ErrSyntax          = errors.New("bad CSV")
	ErrNoPoints        = errors.New("no points")
	ErrTooLarge        = errors.New("file larger than 16 MiB")
)

// An Error says why points were refused, and which. It wraps one of the sentinels.
type Error struct {
	Point int // index into the points given; −1 where no one point is to blame
	Err   error
}

// Error returns "treadmill: points[N]: cause", or without the point.
func (e *Error) Error() string {
	if e.Point < 0 {
		return fmt.Sprintf("treadmill: %v", e.Err)
	}
	return fmt.Sprintf("treadmill: points[%d]: %v", e.Point, e.Err)
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// refuse returns an *Error of no one point.
func refuse(format string, args ...any) error {
	return &Error{Point: -1, Err: fmt.Errorf(format, args...)}
}
