package write

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// sentence gives a text a capital and a full stop.
func sentence(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	s = string(unicode.ToUpper(first)) + s[size:]
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}

// count writes a number of things.
func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// percent writes a share, and never says 100 % of what is over it or 0 % of something.
func percent(share float64) string {
	switch {
	case share > 100:
		return "over 10000 %"
	case share < 0.01:
		return "under 1 %"
	case math.Abs(share-1) < 0.0005:
		return "100 %"
	case share > 0.99 && share < 1.01:
		return fmt.Sprintf("%.1f %%", 100*share)
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// columns is how many columns a text takes in a terminal: two for a wide character of
// East Asian scripts (Unicode Standard Annex 11), none for a mark on the one before.
func columns(s string) int {
	n := 0
	for _, r := range s {
		switch {
		case unicode.In(r, unicode.Mn, unicode.Me):
		case wide(r):
			n += 2
		default:
			n++
		}
	}
	return n
}

func wide(r rune) bool {
	k := width.LookupRune(r).Kind()
	return k == width.EastAsianWide || k == width.EastAsianFullwidth
}

// clip shortens a text to n columns, saying so by an ellipsis.
func clip(s string, n int) string {
	if columns(s) <= n {
		return s
	}
	cut := ""
	for _, r := range s {
		if columns(cut+string(r)) > n-1 {
			break
		}
		cut += string(r)
	}
	return strings.TrimRight(cut, " ") + "…"
}

// pad fills a text with spaces to n columns.
func pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-columns(s))) }

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
