package page

import "strings"

// Wrap prints a paragraph behind a label, the later lines indented as deep. Words stand one
// space apart, and the first one right behind the label; one that is wider than a line is
// broken, with an ellipsis where it goes on. A label beyond half of the page is no measure
// for the later lines, which are indented to half of it then.
func (p *Page) Wrap(label, text string) {
	w := wrapping{page: p, line: label, indent: strings.Repeat(" ", min(Columns(label), Width/2)), empty: true}
	for _, word := range strings.Fields(text) {
		w.put(strings.ReplaceAll(word, HardSpace, " "))
	}
	p.Line("%s", w.line)
}

// wrapping is a paragraph on its way to the page.
type wrapping struct {
	page   *Page
	line   string // what stands on the last line
	indent string // of the lines to come
	empty  bool   // no word stands on the last line yet
}

// leastRoom is the room in which a word is broken: a wide character and the ellipsis.
const leastRoom = 3

func (w *wrapping) put(word string) {
	for {
		space := " "
		if w.empty {
			space = ""
		}
		room := Width - Columns(w.line+space)
		if Columns(word) <= room {
			w.line += space + word
			w.empty = false
			return
		}
		if w.empty && room >= leastRoom {
			head := Clip(word, room)
			w.line += head
			word = strings.TrimPrefix(word, strings.TrimSuffix(head, ellipsis))
		}
		w.page.Line("%s", w.line)
		w.line, w.empty = w.indent, true
	}
}
