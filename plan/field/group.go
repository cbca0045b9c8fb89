package field

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// GroupOptions say which pace groups there are. Targets or Count must be given.
type GroupOptions struct {
	// Options as for Each. Quick and Plan are not looked at: groups are computed in cells
	// of QuickStep unless the race has a Step. Progress counts the runners put into groups.
	Options

	// Targets are the finish times of the groups, in any order: gun times, or net times
	// where the race's Net is set.
	Targets []time.Duration

	// Count makes so many groups instead, of about as many runners each, by each one's
	// fastest time within the budget: the slowest of each group gives its target,
	// rounded up to Round. Groups that round to the same target become one.
	Count int
	Round time.Duration // 0 means 5 minutes

	// Within is the share of the effort budget that a group's schedule may ask of a
	// runner. 0 means 1, all of it: a runner for whom that is a race at the limit. With the
	// usual endurance exponent 0.6 leaves 5 % of the effort in hand.
	Within float64

	// Safe counts every runner as slow as the slow end of the 90 % interval of their
	// best time: with less hour power. Runners taken as known have none.
	Safe bool

	// Every says where schedules have times that are to be kept, as in Follow.
	Every plan.Spacing
}

// A Group is a pace group.
type Group struct {
	Target time.Duration

	// Plan is the schedule for the group's leader: even effort at the target for the
	// runner of the field who is only just able to hold it. Its walks are those of the
	// race; plan.Walks with Fixed set gives them by the leader's watch. It is nil where no
	// runner of the field can hold the target.
	Plan *plan.Plan

	// MadeFor is the index of the entry that the schedule is made for.
	MadeFor int

	Members []Member // in the order of the entries
}

// A Member is a runner and how one schedule stands to them.
type Member struct {
	Index  int // of the entry, from 0
	Line   int
	Runner Runner
	Best   plan.Best // on the whole budget, with the runner's own start: what their plan has
	Following
}

// A Grouping is a field in pace groups.
type Grouping struct {
	Groups []Group // fastest target first
	Others []Other // who is in none, in the order of the entries
}

// An Other is a runner in no group: with an Err, or else one for whom every group is too
// fast, or whose budget no schedule suits.
type Other struct {
	Outcome
	Best plan.Best // as that of a Member; zero where there is an Err
}

// Groups puts every runner into the fastest group whose schedule they can follow within
// the budget. A group starts together, with the race's delay and wave, so whoever has a start
// of their own waits, or hurries, to be at the line with it; only Best counts from that own
// start. Neither the race's aim nor what entries say of goal, share or a race of their own
// is looked at.
//
// The rule, [our own]:
//
//  1. A runner can hold a target if their own even effort on the budget share Within gets
//     them to the finish by then.
//  2. The schedule of a target is the even-effort plan for it of the slowest runner who can
//     hold it, members of faster groups included. Should following it take more than
//     Within even of them, by a hair, the next slowest is asked.
//  3. A runner fits a group if they can hold its target and the budget that following its
//     schedule takes of them (Follow) is at most Within. They go into the fastest that
//     fits.
//
// So the schedule is even effort for the one with nothing to spare, and the others have
// time in hand that pays for what suits them less, as a descent taken faster than their
// own. Whoever cannot afford it goes one group back.
//
// Errors: ErrTarget, ErrOption, those of the course, and the context's.
func Groups(ctx context.Context, c *course.Course, race plan.Race, entries []Entry, o GroupOptions) (*Grouping, error) {
	var err error
	if o, err = o.filled(); err != nil {
		return nil, err
	}
	race = withoutAim(race)
	if race.Step == 0 {
		race.Step = QuickStep
	}
	g := grouper{c: c, race: race, options: o, entries: entries}
	if err := g.hold(ctx); err != nil {
		return nil, err
	}
	return g.group(ctx)
}

const (
	defaultRound = 5 * time.Minute
	leastWithin  = 0.001 // as plan.Race.Share
)

