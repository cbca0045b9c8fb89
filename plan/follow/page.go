package follow

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// pageWidth is the number of columns that no line exceeds.
const pageWidth = 80

// page collects lines of text.
type page struct{ strings.Builder }

func (t *page) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}

// labelWidth is that of the labels before paragraphs.
const labelWidth = 11

// entry prints a labelled paragraph.
func (t *page) entry(label, text string) { t.wrap(pad(label, labelWidth), text) }

// list prints paragraphs with a dash each, under a heading.
func (t *page) list(heading string, texts []string) {
	if len(texts) == 0 {
		return
	}
	t.line("%s", heading)
	for _, text := range texts {
		t.wrap("- ", text)
	}
}

// wrap prints a paragraph behind a label, the later lines indented as deep. A word longer
// than a line is broken.
func (t *page) wrap(label, text string) {
	indent := strings.Repeat(" ", columns(label))
	line, empty := label, true
	for _, word := range strings.Fields(text) {
		for {
			space := 1
			if empty {
				space = 0
			}
			if columns(line)+space+columns(word) <= pageWidth {
				line += strings.Repeat(" ", space) + word
				empty = false
				break
			}
			if empty {
				head := clip(word, pageWidth-columns(line))
				t.line("%s", line+head)
				word = strings.TrimPrefix(word, strings.TrimSuffix(head, "…"))
			} else {
				t.line("%s", line)
			}
			line, empty = indent, true
		}
	}
	t.line("%s", line)
}

// table prints rows in columns as wide as they need: the first to the left, as wide as
// there is room, the others to the right.
func (t *page) table(rows [][]string) {
	wide := make([]int, len(rows[0]))
	room := pageWidth
	for c := range wide {
		for _, r := range rows {
			wide[c] = max(wide[c], columns(r[c]))
		}
		if c > 0 {
			room -= wide[c] + 2
		}
	}
	wide[0] = max(8, min(wide[0], room))
	for _, r := range rows {
		line := pad(clip(r[0], wide[0]), wide[0])
		for c, cell := range r[1:] {
			line += "  " + strings.Repeat(" ", wide[c+1]-columns(cell)) + cell
		}
		t.line("%s", line)
	}
}

// columns is how many columns a text takes in a terminal: two for a wide character of East
// Asian scripts (Unicode Standard Annex 11), none for a mark on the one before.
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
