package field

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A Passage is until when a place may be passed for the later cutoffs still to be made.
type Passage struct {
	Name     string // of the landmark, or of the cutoff where none is there
	Distance float64

	// Latest is the arrival, gun time: of the slowest even-effort runner who makes every
	// cutoff from here on with the time in hand asked for.
	Latest time.Duration
	Clock  time.Time // of Latest; zero if the race has no start time

	// Limit is the cutoff of the place itself, as gun time, 0 where there is none.
	Limit time.Duration

	// For is the cutoff, here or later, that Latest comes from.
	For plan.Cutoff

	// HourPower is that of the slowest runner, W/kg.
	HourPower float64
}

// PassageOptions of LatestPassages. The zero value is ready.
type PassageOptions struct {
	// InHand is the time in hand at every cutoff. 0 is none: the last second counts.
	InHand time.Duration
}

// LatestPassages returns, for every landmark up to the race's last cutoff and for every
// cutoff, the latest passage from which a sensible runner may still make all cutoffs from
// there on, in the order of the course.
//
// For each cutoff the hour power of an athlete is scaled until the plan on the whole
// budget has just the time in hand there, holding back, bouts and stops as the race has
// them. Of the cutoffs from a place on, the one that asks for the greatest hour power
// decides; the slowest runner who makes that one passes the place at Latest. Given several
// athletes, who differ in endurance, fade, braking or walking, each is scaled and the
// earliest passage of all holds for every one of them. None means effort.Usual.
//
// Whoever comes later at an even effort of the whole budget is slower than the slowest who
// makes it. One who is late but fresh, because they held back, may still make it; one who
// is in time but spent, because they did not, may not. So it is a sign to look at, for a
// crew or an organiser, and no verdict: it knows no weather but the race's, no injury, no
// sleep. The race's officials and medical team decide who goes on, and nobody should be
// made to chase a time. After the last cutoff no passage is given.
//
// It is computed in cells of QuickStep unless the race has a Step; its aim is not looked
// at. The error wraps ErrOption without cutoffs, ErrPassage for a cutoff that nobody of
// those makes within the model's greatest hour power, or is plan.Even's or the context's.
func LatestPassages(ctx context.Context, c *course.Course, race plan.Race, athletes []effort.Athlete, o PassageOptions) ([]Passage, error) {
	if len(race.Cutoffs) == 0 {
		return nil, fmt.Errorf("field: %w: there are no cutoffs", ErrOption)
	}
	if o.InHand < 0 || o.InHand > longest {
		return nil, fmt.Errorf("field: %w: %v in hand is not within 0 to %v", ErrOption, o.InHand, longest)
	}
	if len(athletes) == 0 {
		athletes = []effort.Athlete{effort.Usual(12)}
	}
	race = withoutAim(race)
	race.Basis = effort.Basis{}
	if race.Step == 0 {
		race.Step = QuickStep
	}
	s := search{ctx: ctx, c: c, race: race, inHand: o.InHand}
	var earliest []Passage
	for _, a := range athletes {
		passages, err := s.passages(a)
		if err != nil {
			return nil, err
		}
		if earliest == nil {
			earliest = passages
		}
		for i, p := range passages {
			if p.Latest < earliest[i].Latest {
				earliest[i] = p
			}
		}
	}
	return earliest, nil
}

// search looks for the slowest runners who make the cutoffs of a race.
type search struct {
	ctx    context.Context
	c      *course.Course
	race   plan.Race
	inHand time.Duration
}

// slowest is the slowest runner who makes a cutoff, and their plan.
type slowest struct {
	plan.Margin
	power float64
	plan  *plan.Plan
}

// passages are those of one athlete's kind.
func (s *search) passages(a effort.Athlete) ([]Passage, error) {
	var each []slowest
	for _, cutoff := range s.race.Cutoffs {
		one, err := s.slowest(a, cutoff)
		if err != nil {
			return nil, err
		}
		each = append(each, one)
	}
	slices.SortStableFunc(each, func(a, b slowest) int { return cmp.Compare(a.Distance, b.Distance) })
	places := s.places(each)
	for i := range places {
		p := &places[i]
		var binding *slowest
		for j := range each {
			if e := &each[j]; e.Distance >= p.Distance && (binding == nil || e.power > binding.power) {
				binding = e
			}
		}
		p.For, p.HourPower = binding.Cutoff, binding.power
		p.Latest = arrival(binding.plan, p.Distance)
	}
	s.hold(places, each)
	return places, nil
}

