package duration

import (
	"math"
	"time"

	"isoeffort.example/effort"
)

// LevelCost returns the cost in J/(kg m) of running on level ground, effort.RunningCost(0)
// times an athlete's economy: 3.6 for an economy of 1, which 0 means too. It leaves air
// out; effort.AirPower at the speed meant, over that speed, adds 0.16 to it at 4 m/s.
// An economy that is not a positive number gives NaN.
func LevelCost(economy float64) float64 {
	if economy == 0 {
		economy = 1
	}
	if !positive(economy) {
		return math.NaN()
	}
	return effort.RunningCost(0) * economy
}

// TimeAt returns the time to exhaustion over a distance in metres whose every metre costs
// the same, in J/(kg m), as LevelCost. It is the inverse of DistanceIn and has the
// errors of Time, of which ErrInput is also for a distance or a cost that is not a
// positive number.
func TimeAt(c Curve, distance, cost float64) (time.Duration, error) {
	if !positive(distance) || !positive(cost) {
		return 0, inputError("%g m at %g J/(kg m)", distance, cost)
	}
	return Time(c, distance*cost)
}

// DistanceIn returns the distance in metres that a time to exhaustion allows where every
// metre costs the same, in J/(kg m). It is NaN where Power is and for a cost that is not
// a positive number.
func DistanceIn(c Curve, t time.Duration, cost float64) float64 {
	if !positive(cost) {
		return math.NaN()
	}
	return Work(c, t) / cost
}

// IntensityPace returns the level pace, as the time for a kilometre, that a relative
// intensity buys: a power of intensity · HourPower(c), at a cost in J/(kg m). It does not
// ask whether that power can be held, or is run or walked.
//
// The error wraps ErrInput for an intensity or a cost that is not a positive number, for
// a curve without an hour power, and for a pace that is longer than a Duration can be.
func IntensityPace(c Curve, intensity, cost float64) (time.Duration, error) {
	hour := HourPower(c)
	if !positive(intensity) || !positive(cost) || !positive(hour) {
		return 0, inputError("a pace for %g times %g W/kg at %g J/(kg m)", intensity, hour, cost)
	}
	return seconds(1000 * cost / (intensity * hour))
}

// seconds is a positive number of seconds as a Duration, or an error if it is none.
func seconds(s float64) (time.Duration, error) {
	if !(s > 0 && s < longestTime.Seconds()) {
		return 0, inputError("a time of %g s", s)
	}
	return effort.Seconds(s), nil
}
