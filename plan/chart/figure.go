package chart

import (
	"image/color"

	"gonum.org/v1/plot/vg"
)

// A Figure is a drawing, in black, white and greys. It does not change and may be shared
// between goroutines.
type Figure struct {
	width, height float64 // pt
	marks         []mark
	warnings      []string
}

// Warnings returns what a reader of the figure should be told: labels left out, letters
// that the font of a PNG lacks.
func (f *Figure) Warnings() []string { return append([]string(nil), f.warnings...) }

// Size returns the width and height in mm.
func (f *Figure) Size() (width, height float64) { return f.width / ptPerMM, f.height / ptPerMM }

const ptPerMM = 72 / 25.4

// grey is how light a mark is: 0 black, 1 white.
type grey float64

const (
	black  grey = 0
	white  grey = 1
	unseen grey = -1
)

// A spot is a place on a figure in points from its lower left corner.
type spot struct{ x, y float64 }

// A mark is a path or a text.
type mark struct {
	paths [][]spot
	fill  grey // of closed paths, unseen for none
	pen   pen

	text   string
	at     spot // left end of the base line
	wide   float64
	size   float64
	strong bool
	ink    grey
}

// A pen draws lines.
type pen struct {
	ink   grey
	width float64 // pt, 0 for no line
	dash  []float64
}

// Draw draws the figure on a canvas of gonum/plot, its lower left corner at the origin:
// for PDF and EPS, or within a larger drawing.
func (f *Figure) Draw(c vg.Canvas) {
	c.Push()
	defer c.Pop()
	for i := range f.marks {
		m := &f.marks[i]
		if m.text != "" {
			c.SetColor(m.ink.color())
			c.FillString(faceOf(m.strong, m.size), vg.Point{X: vg.Length(m.at.x), Y: vg.Length(m.at.y)}, m.text)
			continue
		}
		m.drawPath(c)
	}
}

func (m *mark) drawPath(c vg.Canvas) {
	var p vg.Path
	for _, line := range m.paths {
		for i, s := range line {
			if i == 0 {
				p.Move(vg.Point{X: vg.Length(s.x), Y: vg.Length(s.y)})
				continue
			}
			p.Line(vg.Point{X: vg.Length(s.x), Y: vg.Length(s.y)})
		}
		if m.fill >= 0 {
			p.Close()
		}
	}
	if m.fill >= 0 {
		c.SetColor(m.fill.color())
		c.Fill(p)
	}
	if m.pen.width > 0 {
		dash := make([]vg.Length, len(m.pen.dash))
		for i, d := range m.pen.dash {
			dash[i] = vg.Length(d)
		}
		c.SetColor(m.pen.ink.color())
		c.SetLineWidth(vg.Length(m.pen.width))
		c.SetLineDash(dash, 0)
		c.Stroke(p)
	}
}

func (g grey) color() color.Gray { return color.Gray{Y: g.byte()} }

func (g grey) byte() uint8 { return uint8(float64(g)*255 + 0.5) }

// line draws lines from spot to spot.
func (f *Figure) line(p pen, spots ...spot) {
	f.marks = append(f.marks, mark{paths: [][]spot{spots}, fill: unseen, pen: p})
}

// area fills a closed path, or only draws it.
func (f *Figure) area(fill grey, p pen, spots ...spot) {
	if fill < 0 {
		spots = append(spots, spots[0])
	}
	f.marks = append(f.marks, mark{paths: [][]spot{spots}, fill: fill, pen: p})
}

// box fills a rectangle.
func (f *Figure) box(fill grey, p pen, x0, y0, x1, y1 float64) {
	f.area(fill, p, spot{x0, y0}, spot{x1, y0}, spot{x1, y1}, spot{x0, y1})
}

// write puts a text with its left end at x; align moves it left by that share of its
// width: 0.5 centres it on x, 1 ends it there.
func (f *Figure) write(s string, x, y, align, size float64, strong bool) {
	if s == "" {
		return
	}
	w := width(s, strong, size)
	face := faceOf(strong, size)
	if _, missing := split(face.Face, s); missing > 0 {
		f.warn("the font has no sign for some letters of “" + s + "”: a PNG shows them as boxes")
	}
	f.marks = append(f.marks, mark{text: s, at: spot{x - align*w, y}, wide: w, size: size, strong: strong, fill: unseen})
}

func (f *Figure) warn(text string) {
	for _, w := range f.warnings {
		if w == text {
			return
		}
	}
	f.warnings = append(f.warnings, text)
}
