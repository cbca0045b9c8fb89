package plan

import (
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/effort"
)

// maker builds a plan with one integrator.
type maker struct {
	ground       *effort.Ground
	in           *effort.Integrator
	surroundings effort.Surroundings
	plan         *Plan
	walks        []effort.Limit // planned
	own          []effort.Gait  // gaits of the plan without planned walks
	saving       float64        // that a change of gait must bring, s
}

// rounds is how often a plan is made anew because halts or walks depend on its times.
const rounds = 8

// make makes the plan.
func (m *maker) make() error {
	p := m.plan
	p.Stops = p.Race.halts(p.Course, m.runningTime())
	if err := m.prepare(); err != nil {
		return err
	}
	for round := 0; ; round++ {
		if err := m.best(); err != nil {
			return err
		}
		if err := m.solve(); err != nil {
			return err
		}
		if round == rounds {
			break
		}
		again, err := m.settle()
		if err != nil {
			return err
		}
		if !again {
			break
		}
	}
	if err := m.bestWithWalks(); err != nil {
		return err
	}
	return m.describe()
}

// bestWithWalks finds the best anew where planned walks, or halts by need, have gone by the
// times of another plan than the best.
func (m *maker) bestWithWalks() error {
	p := m.plan
	r := p.Race
	if r.Walks.Every == 0 && r.Stations.PerHour == 0 || !p.aimed() && r.Share == 0 {
		return nil
	}
	r.Goal, r.Share, r.Standards, r.MakeCutoffs = 0, 0, nil, false
	best := maker{ground: m.ground, plan: &Plan{Course: p.Course, Athlete: p.Athlete, Race: r, ground: m.ground}}
	if err := best.make(); err != nil {
		return err
	}
	p.Best = best.plan.Best
	return nil
}

// runningTime is the moving time in seconds to a distance for running all the way on the
// whole budget, by the closed form: enough to begin with.
func (m *maker) runningTime() func(distance float64) float64 {
	a := m.plan.Athlete
	if a.Check() != nil {
		return func(float64) float64 { return 0 }
	}
	t := m.ground.Tally(a)
	whole := math.Min(a.UniformTime(t.Total()).Seconds(), longest.Seconds())
	return func(distance float64) float64 { return whole * t.To(distance) / t.Total() }
}

// prepare makes the integrator ready for the race with its stops and walks.
func (m *maker) prepare() error {
	p := m.plan
	m.surroundings = p.Race.surroundings(p.Stops, m.ground, p.Athlete)
	for _, name := range p.Race.WalkClimbs {
		climb, err := climbCalled(p.Course, name)
		if err != nil {
			return err
		}
		m.surroundings.Limits = append(m.surroundings.Limits, effort.Limit{From: climb.Start, To: climb.Top, Walk: true})
	}
	m.surroundings.Limits = append(m.surroundings.Limits, m.walks...)
	p.surroundings = m.surroundings
	if m.in == nil {
		m.in = &effort.Integrator{}
	}
	return m.in.Reset(m.ground, p.Athlete, m.surroundings)
}

// settle looks whether halts and planned walks still fit the times of the plan, and if
// not, prepares for it to be made anew.
func (m *maker) settle() (again bool, err error) {
	p := m.plan
	stops := p.Race.halts(p.Course, func(d float64) float64 { return p.trace.At(d).Moving })
	walks := m.placeWalks()
	if slices.Equal(stops, p.Stops) && slices.Equal(walks, m.walks) {
		return false, nil
	}
	p.Stops, m.walks = stops, walks
	return true, m.prepare()
}

// describe says what the plan comes to, once its times stand.
func (m *maker) describe() (err error) {
	p := m.plan
	if err := m.costs(); err != nil {
		return err
	}
	if p.Needs, err = m.needs(); err != nil {
		return err
	}
	p.Cutoffs = p.margins()
	p.describeWalks(m.walks)
	p.describeClimbs(m.ground.Tally(p.Athlete))
	p.warn()
	p.Warnings = append(p.Warnings, m.in.Warnings()...)
	p.Warnings = append(append(p.Warnings, p.Race.Basis.Doubts...), p.Course.Warnings()...)
	return nil
}

// best finds the fastest time on the whole budget.
func (m *maker) best() error {
	p := m.plan
	whole := aim{budget: 1}
	m.saving = effort.DefaultChangeSaving
	flat, err := m.meet(whole, 0)
	if err != nil {
		return err
	}
	moving, intensity := flat.Finish().Moving, flat.Intensity
	if !(moving <= longest.Seconds()) {
		return fmt.Errorf("plan: %w: the course would take over %.0f h", effort.ErrAthlete, longest.Hours())
	}
	if tilt := p.Race.tilt(moving); tilt != 0 {
		m.saving = effort.DefaultChangeSaving
		held, err := m.meet(whole, tilt)
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
	return p.Race.StartDelay + total(p.Stops) + moving
}

// solve finds the plan's pace.
func (m *maker) solve() error {
	m.plan.Unmet = false
	a, err := m.aim()
	if err != nil {
		return err
	}
	best := m.plan.Best.Moving.Seconds()
	tilt := m.plan.Race.tilt(best)
	if a.moving > 0 {
		tilt = m.plan.Race.tilt(a.moving)
	}
	s, err := m.forAim(a, best, tilt)
	if err != nil {
		return err
	}
	m.plan.HoldBack = HoldBack{Share: -tilt}
	m.keep(s)
	return nil
}

// keep copies a solution out of the integrator into the plan.
func (m *maker) keep(s effort.Solution) {
	p := m.plan
	finish := s.Finish()
	p.Intensity, p.Budget = s.Intensity, finish.Spent
	p.Moving, p.Stopped = millis(finish.Moving), total(p.Stops)
	p.Gun = p.gun(p.Moving)
	p.BoutCost = millis(s.BoutCost)
	p.trace = s.Clone()
	length := p.Course.Length()
	p.GaitChanges = len(p.Bouts(0, length)) - 1
	p.FirstHalf = millis(p.trace.At(length / 2).Moving)
	p.WalkingShare = p.trace.WalkingTime(0, length) / finish.Moving
}
