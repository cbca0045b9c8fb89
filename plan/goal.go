package plan

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
)

// A Standard is a finish time that means something: a medal, a qualifying time.
type Standard struct {
	Name string
	Time time.Duration // gun time or, if Race.Net is set, net
}

func checkStandards(list []Standard) error {
	for i, s := range list {
		if s.Time <= 0 || s.Time > longest {
			return fmt.Errorf("plan: %w: standard %q: %v is not within 0 to %v", ErrGoal, s.Name, s.Time, longest)
		}
		for _, other := range list[:i] {
			if other.Name == s.Name {
				return fmt.Errorf("plan: %w: two standards are called %q", ErrGoal, s.Name)
			}
		}
	}
	return nil
}

// goalMoving is what the goal leaves for moving beside the stops.
func (r Race) goalMoving(stops time.Duration) time.Duration { return r.movingFor(r.Goal, stops) }

// movingFor is what a finish time leaves for moving.
func (r Race) movingFor(finish, stops time.Duration) time.Duration {
	if !r.Net {
		finish -= r.StartDelay
	}
	return finish - stops
}

// standardFor is the fastest standard that the best allows, or else the slowest.
func (r Race) standardFor(best, stops time.Duration) Standard {
	var fastest, slowest Standard
	for _, s := range r.Standards {
		if s.Time > slowest.Time {
			slowest = s
		}
		if r.movingFor(s.Time, stops) >= best && (fastest.Time == 0 || s.Time < fastest.Time) {
			fastest = s
		}
	}
	if fastest.Time == 0 {
		return slowest
	}
	return fastest
}

// aim is what a plan is solved for: a moving time in seconds, or a share of the budget.
type aim struct{ moving, budget float64 }

// aim is that of the race, once the best is known.
func (m *maker) aim() (aim, error) {
	p := m.plan
	r, stops := &p.Race, total(p.Stops)
	switch {
	case r.Goal > 0:
		return m.forTime(r.Goal)
	case r.Share > 0:
		return aim{budget: r.Share}, nil
	case len(r.Standards) > 0:
		p.Standard = r.standardFor(p.Best.Moving, stops)
		return m.forTime(p.Standard.Time)
	case r.MakeCutoffs:
		return m.forCutoffs()
	}
	return aim{budget: 1}, nil
}

func (m *maker) forTime(finish time.Duration) (aim, error) {
	left := m.plan.Race.movingFor(finish, total(m.plan.Stops))
	if left <= 0 {
		return aim{}, fmt.Errorf("plan: %w: %v leaves no time to move after %v of delay and stops", ErrGoal, finish, finish-left)
	}
	return aim{moving: left.Seconds()}, nil
}

const (
	// cutoffRounds is how often a finish time is looked for at which the tightest cutoff
	// has just the time in hand, and cutoffMet how near in seconds is enough.
	cutoffRounds = 30
	cutoffMet    = 0.5
)

// forCutoffs is the slowest moving time at which every cutoff has its time in hand.
// Where a runner is at a share of the moving time hardly depends on that time, so the time
// to the tightest cutoff in proportion is nearly the answer, and a few rounds find it.
func (m *maker) forCutoffs() (aim, error) {
	p := m.plan
	moving, safe, late := p.Best.Moving.Seconds(), 0.0, math.Inf(1)
	for range cutoffRounds {
		s, err := m.meet(aim{moving: moving}, p.Race.tilt(moving))
		if errors.Is(err, effort.ErrDemand) {
			break // no pace is so fast: solve finds out again and says so
		}
		if err != nil {
			return aim{}, err
		}
		share, spare := math.Inf(1), math.Inf(1)
		for _, c := range p.Race.Cutoffs {
			allowed, taken := (p.allowed(c) - p.Race.InHand).Seconds(), s.At(c.Distance).Moving
			if allowed <= 0 {
				p.Unmet = true
				return aim{budget: 1}, nil
			}
			share, spare = math.Min(share, allowed/taken), math.Min(spare, allowed-taken)
		}
		if spare >= 0 {
			safe = math.Max(safe, moving)
		} else {
			late = math.Min(late, moving)
		}
		if spare >= 0 && spare <= cutoffMet || share*moving > longest.Seconds() {
			break
		}
		// Half of what is allowed to be left is aimed for; where a change of gait has moved
		// the answer out of the bracket it is halved instead.
		if moving = moving*share - cutoffMet/2; moving <= safe || moving >= late {
			moving = (safe + late) / 2
		}
	}
	if safe == 0 {
		safe = moving
	}
	return aim{moving: safe}, nil
}

// Needs says what a goal beyond the runner would take.
type Needs struct {
	// HourPower is about what the runner's hour power would have to be, W/kg; 0 where the
	// budget allows the plan.
	HourPower float64
}

// needs estimates by a few solves the hour power with which the plan's moving time spends
// the whole budget.
func (m *maker) needs() (Needs, error) {
	p := m.plan
	if p.Budget <= BeyondBudget {
		return Needs{}, nil
	}
	a, want := p.Athlete, p.Moving.Seconds()
	in := effort.Integrator{}
	for range 6 {
		if err := in.Reset(m.ground, a, m.surroundings); err != nil {
			return Needs{}, nil // beyond any runner
		}
		f, err := in.Fastest(nil)
		if err != nil || !(f.Slope[effort.HourPower] < 0) {
			return Needs{}, err
		}
		if math.Abs(f.Moving/want-1) < 1e-3 {
			return Needs{HourPower: a.HourPower}, nil
		}
		a.HourPower *= math.Pow(want/f.Moving, 1/f.Slope[effort.HourPower])
	}
	return Needs{HourPower: a.HourPower}, nil
}
