package brief

import (
	"io"
	"strings"
	"unicode/utf8"
)

const pageWidth = 80

// Text prints a briefing as plain text of at most 80 columns (a longer word, as in a
// name, stands on a line of its own): the race, section after section with where it ends
// and when, the finish, and the cautions. Columns are counted in runes. Its error is the
// writer's.
func Text(w io.Writer, b *Briefing) error {
	var s strings.Builder
	words := b.words.over(English())
	paragraph := func(head string, lines []Line) {
		if len(lines) == 0 {
			return
		}
		if s.Len() > 0 {
			s.WriteString("\n")
		}
		wrap(&s, head, "")
		var said []string
		for _, l := range lines {
			said = append(said, l.Text)
		}
		wrap(&s, strings.Join(said, " "), "")
	}
	paragraph(words.Opening, b.Opening)
	for _, section := range b.Sections {
		paragraph(section.Heading, section.Lines)
	}
	paragraph(words.Closing, b.Closing)
	s.WriteString("\n" + words.Careful + "\n")
	for _, c := range b.Cautions {
		wrap(&s, "- "+c.Text, "  ")
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// wrap writes a text in lines of the page's width, the later ones indented.
func wrap(s *strings.Builder, text, indent string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if n := utf8.RuneCountInString(line); n > 0 && n+1+utf8.RuneCountInString(word) > pageWidth {
			s.WriteString(line + "\n")
			line = indent
		}
		if line != "" && line != indent {
			line += " "
		}
		line += word
	}
	s.WriteString(line + "\n")
}
