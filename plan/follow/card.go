package follow

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

// CardOptions say what Paper prints. The zero value is ready.
type CardOptions struct {
	// Late are the delays for which the card says what to do, ascending. None means about
	// 2, 4 and 6 % of the plan's time, in whole minutes, and no more than 10, 20 and 30.
	Late []time.Duration

	// Slower is how much later than the plan the second schedule finishes, as a share of the
	// moving time. 0 means 0.05.
	Slower float64

	// InHand is what the cutoff-safe schedule has at every cutoff. 0 means what the race
	// asks for.
	InHand time.Duration

	// Every is the spacing of the places. At 0 they are the landmarks and the cutoffs; on
	// a course without either, every five kilometres.
	Every plan.Spacing
}

// A Card is what fits into a pocket: schedules side by side, and what to do when late. For
// a goal beyond the runner (Plan.Budget above plan.BeyondBudget) it has neither, and the
// first of its Warnings says why.
type Card struct {
	Plan      *plan.Plan
	Places    []Place
	Schedules []Schedule // the plan, a slower one, and one that just makes the cutoffs if there are any
	Rules     []Rule     // for each place but the finish, for each delay; see Lines
	Warnings  []string   // to be shown above it

	beyond bool
}

// A Place is a line of the card.
type Place struct {
	Name     string
	Distance float64       // m from the start
	Closes   time.Duration // gun time of the cutoff there, 0 for none

	// Latest is the last gun time on arrival from which the plan's effort, or what the
	// budget allows of it, still makes every cutoff from here on; 0 where there is none.
	// It keeps nothing in hand.
	Latest time.Duration
}

// A Schedule is one way to run the race.
type Schedule struct {
	Name   string
	Finish time.Duration   // gun time
	Budget float64         // spent at the finish
	Times  []time.Duration // gun time on arrival at each place
}

// Paper makes a card of a plan. Its error wraps ErrAim for an option out of range, or one
// of the sentinels of packages plan and effort.
func Paper(p *plan.Plan, o CardOptions) (*Card, error) {
	r, err := newTracker(p, 1)
	if err != nil {
		return nil, err
	}
	if err := o.fill(p); err != nil {
		return nil, err
	}
	c := &Card{Plan: p}
	for _, at := range places(p, o.Every) {
		c.Places = append(c.Places, Place{Name: at.Name, Distance: at.Distance, Closes: closes(p, at.Distance)})
	}
	if p.Budget > plan.BeyondBudget {
		c.beyond, c.Warnings = true, []string{forecast.Warning(1, p.Budget)}
		return c, nil
	}
	c.missed()
	c.add("plan", p.Traverse())
	if err := c.addSlower(r, o.Slower); err != nil {
		return nil, err
	}
	if err := c.addSafe(o.InHand); err != nil {
		return nil, err
	}
	return c, c.rules(r, o.Late)
}

// missed says which cutoffs the plan misses on time.
func (c *Card) missed() {
	var all []string
	for _, m := range c.Plan.Cutoffs {
		if m.InHand < 0 {
			all = append(all, fmt.Sprintf("the cutoff %s by %s", where(Cutoff{Cutoff: m.Cutoff}), spell(up(-m.InHand))))
		}
	}
	if len(all) > 0 {
		c.Warnings = append(c.Warnings, fmt.Sprintf("Even on time this plan misses %s. Do not chase a cutoff: ask the race before you start.", listed(all)))
	}
}

// The delays for which a card has rules where none are asked for. [Our own.]
const (
	lateShare = 0.02
	mostLate  = 10 * time.Minute
)

// usualDelays are those of CardOptions.Late where none are given: of five minutes or more
// in whole fives.
func usualDelays(p *plan.Plan) []time.Duration {
	step := min(time.Duration(lateShare*float64(p.Gun)), mostLate)
	if step = max(step.Round(time.Minute), time.Minute); step >= 5*time.Minute {
		step = step.Round(5 * time.Minute)
	}
	return []time.Duration{step, 2 * step, 3 * step}
}

