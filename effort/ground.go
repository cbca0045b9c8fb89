package effort

import (
	"errors"
	"fmt"
	"math"

	"isoeffort.example/course"
)

// Ground is a course prepared for the integrator: cells of a uniform step, each with the
// mean over its length of what the cost curves say of the profile inside it. The
// means are taken over the profile's own straight pieces, so the step decides how
// often gait and capability are looked at and not how well the hills are seen.
//
// A Ground does not change and may be shared between goroutines.
type Ground struct {
	cells  []cell
	length float64 // horizontal, m
}

// cell is a short piece of ground. Costs are means per metre along the slope, J/(kg m).
type cell struct {
	end     float64 // horizontal distance from the start, m
	length  float64 // along the slope, m
	run     float64 // running cost × surface
	walk    float64 // what gradient adds to walking, × surface
	surface float64
	brake   float64 // BrakingCost × the ground's factor
}

// DefaultStep is the usual length of a cell in metres.
const DefaultStep = 25

// ErrStep is returned for a step that no course can be cut into.
var ErrStep = errors.New("effort: step out of range")

// NewGround prepares a course in cells of about step metres; 0 means DefaultStep. The
// step must lie within 1 to 10 000 m.
func NewGround(c *course.Course, step float64) (*Ground, error) {
	if step == 0 {
		step = DefaultStep
	}
	if !(step >= 1 && step <= 10_000) {
		return nil, fmt.Errorf("%w: %g m is not within 1 to 10000 m", ErrStep, step)
	}
	n := int(math.Max(1, math.Round(c.Length()/step)))
	g := &Ground{cells: make([]cell, 0, n), length: c.Length()}
	w := walker{course: c, edges: c.Edges()}
	for j := 1; j <= n; j++ {
		end := c.Length() * float64(j) / float64(n)
		g.cells = append(g.cells, w.cellTo(end))
	}
	return g, nil
}

// walker cuts a course into cells from its start to its end.
type walker struct {
	course *course.Course
	at     float64   // done so far
	point  int       // the last profile point not beyond at
	edges  []float64 // of stretches, those not passed yet
}

// cellTo returns the cell from where the walker stands to end.
func (w *walker) cellTo(end float64) cell {
	sum := cell{end: end}
	for w.at < end {
		from, to, gradient := w.piece(end)
		surface, braking := w.course.Ground((from + to) / 2)
		along := (to - from) * math.Sqrt(1+gradient*gradient)
		sum.length += along
		sum.run += along * surface * RunningCost(gradient)
		sum.walk += along * surface * walkingGrade(gradient)
		sum.surface += along * surface
		sum.brake += along * braking * BrakingCost(gradient)
	}
	sum.run /= sum.length
	sum.walk /= sum.length
	sum.surface /= sum.length
	sum.brake /= sum.length
	return sum
}

// piece moves on to the next change of gradient or ground, but not beyond end.
func (w *walker) piece(end float64) (from, to, gradient float64) {
	last := w.course.Len() - 1
	x0, z0 := w.course.Point(w.point)
	x1, z1 := w.course.Point(w.point + 1)
	for x1 <= w.at && w.point+1 < last {
		w.point++
		x0, z0 = x1, z1
		x1, z1 = w.course.Point(w.point + 1)
	}
	to = end
	if w.point+1 < last {
		to = math.Min(to, x1)
	}
	for len(w.edges) > 0 && w.edges[0] <= w.at {
		w.edges = w.edges[1:]
	}
	if len(w.edges) > 0 {
		to = math.Min(to, w.edges[0])
	}
	from, w.at = w.at, to
	return from, to, (z1 - z0) / (x1 - x0)
}

// Length returns the horizontal length in metres.
func (g *Ground) Length() float64 { return g.length }

// Len returns the number of cells.
func (g *Ground) Len() int { return len(g.cells) }

// RunningWork returns the effort in J/kg of running from start to finish without air:
// metabolic cost and braking, both as the athlete's.
func (g *Ground) RunningWork(a Athlete) float64 {
	m := newMover(a, Surroundings{})
	work := 0.0
	for i := range g.cells {
		work += g.cells[i].length * m.runCost(&g.cells[i])
	}
	return work
}

// A course known by its totals stands for summaryHills hills, each a climb and a descent.
// Real ground is not of one steepness, and cost is convex in it: taking the mean for all
// of it made five recorded courses 1 to 8 % too fast. Steepness is spread as a Weibull
// distribution of shape summaryShape, which brings four of the five within 2 % of the
// whole profile and leaves the most rugged 5 % too fast. [Our own.]
const (
	summaryHills = 24
	summaryShape = 1.25
)

// summarySteepness is the steepness of each hill in means, steep and gentle by turns.
func summarySteepness() (steepness [summaryHills]float64) {
	sum := 0.0
	for j := range steepness {
		// 5 and 24 have no common divisor, so every rank comes once.
		rank := (float64(j*5%summaryHills) + 0.5) / summaryHills
		steepness[j] = math.Pow(-math.Log1p(-rank), 1/summaryShape)
		sum += steepness[j]
	}
	for j := range steepness {
		steepness[j] *= summaryHills / sum
	}
	return steepness
}

// NewSummaryGround makes ground for a race that is known only by its distance, ascent and
// descent in metres: climbs and descents alternate evenly over the distance, gentle and
// steep ones in the proportions of real ground. Expect the time over it to be within
// some 3 % of that over the whole profile, more where the ground is rugged; a race over
// one even slope is better given as a course.
//
// It returns an error that wraps ErrSummary for numbers that no ground can have: a
// distance of 0 or less, negative or non-finite heights, or more metres of height than
// of distance.
func NewSummaryGround(distance, ascent, descent float64) (*Ground, error) {
	if !(distance > 0 && distance <= course.MaxLength) || !(ascent >= 0) || !(descent >= 0) || !(ascent+descent <= distance) {
		return nil, fmt.Errorf("effort: %w: distance %g m, ascent %g m, descent %g m", ErrSummary, distance, ascent, descent)
	}
	height := ascent + descent
	gradient, upShare := height/distance, 0.5
	if height > 0 {
		upShare = ascent / height
	}
	g := &Ground{cells: make([]cell, 0, 2*summaryHills), length: distance}
	hill := distance / summaryHills
	for j, steepness := range summarySteepness() {
		start := hill * float64(j)
		turn := start + hill*upShare
		g.add(start, turn, gradient*steepness)
		g.add(turn, hill*float64(j+1), -gradient*steepness)
	}
	return g, nil
}

// ErrSummary is wrapped by the error for totals that no course can have.
var ErrSummary = errors.New("impossible distance, ascent and descent")

// add appends a cell of one gradient, unless it has no length.
func (g *Ground) add(from, to, gradient float64) {
	if to <= from {
		return
	}
	g.cells = append(g.cells, cell{
		end: to, length: (to - from) * math.Sqrt(1+gradient*gradient),
		run: RunningCost(gradient), walk: walkingGrade(gradient), surface: 1, brake: BrakingCost(gradient),
	})
}
