package curve

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
)

// A Rule says how fast ground is covered by its gradient alone, whoever walks and for
// however long. Rules stand for comparison: they know nothing of effort.
type Rule interface {
	// Speed returns the horizontal speed in m/s: metres of the map, not of the slope,
	// over time. NaN gives NaN.
	Speed(gradient float64) float64
}

// ErrSpeed is wrapped by the error of Time for a course that a rule cannot cover.
var ErrSpeed = errors.New("no time at the speed of the rule")

// Time returns how long a rule takes over a course, each straight piece of the profile
// at the speed for its gradient. Smoothing matters: a rule that charges climb charges the
// climb of the profile as it is. The surface and braking of the ground are not looked at.
//
// Where the rule's speed is not a positive finite number, or the time longer than a
// time.Duration holds, it returns an error that wraps ErrSpeed and gives the place.
func Time(c *course.Course, r Rule) (time.Duration, error) {
	seconds := 0.0
	x0, z0 := c.Point(0)
	for j := 1; j < c.Len(); j++ {
		x1, z1 := c.Point(j)
		gradient := (z1 - z0) / (x1 - x0)
		speed := r.Speed(gradient)
		seconds += (x1 - x0) / speed
		if !(speed > 0 && speed <= math.MaxFloat64) || !(seconds < math.MaxInt64/1e9) {
			return 0, fmt.Errorf("curve: %w: %g m/s on a gradient of %g, %.0f m from the start", ErrSpeed, speed, gradient, x0)
		}
		x0, z0 = x1, z1
	}
	return time.Duration(math.Round(seconds * 1e9)), nil
}
