package course

import "slices"

// Reverse returns the course run the other way: ascent becomes descent, what lay at x lies
// at Length − x, and the direction is the opposite. Landmarks and stretches move along,
// and where stretches overlap the same one holds. Points that are less apart than
// distances from the new start can tell, some 1e-10 m, become one.
//
// Reversing twice gives the course back: elevations to the last bit, distances within
// 1e-9 m, which is what subtracting from the length rounds off. The order of landmarks
// nearer to each other than that may change.
func (c *Course) Reverse() *Course {
	r := c.mirror()
	r.trail = c.trail.reversed(c.Length())
	r.settle()
	return r
}

// mirror is Reverse with every point kept, so that point i is point Len − 1 − i.
func (c *Course) mirror() *Course {
	n, length := len(c.distance), c.Length()
	r := &Course{
		name: c.name, smoothing: c.smoothing, warnings: slices.Clone(c.warnings),
		distance: make([]float64, n), elevation: make([]float64, n),
	}
	if c.HasTrack() {
		r.east, r.north = make([]float64, n), make([]float64, n)
	}
	for i := range n {
		j := n - 1 - i
		r.distance[i], r.elevation[i] = length-c.distance[j], c.elevation[j]
		if c.HasTrack() {
			r.east[i], r.north[i] = c.east[j]-c.east[n-1], c.north[j]-c.north[n-1]
		}
	}
	r.accumulate()
	for _, l := range c.landmarks {
		l.Distance = length - l.Distance
		r.landmarks = append(r.landmarks, l)
	}
	order(r.landmarks)
	for _, s := range c.stretches {
		s.From, s.To = length-s.To, length-s.From
		r.stretches = append(r.stretches, s)
	}
	return r
}

// settle drops points that rounding has put on top of their neighbours.
func (c *Course) settle() {
	if keep := apart(c.distance); len(keep) < len(c.distance) {
		for _, column := range []*[]float64{&c.distance, &c.elevation, &c.east, &c.north} {
			if *column != nil {
				*column = pick(*column, keep)
			}
		}
	}
	c.accumulate()
}

// apart returns the points whose distances ascend strictly, the first and the last, which
// differ, among them.
func apart(x []float64) []int {
	keep, last := make([]int, 1, len(x)), len(x)-1
	for i := 1; i < last; i++ {
		if x[i] > x[keep[len(keep)-1]] && x[i] < x[last] {
			keep = append(keep, i)
		}
	}
	return append(keep, last)
}

// pick returns the chosen elements.
func pick(column []float64, chosen []int) []float64 {
	if len(chosen) == len(column) {
		return column
	}
	out := make([]float64, len(chosen))
	for k, i := range chosen {
		out[k] = column[i]
	}
	return out
}
