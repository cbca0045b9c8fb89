package say

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Count returns a number of things.
func Count[N int | int64](n N, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

// Percent returns a share in whole per cent, and never 0 % of something: below 1 % and
// beyond 10000 % it says so. NaN is "NaN %".
func Percent(share float64) string {
	switch {
	case share > 0 && share < 0.01:
		return "under 1 %"
	case share > 100:
		return "over 10000 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// Capital gives a text a capital.
func Capital(s string) string {
	if s == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// Sentence gives a text a capital and a full stop. Of nothing it makes nothing.
func Sentence(s string) string {
	if s = Capital(s); s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}