func (o *CardOptions) fill(p *plan.Plan) error {
	if len(o.Late) == 0 {
		o.Late = usualDelays(p)
	}
	if o.Slower == 0 {
		o.Slower = 0.05
	}
	for i, late := range o.Late {
		if late <= 0 || late > longest || i > 0 && late <= o.Late[i-1] {
			return fmt.Errorf("follow: %w: %v late", ErrAim, late)
		}
	}
	switch {
	case !(o.Slower > 0 && o.Slower <= 1):
		return fmt.Errorf("follow: %w: slower by a share of %g is not within 0 to 1", ErrAim, o.Slower)
	case o.InHand < 0 || o.InHand > longest:
		return fmt.Errorf("follow: %w: %v in hand", ErrAim, o.InHand)
	case o.Every != 0 && !(o.Every >= 100):
		return fmt.Errorf("follow: %w: places every %g m", ErrAim, float64(o.Every))
	}
	return nil
}

// fewKilometres is the spacing of places on a course without any.
const fewKilometres = 5000

// places are where the card has a line, the finish last.
func places(p *plan.Plan, every plan.Spacing) (out []course.Landmark) {
	if every == plan.AtLandmarks && len(p.Course.Sections()) < 2 && len(p.Cutoffs) == 0 {
		every = fewKilometres
	}
	for _, split := range p.Splits(every) {
		at := course.Landmark{Distance: split.Distance}
		if split.Landmark != nil {
			at.Name = split.Landmark.Name
		} else if at.Name = placeAt(p, split.Distance); split.Distance == p.Course.Length() {
			at.Name = "Finish"
		}
		for _, m := range p.Cutoffs {
			if last := len(out) - 1; m.Distance < at.Distance-samePlace && (last < 0 || m.Distance > out[last].Distance+samePlace) {
				out = append(out, course.Landmark{Name: m.Name, Distance: m.Distance})
			}
		}
		out = append(out, at)
	}
	return out
}

// closes is the gun time of the first cutoff at a place.
func closes(p *plan.Plan, distance float64) time.Duration {
	for _, m := range p.Cutoffs {
		if math.Abs(m.Distance-distance) < samePlace {
			return m.Limit
		}
	}
	return 0
}

// add adds a schedule with the plan's stops.
func (c *Card) add(name string, t *effort.Traverse) {
	s := Schedule{Name: name, Budget: t.Finish().Spent}
	for _, at := range c.Places {
		s.Times = append(s.Times, c.Plan.Race.StartDelay+taken(c.Plan, at.Distance, false)+millis(t.At(at.Distance).Moving))
	}
	s.Finish = s.Times[len(s.Times)-1]
	c.Schedules = append(c.Schedules, s)
}

// addSlower adds the same race on less effort.
func (c *Card) addSlower(r *tracker, share float64) error {
	moving := c.Plan.Traverse().Finish().Moving * (1 + share)
	s, _, err := r.even(effort.State{}, effort.Demand{Moving: moving})
	if err != nil {
		c.Warnings = append(c.Warnings, "There is no slower schedule: "+err.Error())
		return nil
	}
	c.add(fmt.Sprintf("%.0f %% slower", 100*share), s.Traverse)
	return nil
}

// addSafe adds the least effort that makes every cutoff.
func (c *Card) addSafe(inHand time.Duration) error {
	race := c.Plan.Race
	if len(race.Cutoffs) == 0 {
		return nil
	}
	race.Goal, race.Net, race.Share, race.Standards = 0, false, 0, nil
	race.MakeCutoffs = true
	if inHand > 0 {
		race.InHand = inHand
	}
	p, err := plan.Even(c.Plan.Course, c.Plan.Athlete, race)
	if err != nil {
		return fmt.Errorf("follow: cutoff-safe schedule: %w", err)
	}
	if p.Budget > fits {
		c.Warnings = append(c.Warnings, "Making every cutoff would take more than you have to give: there is no schedule for that. Ask the race, and do not chase cutoffs.")
		return nil
	}
	s := Schedule{Name: "cutoff-safe", Budget: p.Budget}
	for _, at := range c.Places {
		s.Times = append(s.Times, p.Race.StartDelay+taken(p, at.Distance, false)+millis(p.State(at.Distance).Moving))
	}
	s.Finish = s.Times[len(s.Times)-1]
	c.Schedules = append(c.Schedules, s)
	return nil
}
