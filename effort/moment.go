package effort

import "math"

// moment is a place in the tables: between node and the next, share of the step on.
type moment struct {
	node  int
	share float64
	held  bool // before the first node or beyond the last: nothing changes
}

// momentIn finds the place in a table of so many nodes, s seconds after its first.
func momentIn(nodes int, s float64, repeats bool) moment {
	if repeats && !(s >= 0 && s < dayLength) {
		s -= dayLength * math.Floor(s/dayLength)
	}
	place, last := s/dayStep, nodes-1
	switch {
	case !(place > 0):
		return moment{0, 0, true}
	case place >= float64(last):
		return moment{last, 0, true}
	}
	i := int(place)
	return moment{i, place - float64(i), false}
}

// at is the value of a table at a moment, and its slope.
func (m moment) at(table []node) (value, slope float64) {
	if m.held {
		return table[m.node].value, 0
	}
	a, b := table[m.node], table[m.node+1]
	if a == b && a.slope == 0 {
		return a.value, 0
	}
	return hermite(a, b, m.share, dayStep)
}
