package coursefile

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"isoeffort.example/course"
)

// Longest texts kept, in characters.
const (
	maxName = 100
	maxNote = 1000
)

// oneLine collapses white space to single blanks, drops characters that control the
// screen rather than show, and cuts off what exceeds most characters.
func oneLine(s string, most int) string {
	if len(s) <= most && isPlain(s) {
		return s
	}
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\ufeff':
			return -1
		}
		return r
	}, s)
	s = strings.Join(strings.Fields(s), " ")
	count := 0
	for i := range s {
		if count == most {
			return strings.TrimSpace(s[:i]) + "…"
		}
		count++
	}
	return s
}

// isPlain reports whether a text is of ASCII letters, digits and signs with single blanks
// between them, as most are: such a one stays as it is.
func isPlain(s string) bool {
	blank := true
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == ' ' && blank {
			return false
		}
		blank = s[i] == ' '
	}
	return !blank || s == ""
}

// cleaned trims a text at both ends, gives its lines one kind of end and drops what XML
// does not allow.
func cleaned(s string) string {
	s = strings.ToValidUTF8(s, "\ufffd")
	s = strings.ReplaceAll(s, "\r\n", "\n")
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\r':
			return '\n'
		case r < ' ' && r != '\n' && r != '\t', r == '\ufffe', r == '\uffff':
			return -1
		}
		return r
	}, s)
	return strings.TrimSpace(s)
}

// quoted shows a piece of the file in an error.
func quoted(s string) string { return fmt.Sprintf("%q", oneLine(s, 40)) }

// number reads a finite number; what says in errors what it is.
func number(what, text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	switch {
	case strings.ContainsAny(text, "xX"): // Go reads hexadecimal ones
		return 0, because(ErrNumber, "%s %s", what, quoted(text))
	case math.IsNaN(v) || math.IsInf(v, 0):
		return 0, fmt.Errorf("%w: %s %s", course.ErrNotFinite, what, quoted(text))
	case err != nil:
		return 0, because(ErrNumber, "%s %s", what, quoted(text))
	}
	return v, nil
}

// counted says how many there are of a thing.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
