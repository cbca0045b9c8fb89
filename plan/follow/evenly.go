package follow

import (
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

const (
	// keepGaits is how far, in ln of the power on offer, a remade plan may lie from the
	// plan and still keep its gaits: the model cannot tell gaits apart by less than the
	// error of its curves, some 5 % of power (see effort.Slope.Band), and a runner should
	// not relearn the plan for less. It cost 0.5 % of the time at most in 24 cases. [Our
	// own.]
	keepGaits = 0.05

	// calm is the number of changes of gait an hour up to which a remade plan is left as it
	// is; mostSaving ends what is asked of each change. Both as for plans.
	calm       = 5
	mostSaving = 8 * effort.DefaultChangeSaving
	savingStep = 1.5

	// fits is the share of the budget up to which a plan is within it: as near as
	// a best time with its bouts is known.
	fits = 1.02
)

// even meets a demand from a state by even effort, spread as the plan spreads it: with the
// plan's gaits where they are as good. same says whether they are.
func (r *tracker) even(from effort.State, d effort.Demand) (s effort.Solution, same bool, err error) {
	s.Traverse, s.Intensity = r.at(from, r.plan.Intensity/r.today, r.gaits), r.plan.Intensity/r.today
	if r.today == 1 && r.meets(s.Traverse, d) {
		return s, true, nil
	}
	d.Tilt, d.Ease, d.Gaits = r.tilt(), r.plan.Race.Ease, r.gaits
	s, err = r.in.Solve(from, d)
	if err == nil && math.Abs(math.Log(s.Intensity*r.today/r.plan.Intensity)) <= keepGaits {
		return s, true, nil
	}
	d.Gaits, d.ShortestBout = nil, shortestBout(r.plan.Race).Seconds()
	for d.ChangeSaving = effort.DefaultChangeSaving; ; d.ChangeSaving *= savingStep {
		s, err = r.in.Solve(from, d)
		if err != nil {
			break
		}
		hours := (s.Finish().Moving - from.Moving) / 3600
		if d.ShortestBout == 0 || d.ChangeSaving*savingStep > mostSaving || changes(s.Traverse) <= calm*hours {
			return s, false, nil
		}
	}
	d.Gaits, d.ShortestBout = r.gaits, 0 // held gaits may meet what bouts cannot
	s, err = r.in.Solve(from, d)
	return s, true, err
}

// meets reports whether a traverse meets a demand to what times are good for. For a budget
// that is by the time that the rest of it makes: to first order a share 1/(n − 1) of it.
// Where all is walked at the fastest walk, intensities far apart do.
func (r *tracker) meets(t *effort.Traverse, d effort.Demand) bool {
	finish := t.Finish()
	if d.Moving > 0 {
		return math.Abs(finish.Moving-d.Moving) <= goodTo
	}
	order := 1 / r.plan.Athlete.Endurance
	off := math.Abs(finish.Spent-d.Budget) / (d.Budget - t.From.Spent) / (order - 1)
	return d.Budget > t.From.Spent && off*(finish.Moving-t.From.Moving) <= goodTo
}

// shortestBout is the race's.
func shortestBout(r plan.Race) time.Duration {
	switch r.ShortestBout {
	case 0:
		return plan.DefaultBout
	case plan.Off:
		return 0
	}
	return r.ShortestBout
}

// changes counts the changes of gait on a traverse.
func changes(t *effort.Traverse) float64 {
	n := 0.0
	for j := t.First + 1; j < len(t.Gait); j++ {
		if t.Gait[j] != t.Gait[j-1] {
			n++
		}
	}
	return n
}

// walked is the power on offer, relative, at which a runner without budget walks on: easy
// talking, on the level a brisk walk for a usual runner, and at n = 10 a thousandth of the
// budget an hour. [Our own.]
const walked = 0.5

// walk walks on from a state to the finish, no harder than the plan.
func (r *tracker) walk(from effort.State) (t *effort.Traverse, intensity float64) {
	gaits := make([]effort.Gait, len(r.gaits))
	for j := range gaits {
		gaits[j] = effort.Walk
	}
	intensity = math.Min(walked, r.plan.Intensity)
	return r.at(from, intensity, gaits), intensity
}
