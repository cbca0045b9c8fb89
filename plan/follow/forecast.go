package follow

import (
	"errors"
	"fmt"
	"math"
	"sort"
	"time"

	"isoeffort.example/effort"
)

// A Forecast says where three ways of going on lead.
type Forecast struct {
	// Steady holds the plan's effort from here on, or what the budget still allows where
	// that is less: the forecast of somebody who keeps to the plan.
	Steady Ending

	// SoFar goes on at the mean effort so far, if that were possible: where its Budget is
	// above 1 it cannot be held to the finish.
	SoFar Ending

	// SpentAt is where that has spent the budget, m from the start; 0 if it lasts.
	SpentAt float64

	// Best spends all of the budget that is left, evenly.
	Best Ending

	// Low and High are the ends of the central 90 % interval of Steady, in proportion to
	// that of the plan's best time: what the race has shown so far does not narrow it.
	// Both are 0 for an athlete taken as known.
	Low, High time.Duration
}

// An Ending is a finish to come.
type Ending struct {
	Gun       time.Duration
	Intensity float64 // from here on, on the scale of Plan.Intensity
	Budget    float64 // spent at the finish
}

// look finds what is ahead: forecasts and cutoffs.
func (s *Standing) look() error {
	if err := s.spendAll(); err != nil {
		return err
	}
	s.hold()
	s.goesOn()
	s.interval()
	s.Cutoffs = append(s.passed(), s.ahead()...)
	return nil
}

// hold goes on at the plan's effort, or at what the budget allows of it: with other gaits
// the budget may last for more effort than planned, which is not asked for.
func (s *Standing) hold() {
	r := s.tracker
	held := r.at(s.State, r.plan.Intensity, r.gaits)
	if s.holds = s.State.Spent < 1 && held.Finish().Spent <= fits; s.holds {
		s.walking = false // though spending all evenly would be a walk
		s.steady = held.Clone()
		s.Forecast.Steady = s.ending(s.steady, r.plan.Intensity)
		return
	}
	s.steady, s.Forecast.Steady = s.most, s.Forecast.Best
	if s.Forecast.Steady.Intensity > r.plan.Intensity {
		s.steady = r.at(s.State, r.plan.Intensity, s.most.Gait).Clone()
		s.Forecast.Steady = s.ending(s.steady, r.plan.Intensity)
	}
}

// glance is look without forecasts, where the plan's effort is within the budget and makes
// every cutoff to come.
func (s *Standing) glance() error {
	r := s.tracker
	held := r.at(s.State, r.plan.Intensity, r.gaits)
	if held.Finish().Spent > fits || s.State.Spent >= 1 {
		return s.look()
	}
	s.steady, s.holds = held.Clone(), true
	s.most = s.steady
	s.Forecast.Steady = s.ending(s.steady, r.plan.Intensity)
	if s.Cutoffs = append(s.passed(), s.ahead()...); s.next(OnlyFaster) != nil {
		return s.look()
	}
	return nil
}

// spendAll finds the fastest way on that the budget allows: a walk where it is spent, or so
// nearly that even effort would be less than a walk's.
func (s *Standing) spendAll() error {
	r := s.tracker
	var best effort.Solution
	err := error(effort.ErrSpent)
	if s.State.Spent < 1 {
		best, _, err = r.even(s.State, effort.Demand{Budget: 1})
	}
	if err != nil && !errors.Is(err, effort.ErrSpent) && !errors.Is(err, effort.ErrDemand) {
		return fmt.Errorf("follow: %w", err)
	}
	s.walking = err != nil || best.Intensity < math.Min(walked, r.plan.Intensity)
	if s.walking {
		best.Traverse, best.Intensity = r.walk(s.State)
	}
	s.most = best.Clone()
	s.Forecast.Best = s.ending(s.most, best.Intensity)
	return nil
}

// goesOn goes on as before, with the plan's gaits where that is about the plan's effort.
func (s *Standing) goesOn() {
	r := s.tracker
	gaits := r.gaits
	if math.Abs(math.Log(s.soFar*r.today/r.plan.Intensity)) > sameGaits {
		gaits = nil
	}
	t := r.at(s.State, s.soFar, gaits)
	s.Forecast.SoFar = s.ending(t, s.soFar)
	if s.Forecast.SoFar.Budget <= fits {
		return
	}
	s.Forecast.SpentAt = s.Distance
	if s.State.Spent < 1 {
		cells := t.End[t.First:]
		j := sort.Search(len(cells)-1, func(i int) bool { return cells[i].Spent >= 1 })
		s.Forecast.SpentAt = cells[j].Distance
	}
}

func (s *Standing) ending(t *effort.Traverse, intensity float64) Ending {
	return Ending{Gun: s.arrival(t, s.Plan.Course.Length(), false), Intensity: intensity, Budget: t.Finish().Spent}
}

// interval takes over the spread of the plan's best time.
func (s *Standing) interval() {
	best, f := s.Plan.Best, &s.Forecast
	if best.High == 0 {
		return
	}
	wide := float64(best.Moving+best.High-best.Gun) / float64(best.Moving)
	left := s.steady.Finish().Moving - s.State.Moving
	f.Low = f.Steady.Gun - millis(left-left/wide)
	f.High = f.Steady.Gun + millis(left*wide-left)
}
