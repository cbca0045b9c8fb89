package csvtext

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Delimiter returns what separates the fields of a file: a semicolon where its header, the
// first line that is neither blank nor a comment after #, has more of those than of commas,
// quoted ones aside, and a comma otherwise.
func Delimiter(text []byte) byte {
	var header []byte
	for line := range bytes.Lines(text) {
		if header = bytes.TrimSpace(line); len(header) > 0 && line[0] != '#' {
			break
		}
	}
	quoted, excess := false, 0
	for _, b := range header {
		switch {
		case b == '"':
			quoted = !quoted
		case b == ';' && !quoted:
			excess++
		case b == ',' && !quoted:
			excess--
		}
	}
	if excess > 0 {
		return ';'
	}
	return ','
}

// Columns finds columns by their names, which are lower-case, in the row of a header, where
// case and the space around a name do not matter. It returns for each name its field from 1,
// or 0 where there is none, and a text for what is not used. Its error is a name that stands
// twice.
func Columns(names, header []string) (at []int, unused []string, err error) {
	at = make([]int, len(names))
	nameless := 0
	for i, field := range header {
		field = strings.TrimSpace(field)
		name := strings.ToLower(field)
		c := slices.Index(names, name)
		switch {
		case name == "":
			nameless++
		case c < 0:
			unused = append(unused, fmt.Sprintf("column %s is not used", Quote(field)))
		case at[c] != 0:
			return nil, nil, fmt.Errorf("column %q stands twice", name)
		default:
			at[c] = i + 1
		}
	}
	if nameless > 0 {
		unused = append(unused, fmt.Sprintf("columns without a name are not used: %d", nameless))
	}
	return at, unused, nil
}

// longestQuote is how many runes of a field a message repeats.
const longestQuote = 40

// Quote puts a field in a message: on one line, however long or odd it is.
func Quote(s string) string {
	runes := 0
	for i := range s {
		if runes == longestQuote {
			return strconv.Quote(s[:i]) + "…"
		}
		runes++
	}
	return strconv.Quote(s)
}
