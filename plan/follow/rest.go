package follow

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// Aim is what the rest of a race is planned for.
type Aim int

// The aims. Whatever the aim, no more is planned than the budget that is left; and where it
// is spent, a walk.
const (
	// KeepGoal keeps the plan's finish time where a time, a standard or cutoffs were planned
	// for, and otherwise the share of the budget that the plan spends.
	KeepGoal Aim = iota

	// HoldEffort keeps the plan's effort and lets the time go.
	HoldEffort

	// SpendAll takes the fastest finish that the budget left allows.
	SpendAll

	// MakeCutoffs takes the least effort that is Options.InHand early at every cutoff to
	// come.
	MakeCutoffs

	// Choose goes on at the relative intensity Options.Intensity: what the runner feels
	// able to give.
	Choose
)

func (a Aim) String() string {
	names := [...]string{"keep the goal", "hold the effort", "spend all", "make the cutoffs", "chosen effort"}
	if a < 0 || int(a) >= len(names) {
		return "no aim"
	}
	return names[a]
}

// Options of Rest. The zero value keeps the goal.
type Options struct {
	Aim    Aim
	InHand time.Duration // at cutoffs, for MakeCutoffs. 0 means what the race asks for

	// Intensity is that of Choose, on the scale of Plan.Intensity, 0.1 to 2.
	Intensity float64
}

// A Rest is the plan for what is left of a race.
type Rest struct {
	Standing *Standing
	Aim      Aim
	Kept     bool // whether the aim is met
	Advice   Advice

	// Intensity from here on, on the scale of Plan.Intensity: never 0, and where the budget
	// is spent never above the plan's. Share is it over the plan's, hour power of the day
	// included: how the effort compares with what was planned.
	Intensity, Share float64

	Budget    float64       // spent at the finish
	Gun       time.Duration // at the finish
	Late      time.Duration // over the plan, below 0 if earlier
	Splits    []Split       // at the landmarks to come
	Bouts     []plan.Bout   // of run and walk, to the finish
	SameGaits bool          // the gaits are the plan's
	Cutoffs   []Cutoff      // those to come; Steady is this plan's time

	Words []string // what to do, to be read aloud

	trace *effort.Traverse
}

// A Split is a place to come.
type Split struct {
	Name     string
	Distance float64       // m from the start
	Gun      time.Duration // on arrival
	Clock    time.Time     // zero if the race has no start time
	Planned  time.Duration // what the plan had
	Late     time.Duration // Gun − Planned
	Took     time.Duration // moving time from the place before, or from here
	Stop     time.Duration // planned there
}

// Rest plans what is left of the race by even effort, spread as the plan spreads it. The
// planned stops to come stay as they are. Gaits are the plan's as long as the power on
// offer is within 5 % of the plan's, so that a passage as planned returns the plan.
// In a plan that spends more than the whole budget the rest does not: it says so.
//
// The error wraps ErrAim at the finish, or where cutoffs are aimed for and none is to come,
// or for an option out of range.
func (s *Standing) Rest(o Options) (*Rest, error) {
	switch {
	case s.finished():
		return nil, fmt.Errorf("follow: %w: the finish is reached", ErrAim)
	case o.Aim < KeepGoal || o.Aim > Choose:
		return nil, fmt.Errorf("follow: %w: aim %d", ErrAim, o.Aim)
	case o.InHand < 0 || o.InHand > longest:
		return nil, fmt.Errorf("follow: %w: %v in hand", ErrAim, o.InHand)
	case o.Aim == Choose && !(o.Intensity >= 0.1 && o.Intensity <= 2):
		return nil, fmt.Errorf("follow: %w: a chosen intensity of %g is not within 0.1 to 2", ErrAim, o.Intensity)
	case o.Aim == MakeCutoffs && len(s.ahead()) == 0:
		return nil, fmt.Errorf("follow: %w: no cutoff is to come", ErrAim)
	}
	r := &Rest{Standing: s, Aim: o.Aim}
	if err := r.solve(o); err != nil {
		return nil, err
	}
	r.describe()
	r.advise()
	return r, nil
}

// solve finds the pace.
func (r *Rest) solve(o Options) error {
	s := r.Standing
	var got effort.Solution
	var err error
	switch p := s.Plan; o.Aim {
	case HoldEffort:
		got.Traverse, got.Intensity, r.SameGaits = s.tracker.at(s.State, p.Intensity, s.tracker.gaits), p.Intensity, true
	case MakeCutoffs:
		got, err = r.forCutoffs(max(o.InHand, p.Race.InHand))
	case KeepGoal:
		got, r.SameGaits, err = s.tracker.even(s.State, s.goal())
	case Choose:
		got, r.SameGaits, err = s.chosen(o.Intensity)
	case SpendAll:
		err = effort.ErrSpent // as below
	}
	if err != nil && !errors.Is(err, effort.ErrDemand) && !errors.Is(err, effort.ErrSpent) {
		return fmt.Errorf("follow: %w", err)
	}
	if r.Kept = err == nil && got.Finish().Spent <= fits && s.State.Spent < 1; r.Kept {
		r.keep(got.Traverse, got.Intensity)
		return nil
	}
	r.keep(s.most, s.Forecast.Best.Intensity)
	r.SameGaits = sameFrom(s.most, s.tracker.gaits)
	r.Kept = o.Aim == SpendAll && s.Forecast.Best.Budget <= fits && s.State.Spent < 1
	return nil
}

// chosen goes on at an intensity: with the plan's gaits if that is about the plan's effort,
// and otherwise in bouts that spend as much.
func (s *Standing) chosen(intensity float64) (got effort.Solution, same bool, err error) {
	r := s.tracker
	if math.Abs(math.Log(intensity*r.today/r.plan.Intensity)) <= keepGaits {
		return effort.Solution{Traverse: r.at(s.State, intensity, r.gaits), Intensity: intensity}, true, nil
	}
	return r.even(s.State, effort.Demand{Budget: r.at(s.State, intensity, nil).Finish().Spent})
}

// goal is what keeping the goal demands.
func (s *Standing) goal() effort.Demand {
	p := s.Plan
	if p.Race.Goal > 0 || len(p.Race.Standards) > 0 || p.Race.MakeCutoffs {
		return effort.Demand{Moving: p.Traverse().Finish().Moving - s.early}
	}
	return effort.Demand{Budget: p.Budget}
}

func (r *Rest) keep(t *effort.Traverse, intensity float64) {
	r.trace, r.Intensity = t.Clone(), intensity
	r.Share = intensity * r.Standing.Today / r.Standing.Plan.Intensity
	r.Budget = r.trace.Finish().Spent
}

// sameFrom reports whether a traverse has the gaits from where it starts.
func sameFrom(t *effort.Traverse, gaits []effort.Gait) bool {
	for j := t.First; j < len(gaits); j++ {
		if t.Gait[j] != gaits[j] {
			return false
		}
	}
	return true
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
