package follow

import (
	"fmt"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// Aim is what the rest of a race is planned for.
type Aim int

// The aims. Whatever the aim, no more is planned than the budget that is left, and no more
// than MostMore above the plan's effort; where the budget is spent, a walk. An aim that
// would need more is let go for the planned effort: budget that is left because somebody
// is late is no reserve, since heat and a bad stomach look the same in a time. Who wants
// more than that makes another plan.
const (
	// HoldEffort goes on at the plan's effort and lets the time go: late or early, back to
	// what was planned. Where the budget does not allow that any more, at what it allows.
	HoldEffort Aim = iota

	// KeepGoal keeps the plan's finish time, at the plan's effort where that is enough.
	KeepGoal

	// SpendAll takes the fastest finish that the budget left and MostMore allow.
	SpendAll

	// MakeCutoffs takes the least effort that is Options.InHand early at every cutoff to
	// come.
	MakeCutoffs

	// Choose goes on at the relative intensity Options.Intensity, which the runner feels
	// able to give, up to MostMore above the plan's.
	Choose
)

// MostMore is the most that any advice asks for above the plan's effort, as a share of it,
// and only under an aim that asks for it. [Our own, a coach's.]
const MostMore = 0.02

func (a Aim) String() string {
	names := [...]string{"hold the effort", "keep the goal", "spend all", "make the cutoffs", "chosen effort"}
	if a < 0 || int(a) >= len(names) {
		return "no aim"
	}
	return names[a]
}

// Options of Rest. The zero value holds the planned effort.
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
	// included: how the effort compares with what was planned. It is at most 1 under
	// HoldEffort, and at most 1 + MostMore under any aim.
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
// offer is within 5 % of the plan's, so that a passage as planned returns the plan. Where
// that is the planned effort, or what the budget allows of it, the rest is the way of
// Forecast.Steady, so that there is one finish for one effort. In a plan that spends more
// than the whole budget the rest does not: it says so.
//
// The error wraps ErrAim at the finish, or where cutoffs are aimed for and none is to come,
// or for an option out of range.
func (s *Standing) Rest(o Options) (*Rest, error) {
	switch {
	case s.finished():
		return nil, fmt.Errorf("follow: %w: the finish is reached", ErrAim)
	case o.Aim < HoldEffort || o.Aim > Choose:
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
