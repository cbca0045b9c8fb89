package follow

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A Standing says where a runner stands in a race: by the clock, and in effort as the
// times tell it. It keeps an integrator, so that neither it nor a Rest made from it may be
// shared between goroutines while Rest is called.
type Standing struct {
	Plan *plan.Plan

	Place    string        // the landmark there, if there is one
	Distance float64       // m from the start
	Leaving  bool          // the planned stops there are behind
	Gun      time.Duration // since the runner's own gun
	Planned  time.Duration // what the plan has there
	Late     time.Duration // Gun − Planned, below 0 if early

	// State is where the runner is taken to be. Its Moving is the gun time less the
	// planned delay and the planned stops so far: what the plan's clock counts, so that
	// halts beyond the plan are in it. Work and Spent are estimates.
	State effort.State

	// PlannedBudget is what the plan has spent here; State.Spent is what was.
	PlannedBudget float64

	// Intensity is the relative intensity since the passage before, 20 minutes of it or more
	// where there are as many: the one that spends as much in as much time, as the times
	// tell it. PlannedIntensity is the plan's over the same ground. Both are those of the
	// plan where nothing is behind yet. A walk at the fastest walk uses less than the plan
	// has on offer, so neither is Plan.Intensity.
	Intensity, PlannedIntensity float64

	// Today is a factor on the athlete's hour power, for the whole race: 1, unless the last
	// passage was Felt harder than the times tell. Times tell Intensity by the athlete's
	// numbers; where the runner feels more, feeling and clock are given equal weight,
	// √(Intensity/Felt), and no less than 0.85. An effort that feels easier than that adds
	// nothing: it mostly does, early in a race. [Our own.]
	Today float64

	Cutoffs  []Cutoff // all of the race's, in order
	Forecast Forecast

	Warnings []string // to be shown beside it

	soFar   float64 // mean intensity on offer so far, on the scale of Plan.Intensity
	tracker *tracker
	legs    []leg
	early   float64 // s by which State.Moving is beyond the runner's own; only just after the start
	steady  *effort.Traverse
	most    *effort.Traverse
	holds   bool // steady is the plan's effort with the plan's gaits
	walking bool // most is a walk: the budget is as good as spent
}

// leastToday is the worst day that a feeling may make.
const leastToday = 0.85

// From returns where the runner stands after passages, the last of them being here and
// now. No passages is the start line, on time. Those that are less than 20 minutes of
// moving apart are looked at together.
//
// The error names the passage and wraps ErrPassage, ErrOrder or ErrTime.
func From(p *plan.Plan, passages ...Passage) (*Standing, error) {
	r, err := newTracker(p, 1)
	if err != nil {
		return nil, err
	}
	all, err := legs(p, passages)
	if err != nil {
		return nil, err
	}
	s := &Standing{Plan: p, Today: 1, legs: all}
	joined := merged(all, averaging)
	s.follow(r, joined)
	if n := len(passages); n > 0 {
		last := passages[n-1]
		s.Leaving = last.Leaving
		if err := s.feel(last.Felt, joined); err != nil {
			return nil, err
		}
	}
	s.times()
	if s.finished() {
		s.Cutoffs = s.passed()
		s.Forecast = Forecast{}
		return s, nil
	}
	return s, s.look()
}

// follow goes through the legs with a tracker.
func (s *Standing) follow(r *tracker, legs []leg) {
	var done []stretch
	s.tracker = r
	s.State, s.early, done = r.chain(legs)
	s.Distance = s.State.Distance
	s.Intensity, s.PlannedIntensity = r.plan.Effort(), r.plan.Effort()
	s.soFar = r.plan.Intensity / r.today
	sum, time, tooFast := 0.0, 0.0, false
	for _, d := range done {
		sum, time = sum+d.intensity*d.seconds, time+d.seconds
		s.soFar, tooFast = sum/time, d.tooFast
		s.Intensity, s.PlannedIntensity = d.used, r.planned(d.from.Distance, d.to.Distance)
	}
	s.Warnings = nil
	if tooFast {
		s.Warnings = append(s.Warnings, "You are faster than any effort of this runner on the ground since the passage before. The numbers that the plan rests on, or the place or the time, are not right.")
	}
}

// feel takes what the runner feels into account.
func (s *Standing) feel(felt float64, legs []leg) error {
	if felt == 0 || felt <= s.Intensity || len(legs) < 2 {
		return nil
	}
	s.Today = math.Max(leastToday, math.Sqrt(s.Intensity/felt))
	r, err := newTracker(s.Plan, s.Today)
	if err != nil {
		return err
	}
	s.follow(r, legs)
	s.Warnings = append(s.Warnings, fmt.Sprintf("You feel that this is harder than the times say: the rest is planned for %.0f %% of the hour power that the plan rests on.", 100*s.Today))
	return nil
}

// times fills in the clock.
func (s *Standing) times() {
	p := s.Plan
	s.Place = placeAt(p, s.Distance)
	s.Gun = s.gun(s.State.Moving, taken(p, s.Distance, s.Leaving))
	s.Planned = s.planned(s.Distance, s.Leaving)
	s.Late = s.Gun - s.Planned
	s.PlannedBudget = p.State(s.Distance).Spent
}

// planned is the gun time at which the plan reaches or leaves a place.
func (s *Standing) planned(distance float64, leaving bool) time.Duration {
	p := s.Plan
	return p.Race.StartDelay + taken(p, distance, leaving) + millis(p.State(distance).Moving)
}

// gun is the gun time of a moving time with so many planned stops behind.
func (s *Standing) gun(moving float64, stops time.Duration) time.Duration {
	return s.Plan.Race.StartDelay + stops + millis(moving+s.early)
}

// arrival is the gun time at which a traverse from here reaches or leaves a place.
func (s *Standing) arrival(t *effort.Traverse, distance float64, leaving bool) time.Duration {
	return s.gun(t.At(distance).Moving, max(taken(s.Plan, distance, leaving), taken(s.Plan, s.Distance, s.Leaving)))
}

func (s *Standing) finished() bool { return s.Distance >= s.Plan.Course.Length() }

// Clock returns a gun time by the clock, the zero time if the race has no start time.
func (s *Standing) Clock(gun time.Duration) time.Time {
	if s.Plan.Race.Start.IsZero() {
		return time.Time{}
	}
	return s.Plan.Race.Start.Add(gun)
}

// placeAt is the name of the landmark at a distance.
func placeAt(p *plan.Plan, distance float64) string {
	for _, l := range p.Course.Landmarks() {
		if math.Abs(l.Distance-distance) < samePlace {
			return l.Name
		}
	}
	return ""
}

// millis is so many seconds as a duration of whole milliseconds.
func millis(seconds float64) time.Duration { return effort.Seconds(seconds).Round(time.Millisecond) }
