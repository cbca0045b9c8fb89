package field

import (
	"errors"
	"strconv"
	"strings"
	"time"
)

var (
	errTwoParts = errors.New("may be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00")
	errNoTime   = errors.New("is not H:MM:SS or a number of seconds, of at most 1000 hours")
)

// longest is the longest time that is read.
const longest = 1000 * time.Hour

// parseTime reads H:MM:SS, H:MM:SS.s or decimal seconds, to the nanosecond; further digits
// are dropped.
func parseTime(s string) (time.Duration, error) {
	whole, fraction, hasPoint := strings.Cut(s, ".")
	nanos, ok := int64(0), true
	if hasPoint {
		nanos, ok = digits((fraction + "000000000")[:9], 9)
		ok = ok && fraction != "" && allDigits(fraction)
	}
	parts := strings.Split(whole, ":")
	if len(parts) == 2 {
		return 0, errTwoParts
	}
	seconds := int64(0)
	for i, part := range parts {
		n, isNumber := digits(part, 9)
		if i > 0 && (len(part) != 2 || n > 59) || len(parts) > 3 {
			return 0, errNoTime
		}
		seconds, ok = 60*seconds+n, ok && isNumber
	}
	if !ok || seconds > int64(longest/time.Second) {
		return 0, errNoTime
	}
	d := time.Duration(seconds)*time.Second + time.Duration(nanos)
	if d > longest {
		return 0, errNoTime
	}
	return d, nil
}

func allDigits(s string) bool { return strings.Trim(s, "0123456789") == "" }

// digits reads one to most decimal digits, at most 18, and nothing else.
func digits(s string, most int) (int64, bool) {
	if s == "" || len(s) > most || !allDigits(s) {
		return 0, false
	}
	n, err := strconv.ParseInt(s, 10, 64)
	return n, err == nil
}
