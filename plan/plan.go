package plan

import (
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
)

// A Plan is an even-effort plan. Times are whole milliseconds, so that sums are exact.
type Plan struct {
	Course  *course.Course
	Athlete effort.Athlete
	Race    Race

	// Intensity is the relative intensity: effort over present capability.
	Intensity float64

	// Budget is the share of the effort budget that the plan spends; above 1 the goal
	// is beyond the athlete.
	Budget float64

	// Unmet says that no pace at all meets the goal: the plan is for the fastest sensible time
	// instead.
	Unmet bool

	// Needs is what a goal beyond the athlete would take.
	Needs Needs

	// Standard is the one that is planned for, where the race gives a list.
	Standard Standard

	Moving  time.Duration // on the course without stops
	Stopped time.Duration // planned stops
	Gun     time.Duration // from the gun to the finish: delay, moving and stops

	FirstHalf    time.Duration // moving time to half the distance
	WalkingShare float64       // of the moving time
	GaitChanges  int

	Start    Start
	HoldBack HoldBack

	// BoutCost is what keeping bouts of one gait to the shortest bout costs.
	BoutCost time.Duration

	// Walks are the planned walks, and WalkCost what they cost in moving time at equal
	// budget, beside the walks that even effort has of itself. The model sees little benefit
	// in a planned walk: eating, muscles and morale are outside of it. The cost may come
	// out a little below 0: even effort leaves out walks that save less than a change of gait
	// must save.
	Walks    []PlannedWalk
	WalkCost time.Duration

	// WeatherCost is what the day's weather and dark cost in moving time at equal budget; 0
	// without a Day.
	WeatherCost time.Duration

	Stops   []Stop   // all of them, in order
	Cutoffs []Margin // in order

	Best Best

	Climbs   []Climb
	Warnings []string // to be shown beside the plan, the gravest first

	trace *effort.Traverse
	free  *effort.Traverse // the same with a free road from the gun on; nil if it is the same

	ground       *effort.Ground
	surroundings effort.Surroundings
}

// HoldBack says how much of the intensity is held back at the start and what that costs in
// time, against the same gaits and budget without.
type HoldBack struct {
	Share float64
	Cost  time.Duration
}

// Best is the fastest time that the whole budget allows under the same delay, stops,
// holding back and bouts.
type Best struct {
	Intensity float64
	Moving    time.Duration
	Gun       time.Duration

	// Low and High are the ends of the central 90 % interval of Gun, from what the
	// athlete's numbers rest on and how far one race lies from another. Both are 0 for
	// an athlete taken as known.
	Low, High time.Duration
}

// Even returns the even-effort plan of a race. A goal beyond the athlete is planned, with
// a Budget above 1 and a warning.
//
// The error wraps one of this package's sentinels, or one of package effort's.
func Even(c *course.Course, a effort.Athlete, r Race) (*Plan, error) {
	if err := r.check(c); err != nil {
		return nil, err
	}
	r = r.atLandmarks(c)
	if r.Step == 0 {
		r.Step = DefaultStep
	}
	g, err := effort.NewGround(c, r.Step)
	if err != nil {
		return nil, err
	}
	m := maker{ground: g, plan: &Plan{Course: c, Athlete: a, Race: r, ground: g}}
	if err := m.make(); err != nil {
		return nil, err
	}
	return m.plan, nil
}

// Effort returns the one relative intensity that, held for the whole moving time, would
// spend the same budget. It is Intensity, but for what walks held back by the fastest
// walk leave unused.
func (p *Plan) Effort() float64 {
	return p.Athlete.Intensity(p.Moving.Hours()) * math.Pow(p.Budget, p.Athlete.Endurance)
}

// millis is so many seconds as a duration of whole milliseconds.
func millis(seconds float64) time.Duration {
	return effort.Seconds(seconds).Round(time.Millisecond)
}

// State returns where the plan has the runner at a distance in metres.
func (p *Plan) State(distance float64) effort.State { return p.trace.At(distance) }

// Traverse returns the plan cell by cell. It belongs to the plan and is not to be changed.
func (p *Plan) Traverse() *effort.Traverse { return p.trace }

// Integrator returns a new integrator over the plan's ground, in the surroundings that the
// plan was made for: with its start, stops, limits and planned walks.
func (p *Plan) Integrator() (*effort.Integrator, error) {
	return effort.NewIntegrator(p.ground, p.Athlete, p.surroundings)
}
