package elevation

import "math"

// grid returns the places of the profile's points.
func (g *nodes) grid() []float64 { return evenly(g.start, g.end, (len(g.height)-1)*g.stride) }

// evenly returns n+1 places from start to end.
func evenly(start, end float64, n int) []float64 {
	x := make([]float64, n+1)
	for i := range x {
		x[i] = start + (end-start)*float64(i)/float64(n)
	}
	x[n] = end
	return x
}

// level takes the least-squares line from the heights, so that the ground that is left
// rises by nothing in the mean.
func (g *nodes) level() {
	var s sums
	middle := float64(len(g.height)-1) / 2
	base := math.NaN()
	for i, z := range g.height {
		if math.IsNaN(z) {
			continue
		}
		if math.IsNaN(base) {
			base = z
		}
		s.add(float64(i)-middle, z-base)
	}
	g.trend = s.slope()
	g.base = base + (s.z-g.trend*s.x)/s.n - g.trend*middle
	for i := range g.height {
		g.height[i] -= g.base + float64(i)*g.trend
	}
}

// straight reports whether nothing is left to smooth: all heights within a micrometre of
// a line.
func (g *nodes) straight() bool {
	for _, z := range g.height {
		if math.Abs(z) > 1e-6 { // false at NaN
			return false
		}
	}
	return true
}

// rises returns the rises from node to node, straight over nodes that have no height and
// over stretches that are left out, and level beyond the outermost heights.
func (g *nodes) rises(out []Flag) []float64 {
	rise := make([]float64, len(g.height)-1)
	last := -1
	for i, z := range g.height {
		x := g.start + float64(i)*g.spacing
		for len(out) > 0 && out[0].To <= x {
			out = out[1:]
		}
		if math.IsNaN(z) || len(out) > 0 && x > out[0].From && last >= 0 {
			continue
		}
		if last >= 0 {
			each := (z - g.height[last]) / float64(i-last)
			for k := last; k < i; k++ {
				rise[k] = each
			}
		}
		last = i
	}
	return rise
}

// hiddenGap is a gap in metres between heights in which undulations are not seen. [Our
// own]
const hiddenGap = 100

// unseen reports for each node whether it and the one before lie in a hidden gap.
func (g *nodes) unseen() []bool {
	unseen := make([]bool, len(g.height))
	last := -1
	for i := 0; i <= len(g.height); i++ {
		if i < len(g.height) && math.IsNaN(g.height[i]) {
			continue
		}
		if float64(i-last)*g.spacing > hiddenGap {
			for k := last + 1; k <= min(i, len(g.height)-1); k++ {
				unseen[k] = true
			}
		}
		last = i
	}
	return unseen
}

// seen returns the nodes that have heights, as they were before smoothing.
func (g *nodes) seen() (x, z []float64) {
	for i, h := range g.height {
		if !math.IsNaN(h) {
			x = append(x, g.start+float64(i)*g.spacing)
			z = append(z, h+g.base+float64(i)*g.trend)
		}
	}
	return x, z
}
