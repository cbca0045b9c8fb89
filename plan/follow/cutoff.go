package follow

import (
	"math"
	"time"

	"isoeffort.example/plan"
)

// Reach says whether a cutoff can still be made.
type Reach int

// The reaches of a cutoff.
const (
	Passed     Reach = iota // behind, and made
	Missed                  // behind, and not made by the times given or read between them
	Safe                    // made by steady effort with a day's luck in hand
	Tight                   // made by steady effort, with less in hand
	OnlyFaster              // made only by more than the plan's effort, within the budget; no reason to give it
	OutOfReach              // not made on the budget that is left
)

func (r Reach) String() string {
	names := [...]string{"passed", "missed", "safe", "tight", "only faster", "out of reach"}
	if r < 0 || int(r) >= len(names) {
		return "no reach"
	}
	return names[r]
}

// words is the reach on a page: what only more effort would make is not offered.
func (r Reach) words() string {
	if r == OnlyFaster {
		return "missed so"
	}
	return r.String()
}

// A Cutoff is one of the race's and how the runner stands to it.
type Cutoff struct {
	plan.Cutoff
	Limit  time.Duration // since the runner's own gun
	Steady time.Duration // when steady effort passes it; for one behind, when it was passed
	Most   time.Duration // when the whole budget, spent evenly to the finish, passes it

	// InHand is Limit − Steady. Latest is the last gun time at this place from which steady
	// effort still makes it, to the change that a later hour makes of weather and dark.
	InHand, Latest time.Duration

	Reach Reach
}

// A cutoff is safe with at least this in hand: a share of the time to it, or some
// minutes: a queue, a lost shoe. As in plans. [Our own.]
const (
	riskShare   = 0.04
	leastInHand = 10 * time.Minute
)

// passed are the cutoffs that the runner has behind.
func (s *Standing) passed() (out []Cutoff) {
	for _, m := range s.Plan.Cutoffs {
		if !s.behind(m.Cutoff) {
			continue
		}
		c := Cutoff{Cutoff: m.Cutoff, Limit: m.Limit}
		c.Steady = s.planned(m.Distance, m.Departure) + s.lateAt(m.Distance)
		c.Most = c.Steady
		if c.InHand = c.Limit - c.Steady; c.InHand < 0 {
			c.Reach = Missed
		}
		out = append(out, c)
	}
	return out
}

// behind reports whether a cutoff is: one here is, but for the departure of one who has
// only arrived.
func (s *Standing) behind(c plan.Cutoff) bool {
	if math.Abs(c.Distance-s.Distance) < samePlace {
		return s.Leaving || !c.Departure || s.finished()
	}
	return c.Distance < s.Distance
}

// lateAt is how late a place was passed: straight between passages.
func (s *Standing) lateAt(distance float64) time.Duration {
	from, before := 0.0, millis(s.legs[0].halted)
	for _, l := range s.legs[1:] {
		late := millis(l.at - s.Plan.State(l.to).Moving)
		if distance <= l.to {
			return before + time.Duration(float64(late-before)*(distance-from)/(l.to-from))
		}
		from, before = l.to, late
	}
	return before
}

// ahead are the cutoffs to come.
func (s *Standing) ahead() (out []Cutoff) {
	for _, m := range s.Plan.Cutoffs {
		if s.behind(m.Cutoff) {
			continue
		}
		c := Cutoff{
			Cutoff: m.Cutoff, Limit: m.Limit,
			Steady: s.arrival(s.steady, m.Distance, m.Departure), Most: s.arrival(s.most, m.Distance, m.Departure),
		}
		c.InHand = c.Limit - c.Steady
		c.Latest = s.Gun + c.InHand
		c.Reach = s.reach(c)
		out = append(out, c)
	}
	return out
}

func (s *Standing) reach(c Cutoff) Reach {
	risk := max(leastInHand, time.Duration(riskShare*float64(c.Steady-s.Gun)))
	switch {
	case c.InHand >= risk:
		return Safe
	case c.InHand >= 0:
		return Tight
	case c.Most <= c.Limit:
		return OnlyFaster
	}
	return OutOfReach
}

// next is the first cutoff ahead of a reach or worse, or nil.
func (s *Standing) next(worst Reach) *Cutoff {
	for i := range s.Cutoffs {
		if s.Cutoffs[i].Reach >= worst {
			return &s.Cutoffs[i]
		}
	}
	return nil
}
