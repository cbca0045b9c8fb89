package chart

import (
	"math"

	"isoeffort.example/course"
)

// tallest are the vertical exaggerations drawn. The greatest keeps hills from being needles and
// long courses flat that are: a gradient of 1 % is drawn as steep as 14°, one of 10 % as
// 68°. [Our own]
var tallest = [...]float64{1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25}

// leastSpan is the height in metres that the greatest room for a profile shows at least,
// which keeps short courses flat that are. [Our own]
const leastSpan = 200

// steepness returns the greatest exaggeration at which a course fits into a pane.
func (g pane) steepness(c *course.Course) float64 {
	low, high := extremes(c)
	perMetre := (g.right - g.left) / (g.to - g.from)
	room := 0.84 * (g.top - g.bottom)
	times := 0.0
	for _, t := range tallest {
		if (high-low)*t*perMetre <= room && leastSpan*t*perMetre <= g.top-g.bottom {
			times = t
		}
	}
	if times == 0 { // a hill higher than wide: smaller than true to scale
		times = room / (max(high-low, leastSpan) * perMetre)
	}
	return times
}

// heights sets the vertical axis of a pane for a course, so many times too tall. The ground
// stands on a foot of a tenth of the pane.
func (g *pane) heights(c *course.Course, times float64) {
	low, _ := extremes(c)
	scale := times * (g.right - g.left) / (g.to - g.from)
	g.low = low - 0.1*(g.top-g.bottom)/scale
	g.high = g.low + (g.top-g.bottom)/scale
}

// spare returns how much of the height of a pane a course has no use for that is flat even
// at the greatest exaggeration.
func (g pane) spare(c *course.Course) float64 {
	low, high := extremes(c)
	drawn := g.y(high) - g.y(low)
	return max(0, g.top-g.bottom-max(paneLeast, drawn/0.45))
}

// extremes returns the lowest and the highest elevation of a course.
func extremes(c *course.Course) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range c.Len() {
		_, z := c.Point(i)
		low, high = min(low, z), max(high, z)
	}
	return low, high
}

// levels draws the lines of equal height, and their heights to the left.
func (p *page) levels(g pane) {
	u := p.u.height
	every := step(15 * (g.high - g.low) / u / (g.top - g.bottom))
	for _, z := range ticks(g.low/u, g.high/u, every) {
		y := g.y(z * u)
		if y < g.bottom+2.5 || y > g.top-smallSize*1.6 { // above it stands the unit
			continue
		}
		p.line(pen{ink: 0.75, width: 0.35}, spot{g.left, y}, spot{g.right, y})
		p.write(p.u.number(z, decimalsOf(every)), g.left-5, y-smallSize*0.35, 1, smallSize, false)
	}
	p.write(p.u.short, g.left-5, g.top-smallSize*0.75, 1, smallSize, false)
}

// hatch draws slanted lines under a line of the profile, down to y.
func (p *page) hatch(top []spot, bottom float64) {
	const apart, fine = 3.2, 0.25 // pt
	m := mark{fill: unseen, pen: pen{width: 0.4}}
	left, right := top[0].x, top[len(top)-1].x
	high := bottom
	for _, s := range top {
		high = max(high, s.y)
	}
	// A line rises by 45° from (foot, bottom).
	for foot := math.Floor((left-high+bottom)/apart) * apart; foot < right; foot += apart {
		var begin *spot
		var last spot
		end := func() {
			if begin != nil && last.x-begin.x > 2*fine {
				m.paths = append(m.paths, []spot{*begin, last})
			}
			begin = nil
		}
		i := 0
		for x := max(left, foot); x <= min(right, foot+high-bottom); x += fine {
			y := bottom + x - foot
			for i+2 < len(top) && top[i+1].x < x {
				i++
			}
			if y > between(top[i], top[i+1], x) {
				end()
				continue
			}
			last = spot{x, y}
			if begin == nil {
				begin = &spot{x, y}
			}
		}
		end()
	}
	if len(m.paths) > 0 {
		p.marks = append(p.marks, m)
	}
}

// between returns the height at x on the line through two spots.
func between(a, b spot, x float64) float64 {
	if b.x <= a.x {
		return b.y
	}
	return a.y + (b.y-a.y)*min(max((x-a.x)/(b.x-a.x), 0), 1)
}
