package brief

import (
	"io"
	"strings"

	"isoeffort.example/internal/page"
)

// Text prints a briefing as plain text of at most 80 columns (a longer word, as in a name,
// is broken): that a goal is beyond the runner, where it is; the race, section after section
// with where it ends and when, the finish, and the cautions. Its error is the writer's.
func Text(w io.Writer, b *Briefing) error {
	var p page.Page
	words := b.words.over(English())
	paragraph := func(head string, lines []Line) {
		if len(lines) == 0 {
			return
		}
		if p.String() != "" {
			p.Line("")
		}
		p.Wrap("", head)
		var said []string
		for _, l := range lines {
			said = append(said, l.Text)
		}
		p.Wrap("", strings.Join(said, " "))
	}
	opening := b.Opening
	if len(opening) > 0 && opening[0].Kind == Beyond {
		p.Wrap("", opening[0].Text)
		opening = opening[1:]
	}
	paragraph(words.Opening, opening)
	for _, section := range b.Sections {
		paragraph(section.Heading, section.Lines)
	}
	paragraph(words.Closing, b.Closing)
	p.Line("")
	p.Line("%s", words.Careful)
	for _, c := range b.Cautions {
		p.Wrap("- ", c.Text)
	}
	return p.Print(w)
}
