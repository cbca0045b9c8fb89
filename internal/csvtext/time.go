package csvtext

import (
	"errors"
	"strings"
	"time"
)

// The causes for which a text is no time.
var (
	ErrTwoParts = errors.New("may be hours and minutes or minutes and seconds; write H:MM:SS, such as 0:40:00")
	ErrNoTime   = errors.New("is not H:MM:SS or a number of seconds")
)

// Time reads H:MM:SS, H:MM:SS.s or decimal seconds, to the nanosecond; further digits are
// dropped. Hours have one to six digits, whole seconds up to nine: the caller has bounds of
// its own. The error is ErrTwoParts or ErrNoTime.
func Time(s string, decimalComma bool) (time.Duration, error) {
	if decimalComma {
		s = strings.Replace(s, ",", ".", 1)
	}
	whole, fraction, hasPoint := strings.Cut(s, ".")
	d, ok := nanos(fraction)
	ok = ok || !hasPoint
	switch strings.Count(whole, ":") {
	case 0:
		seconds, isNumber := digits(whole, 9)
		d, ok = d+seconds*time.Second, ok && isNumber
	case 1:
		return 0, ErrTwoParts
	default:
		hms, isClock := clock(whole)
		d, ok = d+hms, ok && isClock
	}
	if !ok {
		return 0, ErrNoTime
	}
	return d, nil
}

// clock reads H:MM:SS.
func clock(s string) (time.Duration, bool) {
	hours, rest, _ := strings.Cut(s, ":")
	minutes, seconds, _ := strings.Cut(rest, ":")
	h, okH := digits(hours, 6)
	m, okM := digits(minutes, 2)
	sec, okS := digits(seconds, 2)
	ok := okH && okM && okS && len(rest) == len("MM:SS") && m < 60 && sec < 60
	return h*time.Hour + m*time.Minute + sec*time.Second, ok
}

// digits reads one to most digits and nothing else.
func digits(s string, most int) (time.Duration, bool) {
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

// nanos reads the digits after a decimal point as a part of a second.
func nanos(fraction string) (time.Duration, bool) {
	n, unit := time.Duration(0), 100*time.Millisecond
	for i := range len(fraction) {
		if fraction[i] < '0' || fraction[i] > '9' {
			return 0, false
		}
		n += time.Duration(fraction[i]-'0') * unit
		unit /= 10
	}
	return n, fraction != ""
}
