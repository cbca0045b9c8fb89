package say

import (
	"fmt"
	"time"
)

// HMS returns a duration as H:MM:SS, rounded to the second, half of one away from 0, and
// with a minus where it is below 0 then.
func HMS(d time.Duration) string {
	sign, s := parted(d)
	return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
}

// MS returns it as M:SS, rounded alike: an hour is 60:00.
func MS(d time.Duration) string {
	sign, s := parted(d)
	return fmt.Sprintf("%s%d:%02d", sign, s/60, s%60)
}

// Short returns it as M:SS under an hour and as H:MM:SS from there.
func Short(d time.Duration) string {
	if _, s := parted(d); s < 3600 {
		return MS(d)
	}
	return HMS(d)
}

// HM returns it as H:MM, rounded to the minute.
func HM(d time.Duration) string { return MS(d.Round(time.Minute) / 60) }

// Signed returns a difference as Short does, with a plus above 0, and without a sign where
// it rounds to 0.
func Signed(d time.Duration) string {
	if sign, s := parted(d); sign == "" && s > 0 {
		return "+" + Short(d)
	}
	return Short(d)
}

// Lasting returns a duration in words under two minutes, in seconds, and as Short does from
// there.
func Lasting(d time.Duration) string {
	if sign, s := parted(d); sign == "" && s < 120 {
		return Count(s, "second", "seconds")
	}
	return Short(d)
}

// parted returns the sign of a duration, and the size in whole seconds.
func parted(d time.Duration) (sign string, seconds int64) {
	seconds = int64(d.Round(time.Second) / time.Second)
	if seconds < 0 {
		return "-", -seconds
	}
	return "", seconds
}
