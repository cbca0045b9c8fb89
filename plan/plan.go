package plan

import (
	"fmt"
	"math"
	"slices"
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

	Moving  time.Duration // on the course without stops
	Stopped time.Duration // planned stops
	Gun     time.Duration // from the gun to the finish: delay, moving and stops

	FirstHalf    time.Duration // moving time to half the distance
	WalkingShare float64       // of the moving time
	GaitChanges  int

	HoldBack HoldBack

	// BoutCost is what keeping bouts of one gait to the shortest bout costs.
	BoutCost time.Duration

	Best Best

	Climbs   []Climb
	Warnings []string // to be shown beside the plan, the gravest first

	trace *effort.Traverse
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
// The error wraps ErrGoal, ErrOption or ErrStop, or one of package effort's.
func Even(c *course.Course, a effort.Athlete, r Race) (*Plan, error) {
	if err := r.check(c); err != nil {
		return nil, err
	}
	if r.Step == 0 {
		r.Step = DefaultStep
	}
	g, err := effort.NewGround(c, r.Step)
	if err != nil {
		return nil, err
	}
	r.Surroundings = r.surroundings(g, a)
	in, err := effort.NewIntegrator(g, a, r.Surroundings)
	if err != nil {
		return nil, err
	}
	m := maker{in: in, plan: &Plan{Course: c, Athlete: a, Race: r}}
	if err := m.best(); err != nil {
		return nil, err
	}
	if err := m.solve(); err != nil {
		return nil, err
	}
	m.plan.describeClimbs(g.Tally(a))
	m.plan.warn()
	m.plan.Warnings = append(m.plan.Warnings, in.Warnings()...)
	m.plan.Warnings = append(append(m.plan.Warnings, r.Basis.Doubts...), c.Warnings()...)
	return m.plan, nil
}

// Effort returns the one relative intensity that, held for the whole moving time, would
// spend the same budget. It is Intensity, but for what walks held back by the fastest
// walk leave unused.
func (p *Plan) Effort() float64 {
	return p.Athlete.Intensity(p.Moving.Hours()) * math.Pow(p.Budget, p.Athlete.Endurance)
}

// maker builds a plan with one integrator.
type maker struct {
	in     *effort.Integrator
	plan   *Plan
	saving float64 // that a change of gait must bring, s
}

// calm is the number of changes of gait in an hour up to which a plan is left as it is,
// savingStep by how much more is asked of each change where there are more of them, and
// mostSaving and dear, a share of the time, where that ends.
const (
	calm       = 5
	savingStep = 1.25
	mostSaving = 8 * effort.DefaultChangeSaving
	dear       = 0.02
)

// meet solves a demand, asking more and more of each change of gait until there are few.
// What was asked stays for the next demand, so that a goal and the best are alike.
func (m *maker) meet(moving, tilt float64) (effort.Solution, error) {
	for stepped := false; ; stepped = true {
		s, err := m.again(moving, tilt)
		if err != nil || m.plan.Race.bout() == 0 {
			return s, err
		}
		total := s.Finish().Moving
		if stepped && s.BoutCost > dear*total {
			m.saving /= savingStep // the step before was the last worth its price
			return m.again(moving, tilt)
		}
		if m.saving >= mostSaving || changes(s.Gait) <= calm*total/3600 {
			return s, nil
		}
		m.saving *= savingStep
	}
}

// sameGoal is how near a goal lies to the best time, relative, to be planned like that.
const sameGoal = 0.005

// again solves a demand with what was asked of each change of gait before.
func (m *maker) again(moving, tilt float64) (effort.Solution, error) {
	return m.in.Solve(effort.State{}, m.demand(moving, tilt))
}

// forGoal solves for a goal in seconds, or at 0 for the best again; a goal about at the
// best has its gaits.
func (m *maker) forGoal(goal, best, tilt float64) (effort.Solution, error) {
	switch {
	case goal == 0:
		return m.again(0, tilt)
	case math.Abs(goal/best-1) >= sameGoal:
		return m.meet(goal, tilt)
	}
	like, err := m.again(0, tilt)
	if err != nil {
		return like, err
	}
	d := effort.Demand{Moving: goal, Tilt: tilt, Ease: m.plan.Race.Ease, Gaits: slices.Clone(m.in.Gaits())}
	s, err := m.in.Solve(effort.State{}, d)
	s.BoutCost = like.BoutCost
	return s, err
}

// changes counts the changes of gait.
func changes(gaits []effort.Gait) float64 {
	n := 0.0
	for j := 1; j < len(gaits); j++ {
		if gaits[j] != gaits[j-1] {
			n++
		}
	}
	return n
}

// demand is the race's, for a moving time in seconds or, at 0, for the whole budget.
func (m *maker) demand(moving, tilt float64) effort.Demand {
	return effort.Demand{Moving: moving, Tilt: tilt, Ease: m.plan.Race.Ease, ShortestBout: m.plan.Race.bout(), ChangeSaving: m.saving}
}

// best finds the fastest time on the whole budget.
func (m *maker) best() error {
	p := m.plan
	m.saving = effort.DefaultChangeSaving
	flat, err := m.meet(0, 0)
	if err != nil {
		return err
	}
	moving, intensity := flat.Finish().Moving, flat.Intensity
	if !(moving <= longest.Seconds()) {
		return fmt.Errorf("plan: %w: the course would take over %.0f h", effort.ErrAthlete, longest.Hours())
	}
	if tilt := p.Race.tilt(moving); tilt != 0 {
		m.saving = effort.DefaultChangeSaving
		held, err := m.meet(0, tilt)
		if err != nil {
			return err
		}
		moving, intensity = held.Finish().Moving, held.Intensity
	}
	p.Best = Best{Intensity: intensity, Moving: millis(moving)}
	p.Best.Gun = p.gun(p.Best.Moving)
	if p.Race.Basis.Known() {
		return nil
	}
	fastest, err := m.in.Fastest(nil)
	if err != nil {
		return err
	}
	low, high := p.Race.Basis.Interval(moving, fastest.Slope)
	p.Best.Low, p.Best.High = p.gun(millis(low)), p.gun(millis(high))
	return nil
}

// gun is the gun time of a moving time.
func (p *Plan) gun(moving time.Duration) time.Duration {
	return p.Race.StartDelay + p.Race.standing() + moving
}

// solve finds the plan's pace, and what holding back costs in it: the moving time that
// the same gaits and the same budget would take without.
func (m *maker) solve() error {
	p := m.plan
	moving := p.Best.Moving.Seconds()
	tilt, goal := p.Race.tilt(moving), 0.0
	if p.Race.Goal > 0 {
		goal = p.Race.goalMoving().Seconds()
		tilt = p.Race.tilt(goal)
	}
	s, err := m.forGoal(goal, moving, tilt)
	if err != nil {
		return err
	}
	m.keep(s)
	if tilt == 0 || p.Budget < leastBudget {
		return nil
	}
	p.HoldBack.Share = -tilt
	flat, err := m.in.Solve(effort.State{}, effort.Demand{Budget: p.Budget, Ease: p.Race.Ease, Gaits: slices.Clone(m.in.Gaits())})
	if err != nil {
		return fmt.Errorf("plan: without holding back: %w", err)
	}
	p.HoldBack.Cost = millis(p.trace.Finish().Moving - flat.Finish().Moving)
	return nil
}

// leastBudget is the share of the budget below which a plan is a stroll and its costs
// are not worth a figure.
const leastBudget = 1e-6

// keep copies a solution out of the integrator into the plan.
func (m *maker) keep(s effort.Solution) {
	p := m.plan
	finish := s.Finish()
	p.Intensity, p.Budget = s.Intensity, finish.Spent
	p.Moving, p.Stopped = millis(finish.Moving), p.Race.standing()
	p.Gun = p.gun(p.Moving)
	p.BoutCost = millis(s.BoutCost)
	p.trace = s.Clone()
	length := p.Course.Length()
	p.GaitChanges = len(p.Bouts(0, length)) - 1
	p.FirstHalf = millis(p.trace.At(length / 2).Moving)
	p.WalkingShare = p.trace.WalkingTime(0, length) / finish.Moving
}

// millis is so many seconds as a duration of whole milliseconds.
func millis(seconds float64) time.Duration {
	return effort.Seconds(seconds).Round(time.Millisecond)
}
