package plan

import (
	"fmt"
	"math"
	"slices"

	"isoeffort.example/effort"
)

// mostBudget is the share from which a goal is so far beyond the runner that no cost of a
// detail says anything.
const mostBudget = 1e4

// leastBudget is the share of the budget below which a plan is a stroll and its costs
// are not worth a figure.
const leastBudget = 1e-6

// costs finds what holding back, planned walks and the start cost: each against a plan
// of the same budget without it.
func (m *maker) costs() error {
	p := m.plan
	if p.Budget < leastBudget || p.Budget > mostBudget {
		return nil
	}
	tilt, moving := -p.HoldBack.Share, p.trace.Finish().Moving
	if tilt != 0 {
		if err := m.holdBackCost(moving); err != nil {
			return err
		}
	}
	if err := m.walkCost(moving, tilt); err != nil {
		return err
	}
	if err := m.weatherCost(moving, tilt); err != nil {
		return err
	}
	return m.startCost(moving, tilt)
}

func (m *maker) weatherCost(moving, tilt float64) error {
	s := m.surroundings
	if s.Day == nil {
		return nil
	}
	s.Day, s.Heat = nil, effort.Heat{}
	d := m.demand(aim{budget: m.plan.Budget}, tilt)
	d.Gaits = m.plan.trace.Gait
	mild, err := m.without(s, d)
	if err != nil {
		return fmt.Errorf("plan: without the weather: %w", err)
	}
	m.plan.WeatherCost = millis(moving - mild.Finish().Moving)
	return nil
}

// holdBackCost holds the plan against the faster of two that do not hold back: with the
// same gaits, and with their own. Neither need be the best there is, as joined bouts are
// not; a plan that is faster than both is said to cost nothing.
func (m *maker) holdBackCost(moving float64) error {
	p := m.plan
	copy(m.in.Gaits(), p.trace.Gait)
	same, err := m.held(aim{budget: p.Budget}, 0)
	if err != nil {
		return fmt.Errorf("plan: without holding back: %w", err)
	}
	fastest := same.Finish().Moving
	saving := m.saving
	m.saving = effort.DefaultChangeSaving
	own, err := m.meet(aim{budget: p.Budget}, 0)
	m.saving = saving
	if err != nil {
		return fmt.Errorf("plan: without holding back: %w", err)
	}
	p.HoldBack.Cost = millis(math.Max(0, moving-math.Min(fastest, own.Finish().Moving)))
	return nil
}

// without solves in other surroundings at the plan's budget or for a moving time.
func (m *maker) without(s effort.Surroundings, d effort.Demand) (effort.Solution, error) {
	in, err := effort.NewIntegrator(m.ground, m.plan.Athlete, s)
	if err != nil {
		return effort.Solution{}, err
	}
	return in.Solve(effort.State{}, d)
}

// withoutWalks are the plan's gaits without its planned walks.
func (m *maker) withoutWalks() []effort.Gait {
	gaits, start := slices.Clone(m.plan.trace.Gait), 0.0
	for j, end := range m.plan.trace.End {
		if m.planned((start + end.Distance) / 2) {
			gaits[j] = m.own[j]
		}
		start = end.Distance
	}
	return gaits
}

func (m *maker) walkCost(moving, tilt float64) error {
	if len(m.walks) == 0 {
		return nil
	}
	s := m.surroundings
	s.Limits = s.Limits[:len(s.Limits)-len(m.walks)]
	d := m.demand(aim{budget: m.plan.Budget}, tilt)
	d.Gaits = m.withoutWalks()
	free, err := m.without(s, d)
	if err != nil {
		return fmt.Errorf("plan: without planned walks: %w", err)
	}
	m.plan.WalkCost = millis(moving - free.Finish().Moving)
	return nil
}

// startCost finds what delay and crowd take, and the plan of a free road beside it: for
// the same gun time where that is the goal, or else on the same budget.
func (m *maker) startCost(moving, tilt float64) error {
	p := m.plan
	s := m.surroundings
	s.Crowd = effort.Crowd{}
	s.Start -= p.Race.StartDelay
	p.Start.Delay = p.Race.StartDelay
	if p.surroundings.Crowd.Speed != 0 {
		free, err := m.without(s, m.demand(aim{budget: p.Budget}, tilt))
		if err != nil {
			return fmt.Errorf("plan: without a crowd: %w", err)
		}
		p.Start.Crowd = millis(moving - free.Finish().Moving)
		p.free = free.Clone()
	}
	if p.Race.Net || p.Unmet || !p.timed() {
		if p.free == nil && p.Race.StartDelay > 0 {
			p.free = p.trace
		}
		return nil
	}
	if p.Race.StartDelay == 0 && p.free == nil {
		return nil
	}
	free, err := m.without(s, m.demand(aim{moving: moving + p.Race.StartDelay.Seconds()}, tilt))
	if err != nil {
		return fmt.Errorf("plan: with a free road: %w", err)
	}
	p.free = free.Clone()
	return nil
}

// timed reports whether the plan is for a gun time.
func (p *Plan) timed() bool { return p.Race.Goal > 0 || len(p.Race.Standards) > 0 }
