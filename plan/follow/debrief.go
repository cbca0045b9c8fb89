package follow

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
	"isoeffort.example/plan"
)

// A Debrief holds a race that was run against its plan. Of a race run as planned every
// difference is 0, to the rounding of the times.
//
// Intensities are relative ones, the intensity that spends as much in as much time, and
// budgets shares of the effort budget: both by the athlete's numbers, as package follow
// takes effort from times, after averaging over 20 minutes. A budget far above 1 after an
// even race on time says that the numbers underrate the runner, or that the day was kind;
// after a fast start and a slow end it says that more was spent early than there was.
type Debrief struct {
	Plan *plan.Plan

	Gun, Late              time.Duration // finish, and how much after the plan's
	Line                   time.Duration // from the gun to the line
	Moving, PlannedMoving  time.Duration
	Halted, PlannedStopped time.Duration

	Budget, PlannedBudget       float64
	Intensity, PlannedIntensity float64

	// EvenMoving is the moving time that the same budget gives spread as the plan spreads it,
	// but none quicker than the plan's best or, where that is quicker, the plan. Uneven is
	// what was lost against that: Moving − EvenMoving. Both are 0 where that cannot be told:
	// the budget spent is none to plan on, the runner was quicker than that best, or there are
	// fewer than 4 stretches of 20 minutes, by which effort is not told apart within the race.
	EvenMoving, Uneven time.Duration

	Sections []Section
	Halts    []Halt
	Pacing   Pacing

	// Scale is the course's length over the recording's, 1 for splits.
	Scale float64

	Warnings []string
}

// A Section is the race between two places.
type Section struct {
	Name     string
	From, To float64 // m from the start

	Gun  time.Duration // on arrival
	Late time.Duration // over the plan, on arrival

	Took, Planned         time.Duration // of moving
	Lost                  time.Duration // Took − Planned
	Halted, PlannedHalted time.Duration // as Split.Stop: the stop at From belongs here, that at To does not

	// Pace is per kilometre, and level pace that of running on the level at the same effort;
	// 0 where more than half of the time is walked.
	Pace, LevelPace, PlannedLevelPace time.Duration

	// Intensity is that of the section for itself, without averaging, and so rough where it
	// is short.
	Intensity, PlannedIntensity float64

	Budget, PlannedBudget float64 // spent on it
}

// DebriefOptions are the options of Review. The zero value is ready.
type DebriefOptions struct {
	// Every is where a recording is cut into sections: at the landmarks if 0, otherwise every
	// so many metres. Splits are cut where they are.
	Every plan.Spacing
}

// Review holds what was run against its plan. By splits it sees no more than they tell:
// planned stops are taken for taken, and budget for spent evenly between them.
//
// The error says what was wrong where, and wraps ErrPassage, ErrOrder, ErrTime, ErrActual
// or ErrAim.
func Review(p *plan.Plan, a Actual, o DebriefOptions) (*Debrief, error) {
	if o.Every != 0 && !(o.Every >= 100) {
		return nil, fmt.Errorf("follow: %w: sections every %g m", ErrAim, float64(o.Every))
	}
	t, err := newTracker(p, 1)
	if err != nil {
		return nil, err
	}
	r, err := a.run(p)
	if err != nil {
		return nil, err
	}
	v := &review{tracker: t, run: r, out: &Debrief{Plan: p, Scale: r.scale, Halts: r.halts}}
	v.follow()
	v.totals()
	if err := v.evenly(); err != nil {
		return nil, err
	}
	v.sections(o.Every)
	v.out.Pacing = v.pacing()
	v.warn()
	return v.out, nil
}

// Result is the race as one for a results file and for package calibrate, with its
// sections as splits: times from the start line, halts included.
func (d *Debrief) Result(runner, race string) record.Result {
	c := d.Plan.Course
	relief := c.Relief()
	r := record.Result{
		Runner: runner, Race: race, Course: c.Name(), Date: d.Plan.Race.Start,
		Distance: c.Length(), Ascent: relief.Ascent, Descent: relief.Descent,
		Time: d.Gun - d.Line, Ground: c,
	}
	for _, s := range d.Sections {
		if s.To >= c.Length() {
			break
		}
		so := c.ReliefBetween(0, s.To)
		r.Splits = append(r.Splits, record.Split{
			Distance: s.To, Elapsed: (s.Gun - d.Line).Seconds(), Ascent: so.Ascent, Descent: so.Descent,
		})
	}
	return r
}

