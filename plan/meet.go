package plan

import (
	"errors"
	"math"
	"slices"

	"isoeffort.example/effort"
)

// calm is the number of changes of gait in an hour up to which a plan is left as it is,
// savingStep by how much more is asked of each change where there are more of them, and
// mostSaving and dear, a share of the time, where that ends.
const (
	calm       = 5
	savingStep = 1.25
	mostSaving = 8 * effort.DefaultChangeSaving
	dear       = 0.02
)

// meet solves for an aim, asking more and more of each change of gait until there are few.
// What was asked stays for the next solve, so that a goal and the best are alike.
func (m *maker) meet(a aim, tilt float64) (effort.Solution, error) {
	for stepped := false; ; stepped = true {
		s, err := m.again(a, tilt)
		if err != nil || m.plan.Race.bout() == 0 {
			return s, err
		}
		moving := s.Finish().Moving
		if stepped && s.BoutCost > dear*moving {
			m.saving /= savingStep // the step before was the last worth its price
			return m.again(a, tilt)
		}
		if m.saving >= mostSaving || changes(s.Gait)-2*float64(len(m.walks)) <= calm*moving/3600 {
			return s, nil
		}
		m.saving *= savingStep
	}
}

// again solves for an aim with what was asked of each change of gait before.
func (m *maker) again(a aim, tilt float64) (effort.Solution, error) {
	return m.in.Solve(effort.State{}, m.demand(a, tilt))
}

// demand is the race's.
func (m *maker) demand(a aim, tilt float64) effort.Demand {
	r := &m.plan.Race
	return effort.Demand{Moving: a.moving, Budget: a.budget, Tilt: tilt, Ease: r.Ease, ShortestBout: r.bout(), ChangeSaving: m.saving}
}

// sameGoal is how near a goal lies to the best time, relative, to be planned like that.
const sameGoal = 0.005

// forAim solves for what the race aims at; a goal about at the best has the best's gaits.
func (m *maker) forAim(a aim, best, tilt float64) (effort.Solution, error) {
	switch {
	case a.budget == 1:
		return m.again(a, tilt)
	case a.moving > 0 && a.moving < best: // it may be beyond any pace
		s, err := m.nearly(a, best, tilt)
		if errors.Is(err, effort.ErrDemand) {
			m.plan.Unmet = true
			return m.again(aim{budget: 1}, tilt)
		}
		return s, err
	}
	return m.nearly(a, best, tilt)
}

// nearly is forAim for another aim than the best.
func (m *maker) nearly(a aim, best, tilt float64) (effort.Solution, error) {
	if a.moving == 0 || math.Abs(a.moving/best-1) >= sameGoal {
		return m.meet(a, tilt)
	}
	like, err := m.again(aim{budget: 1}, tilt)
	if err != nil {
		return like, err
	}
	s, err := m.held(a, tilt)
	s.BoutCost = like.BoutCost
	return s, err
}

// held solves with the gaits that the integrator holds.
func (m *maker) held(a aim, tilt float64) (effort.Solution, error) {
	d := effort.Demand{Moving: a.moving, Budget: a.budget, Tilt: tilt, Ease: m.plan.Race.Ease, Gaits: slices.Clone(m.in.Gaits())}
	return m.in.Solve(effort.State{}, d)
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
