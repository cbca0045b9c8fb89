package story

import (
	"fmt"
	"math"

	"isoeffort.example/course"
	"isoeffort.example/effort"
)

// Reference is the runner that courses are rated for unless another is given: running
// effort depends on economy, which cancels in a rating's shares, and on braking, 1.
var Reference = effort.Usual(12)

// Options of Tell. The zero value is ready.
type Options struct {
	// Athlete is for whom the story is told. The zero value is Reference.
	Athlete effort.Athlete

	// LeastRise is the rise in metres of the least climb that is told of. 0 means
	// course.DefaultRise.
	LeastRise float64

	// LeastExtra is the least effort of a climb above that of level road, in J/kg, and
	// what regaining the height of a dip must take for the dip to part one climb from the
	// next. 0 does not look at it; otherwise LeastRise 0 is no bound.
	LeastExtra float64

	// Marks are what the user says of the course.
	Marks []Mark
}

// A Mark is something that a profile does not show.
type Mark struct {
	From, To float64 // m from the start
	Kind     MarkKind
	Note     string
}

// MarkKind says what a mark is about.
type MarkKind int

// The kinds of mark.
const (
	Exposed MarkKind = iota // to sun or wind
	Shaded
	Surface // soft, rough or slippery
	Crowded // narrow, or full of people
)

func (k MarkKind) String() string {
	names := [...]string{"exposed", "shaded", "surface", "crowded"}
	if k < 0 || int(k) >= len(names) {
		return "no kind of mark"
	}
	return names[k]
}

// A Story is what a course holds for a runner. All distances are metres from the start.
type Story struct {
	Course *course.Course
	Effort float64 // of running all of it, J/kg

	Highest, Lowest Place

	Halves   []Part // two, by distance
	Quarters []Part // four

	ToGo []ToGo // from afar to near

	Climbs   []Climb
	Descents []course.Descent
	Decoys   []Decoy

	MakeUp    []Stretch // where time can be made up
	Overspend []Stretch // where runners give too much, early

	// Last is the last real climb and what comes after it; nil where there is none.
	Last *Last

	Marks []Mark // as given, in order of where they start
}

// A Place is a point of the course.
type Place struct{ Distance, Elevation float64 }

// A Part is a piece of the course by distance.
type Part struct {
	From, To float64
	course.Relief
	Effort float64 // share of the course's, of running all of it
}

// ToGo is the place from which a round distance is left.
type ToGo struct {
	Left          float64 // m to go
	Place                 // where that is
	Effort        float64 // share of the course's effort that is left
	course.Relief         // that is left
	Name          string  // "a marathon", "half a marathon", "10 km", "5 km"
}

// Tell reads the story of a course. The error wraps effort.ErrAthlete or ErrMark.
func Tell(c *course.Course, o Options) (*Story, error) {
	if o.Athlete == (effort.Athlete{}) {
		o.Athlete = Reference
	}
	if err := o.Athlete.Check(); err != nil {
		return nil, err
	}
	marks, err := sorted(o.Marks, c)
	if err != nil {
		return nil, err
	}
	g, err := effort.NewGround(c, step)
	if err != nil {
		return nil, err
	}
	t := g.Tally(o.Athlete)
	s := &Story{Course: c, Effort: t.Total(), Marks: marks}
	s.Highest, s.Lowest = extremes(c)
	s.Halves, s.Quarters = parts(c, t, 2), parts(c, t, 4)
	s.ToGo = toGo(c, t)
	s.Climbs = climbs(c, t, o)
	s.Descents = c.Descents(course.ClimbOptions{LeastRise: o.LeastRise})
	s.Decoys = decoys(s.Climbs)
	s.Last = last(c, t, s.Climbs)
	s.MakeUp = makeUp(c, t, s.Climbs)
	s.Overspend = overspend(c, t, s.Climbs)
	return s, nil
}

// step is the length in metres of the cells that effort is tallied over.
const step = 20

func extremes(c *course.Course) (highest, lowest Place) {
	highest.Elevation, lowest.Elevation = math.Inf(-1), math.Inf(1)
	for i := range c.Len() {
		d, z := c.Point(i)
		if z > highest.Elevation {
			highest = Place{d, z}
		}
		if z < lowest.Elevation {
			lowest = Place{d, z}
		}
	}
	return highest, lowest
}

// part is the course between two distances.
func part(c *course.Course, t *effort.Tally, from, to float64) Part {
	return Part{from, to, c.ReliefBetween(from, to), (t.To(to) - t.To(from)) / t.Total()}
}

// parts are n pieces of one length.
func parts(c *course.Course, t *effort.Tally, n int) (parts []Part) {
	for i := range n {
		from, to := c.Length()*float64(i)/float64(n), c.Length()*float64(i+1)/float64(n)
		parts = append(parts, part(c, t, from, to))
	}
	return parts
}

// roundDistances are those that runners count down by, m.
var roundDistances = []struct {
	left float64
	name string
}{{42_195, "a marathon"}, {21_097.5, "half a marathon"}, {10_000, "10 km"}, {5_000, "5 km"}}

// toGo are the round distances that are less than nine tenths of the course.
func toGo(c *course.Course, t *effort.Tally) (marks []ToGo) {
	for _, r := range roundDistances {
		if r.left > 0.9*c.Length() {
			continue
		}
		d := c.Length() - r.left
		rest := part(c, t, d, c.Length())
		marks = append(marks, ToGo{r.left, Place{d, c.Elevation(d)}, rest.Effort, rest.Relief, r.name})
	}
	return marks
}

// Decoy is a climb easily taken for a harder one close behind it.
type Decoy struct {
	Climb, Real Climb
	Gap         float64 // m from the decoy's top to the foot of the real one
}

const (
	decoyGap    = 3000 // m, up to which a climb is close behind another
	decoyHarder = 1.5  // of rating, from which it is clearly harder
)

// decoys finds the climbs that stand within decoyGap before one rated clearly harder.
func decoys(climbs []Climb) (found []Decoy) {
	for i, c := range climbs {
		for _, next := range climbs[i+1:] {
			if gap := next.Start - c.Top; gap <= decoyGap && next.Value >= c.Value+decoyHarder {
				found = append(found, Decoy{c, next, gap})
				break
			}
		}
	}
	return found
}

// Last is the last real climb of a course and what still comes.
type Last struct {
	Climb
	After Part    // from its top to the finish
	Small []Climb // climbs that still come, none of them as hard
}

// realClimb is the rating from which a climb is a real one: at least so much, and at least
// half of the hardest.
const realClimb = 2.0

// last finds the last real climb.
func last(c *course.Course, t *effort.Tally, climbs []Climb) *Last {
	real := realClimb
	for _, climb := range climbs {
		real = math.Max(real, climb.Value/2)
	}
	for i := len(climbs) - 1; i >= 0; i-- {
		if climbs[i].Value >= real {
			return &Last{climbs[i], part(c, t, climbs[i].Top, c.Length()), climbs[i+1:]}
		}
	}
	return nil
}

func (p Place) String() string { return fmt.Sprintf("%.0f m at %.1f km", p.Elevation, p.Distance/1000) }
