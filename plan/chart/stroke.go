package chart

import "math"

// outline returns the areas in dots that a pen covers, all of one direction.
func (s *sheet) outline(m *mark) [][]spot {
	half := m.pen.width * s.scale / 2
	var areas [][]spot
	for _, line := range s.dots(m.paths) {
		if m.fill >= 0 && len(line) > 0 {
			line = append(line, line[0])
		}
		for _, part := range dashes(line, m.pen.dash, s.scale) {
			areas = append(areas, strokes(part, half)...)
		}
	}
	return areas
}

// strokes returns a rectangle for each piece of a line, and a disc at each sharp bend: at
// slight ones it would only add to the ink at the rim.
func strokes(line []spot, half float64) [][]spot {
	var areas [][]spot
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		if long == 0 {
			continue
		}
		nx, ny := -(b.y-a.y)/long*half, (b.x-a.x)/long*half
		areas = append(areas, []spot{{a.x + nx, a.y + ny}, {a.x - nx, a.y - ny}, {b.x - nx, b.y - ny}, {b.x + nx, b.y + ny}})
		if i > 1 && half > 0.5 && sharp(line[i-2], a, b) {
			areas = append(areas, disc(a, half))
		}
	}
	return areas
}

// sharp reports whether a line turns by more than 30°.
func sharp(a, b, c spot) bool {
	ux, uy, vx, vy := b.x-a.x, b.y-a.y, c.x-b.x, c.y-b.y
	return ux*vx+uy*vy < 0.866*math.Hypot(ux, uy)*math.Hypot(vx, vy)
}

// disc returns a circle that runs the same way as the rectangles of strokes.
func disc(c spot, radius float64) []spot {
	const n = 12
	var round []spot
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		round = append(round, spot{c.x + radius*cos, c.y + radius*sin})
	}
	return round
}

// dashes cuts a line into dashes and leaves out the gaps between them.
func dashes(line []spot, dash []float64, scale float64) [][]spot {
	if len(dash) == 0 || len(line) < 2 {
		return [][]spot{line}
	}
	var parts [][]spot
	part := []spot{line[0]}
	which, left := 0, dash[0]*scale
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		for {
			long := math.Hypot(b.x-a.x, b.y-a.y)
			if long <= left {
				left -= long
				part = append(part, b)
				break
			}
			a = spot{a.x + (b.x-a.x)*left/long, a.y + (b.y-a.y)*left/long}
			if which%2 == 0 {
				parts = append(parts, append(part, a))
			}
			part = []spot{a}
			which++
			left = dash[which%len(dash)] * scale
		}
	}
	if which%2 == 0 {
		parts = append(parts, part)
	}
	return parts
}
