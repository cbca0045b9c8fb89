package chart

import (
	"fmt"
	"strconv"
	"time"

	"isoeffort.example/course"
)

// captionGap is how far left of a pane the headings of its lower axes end, so that the first
// number has room, pt.
const captionGap = 11

// margin is the white border of a figure, pt.
const margin = 14.0

// A page is a figure in the making: headings take from its top, notes from its bottom, and
// the drawing gets what is left.
type page struct {
	*Figure
	w           Words
	u           units
	left, right float64
	top, bottom float64
	drawn       float64 // height of the drawing
}

func newPage(o Options) *page {
	f := &Figure{width: o.Width * ptPerMM, height: o.Height * ptPerMM}
	return &page{
		Figure: f, w: o.Words, u: o.units(),
		left: margin, right: f.width - margin, top: f.height - margin, bottom: margin,
	}
}

// least is the least height of a drawing, pt.
const least = 40.0

// done returns the figure, or an error if texts have left no room for its drawing.
func (p *page) done() (*Figure, error) {
	if !(p.drawn >= least) {
		w, h := p.Size()
		return nil, fmt.Errorf("chart: %.0f by %.0f mm leave no room for the drawing beside its texts: %w", w, h, ErrOption)
	}
	return p.Figure, nil
}

// crop takes so much away from the foot of the figure, where nothing is drawn.
func (p *page) crop(by float64) {
	for i := range p.marks {
		m := &p.marks[i]
		m.at.y -= by
		paths := make([][]spot, len(m.paths)) // marks may share spots
		for k, line := range m.paths {
			for _, s := range line {
				paths[k] = append(paths[k], spot{s.x, s.y - by})
			}
		}
		m.paths = paths
	}
	p.height -= by
}

// heading writes the title and what stands under it.
func (p *page) heading(title, name, summary string) {
	if name = plain(name); name == "" {
		name = p.w.Course
	}
	most := p.right - p.left
	rest := width(fill(title, "course", ""), true, titleSize)
	title = fill(title, "course", clip(name, true, titleSize, max(most-rest, 0)))
	p.top -= titleSize
	p.write(clip(title, true, titleSize, most), p.left, p.top, 0, titleSize, true)
	p.top -= 2
	for _, s := range wrap(summary, false, textSize, most) {
		p.top -= textSize * leading
		p.write(s, p.left, p.top, 0, textSize, false)
	}
	p.top -= 6
}

// notes writes sentences at the foot, one after the other.
func (p *page) notes(text string) {
	lines := wrap(text, false, smallSize, p.right-p.left)
	y := p.bottom + 2 + smallSize*leading*float64(len(lines))
	p.bottom = y + 1
	for _, l := range lines {
		y -= smallSize * leading
		p.write(l, p.left, y, 0, smallSize, false)
	}
}

// distances writes the axis of distance under a pane, with what stands under each number,
// and takes what it needs below y.
func (p *page) distances(g pane, y float64, below func(distance float64) string) {
	unit := p.u.distance
	every := unit * step(38*(g.to-g.from)/unit/(g.right-g.left))
	p.write(p.u.long, g.left-captionGap, y-smallSize-3, 1, smallSize, false)
	for _, d := range ticks(g.from, g.to, every) {
		x := g.x(d)
		p.line(pen{width: 0.6}, spot{x, y}, spot{x, y - 3})
		decimals := 0
		if every < unit {
			decimals = 1
		}
		p.write(p.u.number(d/unit, decimals), x, y-smallSize-3, 0.5, smallSize, false)
		if below != nil {
			p.write(below(d), x, y-2*smallSize-4, 0.5, smallSize, false)
		}
	}
	if below != nil {
		p.write(p.w.GunTime, g.left-captionGap, y-2*smallSize-4, 1, smallSize, false)
	}
}

// hm writes a duration to the minute, as in 2:36.
func hm(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	s := strconv.Itoa(m % 60)
	if m%60 < 10 {
		s = "0" + s
	}
	return strconv.Itoa(m/60) + ":" + s
}

// ground fills the ground under the profile, and draws a line on it unless its width is 0.
func (p *page) ground(c *course.Course, g pane, tone grey, line float64) {
	top := profileLine(c, g, 0, c.Length())
	area := append([]spot{{g.left, g.bottom}}, top...)
	p.area(tone, pen{}, append(area, spot{g.right, g.bottom})...)
	if line > 0 {
		p.line(pen{width: line}, top...)
	}
}

// profileLine returns the profile between two distances, about a point of it for each point
// of paper.
func profileLine(c *course.Course, g pane, from, to float64) []spot {
	line := []spot{g.at(from, c.Elevation(from))}
	for _, s := range c.Sample(int(g.right - g.left)) {
		if s.Distance > from && s.Distance < to {
			line = append(line, g.at(s.Distance, s.Elevation))
		}
	}
	return append(line, g.at(to, c.Elevation(to)))
}
