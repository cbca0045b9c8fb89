package record

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// parseTime reads H:MM:SS, H:MM:SS.s or decimal seconds, to the nanosecond; further
// digits are dropped. Bounds are for Check to hold it against.
func parseTime(s string, decimalComma bool) (time.Duration, error) {
	whole := s
	if decimalComma {
		whole = strings.Replace(s, ",", ".", 1)
	}
	whole, fraction, hasPoint := strings.Cut(whole, ".")
	d, ok := parseNanos(fraction)
	ok = ok || !hasPoint
	switch strings.Count(whole, ":") {
	case 0:
		seconds, isNumber := parseDigits(whole, 9)
		d, ok = d+seconds*time.Second, ok && isNumber
	case 1:
		return 0, fmt.Errorf("%w: %s may be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00", ErrTime, quote(s))
	default:
		hms, isClock := parseClock(whole)
		d, ok = d+hms, ok && isClock
	}
	if !ok {
		return 0, fmt.Errorf("%w: %s is not H:MM:SS or a number of seconds", ErrTime, quote(s))
	}
	return d, nil
}

// parseClock reads H:MM:SS, the hours with one to six digits.
func parseClock(s string) (time.Duration, bool) {
	hours, rest, _ := strings.Cut(s, ":")
	minutes, seconds, _ := strings.Cut(rest, ":")
	h, okH := parseDigits(hours, 6)
	m, okM := parseDigits(minutes, 2)
	sec, okS := parseDigits(seconds, 2)
	ok := okH && okM && okS && len(rest) == len("MM:SS") && m < 60 && sec < 60
	return h*time.Hour + m*time.Minute + sec*time.Second, ok
}

// parseDigits reads one to most digits and nothing else.
func parseDigits(s string, most int) (time.Duration, bool) {
	if s == "" || len(s) > most {
		return 0, false
	}
	n := time.Duration(0)
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = 10*n + time.Duration(s[i]-'0')
	}
	return n, true
}

// parseNanos reads the digits after a decimal point as a part of a second.
func parseNanos(fraction string) (time.Duration, bool) {
	nanos, unit := time.Duration(0), 100*time.Millisecond
	for i := range len(fraction) {
		if fraction[i] < '0' || fraction[i] > '9' {
			return 0, false
		}
		nanos += time.Duration(fraction[i]-'0') * unit
		unit /= 10
	}
	return nanos, fraction != ""
}

// clock writes a duration as H:MM:SS with as many decimals as it needs, so that
// parseTime returns it unchanged unless it is negative.
func clock(d time.Duration) string {
	sign, nanos := "", uint64(d)
	if d < 0 {
		sign, nanos = "-", -nanos
	}
	seconds := nanos / 1e9
	s := fmt.Sprintf("%s%d:%02d:%02d", sign, seconds/3600, seconds/60%60, seconds%60)
	if nanos %= 1e9; nanos > 0 {
		s += "." + strings.TrimRight(strconv.FormatUint(1e9+nanos, 10)[1:], "0")
	}
	return s
}
