package forecast

import (
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// day is what all draws have in common.
type day struct {
	course       *course.Course
	ground       *effort.Ground
	coarse       *effort.Ground // in cells coarseCells times as long
	shift        float64        // of ln intensity from the coarse ground to the ground
	race         plan.Race
	stops        []plan.Stop
	cutoffs      []plan.Margin // in order
	surroundings effort.Surroundings
	warnings     []string

	at           []float64 // where times are taken: every distance once, ascending
	half, finish int       // in at
}

// newDay prepares a race. A plan for the athlete in the middle checks the race, moves
// stops and cutoffs to their landmarks and finds the halts at stations; nothing else of
// it is used.
func newDay(c *course.Course, middle effort.Athlete, r plan.Race, step float64) (*day, error) {
	r = described(r)
	if r.Goal < 0 {
		return nil, fmt.Errorf("forecast: %w: %v", plan.ErrGoal, r.Goal)
	}
	whole := r
	whole.Goal, whole.Net = 0, false
	whole.Step = step
	p, err := plan.Even(c, middle, whole)
	if err != nil {
		return nil, err
	}
	g, err := effort.NewGround(c, step)
	if err != nil {
		return nil, err
	}
	coarse, err := effort.NewGround(c, math.Min(coarseCells*step, longestCell))
	if err != nil {
		return nil, err
	}
	d := &day{course: c, ground: g, coarse: coarse, race: r, stops: p.Stops, cutoffs: p.Cutoffs}
	d.meet(middle)
	in, err := effort.NewIntegrator(g, middle, d.surroundings)
	if err != nil {
		return nil, err
	}
	if d.shift, err = d.shiftOf(middle, in); err != nil {
		return nil, err
	}
	d.warnings = append(in.Warnings(), c.Warnings()...)
	d.places()
	return d, nil
}

// longestCell is the longest that package effort takes, in metres.
const longestCell = 10_000

// shiftOf is by how much ln intensity on the ground is above that on the coarse ground, for
// the athlete in the middle.
func (d *day) shiftOf(middle effort.Athlete, in *effort.Integrator) (float64, error) {
	rough, err := effort.NewIntegrator(d.coarse, middle, d.surroundings)
	if err != nil {
		return 0, err
	}
	fine, err := in.Solve(effort.State{}, effort.Demand{})
	if err != nil {
		return 0, fmt.Errorf("forecast: the athlete in the middle of the draws: %w", err)
	}
	s, err := rough.Solve(effort.State{}, effort.Demand{})
	if err != nil {
		return 0, nil // the search begins without it
	}
	return math.Log(fine.Intensity / s.Intensity), nil
}

// described is the race without what only a plan decides, and without its bouts.
func described(r plan.Race) plan.Race {
	return plan.Race{
		Goal: r.Goal, Net: r.Net, Start: r.Start, StartDelay: r.StartDelay, Wave: r.Wave,
		Cutoffs: r.Cutoffs, Stops: r.Stops, Stations: r.Stations, Surroundings: r.Surroundings,
		HoldBack: plan.Off, ShortestBout: plan.Off,
	}
}

// meet fills in the surroundings as a plan of the race does.
func (d *day) meet(middle effort.Athlete) {
	s := d.race.Surroundings
	s.Limits = slices.Clone(s.Limits)
	if s.Day != nil {
		if start := d.race.Start; !start.IsZero() {
			h, m, sec := start.Clock()
			s.Start = time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(sec)*time.Second + d.race.StartDelay
		}
		s.Stops = nil
		for _, stop := range d.stops {
			s.Stops = append(s.Stops, effort.Stop{Distance: stop.Distance, Time: stop.Duration})
		}
		if s.Heat.Growth > 0 && s.Heat.Expected == 0 {
			s.Heat.Expected = middle.UniformTime(d.ground.RunningWork(middle))
		}
	}
	d.surroundings = s
}

// places collects where times are taken.
func (d *day) places() {
	length := d.course.Length()
	d.at = []float64{length / 2, length}
	for _, l := range d.course.Landmarks() {
		d.at = append(d.at, l.Distance)
	}
	for _, c := range d.cutoffs {
		d.at = append(d.at, c.Distance)
	}
	slices.Sort(d.at)
	d.at = slices.Compact(d.at)
	d.half, d.finish = d.index(length/2), d.index(length)
}

func (d *day) index(distance float64) int {
	i, _ := slices.BinarySearch(d.at, distance)
	return i
}

// fixed is what a runner's gun time on arrival at a place has beside moving.
func (d *day) fixed(distance float64) float64 {
	sum := d.race.StartDelay
	for _, s := range d.stops {
		if s.Distance < distance {
			sum += s.Duration
		}
	}
	return sum.Seconds()
}

// halt is the stop at a place in seconds.
func (d *day) halt(distance float64) float64 {
	sum := time.Duration(0)
	for _, s := range d.stops {
		if s.Distance == distance {
			sum += s.Duration
		}
	}
	return sum.Seconds()
}