// review is a debrief in the making.
type review struct {
	*tracker
	run  *run
	out  *Debrief
	done []stretch
}

// follow goes through the race in windows.
func (v *review) follow() {
	legs := merged(v.legs(averaging, math.MaxInt), averaging)
	_, _, v.done = v.chain(legs)
}

// legs cuts the race into equal times of least seconds or more, and no more than most of
// them; splits stay as they are.
func (v *review) legs(least float64, most int) []leg {
	r := v.run
	if r.legs != nil {
		return r.legs
	}
	whole := r.moving[len(r.moving)-1]
	n := min(max(1, int(whole/least)), most)
	out := []leg{{halted: v.offset(0)}}
	from := 0.0
	for i := 1; i <= n; i++ {
		to := v.plan.Course.Length()
		if i < n {
			to = r.placeOf(whole * float64(i) / float64(n))
		}
		out = append(out, leg{to: to, seconds: r.movingAt(to) - r.movingAt(from), halted: v.offset(to) - v.offset(from)})
		from = to
	}
	return out
}

// offset is how much the clock at a distance is ahead of moving time and planned stops.
func (v *review) offset(distance float64) float64 {
	return v.run.line - v.plan.Race.StartDelay.Seconds() + v.run.halted(distance) - taken(v.plan, distance, false).Seconds()
}

// stateAt is where the runner is taken to have been.
func (v *review) stateAt(distance float64) effort.State {
	for i, s := range v.done {
		switch {
		case distance == s.from.Distance:
			return s.from
		case distance == s.to.Distance:
			return s.to
		case distance < s.to.Distance || i == len(v.done)-1:
			at := v.at(s.from, s.intensity, s.gaits).At(distance)
			share := (v.run.movingAt(distance) - v.run.movingAt(s.from.Distance)) / s.seconds
			at.Moving = s.from.Moving + share*(s.to.Moving-s.from.Moving)
			return at
		}
	}
	return effort.State{}
}

// totals fills in the whole race.
func (v *review) totals() {
	d, p, r := v.out, v.plan, v.run
	length := p.Course.Length()
	moving := r.movingAt(length)
	d.Line, d.Moving, d.PlannedMoving = millis(r.line), millis(moving), p.Moving
	for _, h := range r.halts {
		d.Halted += h.Took
	}
	d.PlannedStopped = p.Stopped
	d.Gun = d.Line + d.Moving + d.Halted
	d.Late = d.Gun - p.Gun
	d.Budget, d.PlannedBudget = v.done[len(v.done)-1].to.Spent, p.Budget
	d.Intensity = v.used(d.Budget, moving)
	d.PlannedIntensity = v.planned(0, length)
}

// fewestStretches is how many stretches a race must have for its unevenness to show.
const fewestStretches = 4

// evenly finds what the same budget would have given.
func (v *review) evenly() error {
	d, p := v.out, v.plan
	if len(v.done) < fewestStretches {
		return nil
	}
	start := effort.State{Moving: math.Max(0, v.offset(0))}
	s, _, err := v.even(start, effort.Demand{Budget: d.Budget})
	if errors.Is(err, effort.ErrDemand) || errors.Is(err, effort.ErrSpent) {
		v.say("What the same effort would have given evenly cannot be told: %v.", err)
		return nil
	}
	if err != nil {
		return fmt.Errorf("follow: %w", err)
	}
	even := millis(s.Finish().Moving - start.Moving)
	if best := min(p.Best.Moving, p.Moving); even < best {
		if even = best; d.Moving <= best {
			return nil
		}
	}
	d.EvenMoving, d.Uneven = even, d.Moving-even
	return nil
}

func (v *review) say(format string, args ...any) {
	v.out.Warnings = append(v.out.Warnings, fmt.Sprintf(format, args...))
}
