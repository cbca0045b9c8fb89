package elevation

import "math"

// nodes are the heights of a recording gathered on a uniform grid.
type nodes struct {
	start, end float64   // m
	spacing    float64   // m
	height     []float64 // NaN where no height was seen
	per        float64   // heights per node that has any
	within     float64   // variance of heights about their node's, m²
	rounding   float64   // variance that rounding alone gives a node's height, m²
	stride     int       // points of the profile's grid from one node to the next

	base, trend float64 // a straight line that level takes from the heights: at node 0, per node
}

// A grid is as fine as its nodes mostly have heights of their own: most is mostShare of
// those within reach of one. The coarsest is coarsest metres. [Our own]
const (
	mostShare = 0.85
	coarsest  = 100 // m
)

// gather puts the heights on the finest grid that has heights at most nodes.
func gather(r *recording, grid float64) *nodes {
	last := len(r.distance) - 1
	length := r.distance[last] - r.distance[0]
	for stride := 1; ; stride++ {
		n := max(1, math.Round(length/grid/float64(stride)))
		g := &nodes{start: r.distance[0], end: r.distance[last], spacing: length / n, stride: stride}
		g.height = make([]float64, int(n)+1)
		cells := g.fill(r)
		if g.spacing > coarsest || g.share(cells) >= mostShare || n == 1 {
			g.carry(cells)
			g.rounding = r.rounding / g.per
			return g
		}
	}
}

// fill sums up the points of each node's cell, places about the node and heights about
// the cell's first.
func (g *nodes) fill(r *recording) []cell {
	cells := make([]cell, len(g.height))
	for i, z := range r.elevation {
		if math.IsNaN(z) {
			continue
		}
		offset := r.distance[i] - g.start
		k := min(int(math.Round(offset/g.spacing)), len(cells)-1)
		c := &cells[k]
		if c.n == 0 {
			c.base = z
		}
		c.add(offset-float64(k)*g.spacing, z-c.base)
		c.zz += (z - c.base) * (z - c.base)
	}
	return cells
}

type cell struct {
	sums
	base, zz float64
}

// share is that of nodes with heights, of long gaps only a part being counted.
func (g *nodes) share(cells []cell) float64 {
	full, last := 0, -1
	near := 0 // nodes, of each gap only as many as are within longGap
	for k := range cells {
		if cells[k].n == 0 {
			continue
		}
		near += min(k-last, max(1, int(longGap/g.spacing)))
		full, last = full+1, k
	}
	return float64(full) / float64(near)
}

// longGap is a gap in metres over which nothing is known of the ground's undulations.
const longGap = 500

// slopeCells is how many cells on either side the slope is taken over by which the mean
// height of a cell is carried to its node.
const slopeCells = 5

// slopeShared is how many nodes share a slope.
const slopeShared = 4

// carry gives each node the mean height of its cell, carried along the slope from the
// mean place of its points to the node: straight ground stays straight, and noise stays
// independent from node to node, which it would not by interpolating.
func (g *nodes) carry(cells []cell) {
	points, full, within := 0.0, 0.0, 0.0
	shared, slope := -1, 0.0
	for k := range cells {
		c := &cells[k]
		if c.n == 0 {
			g.height[k] = math.NaN()
			continue
		}
		g.height[k] = c.base + c.z/c.n
		if k/slopeShared != shared {
			shared, slope = k/slopeShared, g.slope(cells, k)
		}
		if c.x != 0 {
			g.height[k] -= slope * c.x / c.n
		}
		points, full = points+c.n, full+1
		within += max(0, c.zz-c.z*c.z/c.n-slope*slope*(c.xx-c.x*c.x/c.n))
	}
	g.per, g.within = points/full, within/points
}

// slope is that of the least-squares line through the points around a node.
func (g *nodes) slope(cells []cell, k int) float64 {
	var s sums
	base := cells[k].base
	for j := max(0, k-slopeCells); j <= min(len(cells)-1, k+slopeCells); j++ {
		if c := &cells[j]; c.n > 0 {
			s = s.plus(c.moved(float64(j-k)*g.spacing, c.base-base))
		}
	}
	return s.slope()
}

// seenRises reports for each rise whether heights at both of its ends were seen, outside
// of stretches that are left out.
func (g *nodes) seenRises(out []Flag) []bool {
	seen := make([]bool, len(g.height)-1)
	for i := range seen {
		x := g.start + float64(i)*g.spacing
		for len(out) > 0 && out[0].To <= x {
			out = out[1:]
		}
		left := len(out) > 0 && x+g.spacing > out[0].From
		seen[i] = !left && !math.IsNaN(g.height[i]) && !math.IsNaN(g.height[i+1])
	}
	return seen
}
