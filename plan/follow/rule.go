package follow

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/internal/say"
)

// A Rule says what to do for a runner who arrives late at a place. It takes the minutes
// for lost and not for saved: the effort so far is the plan's, since paper does not know
// why somebody is late.
type Rule struct {
	Place    string
	Distance float64
	Late     time.Duration
	Advice   Advice
	Finish   time.Duration // gun time of the steady effort that is left
	Cutoff   *Cutoff       // the first that is not safe, or nil
	Words    string
}

// rules fills in those of every place but the finish, and until when each is safe.
func (c *Card) rules(r *tracker, late []time.Duration) error {
	for i := range c.Places {
		at := &c.Places[i]
		if at.Distance >= c.Plan.Course.Length() {
			continue
		}
		s, err := c.lateAt(r, at.Distance, 0)
		if err != nil {
			return err
		}
		at.Latest = s.latest()
		for _, minutes := range late {
			if s, err = c.lateAt(r, at.Distance, minutes); err != nil {
				return err
			}
			c.Rules = append(c.Rules, s.rule(at.Name, minutes))
		}
	}
	return nil
}

// lateAt is where the runner stands who arrives late at a place after the plan's effort.
func (c *Card) lateAt(r *tracker, distance float64, late time.Duration) (*Standing, error) {
	p := c.Plan
	s := &Standing{Plan: p, Today: 1, tracker: r, Distance: distance, State: p.State(distance), soFar: p.Intensity}
	s.State.Moving += late.Seconds()
	s.legs = []leg{{}, {to: distance, at: s.State.Moving}}
	s.Intensity, s.PlannedIntensity = p.Effort(), p.Effort()
	s.times()
	return s, s.glance()
}

// latest is the last arrival here from which steady effort makes every cutoff from here on.
func (s *Standing) latest() time.Duration {
	var last time.Duration
	for _, c := range s.Cutoffs {
		at := c.Latest
		switch {
		case at == 0 && math.Abs(c.Distance-s.Distance) < samePlace: // here
			at = c.Limit
		case at == 0:
			continue
		}
		if last == 0 || at < last {
			last = at
		}
	}
	return max(last, 0)
}

// rule puts a standing in one line.
func (s *Standing) rule(place string, late time.Duration) Rule {
	r := Rule{Place: place, Distance: s.Distance, Late: late, Finish: s.Forecast.Steady.Gun}
	switch {
	case s.walking && s.next(OutOfReach) != nil:
		r.Advice = Stop
	case s.walking:
		r.Advice = WalkOn
	case s.Forecast.Steady.Intensity < 0.995*s.Plan.Intensity:
		r.Advice = Ease
	}
	r.Words = fmt.Sprintf("%s; you finish at %s.", say.Capital(ruleWords[r.Advice]), say.HM(r.Finish))
	if c := s.missedHere(); c != nil {
		r.Cutoff, r.Advice = c, Stop
		r.Words = fmt.Sprintf("The cutoff here is missed by %s. The officials decide; talk to the marshal.", say.HM(up(-c.InHand)))
		return r
	}
	if c := s.next(OutOfReach); c != nil {
		r.Cutoff = c
		r.Words = fmt.Sprintf("The cutoff %s is out of reach by %s. Do not race it; talk to the marshal here.", where(*c), say.HM(up(-c.InHand)))
		return r
	}
	r.Cutoff = s.next(Tight)
	r.Words += s.cutoffWords()
	return r
}

// missedHere is a cutoff of this place that is missed, or nil.
func (s *Standing) missedHere() *Cutoff {
	for i, c := range s.Cutoffs {
		if c.Reach == Missed && math.Abs(c.Distance-s.Distance) < samePlace {
			return &s.Cutoffs[i]
		}
	}
	return nil
}

// up rounds up to the minute.
func up(d time.Duration) time.Duration { return (d + time.Minute - 1).Truncate(time.Minute) }

// ruleWords are in the order of the advice.
var ruleWords = [...]string{"hold the effort", "ease to what is left", "walk on", "walk to the next marshal"}

// cutoffWords says how cutoffs to come stand that can be made.
func (s *Standing) cutoffWords() string {
	if c := s.next(OnlyFaster); c != nil {
		return fmt.Sprintf(" The cutoff %s needs %s off that: only if it feels right.", where(*c), say.HM(up(-c.InHand)))
	}
	if c := s.next(Tight); c != nil {
		return fmt.Sprintf(" %s in hand at the cutoff %s: no halts beyond the plan.", say.HM(c.InHand.Truncate(time.Minute)), where(*c))
	}
	if len(s.ahead()) > 0 {
		return " Every cutoff is safe."
	}
	return ""
}
