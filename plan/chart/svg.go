package chart

import (
	"encoding/xml"
	"io"
	"strconv"
	"strings"
)

// SVG writes the figure as an SVG document, which depends on the figure alone. Texts stay
// texts, in Liberation Sans, or what the reader has in its place fitted to its widths. The
// error is the writer's.
func (f *Figure) SVG(w io.Writer) error {
	var b strings.Builder
	width, height := f.Size()
	b.WriteString(xml.Header)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" width="` + round(width) + `mm" height="` + round(height) +
		`mm" viewBox="0 0 ` + round(f.width) + " " + round(f.height) +
		`" font-family="'Liberation Sans',Arial,Helvetica,sans-serif" stroke-linejoin="round">` + "\n")
	b.WriteString(`<rect width="100%" height="100%" fill="#fff"/>` + "\n")
	for i := range f.marks {
		f.marks[i].svg(&b, f.height)
	}
	b.WriteString("</svg>\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// round writes a length to 0.01 pt, so that the last bits of a float64 do not show.
func round(x float64) string {
	s := strconv.FormatFloat(x, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// svg writes a mark; y counts down from the top.
func (m *mark) svg(b *strings.Builder, top float64) {
	if m.text != "" {
		m.svgText(b, top)
		return
	}
	b.WriteString(`<path d="`)
	for _, line := range m.paths {
		for i, s := range line {
			b.WriteString([]string{"M", "L"}[min(i, 1)] + round(s.x) + " " + round(top-s.y))
		}
		if m.fill >= 0 {
			b.WriteString("Z")
		}
	}
	b.WriteString(`" fill="` + m.fill.hex() + `"`)
	if m.pen.width > 0 {
		b.WriteString(` stroke="` + m.pen.ink.hex() + `" stroke-width="` + round(m.pen.width) + `"`)
	}
	if len(m.pen.dash) > 0 {
		var dash []string
		for _, d := range m.pen.dash {
			dash = append(dash, round(d))
		}
		b.WriteString(` stroke-dasharray="` + strings.Join(dash, " ") + `"`)
	}
	b.WriteString("/>\n")
}

func (m *mark) svgText(b *strings.Builder, top float64) {
	b.WriteString(`<text x="` + round(m.at.x) + `" y="` + round(top-m.at.y) + `" font-size="` + round(m.size) +
		`" textLength="` + round(m.wide) + `" lengthAdjust="spacingAndGlyphs"`)
	if m.strong {
		b.WriteString(` font-weight="bold"`)
	}
	b.WriteString(">")
	_ = xml.EscapeText(b, []byte(m.text)) // a Builder takes all
	b.WriteString("</text>\n")
}

// hex writes a grey as SVG has it.
func (g grey) hex() string {
	if g < 0 {
		return "none"
	}
	s := strconv.FormatUint(uint64(g.byte())+0x100, 16)[1:]
	return "#" + s + s + s
}
