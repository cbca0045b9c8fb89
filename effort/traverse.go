package effort

import (
	"math"
	"slices"
	"sort"
)

// A State is where a runner stands in a race.
type State struct {
	Distance float64 // horizontal, from the start of the course, m
	Moving   float64 // time spent moving so far, s
	Work     float64 // effort so far in hour-equivalents, 1/(3600 HourPower)
	Spent    float64 // effort budget spent so far, 1 = all

	// Worn is the work as an eager athlete's fade counts it, in hour-equivalents; without
	// eagerness it is Work. A traverse from a state where it is 0 takes Work for it.
	Worn float64
}

// Pace is how a runner spreads effort over a course.
type Pace struct {
	// Intensity is the relative intensity, the same everywhere but for the tilt.
	Intensity float64

	// Tilt makes the intensity at a place where the share s of the course's running
	// work is done Intensity · (1 + Tilt (1 − 2s)): above 0 it starts fast, below 0 it
	// holds back at first and returns it by the end.
	Tilt float64

	// Ease lets walks be walked at the power that pays best in time and budget, and not
	// at that of Intensity: a fast walk easier, a slow and steep one a little harder. Even
	// effort is the best for running; walks bend it, because their speed is not in
	// proportion to power. Over 252 cases a direct optimiser gains on even effort up to
	// 22 s/h for a usual athlete of hour power 8, who walks all day (31 with a fade of
	// 0.05), and less than 10 from hour power 10 on (18); Ease leaves less than 4 of that
	// (7), and costs 3.4 s/h in the worst case.
	Ease bool

	// Gaits, if not nil, is the gait of every cell of the ground. Nil leaves the gait
	// to the rule, cell by cell.
	Gaits []Gait
}

// A Traverse is a passage over the cells of a ground, from a state to the finish. Cells
// before the state are not part of it. All slices have an element for each cell and
// belong to the Integrator: they hold until its next use.
type Traverse struct {
	First int       // the cell in which the traverse starts
	From  State     // where it starts
	End   []State   // after each cell
	Gait  []Gait    // in each cell
	Power []float64 // effort power in each cell, W/kg

	timeSlope, spentSlope float64 // dT/dlnε and dB/dlnε
}

// Clone returns a copy that outlives the integrator's next use.
func (t *Traverse) Clone() *Traverse {
	c := *t
	c.End, c.Gait, c.Power = slices.Clone(t.End), slices.Clone(t.Gait), slices.Clone(t.Power)
	return &c
}

// Finish returns the state at the finish.
func (t *Traverse) Finish() State { return t.End[len(t.End)-1] }

// At returns the state at a distance from the start of the course, which is taken to
// lie between the traverse's start and the finish; within a cell all columns run
// straight.
func (t *Traverse) At(distance float64) State {
	n := len(t.End)
	if distance <= t.From.Distance {
		return t.From
	}
	j := t.First + sort.Search(n-t.First, func(i int) bool { return t.End[t.First+i].Distance >= distance })
	if j == n {
		return t.Finish()
	}
	a, b := t.From, t.End[j]
	if j > t.First {
		a = t.End[j-1]
	}
	share := (distance - a.Distance) / (b.Distance - a.Distance)
	return State{
		Distance: distance,
		Moving:   a.Moving + share*(b.Moving-a.Moving),
		Work:     a.Work + share*(b.Work-a.Work),
		Spent:    a.Spent + share*(b.Spent-a.Spent),
		Worn:     a.Worn + share*(b.Worn-a.Worn),
	}
}

// WalkingTime returns the seconds walked between two distances.
func (t *Traverse) WalkingTime(from, to float64) float64 {
	sum := 0.0
	t.each(from, to, func(_ int, a, b State, walking bool) {
		if walking {
			sum += b.Moving - a.Moving
		}
	})
	return sum
}

// EffortBetween returns the effort in J/kg of the athlete between two distances.
func (t *Traverse) EffortBetween(from, to float64, a Athlete) float64 {
	return (t.At(to).Work - t.At(from).Work) * 3600 * a.HourPower
}

// each visits the parts of cells between two distances.
func (t *Traverse) each(from, to float64, visit func(cell int, a, b State, walking bool)) {
	n := len(t.End)
	j := t.First + sort.Search(n-t.First, func(i int) bool { return t.End[t.First+i].Distance > from })
	for a := t.At(from); j < n && a.Distance < to; j++ {
		b := t.At(math.Min(to, t.End[j].Distance))
		visit(j, a, b, t.Gait[j] == Walk)
		a = b
	}
}
