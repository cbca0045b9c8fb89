package field

import (
	"fmt"
	"math"
	"slices"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// Following is what it takes an athlete to follow somebody else's schedule.
type Following struct {
	// Budget is the share of the athlete's effort budget that the schedule's times take,
	// +Inf where no effort meets one of them.
	Budget float64

	// Even is the share that the athlete's own plan for the same finish takes, +Inf where no
	// pace makes it. What Budget
	// has above it is the price of somebody else's times and gaits; it may be below by what
	// holding back costs.
	Even float64

	// Hardest is the section, counted from 0, in which the athlete has to go hardest, and
	// Intensity what it takes there: the one relative intensity that would spend as much of
	// the budget in its time. Where Budget is infinite, Hardest is the section whose time
	// cannot be met, and Intensity 0.
	Hardest   int
	Intensity float64
}

// Follow returns what it takes an athlete to follow the schedule of a plan, made for
// another: to pass the end of each section with it, to stop where it stops, and to walk
// and run where it walks and runs. Sections end where Plan.Splits has them for the spacing;
// at plan.AtLandmarks on a course without landmarks on the way, every 5 km.
//
// Within a section the athlete's effort is even, one relative intensity. So it is about the
// least that keeping to the times takes; staying beside a leader step by step takes more.
// A section whose time cannot be met with the schedule's gaits, by one who walks more
// slowly, is met with those of the gait rule.
//
// It is computed in the cells of the schedule. The error is that of plan.Even; Follow
// panics where plan.Splits does.
func Follow(schedule *plan.Plan, a effort.Athlete, every plan.Spacing) (Following, error) {
	own, err := ownPlan(schedule, a)
	if err != nil {
		return Following{}, err
	}
	if own.Unmet {
		return Following{Budget: math.Inf(1), Even: math.Inf(1)}, nil
	}
	in, err := own.Integrator()
	if err != nil {
		return Following{}, err
	}
	f := Following{Even: own.Budget}
	at := effort.State{}
	for i, split := range schedule.Splits(sections(schedule.Course, every)) {
		arrive := split.Moving.Seconds()
		next, ok := reach(in, at, split.Distance, arrive, schedule.Traverse().Gait)
		if !ok {
			next, ok = reach(in, at, split.Distance, arrive, nil)
		}
		if !ok {
			return Following{Budget: math.Inf(1), Even: f.Even, Hardest: i}, nil
		}
		rate := 3600 * (next.Spent - at.Spent) / (next.Moving - at.Moving)
		if intensity := math.Pow(rate, a.Endurance); intensity > f.Intensity {
			f.Hardest, f.Intensity = i, intensity
		}
		at = next
	}
	f.Budget = at.Spent
	return f, nil
}

// ownPlan is the athlete's own plan for the schedule's finish, with its stops and walks.
func ownPlan(schedule *plan.Plan, a effort.Athlete) (*plan.Plan, error) {
	race := withoutAim(schedule.Race)
	race.Goal, race.Net = schedule.Gun, false
	race.Stops, race.Stations = schedule.Stops, plan.Stations{}
	race.Basis, race.Cutoffs = effort.Basis{}, nil
	race.Walks, race.Surroundings.Limits = plan.Walks{}, slices.Clone(race.Surroundings.Limits)
	for _, w := range schedule.Walks {
		race.Surroundings.Limits = append(race.Surroundings.Limits, effort.Limit{From: w.From, To: w.To, Walk: true})
	}
	p, err := plan.Even(schedule.Course, a, race)
	if err != nil {
		return nil, fmt.Errorf("field: on another's schedule: %w", err)
	}
	return p, nil
}

// sections is the spacing of a schedule's times.
func sections(c *course.Course, every plan.Spacing) plan.Spacing {
	if every == plan.AtLandmarks && len(c.Sections()) == 1 {
		return 5 * plan.EveryKilometre
	}
	return every
}

const (
	// reachRounds is how often an intensity is looked for that meets a section's time,
	// reached how near in seconds is enough, and closest how near two intensities come
	// before the time is taken to jump between them, as where a gait changes.
	reachRounds = 80
	reached     = 1e-3
	closest     = 1e-9

	// mostIntensity is far above what anybody can give for a minute.
	mostIntensity = 10
)

// reach looks for the relative intensity that takes a runner from a state to a distance by
// a moving time, early where the time jumps. ok is false where no intensity does.
func reach(in *effort.Integrator, from effort.State, distance, moving float64, gaits []effort.Gait) (to effort.State, ok bool) {
	want := moving - from.Moving
	low, high, try := 0.0, math.Inf(1), 0.8
	for round := 0; round < reachRounds && try <= mostIntensity && want > 0; round++ {
		at := in.Traverse(from, effort.Pace{Intensity: try, Gaits: gaits}).At(distance)
		took := at.Moving - from.Moving
		if took > want+reached {
			low = try
		} else {
			high, to, ok = try, at, true
		}
		if math.Abs(took-want) <= reached || high-low < closest {
			break
		}
		if try *= took / want; !(try > low && try < high) || round > reachRounds/4 {
			try = (low + math.Min(high, 2*low+0.1)) / 2
		}
	}
	to.Moving = moving
	return to, ok
}
