package elevation

import (
	"errors"
	"fmt"
)

// The causes for which a profile is refused, wrapped with the place in a *PointError
// where one point is to blame.
var (
	ErrTooFewPoints = errors.New("fewer than two points at different places")
	ErrNoElevation  = errors.New("no elevation")
	ErrNotFinite    = errors.New("value is not a finite number")
	ErrDistanceBack = errors.New("distance goes back")
	ErrTooLong      = errors.New("profile longer than 1000 km")
	ErrOption       = errors.New("option out of range")
)

// MaxLength is the longest profile that is cleaned, in metres.
const MaxLength = 1_000_000

// Heights outside these bounds are no heights of ground that is run on: they are taken
// for missing ones. Many recorders write such a number where they have none.
const (
	MinElevation = -500 // m; the lowest dry land lies at about -430 m
	MaxElevation = 9000 // m; the highest summit stands below 8850 m
)

// PointError says which point, counted from 0, is at fault and why.
type PointError struct {
	Index int
	Err   error
}

func (e *PointError) Error() string { return fmt.Sprintf("elevation: point %d: %v", e.Index, e.Err) }

// Unwrap returns the cause, one of this package's sentinels.
func (e *PointError) Unwrap() error { return e.Err }
