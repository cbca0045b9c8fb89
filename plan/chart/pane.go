package chart

import "math"

// A pane is a part of a figure with two axes: distance in metres to the right, something
// else upwards.
type pane struct {
	left, right, bottom, top float64 // pt
	from, to                 float64 // m
	low, high                float64
}

func (p pane) x(distance float64) float64 {
	return p.left + (p.right-p.left)*(distance-p.from)/(p.to-p.from)
}

func (p pane) y(value float64) float64 {
	return p.bottom + (p.top-p.bottom)*(value-p.low)/(p.high-p.low)
}

func (p pane) at(distance, value float64) spot { return spot{p.x(distance), p.y(value)} }

// step returns the least of 1, 2, 5, 10, 20, … that is at least so much.
func step(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, s := range []float64{1, 2, 5} {
		if s*power >= least*(1-1e-9) {
			return s * power
		}
	}
	return 10 * power
}

// ticks returns the multiples of a step between two values.
func ticks(low, high, step float64) []float64 {
	var list []float64
	for i := math.Ceil(low/step - 1e-9); i*step <= high+1e-9*step; i++ {
		list = append(list, i*step)
	}
	return list
}

// spread moves values, ascending, as little as it takes (by the sum of squares) for each
// to lie a gap above the one before and all between two bounds. Without room for that
// they stand closer.
func spread(values []float64, gap, low, high float64) []float64 {
	n := len(values)
	if n > 1 {
		gap = min(gap, (high-low)/float64(n-1))
	}
	type block struct {
		sum   float64
		count int
	}
	var blocks []block // pool adjacent violators, of the values less their gaps
	for i, v := range values {
		blocks = append(blocks, block{v - float64(i)*gap, 1})
		for k := len(blocks) - 1; k > 0 && blocks[k-1].sum/float64(blocks[k-1].count) > blocks[k].sum/float64(blocks[k].count); k-- {
			blocks[k-1].sum += blocks[k].sum
			blocks[k-1].count += blocks[k].count
			blocks = blocks[:k]
		}
	}
	out := make([]float64, 0, n)
	for _, b := range blocks {
		for range b.count {
			base := min(max(b.sum/float64(b.count), low), high-float64(n-1)*gap)
			out = append(out, base+float64(len(out))*gap)
		}
	}
	return out
}
