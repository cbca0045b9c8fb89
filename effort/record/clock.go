package record

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// parseTime reads H:MM:SS, H:MM:SS.s or decimal seconds, to the nanosecond; further
// digits are dropped. The hours may have any number of digits, but the whole may not
// exceed MaxTime.
func parseTime(s string, decimalComma bool) (time.Duration, error) {
	hours, minutes, seconds := "0", "00", s
	switch strings.Count(s, ":") {
	case 0:
		if s == "" {
			return 0, fmt.Errorf("%w: it is empty", ErrTime)
		}
	case 1:
		return 0, fmt.Errorf("%w: %s could be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00", ErrTime, quote(s))
	default:
		hours, s, _ = strings.Cut(s, ":")
		minutes, seconds, _ = strings.Cut(s, ":")
		if !twoDigits(minutes) || len(seconds) < 2 || !twoDigits(seconds[:2]) {
			return 0, unreadableTime(hours + ":" + s)
		}
	}
	h, errH := strconv.ParseUint(hours, 10, 32)
	m, errM := strconv.ParseUint(minutes, 10, 8)
	sec, errS := parseSeconds(seconds, decimalComma)
	if errH != nil || errM != nil || errS != nil {
		return 0, unreadableTime(s)
	}
	if h > uint64(MaxTime/time.Hour) {
		return 0, fmt.Errorf("%w: %d h is longer than %d h", ErrTime, h, MaxTime/time.Hour)
	}
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + sec, nil
}
