package effort

import (
	"math"
	"time"
)

// UniformTime returns the time in which the athlete spends the whole budget on work J/kg
// of uniform ground: run all the way at one cost per metre, with a fade of shape 1. With
// τ the time in hours and h = work/(3600 P60),
//
//	τ^(1−k) = (e^(φh) − 1)/φ
//
// which is h itself where nothing fades. It predicts a race known by its work at once,
// starts a solver and checks one. [Our own, by integration of the model.] It is 0 for an
// athlete out of range and for work that is not positive.
func (a Athlete) UniformTime(work float64) time.Duration {
	if a.check() != nil {
		return 0
	}
	return Seconds(3600 * math.Pow(a.freshHours(work), 1/(1-a.Endurance)))
}

// freshHours is the time in hours that work takes at a relative intensity of 1,
// (e^(φh) − 1)/φ.
func (a Athlete) freshHours(work float64) float64 {
	h := work / (3600 * a.HourPower)
	if a.Fade == 0 {
		return h
	}
	return math.Expm1(a.Fade*h) / a.Fade
}

// UniformWork returns the work in J/kg that spends the budget in a time: the inverse of
// UniformTime, 3600 P60 ln(1 + φ τ^(1−k))/φ. It is NaN for an athlete out of range.
func (a Athlete) UniformWork(t time.Duration) float64 {
	if a.check() != nil {
		return math.NaN()
	}
	fresh := math.Pow(t.Hours(), 1-a.Endurance)
	if a.Fade > 0 {
		fresh = math.Log1p(a.Fade*fresh) / a.Fade
	}
	return 3600 * a.HourPower * fresh
}

// Seconds returns a duration of so many seconds, rounded to the nanosecond and held
// within what a Duration can be; NaN gives 0.
func Seconds(s float64) time.Duration {
	const most = float64(math.MaxInt64) // 2^63, one more than a Duration can be
	switch s = math.Round(s * 1e9); {
	case s >= most:
		return math.MaxInt64
	case s <= -most:
		return math.MinInt64
	case math.IsNaN(s):
		return 0
	}
	return time.Duration(s)
}
