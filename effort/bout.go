package effort

import "math"

// joiner finds the cheapest sequence of gaits whose bouts last a least time, by dynamic
// programming over the cells: for each gait and each cell the least price of a course
// up to there whose last bout is of that gait and long enough. One pass, linear in the
// cells.
type joiner struct {
	price, time [2][]float64 // summed over the cells, for each gait
	best        [2][]float64 // least price up to a cell, the last bout of the gait
	start       [2][]int     // where that bout starts
	change      float64      // price of a change of gait
}

const (
	// slowRun is the price, in multiples of its time, of running a little slower than the
	// slowest run: a ramp too short for a walk of its own is jogged, a longer one not.
	// Below jog times the slowest run nobody runs, which is priced at notRun.
	slowRun = 1
	notRun  = 1000
	jog     = 0.75
)

// join fills gaits for the cells from first on, given the price and the time in seconds
// of each cell in either gait. Bouts are at least least seconds long, the first and the
// last too; but a course of one gait may be shorter.
func (b *joiner) join(gaits []Gait, first int, least float64, cost func(j int) (price, time [2]float64)) {
	n := len(gaits) - first
	b.resize(n + 1)
	for i := range n {
		price, time := cost(first + i)
		for g := range 2 {
			b.price[g][i+1] = b.price[g][i] + price[g]
			b.time[g][i+1] = b.time[g][i] + time[g]
		}
	}
	var begin [2]int // the latest start of a bout that is long enough at i
	for i := 1; i <= n; i++ {
		for g := range 2 {
			b.best[g][i], b.start[g][i] = math.Inf(1), 0
			b.extend(g, i, begin[g], least)
			for begin[g]+1 <= i && b.time[g][i]-b.time[g][begin[g]+1] >= least {
				begin[g]++
				b.extend(g, i, begin[g], least)
			}
		}
	}
	b.trace(gaits[first:], n)
}

// extend finds the best course up to cell i that ends in a bout of gait g: one cell more
// of the bout before, or a new bout from begin.
func (b *joiner) extend(g, i, begin int, least float64) {
	if more := b.best[g][i-1] + b.price[g][i] - b.price[g][i-1]; i > 1 && more < b.best[g][i] {
		b.best[g][i], b.start[g][i] = more, b.start[g][i-1]
	}
	if b.time[g][i]-b.time[g][begin] < least {
		return
	}
	before := 0.0
	if begin > 0 {
		before = b.best[1-g][begin]
	}
	if fresh := before + b.change + b.price[g][i] - b.price[g][begin]; fresh < b.best[g][i] {
		b.best[g][i], b.start[g][i] = fresh, begin
	}
}

func (b *joiner) trace(gaits []Gait, n int) {
	g := 0
	for g := range 2 {
		if whole := b.price[g][n] + b.change; whole < b.best[g][n] { // it may be shorter than one bout
			b.best[g][n], b.start[g][n] = whole, 0
		}
	}
	if b.best[1][n] < b.best[0][n] {
		g = 1
	}
	for i := n; i > 0; g = 1 - g {
		start := b.start[g][i]
		for j := start; j < i; j++ {
			gaits[j] = Gait(g)
		}
		i = start
	}
}

func (b *joiner) resize(n int) {
	for g := range 2 {
		if cap(b.price[g]) < n {
			b.price[g], b.time[g], b.best[g] = make([]float64, n), make([]float64, n), make([]float64, n)
			b.start[g] = make([]int, n)
		}
		b.price[g], b.time[g], b.best[g], b.start[g] = b.price[g][:n], b.time[g][:n], b.best[g][:n], b.start[g][:n]
		b.price[g][0], b.time[g][0], b.best[g][0] = 0, 0, math.Inf(1)
	}
}

// joinBouts sets in.gaits to the cheapest bouts of at least least seconds, changes of gait
// at a price in seconds, under the pace and capability of the traverse that the
// integrator holds.
func (in *Integrator) joinBouts(least, change float64) {
	in.joiner.change = change
	in.eachWay(func(each func(j int) Choice) {
		in.joiner.join(in.gaits, in.out.First, least, func(j int) (price, time [2]float64) {
			c := each(j)
			if in.mover.mustWalk { // a walk that is asked for is a bout, however short
				c.Price[Run] += notRun * c.Time[Run]
				c.Time[Walk] = math.Max(c.Time[Walk], least*in.holds[j].share)
			}
			return c.Price, c.Time
		})
	})
}
