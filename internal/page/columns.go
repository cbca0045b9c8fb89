package page

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

const ellipsis = "…"

// Columns returns how many columns a text takes in a terminal: two for a wide character of
// East Asian scripts (Unicode Standard Annex 11), none for a mark on the one before. Of a
// text with control characters, which Plain takes out, it knows nothing.
func Columns(s string) int {
	n := 0
	for _, r := range s {
		n += columns(r)
	}
	return n
}

func columns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// Clip shortens a text to n columns, at least one, saying so by an ellipsis.
func Clip(s string, n int) string {
	used, cut := 0, 0
	for i, r := range s {
		if used < n {
			cut = i
		}
		if used += columns(r); used > n {
			return strings.TrimRight(s[:cut], " ") + ellipsis
		}
	}
	return s
}

// Pad fills a text with spaces to n columns. A wider one it leaves as it is.
func Pad(s string, n int) string { return s + blank(n-Columns(s)) }

// PadLeft fills a text with spaces before it.
func PadLeft(s string, n int) string { return blank(n-Columns(s)) + s }

func blank(n int) string { return strings.Repeat(" ", max(0, n)) }

// Plain takes out of a text what would disturb a page: control and format characters, and
// all space but single spaces between words.
func Plain(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			return ' '
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}
