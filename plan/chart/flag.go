package chart

import (
	"math"
	"slices"
)

// A flag is a label above the drawing, with a leader down from it to its place.
type flag struct {
	x    float64 // of the leader, pt
	foot float64 // y where the leader ends
	name string  // first line, of which shown is what has room
	more []string
	rank int // the higher are kept where not all have room

	shown string
	row   int     // 0 is the lowest
	wide  float64 // of the text
	share float64 // of the text that lies left of the leader
}

func (l flag) x0() float64 { return l.x - l.share*l.wide }
func (l flag) x1() float64 { return l.x0() + l.wide }

// Bounds of flags. [Our own]
const (
	flagGap  = 3.5 // clear space about a text, pt
	flagMost = 200 // that are looked at: more never find room
	flagTry  = 3000
)

var (
	// flagWidths are the widths to which names are clipped, tried in this order, pt.
	flagWidths = []float64{170, 130, 100, 80}

	// flagShares are the ways in which a text may hang on its leader, tried in this order.
	flagShares = []float64{0.5, 0, 1, 0.2, 0.8}
)

// A hoist is the room for flags: from left to right, rows upwards.
type hoist struct {
	left, right float64
	most        float64 // height, pt
	rows, lines int     // lines of a row
}

func (h hoist) rowHeight() float64 { return float64(h.lines)*textSize*leading + flagGap }

func (h hoist) height() float64 {
	if h.rows == 0 {
		return 0
	}
	return float64(h.rows)*h.rowHeight() + flagGap
}

// raise finds a place for as many flags as it can, in as few rows as that takes, and
// returns those placed, from left to right, with the rows taken.
func (h hoist) raise(flags []flag) ([]flag, hoist) {
	if len(flags) == 0 {
		return nil, h
	}
	flags = slices.Clone(flags)
	slices.SortStableFunc(flags, func(a, b flag) int { return b.rank - a.rank })
	flags = flags[:min(len(flags), flagMost)]
	sortFlags(flags)
	for _, l := range flags {
		h.lines = max(h.lines, 1+len(l.more))
	}
	most := max(2, int(h.most/h.rowHeight()))
	for _, w := range flagWidths {
		measured := h.measured(flags, w)
		for h.rows = 1; h.rows <= most; h.rows++ {
			if placed := h.place(measured); placed != nil {
				return placed, h
			}
		}
	}
	narrow := h.measured(flags, flagWidths[len(flagWidths)-1])
	h.rows = h.rowsFor(narrow, most)
	placed := h.thin(narrow)
	for _, w := range flagWidths {
		if wider := h.place(h.measured(placed, w)); wider != nil {
			placed = wider
			break
		}
	}
	h.rows = 1
	for _, l := range placed {
		h.rows = max(h.rows, l.row+1)
	}
	return placed, h
}

// rowsFor returns the least rows, two and no more than most, that hold the flags of aid
// stations and of higher ranks: others get what room those leave.
func (h hoist) rowsFor(flags []flag, most int) int {
	var high []flag
	for _, l := range flags {
		if l.rank >= stationRank {
			high = append(high, l)
		}
	}
	for h.rows = 2; h.rows < most; h.rows++ {
		if h.place(high) != nil {
			break
		}
	}
	return h.rows
}

func sortFlags(flags []flag) {
	slices.SortStableFunc(flags, func(a, b flag) int { return sign(a.x - b.x) })
}

// measured returns the flags with their names clipped to a width.
func (h hoist) measured(flags []flag, most float64) []flag {
	out := slices.Clone(flags)
	for i := range out {
		l := &out[i]
		l.shown = clip(l.name, true, textSize, most)
		l.wide = width(l.shown, true, textSize)
		for _, s := range l.more {
			l.wide = max(l.wide, width(s, false, textSize))
		}
	}
	return out
}

// thin keeps what it can by rank and, of one rank, what lies farthest from those kept.
func (h hoist) thin(flags []flag) []flag {
	var kept, placed []flag
	for len(flags) > 0 {
		next := farthest(flags, kept)
		with := append(slices.Clone(kept), flags[next])
		sortFlags(with)
		if p := h.place(with); p != nil {
			kept, placed = with, p
		}
		flags = slices.Delete(flags, next, next+1)
	}
	return placed
}

func farthest(rest, kept []flag) int {
	best, far := 0, math.Inf(-1)
	for i, l := range rest {
		near := 1e4 - 1 // wider than any figure
		for _, k := range kept {
			near = min(near, math.Abs(k.x-l.x))
		}
		if d := 1e4*float64(l.rank) + near; d > far {
			best, far = i, d
		}
	}
	return best
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// place gives every flag, from left to right, a row and a share, going back where it finds
// none, or returns nil if it finds none in the end or in as many tries as it may take.
func (h hoist) place(flags []flag) []flag {
	placed := make([]flag, 0, len(flags))
	tries := flagTry
	var next func() bool
	next = func() bool {
		if len(placed) == len(flags) {
			return true
		}
		l := flags[len(placed)]
		for l.row = range h.rows {
			for _, l.share = range flagShares {
				tries--
				if tries < 0 {
					return false
				}
				if l.x0() < h.left || l.x1() > h.right || slices.ContainsFunc(placed, l.meets) {
					continue
				}
				placed = append(placed, l)
				if next() {
					return true
				}
				placed = placed[:len(placed)-1]
			}
		}
		return false
	}
	if !next() {
		return nil
	}
	return placed
}

// meets reports whether two flags cover each other, or the leader of one the other's text.
func (l flag) meets(o flag) bool {
	switch {
	case l.row == o.row:
		return l.x0() < o.x1()+2*flagGap && o.x0() < l.x1()+2*flagGap
	case l.row < o.row:
		l, o = o, l
	}
	return l.x > o.x0()-flagGap && l.x < o.x1()+flagGap
}

// flags draws flags below a height.
func (f *Figure) flags(h hoist, flags []flag, top float64) {
	head := func(l flag) float64 { return top - float64(h.rows-1-l.row)*h.rowHeight() }
	low := func(l flag) float64 { return head(l) - textSize*(1+leading*float64(len(l.more))) }
	for _, l := range flags {
		f.line(pen{ink: 0.45, width: 0.5}, spot{l.x, low(l) - 2.5}, spot{l.x, l.foot})
	}
	for _, l := range flags {
		y := head(l) - textSize
		for i, s := range append([]string{l.shown}, l.more...) {
			w := width(s, i == 0, textSize)
			f.write(s, l.x0()+l.share*(l.wide-w), y, 0, textSize, i == 0)
			y -= textSize * leading
		}
	}
}
