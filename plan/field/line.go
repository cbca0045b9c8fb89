package field

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// split cuts a line into fields, which a quote may hold together; two quotes stand for one
// there. Space around fields is taken off.
func split(dst []string, line string, comma byte) ([]string, error) {
	if err := checkText(line); err != nil {
		return dst, err
	}
	for {
		line = strings.TrimLeft(line, " \t")
		field, rest, more := line, "", false
		if strings.HasPrefix(line, `"`) {
			var ok bool
			if field, rest, ok = unquote(line); !ok {
				return dst, fmt.Errorf("%w: a quote is left open", ErrSyntax)
			}
			if rest = strings.TrimLeft(rest, " \t"); rest != "" && rest[0] != comma {
				return dst, fmt.Errorf("%w: text after a closing quote", ErrSyntax)
			}
			if more = rest != ""; more {
				rest = rest[1:]
			}
		} else if field, rest, more = strings.Cut(line, string(rune(comma))); strings.Contains(field, `"`) {
			return dst, fmt.Errorf("%w: a quote inside a field without quotes", ErrSyntax)
		}
		dst = append(dst, strings.TrimSpace(field))
		if !more {
			return dst, nil
		}
		line = rest
	}
}

// unquote takes a quoted field off the front of a line.
func unquote(line string) (field, rest string, ok bool) {
	var b strings.Builder
	for rest = line[1:]; ; {
		text, after, closed := strings.Cut(rest, `"`)
		if !closed {
			return "", "", false
		}
		b.WriteString(text)
		if rest = after; !strings.HasPrefix(rest, `"`) {
			return b.String(), rest, true
		}
		b.WriteByte('"')
		rest = rest[1:]
	}
}

// checkText refuses what is no text, and what moves the cursor of those who print it.
func checkText(line string) error {
	for i, r := range line {
		if r == utf8.RuneError && !strings.HasPrefix(line[i:], string(utf8.RuneError)) {
			return fmt.Errorf("%w: byte 0x%02x; save it as CSV in UTF-8", ErrText, line[i])
		}
		if unicode.IsControl(r) && r != '\t' {
			return fmt.Errorf("%w: control character 0x%02x", ErrText, r)
		}
	}
	return nil
}
