package effort

import (
	"errors"
	"fmt"
	"math"
	"sync"

	"isoeffort.example/course"
)

// Ground is a course prepared for the integrator: cells of a uniform step, each with the
// mean over its length of what the cost curves say of the profile inside it. The
// means are taken over the profile's own straight pieces, so the step decides how
// often gait and capability are looked at and not how well the hills are seen.
//
// A Ground does not change and may be shared between goroutines.
type Ground struct {
	cells     []cell
	length    float64      // horizontal, m
	heading   [][2]float64 // mean unit vector east and north of each cell, nil if unknown
	totals    bool         // known by its totals, not place by place
	run, walk *motion

	once   sync.Once
	merged *Ground // see coarse
}

// cell is a short piece of ground. Costs are means per metre along the slope, J/(kg m).
type cell struct {
	end      float64 // horizontal distance from the start, m
	length   float64 // along the slope, m
	run      float64 // running, what depends on gradient × surface
	walk     float64 // walking, what depends on gradient × surface
	surface  float64
	brake    float64 // BrakingCost × the ground's factor
	gradient float64 // mean
	altitude float64 // mean, m
}

// DefaultStep is the usual length of a cell in metres.
const DefaultStep = 25

// ErrStep is returned for a step that no course can be cut into.
var ErrStep = errors.New("effort: step out of range")

// NewGround prepares a course in cells of about step metres; 0 means DefaultStep. The
// step must lie within 1 to 10 000 m.
func NewGround(c *course.Course, step float64) (*Ground, error) { return Curves{}.Ground(c, step) }

// Ground is NewGround for other curves. A curve that is not Separable is looked at on the
// mean gradient of each cell, and what that misses of its mean over the cell at
// 3 m/s running and 1.5 m/s walking is added per metre. The error wraps ErrCurve where a
// curve is not finite, positive and growing with speed about those speeds on the ground
// of some cell.
func (k Curves) Ground(c *course.Course, step float64) (*Ground, error) {
	if step == 0 {
		step = DefaultStep
	}
	if !(step >= 1 && step <= 10_000) {
		return nil, fmt.Errorf("%w: %g m is not within 1 to 10000 m", ErrStep, step)
	}
	n := int(math.Max(1, math.Round(c.Length()/step)))
	g := k.empty(n, c.Length())
	w := walker{course: c, edges: c.Edges(), ground: g}
	for j := 1; j <= n; j++ {
		end := c.Length() * float64(j) / float64(n)
		if east, north, ok := c.Direction(w.at, end); ok {
			g.heading = append(g.heading, [2]float64{east, north})
		}
		g.cells = append(g.cells, w.cellTo(end))
	}
	if len(g.heading) != n {
		g.heading = nil
	}
	if err := g.checkCurves(); err != nil {
		return nil, err
	}
	return g, nil
}

// empty is a ground without cells yet.
func (k Curves) empty(cells int, length float64) *Ground {
	k = k.filled()
	return &Ground{
		cells: make([]cell, 0, cells), length: length,
		run: newMotion(k.Run, 3), walk: newMotion(k.Walk, 1.5),
	}
}

// walker cuts a course into cells from its start to its end.
type walker struct {
	course *course.Course
	ground *Ground
	at     float64   // done so far
	point  int       // the last profile point not beyond at
	edges  []float64 // of stretches, those not passed yet
}

// cellTo returns the cell from where the walker stands to end.
func (w *walker) cellTo(end float64) cell {
	sum := cell{end: end}
	start, rise := w.at, 0.0
	run, walk := w.ground.run, w.ground.walk
	for w.at < end {
		from, to, gradient := w.piece(end)
		surface, braking := w.course.Ground((from + to) / 2)
		along := (to - from) * math.Sqrt(1+gradient*gradient)
		sum.length += along
		sum.run += along * surface * run.perMetre(gradient)
		sum.walk += along * surface * walk.perMetre(gradient)
		sum.surface += along * surface
		sum.brake += along * braking * BrakingCost(gradient)
		rise += (to - from) * gradient
	}
	sum.run /= sum.length
	sum.walk /= sum.length
	sum.surface /= sum.length
	sum.brake /= sum.length
	sum.gradient = rise / (end - start)
	sum.altitude = w.course.Elevation((start + end) / 2)
	sum.run -= sum.surface * run.atMean(sum.gradient)
	sum.walk -= sum.surface * walk.atMean(sum.gradient)
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
// metabolic cost and braking, both as the athlete's. It is NaN for an athlete out of range.
func (g *Ground) RunningWork(a Athlete) float64 {
	if a.check() != nil {
		return math.NaN()
	}
	m := g.mover(a, Surroundings{})
	work := 0.0
	for i := range g.cells {
		work += g.cells[i].length * m.runCost(&g.cells[i])
	}
	return work
}
