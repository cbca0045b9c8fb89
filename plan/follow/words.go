package follow

import (
	"fmt"
	"math"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// hms writes a duration as H:MM:SS, with a sign where it is below 0.
func hms(d time.Duration) string {
	s, sign := int64(math.Round(d.Seconds())), ""
	if s < 0 {
		s, sign = -s, "-"
	}
	return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
}

// hm writes a duration as H:MM, rounded.
func hm(d time.Duration) string {
	m := int64(d.Round(time.Minute) / time.Minute)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// signed writes a difference with its sign, 0:00 without one.
func signed(d time.Duration) string {
	s := int64(math.Round(d.Seconds()))
	sign := "+"
	switch {
	case s == 0:
		sign = ""
	case s < 0:
		s, sign = -s, "-"
	}
	if s >= 3600 {
		return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%s%d:%02d", sign, s/60, s%60)
}

// ms writes minutes and seconds, with hours where there are any.
func ms(d time.Duration) string {
	if s := int64(math.Round(d.Seconds())); s < 3600 {
		return fmt.Sprintf("%d:%02d", s/60, s%60)
	}
	return hms(d)
}

// percent writes a share of the budget, and never 0 % of something.
func percent(share float64) string {
	switch {
	case share > 0 && share < 0.01:
		return "under 1 %"
	case share > 100:
		return "over 10000 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// plain takes out what would disturb a page: control characters and runs of space.
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			return ' '
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// capital gives a text a capital.
func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}
