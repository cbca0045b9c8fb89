package effort

import (
	"math"
	"sort"
)

// A Tally adds up what a ground takes of a runner who runs all of it without air:
// metabolic cost and braking, both as the athlete's, in J/kg. It does not depend on how
// fast, so it can say how hard ground is before any plan is made. It does not change and
// may be shared between goroutines.
type Tally struct {
	end, work, along []float64 // after each cell; the first are 0
	level            float64   // cost of a level metre of good road, J/(kg m)
}

// Tally returns the tally of an athlete, all NaN for one out of range.
func (g *Ground) Tally(a Athlete) *Tally {
	n := len(g.cells) + 1
	t := &Tally{end: make([]float64, n), work: make([]float64, n), along: make([]float64, n)}
	if a.check() != nil {
		a.HourPower, a.Economy = math.NaN(), math.NaN()
	}
	m := g.mover(a, Surroundings{})
	for j := range g.cells {
		c := &g.cells[j]
		t.end[j+1] = c.end
		t.work[j+1] = t.work[j] + c.length*m.runCost(c)
		t.along[j+1] = t.along[j] + c.length
	}
	level := g.uniform(0)
	t.level = m.runCost(&level)
	return t
}

// Total returns the effort of the whole ground in J/kg.
func (t *Tally) Total() float64 { return t.work[len(t.work)-1] }

// To returns the effort in J/kg from the start to a distance, which is taken to lie on the
// ground; within a cell it runs straight. It is NaN at NaN.
func (t *Tally) To(distance float64) float64 { return t.at(t.work, distance) }

// Extra returns the effort in J/kg between two distances above that of as many level
// metres of good road; negative where the ground helps.
func (t *Tally) Extra(from, to float64) float64 {
	return t.To(to) - t.To(from) - t.level*(t.at(t.along, to)-t.at(t.along, from))
}

// at interpolates a column.
func (t *Tally) at(column []float64, distance float64) float64 {
	last := len(t.end) - 1
	switch {
	case math.IsNaN(distance):
		return distance
	case distance <= 0:
		return 0
	case distance >= t.end[last]:
		return column[last]
	}
	i := sort.SearchFloat64s(t.end, distance)
	share := (distance - t.end[i-1]) / (t.end[i] - t.end[i-1])
	return column[i-1] + share*(column[i]-column[i-1])
}
