// Package page makes pages of plain text for a terminal or a printer: lines of at most
// Width columns, paragraphs behind a label, and tables. It knows nothing of what it prints.
package page

import (
	"fmt"
	"io"
	"strings"
)

const (
	// Width is the number of columns that no paragraph, list or table exceeds.
	Width = 80

	// HardSpace in a text stands for a space that no line breaks at.
	HardSpace = "\x00"

	labelWidth = 11 // of the labels of Entry
)

// A Page collects lines. The zero value is an empty one.
type Page struct{ text strings.Builder }

// String returns the lines so far.
func (p *Page) String() string { return p.text.String() }

// Print writes the page. Its error is the writer's.
func (p *Page) Print(w io.Writer) error {
	_, err := io.WriteString(w, p.text.String())
	return err
}

// Line prints a line as it is, without the space at its end. It may be wider than the page.
func (p *Page) Line(format string, args ...any) {
	p.text.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}

// Entry prints a labelled paragraph; the paragraphs of several entries stand one below the
// other.
func (p *Page) Entry(label, text string) { p.Wrap(Pad(label, labelWidth), text) }

// List prints paragraphs with a dash each, under a heading, and nothing if there are none.
func (p *Page) List(heading string, texts []string) {
	if len(texts) == 0 {
		return
	}
	p.Line("%s", heading)
	for _, text := range texts {
		p.Wrap("- ", text)
	}
}
