package chart

import (
	"image"
	"image/draw"
	"math"
	"unicode"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// A sheet is the paper of a PNG: marks are laid on it by how much of each dot they cover.
type sheet struct {
	image *image.Gray
	scale float64 // dots per pt
	ink   vector.Rasterizer
	cover image.Alpha
	buf   sfnt.Buffer
}

func newSheet(wide, high int, scale float64) *sheet {
	return &sheet{image: whitePaper(wide, high), scale: scale}
}

func (s *sheet) draw(m *mark) {
	switch {
	case m.text != "":
		s.lay(m.ink, s.glyphs(m))
	default:
		if m.fill >= 0 {
			s.lay(m.fill, s.dots(m.paths))
		}
		if m.pen.width > 0 {
			s.lay(m.pen.ink, s.outline(m))
		}
	}
}

// dots turns points of the figure into dots, which count from the upper left corner.
func (s *sheet) dots(paths [][]spot) [][]spot {
	high := float64(s.image.Bounds().Dy())
	out := make([][]spot, len(paths))
	for i, line := range paths {
		for _, p := range line {
			out[i] = append(out[i], spot{p.x * s.scale, high - p.y*s.scale})
		}
	}
	return out
}

// lay fills closed paths, in dots. Paths of one direction add up, as in a pen's line; one
// the other way within another is a hole, as in a letter.
func (s *sheet) lay(ink grey, paths [][]spot) {
	r := bounds(paths).Intersect(s.image.Bounds())
	if r.Empty() {
		return
	}
	s.ink.Reset(r.Dx(), r.Dy())
	for _, line := range paths {
		for i, p := range line {
			x, y := float32(p.x-float64(r.Min.X)), float32(p.y-float64(r.Min.Y))
			if i == 0 {
				s.ink.MoveTo(x, y)
				continue
			}
			s.ink.LineTo(x, y)
		}
		s.ink.ClosePath()
	}
	s.cover = *image.NewAlpha(image.Rect(0, 0, r.Dx(), r.Dy()))
	s.ink.DrawOp = draw.Src
	s.ink.Draw(&s.cover, s.cover.Bounds(), image.Opaque, image.Point{})
	s.blend(ink, r)
}

// blend lays ink on the dots of a rectangle as far as they are covered.
func (s *sheet) blend(ink grey, r image.Rectangle) {
	tone := int(ink.byte())
	for y := range r.Dy() {
		row := s.image.Pix[s.image.PixOffset(r.Min.X, r.Min.Y+y):]
		for x, a := range s.cover.Pix[y*s.cover.Stride : y*s.cover.Stride+r.Dx()] {
			if a > 0 {
				row[x] = uint8((int(row[x])*(255-int(a)) + tone*int(a) + 127) / 255)
			}
		}
	}
}

// bounds returns the rectangle of whole dots about paths.
func bounds(paths [][]spot) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, line := range paths {
		for _, p := range line {
			x0, x1 = min(x0, p.x), max(x1, p.x)
			y0, y1 = min(y0, p.y), max(y1, p.y)
		}
	}
	if x0 > x1 {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1)))
}

// glyphs returns the outlines of a text in dots.
func (s *sheet) glyphs(m *mark) [][]spot {
	face := faceOf(m.strong, m.size)
	high := float64(s.image.Bounds().Dy())
	em := fixed.Int26_6(math.Round(m.size * s.scale * 64))
	x, y := m.at.x, high-m.at.y*s.scale
	var paths [][]spot
	var before string
	for _, r := range m.text {
		i, err := face.Face.GlyphIndex(&s.buf, r)
		if err != nil || i == 0 && unicode.In(r, unicode.Mn, unicode.Me) {
			continue
		}
		at := (x + width(before+string(r), m.strong, m.size) - width(string(r), m.strong, m.size)) * s.scale
		before += string(r)
		if segments, err := face.Face.LoadGlyph(&s.buf, i, em, nil); err == nil {
			paths = append(paths, curves(segments, at, y)...)
		}
	}
	return paths
}

// curves turns the segments of a glyph into closed paths from an origin in dots.
func curves(segments sfnt.Segments, x, y float64) [][]spot {
	var paths [][]spot
	at := func(p fixed.Point26_6) spot { return spot{x + float64(p.X)/64, y + float64(p.Y)/64} }
	for _, g := range segments {
		last := len(paths) - 1
		switch g.Op {
		case sfnt.SegmentOpMoveTo:
			paths = append(paths, []spot{at(g.Args[0])})
		case sfnt.SegmentOpLineTo:
			paths[last] = append(paths[last], at(g.Args[0]))
		case sfnt.SegmentOpQuadTo:
			a, b, c := paths[last][len(paths[last])-1], at(g.Args[0]), at(g.Args[1])
			for t := 0.25; t <= 1; t += 0.25 {
				u := 1 - t
				paths[last] = append(paths[last], spot{u*u*a.x + 2*u*t*b.x + t*t*c.x, u*u*a.y + 2*u*t*b.y + t*t*c.y})
			}
		}
	}
	return paths
}
