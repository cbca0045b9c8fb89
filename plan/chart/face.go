package chart

import (
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"gonum.org/v1/plot/font"
)

// Sizes of letters in points.
const (
	titleSize = 11.0
	textSize  = 7.5
	smallSize = 7.0
)

// leading is the distance of lines of text, in sizes.
const leading = 1.18

var (
	regular = sync.OnceValue(func() font.Face { return face(liberationsansregular.TTF, xfont.WeightNormal) })
	bold    = sync.OnceValue(func() font.Face { return face(liberationsansbold.TTF, xfont.WeightBold) })
)

func face(ttf []byte, weight xfont.Weight) font.Face {
	parsed, err := opentype.Parse(ttf)
	if err != nil {
		panic(err) // the fonts are part of the program
	}
	return font.Face{
		Font: font.Font{Typeface: "Liberation", Variant: "Sans", Weight: weight},
		Face: parsed,
	}
}

// faceOf returns the face of a text.
func faceOf(strong bool, size float64) font.Face {
	f := regular()
	if strong {
		f = bold()
	}
	f.Font.Size = font.Length(size)
	return f
}

// width returns how wide a text is in points. A sign that the font lacks, which a reader
// of SVG takes from another one, counts as wide as the size.
func width(s string, strong bool, size float64) float64 {
	f := faceOf(strong, size)
	kept, missing := split(f.Face, s)
	return float64(f.Width(kept)) + float64(missing)*size
}

// split parts the signs that a font has from the number of those that it lacks. Marks that
// stand on the letter before them take no room.
func split(f *sfnt.Font, s string) (kept string, missing int) {
	var b strings.Builder
	var buf sfnt.Buffer
	for _, r := range s {
		i, err := f.GlyphIndex(&buf, r)
		switch {
		case err == nil && i != 0:
			b.WriteRune(r)
		case !unicode.In(r, unicode.Mn, unicode.Me):
			missing++
		}
	}
	return b.String(), missing
}

// plain takes out what would disturb a figure, and what XML cannot hold: control
// characters, runs of space, bytes that are no UTF-8.
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Zl, r), unicode.Is(unicode.Zp, r):
			return ' '
		case r == unicode.ReplacementChar, r >= 0xfdd0 && r <= 0xfdef, r&0xfffe == 0xfffe:
			return '?'
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// clip shortens a text to a width in points, saying so by an ellipsis.
func clip(s string, strong bool, size, most float64) string {
	if width(s, strong, size) <= most {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		cut := strings.TrimRight(string(runes[:n]), " ,.;:-") + "…"
		if width(cut, strong, size) <= most {
			return cut
		}
	}
	return ""
}

// wrap cuts a text into lines of a width in points.
func wrap(s string, strong bool, size, most float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		next := strings.TrimLeft(line+" "+word, " ")
		if line != "" && width(next, strong, size) > most {
			lines = append(lines, line)
			next = word
		}
		line = clip(next, strong, size, most)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
