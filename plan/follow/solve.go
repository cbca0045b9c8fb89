package follow

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
)

// solve finds the pace.
func (r *Rest) solve(o Options) error {
	s := r.Standing
	var got effort.Solution
	var err error
	switch p := s.Plan; o.Aim {
	case HoldEffort:
		err = errSteady
	case KeepGoal:
		got, err = r.forGoal()
	case MakeCutoffs:
		got, err = r.forCutoffs(max(o.InHand, p.Race.InHand))
	case SpendAll:
		got, err = r.upTo(s.Forecast.Best.Intensity)
	case Choose:
		got, err = r.upTo(o.Intensity)
	}
	if err != nil && !errors.Is(err, effort.ErrDemand) && !errors.Is(err, effort.ErrSpent) && !errors.Is(err, errSteady) {
		return fmt.Errorf("follow: %w", err)
	}
	if err == nil && !s.walking && r.allows(got) {
		r.keep(got.Traverse, got.Intensity)
	} else {
		r.keep(s.steady, s.Forecast.Steady.Intensity)
		r.SameGaits = sameFrom(s.steady, s.tracker.gaits)
	}
	r.Kept = r.keeps(o)
	return nil
}

// allows reports whether a way on is within the budget and MostMore, and other than the
// steady one.
func (r *Rest) allows(got effort.Solution) bool {
	s := r.Standing
	share := got.Intensity * s.Today / s.Plan.Intensity
	return got.Finish().Spent <= fits && share <= 1+MostMore+closeShare && math.Abs(share/s.share()-1) >= sameShare
}

// keeps reports whether the aim is met.
func (r *Rest) keeps(o Options) bool {
	s := r.Standing
	switch {
	case s.walking:
		return false
	case o.Aim == HoldEffort:
		return s.holds
	case o.Aim == SpendAll:
		return s.Forecast.Best.Budget <= fits
	case o.Aim == Choose:
		return math.Abs(r.Intensity/o.Intensity-1) < 4*sameShare
	case o.Aim == KeepGoal:
		return r.trace.Finish().Moving <= s.goal()+goodTo
	}
	return r.inHand() >= max(o.InHand, s.Plan.Race.InHand)
}

// inHand is the least that the rest has in hand at a cutoff to come.
func (r *Rest) inHand() time.Duration {
	least := longest
	for _, c := range r.Standing.ahead() {
		least = min(least, c.Limit-r.Standing.arrival(r.trace, c.Distance, c.Departure))
	}
	return least
}

// goal is the moving time of the plan's finish.
func (s *Standing) goal() float64 { return s.Plan.Traverse().Finish().Moving - s.early }

// errSteady stands for a rest at the planned effort.
var errSteady = errors.New("at the planned effort")

const (
	sameShare  = 0.005 // of efforts, within which they are one
	closeShare = 1e-6
)

// share is the steady effort over the planned one.
func (s *Standing) share() float64 {
	return s.Forecast.Steady.Intensity * s.Today / s.Plan.Intensity
}

// forGoal keeps the plan's finish time where the planned effort does not.
func (r *Rest) forGoal() (got effort.Solution, err error) {
	s := r.Standing
	if s.steady.Finish().Moving <= s.goal()+goodTo {
		return got, errSteady
	}
	got, r.SameGaits, err = s.tracker.even(s.State, effort.Demand{Moving: s.goal()})
	return got, err
}

// upTo goes on at an intensity, up to MostMore above the plan's and to what the budget
// allows: with the plan's gaits if that is about the plan's effort, and otherwise in bouts
// that spend as much.
func (r *Rest) upTo(intensity float64) (got effort.Solution, err error) {
	s, t := r.Standing, r.Standing.tracker
	intensity = math.Min(intensity, (1+MostMore)*t.plan.Intensity/t.today)
	if s.walking || intensity > s.Forecast.Best.Intensity {
		got.Traverse, got.Intensity, r.SameGaits = s.most, s.Forecast.Best.Intensity, sameFrom(s.most, t.gaits)
		return got, nil
	}
	if math.Abs(math.Log(intensity*t.today/t.plan.Intensity)) <= keepGaits {
		r.SameGaits = true
		return effort.Solution{Traverse: t.at(s.State, intensity, t.gaits), Intensity: intensity}, nil
	}
	got, r.SameGaits, err = t.even(s.State, effort.Demand{Budget: t.at(s.State, intensity, nil).Finish().Spent})
	return got, err
}

const (
	cutoffRounds = 30
	cutoffMet    = 0.5 // s, how near is enough
)

// forCutoffs looks for the slowest moving time at which every cutoff to come has its time in
// hand, as plans do: the tightest in proportion is nearly the answer.
func (r *Rest) forCutoffs(inHand time.Duration) (got effort.Solution, err error) {
	s := r.Standing
	here, ahead := s.State.Moving, s.ahead()
	moving, safe, late := s.steady.Finish().Moving, 0.0, math.Inf(1)
	for range cutoffRounds {
		if got, r.SameGaits, err = s.tracker.even(s.State, effort.Demand{Moving: moving}); err != nil {
			return got, err
		}
		share, spare := math.Inf(1), math.Inf(1)
		for _, c := range ahead {
			at := got.At(c.Distance).Moving
			left := (c.Limit - inHand - s.arrival(got.Traverse, c.Distance, c.Departure)).Seconds()
			if at-here+left <= 0 {
				return got, fmt.Errorf("follow: %w: no time to %s", effort.ErrDemand, c.Cutoff)
			}
			share, spare = math.Min(share, (at-here+left)/(at-here)), math.Min(spare, left)
		}
		if spare >= 0 {
			safe = math.Max(safe, moving)
		} else {
			late = math.Min(late, moving)
		}
		if spare >= 0 && spare <= cutoffMet || share*(moving-here) > longest.Seconds() {
			return got, nil
		}
		if moving = here + (moving-here)*share - cutoffMet/2; moving <= safe || moving >= late {
			moving = (math.Max(safe, here) + late) / 2
		}
	}
	if safe > 0 {
		got, r.SameGaits, err = s.tracker.even(s.State, effort.Demand{Moving: safe})
	}
	return got, err
}
