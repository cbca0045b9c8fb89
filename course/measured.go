package course

import (
	"container/heap"
	"math"
)

// measured returns the legs up that remain when reversals that are too small under the
// options are taken out, the smallest in height first. A reversal is the rise or the dip
// between neighbouring turns of what is left of the profile, and can be taken out where
// neither neighbour is smaller. A rise measures what its ground does, a dip what
// regaining its height does.
func (c *Course) measured(o ClimbOptions) []leg {
	t := newTurns(c.elevation)
	for t.queue.Len() > 0 {
		r := heap.Pop(&t.queue).(reversal)
		if t.next[r.from] != r.to || t.between(t.prev[r.from], r.from) < r.height || t.between(r.to, t.next[r.to]) < r.height {
			continue
		}
		if r.height < o.LeastRise || !(c.sizeOf(t.at[r.from], t.at[r.to], o) >= o.Least) {
			t.remove(r)
		}
	}
	var legs []leg
	for i := t.next[0]; t.next[i] > 0; i = t.next[t.next[i]] {
		legs = append(legs, leg{t.at[i], t.at[t.next[i]]})
	}
	return legs
}

// sizeOf measures the reversal from one point to another. The height of one that falls
// is regained behind it: the next rise is no smaller.
func (c *Course) sizeOf(from, to int, o ClimbOptions) float64 {
	if c.elevation[to] > c.elevation[from] {
		return o.Measure(c.distance[from], c.distance[to])
	}
	i := to + 1
	for c.elevation[i] < c.elevation[from] {
		i++
	}
	share := (c.elevation[from] - c.elevation[i-1]) / (c.elevation[i] - c.elevation[i-1])
	return o.Measure(c.distance[to], c.distance[i-1]+share*(c.distance[i]-c.distance[i-1]))
}

// turns is a chain of the turning points of a profile, low and high by turns, from a
// height without end before the start to a depth without end beyond the finish.
type turns struct {
	at         []int // the point of each turn
	height     []float64
	prev, next []int // removed turns and the ends of the chain have none: -1
	queue      reversals
}

func newTurns(z []float64) *turns {
	t := &turns{at: []int{-1}, height: []float64{math.Inf(1)}}
	for _, l := range rises(z, math.SmallestNonzeroFloat64) {
		t.at = append(t.at, l.low, l.top)
		t.height = append(t.height, z[l.low], z[l.top])
	}
	t.at, t.height = append(t.at, len(z)), append(t.height, math.Inf(-1))
	last := len(t.at) - 1
	for i := range t.at {
		t.prev, t.next = append(t.prev, i-1), append(t.next, i+1)
		if i > 0 {
			t.push(i-1, i)
		}
	}
	t.next[last] = -1
	return t
}

// between is the height of the reversal between two turns, or of a step to an end of the
// chain: without end.
func (t *turns) between(from, to int) float64 { return math.Abs(t.height[to] - t.height[from]) }

// push puts a reversal in the queue, unless it has no end.
func (t *turns) push(from, to int) {
	if height := t.between(from, to); !math.IsInf(height, 0) {
		heap.Push(&t.queue, reversal{from, to, height, t.height[to] > t.height[from]})
	}
}

// remove takes both turns of a reversal out of the chain.
func (t *turns) remove(r reversal) {
	before, after := t.prev[r.from], t.next[r.to]
	t.next[r.from], t.next[r.to] = -1, -1
	t.next[before], t.prev[after] = after, before
	t.push(before, after)
}

// A reversal leads from one turn of the chain to the next.
type reversal struct {
	from, to int
	height   float64 // > 0
	rise     bool
}

// reversals is a heap, the smallest height first. Of equal ones rises come first, so that
// of equal lows the last stays and of equal highs the first.
type reversals []reversal

func (q reversals) Len() int      { return len(q) }
func (q reversals) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *reversals) Push(r any)   { *q = append(*q, r.(reversal)) }

func (q reversals) Less(i, j int) bool {
	a, b := q[i], q[j]
	switch {
	case a.height != b.height:
		return a.height < b.height
	case a.rise != b.rise:
		return a.rise
	}
	return a.from < b.from
}

func (q *reversals) Pop() any {
	n := len(*q) - 1
	r := (*q)[n]
	*q = (*q)[:n]
	return r
}
