package course

import (
	"errors"
	"fmt"
)

// The causes for which a profile is refused. They are wrapped, with the place, in a
// *PointError where one point is to blame.
var (
	ErrTooFewPoints   = errors.New("fewer than two points at different places")
	ErrNoElevation    = errors.New("no elevation")
	ErrNotFinite      = errors.New("value is not a finite number")
	ErrElevationRange = errors.New("elevation outside -500 to 9000 m")
	ErrDistanceBack   = errors.New("distance goes back")
	ErrTooLong        = errors.New("course longer than 1000 km")
	ErrOffCourse      = errors.New("place beyond the course")
	ErrNoPosition     = errors.New("no position on the globe")
	ErrOption         = errors.New("option out of range")
	ErrMark           = errors.New("no such landmark, or more than one")
	ErrMarkOrder      = errors.New("marks do not ascend")
	ErrNotMeeting     = errors.New("courses do not meet")
)

// Limits of what New accepts.
const (
	MaxLength    = 1_000_000 // m
	MinElevation = -500      // m; the lowest dry land lies at about -430 m
	MaxElevation = 9000      // m; the highest summit stands below 8850 m
)

// PointError says which point of a profile, counted from 0, is at fault and why.
type PointError struct {
	Index int
	Err   error
}

func (e *PointError) Error() string { return fmt.Sprintf("course: point %d: %v", e.Index, e.Err) }

// Unwrap returns the cause, one of this package's sentinels or an error that wraps one.
func (e *PointError) Unwrap() error { return e.Err }

// MarkError says which mark of a scaling, counted from 0, is at fault and why.
type MarkError struct {
	Index int
	Err   error
}

func (e *MarkError) Error() string { return fmt.Sprintf("course: mark %d: %v", e.Index, e.Err) }

// Unwrap returns the cause, one of this package's sentinels or an error that wraps one.
func (e *MarkError) Unwrap() error { return e.Err }
