package follow

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
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
	Words    string        // the place and the delay named: a line for itself

	kind ruleKind // what lines are joined by
}

// ruleKind is what a rule is about.
type ruleKind int

const (
	holdOn ruleKind = iota
	tightLater
	easeOn
	walkOn
	missedLater
	missedHere
)

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
	switch c := s.trouble(); {
	case c != nil && c.Reach == Missed:
		r.kind, r.Advice, r.Cutoff = missedHere, Stop, c
	case c != nil && c.InHand < 0:
		r.kind, r.Advice, r.Cutoff = missedLater, Hold, c
	case s.walking:
		r.kind, r.Advice = walkOn, WalkOn
	case !s.holds && s.Forecast.Steady.Intensity < (1-asPlanned)*s.Plan.Intensity:
		r.kind, r.Advice, r.Cutoff = easeOn, Ease, c
	case c != nil:
		r.kind, r.Cutoff = tightLater, c
	}
	if r.kind == missedLater && s.walking {
		r.Advice = Stop
	}
	r.Words = fmt.Sprintf("At %s, %s late: %s", r.place(), spell(late), r.advice(s.Plan, ""))
	return r
}

// trouble is the worst of the cutoffs here and to come that is not safe, or nil: one that is
// missed comes before one that is tight. Those that the plan misses on time are left out:
// the card says so once.
func (s *Standing) trouble() (worst *Cutoff) {
	for i := range s.Cutoffs {
		c := &s.Cutoffs[i]
		here := c.Reach == Missed && math.Abs(c.Distance-s.Distance) < samePlace
		if missedOnTime(s.Plan, c) || !here && c.Reach <= Safe {
			continue
		}
		if worst == nil || worst.InHand >= 0 && c.InHand < 0 {
			worst = c
		}
	}
	return worst
}

// missedOnTime reports whether the plan itself misses a cutoff.
func missedOnTime(p *plan.Plan, c *Cutoff) bool {
	for _, m := range p.Cutoffs {
		if m.Cutoff == c.Cutoff {
			return m.InHand < 0
		}
	}
	return false
}

func (r Rule) place() string { return placeWords(r.Place, r.Distance) }

// placeWords is a place by its name or, failing that, by its distance.
func placeWords(name string, distance float64) string {
	if name = page.Plain(name); name != "" {
		return name
	}
	return fmt.Sprintf("%.1f km", distance/1000)
}

// advice is what to do; more stands behind the time by which a cutoff is missed.
func (r Rule) advice(p *plan.Plan, more string) string {
	switch r.kind {
	case missedHere:
		return fmt.Sprintf("the cutoff here is missed by %s%s. The officials decide; talk to the marshal.", spell(up(-r.Cutoff.InHand)), more)
	case missedLater:
		return fmt.Sprintf("the cutoff %s will be missed by %s%s. Do not race it; talk to the marshal here.", where(*r.Cutoff), spell(up(-r.Cutoff.InHand)), more)
	case walkOn:
		return fmt.Sprintf("walk, easy enough to speak whole sentences. You finish at about %s.", about(p, r.Finish))
	case easeOn:
		return fmt.Sprintf("ease, the planned effort would not last. You finish at about %s.", about(p, r.Finish))
	case tightLater:
		return fmt.Sprintf("hold the planned effort, no more. You finish at about %s. %s in hand at the cutoff %s: no halts beyond the plan.", about(p, r.Finish), say.Capital(margin(r.Cutoff.InHand)), where(*r.Cutoff))
	}
	return fmt.Sprintf("hold the planned effort, no more. You finish at about %s.%s", about(p, r.Finish), safeWords(p, r.Distance))
}

// safeWords says that cutoffs are safe, where the plan makes any beyond a place.
func safeWords(p *plan.Plan, distance float64) string {
	for _, m := range p.Cutoffs {
		if m.Distance > distance && m.InHand >= 0 {
			return " Every cutoff is safe."
		}
	}
	return ""
}

// up rounds up to the minute.
func up(d time.Duration) time.Duration { return (d + time.Minute - 1).Truncate(time.Minute) }