func (o GroupOptions) filled() (GroupOptions, error) {
	var err error
	if o.Options, err = o.Options.filled(); err != nil {
		return o, err
	}
	o.Within = cmp.Or(o.Within, 1)
	o.Round = cmp.Or(o.Round, defaultRound)
	o.Targets = slices.Clone(o.Targets)
	slices.Sort(o.Targets)
	switch {
	case !(o.Within >= leastWithin && o.Within <= 1):
		return o, fmt.Errorf("field: %w: within %g of the budget is not 0.001 to 1", ErrOption, o.Within)
	case o.Every != plan.AtLandmarks && !(o.Every >= 1):
		return o, fmt.Errorf("field: %w: times every %g m", ErrOption, float64(o.Every))
	case o.Round < time.Second || o.Round > 24*time.Hour:
		return o, fmt.Errorf("field: %w: targets rounded to %v", ErrOption, o.Round)
	case (len(o.Targets) == 0) == (o.Count == 0):
		return o, fmt.Errorf("field: %w: give either targets or a count of groups", ErrTarget)
	case o.Count < 0 || o.Count > 1000:
		return o, fmt.Errorf("field: %w: %d groups", ErrTarget, o.Count)
	}
	for i, t := range o.Targets {
		if t <= 0 || t > longest {
			return o, fmt.Errorf("field: %w: %v is not within 0 to %v", ErrTarget, t, longest)
		}
		if i > 0 && t == o.Targets[i-1] {
			return o, fmt.Errorf("field: %w: %v is given twice", ErrTarget, t)
		}
	}
	return o, nil
}

// grouper makes a grouping.
type grouper struct {
	c       *course.Course
	race    plan.Race
	options GroupOptions
	entries []Entry
	holders []holder // one for each entry
}

// A holder is what a runner can hold.
type holder struct {
	athlete effort.Athlete // as slow as Safe asks for
	fastest time.Duration  // finish time within the budget, as targets count
	best    plan.Best
	err     error
}

// hold finds what every runner can hold.
func (g *grouper) hold(ctx context.Context) error {
	refusals := refused(g.entries, g.options.File)
	for h := range inOrder(ctx, g.options.Workers, len(g.entries), func(i int) holder {
		e := g.entries[i]
		if refusals[i] != nil {
			return holder{err: refusals[i]}
		}
		h := holder{athlete: e.Runner.Athlete}
		if err := guard(func() error { return g.holdOne(&h, e.Runner) }); err != nil {
			h.err = e.fault(i, g.options.File, err)
		}
		return h
	}) {
		g.holders = append(g.holders, h)
	}
	if len(g.holders) < len(g.entries) {
		return stopped(ctx, 0, len(g.entries))
	}
	return nil
}

// holdOne finds what one runner can hold.
func (g *grouper) holdOne(h *holder, r Runner) error {
	race := g.race
	race.Basis, race.Share = r.Basis, g.options.Within
	p, err := plan.Even(g.c, h.athlete, race)
	if err != nil {
		return err
	}
	if h.best, err = g.ownBest(p, r); err != nil {
		return err
	}
	if g.options.Safe && p.Best.High > p.Best.Gun {
		race.Basis = effort.Basis{}
		if h.athlete, p, err = slowed(g.c, h.athlete, race, p); err != nil {
			return err
		}
	}
	h.fastest = g.finish(p.Gun)
	return nil
}

// ownBest is the best of a runner with their own start, given the plan with the race's.
func (g *grouper) ownBest(p *plan.Plan, r Runner) (plan.Best, error) {
	own := r.startOf(g.race)
	if own.StartDelay == g.race.StartDelay && own.Wave == g.race.Wave {
		return p.Best, nil
	}
	own.Basis = r.Basis
	with, err := plan.Even(g.c, r.Athlete, own)
	if err != nil {
		return plan.Best{}, err
	}
	return with.Best, nil
}

// finish is a gun time as targets count.
func (g *grouper) finish(gun time.Duration) time.Duration {
	if g.race.Net {
		gun -= g.race.StartDelay
	}
	return gun
}

// slowedWithin is how near in time, relative, a slowed athlete's best comes to the slow end.
const slowedWithin = 1e-3

// slowed lowers an athlete's hour power until their best time is the slow end of that of p.
func slowed(c *course.Course, a effort.Athlete, race plan.Race, p *plan.Plan) (effort.Athlete, *plan.Plan, error) {
	still := p.Best.Gun - p.Best.Moving
	want := (p.Best.High - still).Seconds()
	for range 20 {
		ratio := p.Best.Moving.Seconds() / want
		if math.Abs(ratio-1) < slowedWithin {
			break
		}
		a.HourPower *= ratio // a time falls a little faster than hour power grows
		var err error
		if p, err = plan.Even(c, a, race); err != nil {
			return a, nil, err
		}
	}
	return a, p, nil
}