// hold makes passages keep what rounding and the gaits of bouts may miss by seconds: no
// passage after its own cutoff or a later passage.
func (s *search) hold(places []Passage, each []slowest) {
	next := time.Duration(math.MaxInt64)
	for i, p := range slices.Backward(places) {
		for _, e := range each {
			if e.Distance == p.Distance {
				next = min(next, e.Limit-s.inHand)
			}
		}
		next = min(next, p.Latest)
		places[i].Latest = next
		if !s.race.Start.IsZero() {
			places[i].Clock = s.race.Start.Add(next)
		}
	}
}

// places are the landmarks up to the last cutoff, and the cutoffs.
func (s *search) places(each []slowest) (out []Passage) {
	last := each[len(each)-1].Distance
	for _, section := range s.c.Sections() {
		if section.To.Distance <= last {
			out = append(out, Passage{Name: section.To.Name, Distance: section.To.Distance})
		}
	}
	for _, e := range each {
		i := slices.IndexFunc(out, func(p Passage) bool { return p.Distance == e.Distance })
		if i < 0 {
			i, out = len(out), append(out, Passage{Name: e.Name, Distance: e.Distance})
		}
		if out[i].Limit == 0 || e.Limit < out[i].Limit {
			out[i].Limit = e.Limit
		}
	}
	slices.SortStableFunc(out, func(a, b Passage) int { return cmp.Compare(a.Distance, b.Distance) })
	return out
}

// arrival is the gun time at which a plan comes to a place.
func arrival(p *plan.Plan, distance float64) time.Duration {
	t := p.Race.StartDelay + effort.Seconds(p.State(distance).Moving).Round(time.Millisecond)
	for _, stop := range p.Stops {
		if stop.Distance < distance {
			t += stop.Duration
		}
	}
	return t
}

const (
	leastPower, mostPower = 1, 40 // the range of effort.Athlete.HourPower, W/kg

	// nearly is how near, relative, the time to a cutoff or the hour power is found: 10^-5
	// is half a second in twelve hours.
	nearly = 1e-5
)

// slowest looks for the least hour power with which an athlete makes a cutoff: between one
// that makes it and one that does not, on the line through both in logarithms of hour power
// and of time, or halfway every third time.
func (s *search) slowest(a effort.Athlete, cutoff plan.Cutoff) (slowest, error) {
	best := slowest{power: mostPower}
	p, late, err := s.plan(a, mostPower, cutoff)
	switch {
	case err != nil:
		return best, err
	case late > 0:
		return best, fmt.Errorf("field: %w: %v after %v, with %v in hand", ErrPassage, cutoff, cutoff.Time, s.inHand)
	}
	best.plan = p
	low, lowLate, early := float64(leastPower), math.Inf(1), -late
	for round := 1; early > nearly && best.power/low > 1+nearly; round++ {
		share := 0.5
		if round%3 != 0 && !math.IsInf(lowLate, 1) {
			share = max((early-nearly/2)/(early+lowLate), 0)
		}
		try := best.power * math.Pow(low/best.power, share)
		p, late, err := s.plan(a, try, cutoff)
		switch {
		case errors.Is(err, effort.ErrAthlete): // who would take over 1000 hours is refused so
			low, lowLate = try, math.Inf(1)
		case err != nil:
			return best, err
		case late > 0:
			low, lowLate = try, late
		default:
			best.power, best.plan, early = try, p, -late
		}
	}
	best.Margin = best.plan.Cutoffs[0]
	return best, nil
}

// plan is that of an athlete with a certain hour power, and how late it is at a cutoff for
// the time in hand asked for: as a logarithm of time, below 0 if early.
func (s *search) plan(a effort.Athlete, power float64, cutoff plan.Cutoff) (*plan.Plan, float64, error) {
	if err := s.ctx.Err(); err != nil {
		return nil, 0, fmt.Errorf("field: latest passages: %w", context.Cause(s.ctx))
	}
	a.HourPower = power
	race := s.race
	race.Cutoffs = []plan.Cutoff{cutoff}
	p, err := plan.Even(s.c, a, race)
	if err != nil {
		return nil, 0, err
	}
	m := p.Cutoffs[0]
	if m.Limit <= s.inHand {
		return p, math.Inf(1), nil
	}
	return p, math.Log(m.Passed.Seconds() / (m.Limit - s.inHand).Seconds()), nil
}
