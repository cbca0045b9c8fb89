package plan

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"isoeffort.example/course"
)

// A Cutoff is the time by which a runner must have reached a place, or left it, as the
// rules of the race say.
type Cutoff struct {
	Name     string
	Distance float64       // m from the start
	Time     time.Duration // since the first gun of the race

	Departure bool // the runner must have left by then, not only arrived
	OwnGun    bool // Time counts from the gun of the runner's own wave
}

// String names the cutoff and where it is.
func (c Cutoff) String() string {
	name := c.Name
	if name == "" {
		name = "cutoff"
	}
	return fmt.Sprintf("%q at %.2f km", name, c.Distance/1000)
}

// A Margin is a cutoff and how the plan stands to it.
type Margin struct {
	Cutoff
	Limit  time.Duration // since the runner's own gun
	Passed time.Duration // when the plan passes it, gun time: arrival, or departure
	InHand time.Duration // Limit − Passed, below 0 if it is missed
	AtRisk bool          // less in hand than a day's luck may take
}

// A cutoff is at risk with less in hand than riskShare of the time to it, or leastInHand:
// one race lies about 3 % from another for the same runner, and a queue or a lost
// shoe takes minutes. [Our own.]
const (
	riskShare   = 0.04
	leastInHand = 10 * time.Minute
)

// limit is the cutoff's time since the runner's own gun.
func (r Race) limit(c Cutoff) time.Duration {
	if c.OwnGun {
		return c.Time
	}
	return c.Time - r.Wave
}

// allowed is the moving time that a cutoff leaves.
func (p *Plan) allowed(c Cutoff) time.Duration {
	left := p.Race.limit(c) - p.Race.StartDelay - p.stopped(c.Distance)
	if c.Departure {
		left -= p.stoppedAt(c.Distance)
	}
	return left
}

// margins are the cutoffs in the order of the course.
func (p *Plan) margins() (out []Margin) {
	for _, c := range p.Race.Cutoffs {
		m := Margin{Cutoff: c, Limit: p.Race.limit(c), InHand: p.allowed(c) - millis(p.trace.At(c.Distance).Moving)}
		m.Passed = m.Limit - m.InHand
		m.AtRisk = m.InHand < max(leastInHand, time.Duration(riskShare*float64(m.Passed)))
		out = append(out, m)
	}
	slices.SortStableFunc(out, func(a, b Margin) int {
		return cmp.Or(cmp.Compare(a.Distance, b.Distance), cmp.Compare(a.Limit, b.Limit))
	})
	return out
}

// FirstAtRisk returns the first cutoff on the course that is at risk, or nil.
func (p *Plan) FirstAtRisk() *Margin {
	for i := range p.Cutoffs {
		if p.Cutoffs[i].AtRisk {
			return &p.Cutoffs[i]
		}
	}
	return nil
}

// checkCutoffs wants them on the course and in order.
func (r Race) checkCutoffs(c *course.Course) error {
	sorted := slices.Clone(r.Cutoffs)
	slices.SortStableFunc(sorted, func(a, b Cutoff) int { return cmp.Compare(a.Distance, b.Distance) })
	for i, k := range sorted {
		if !(k.Distance > 0 && k.Distance <= c.Length()) {
			return fmt.Errorf("plan: %w: %v is not on the course of %.2f km", ErrCutoff, k, c.Length()/1000)
		}
		if k.Time <= 0 || k.Time > longest {
			return fmt.Errorf("plan: %w: %v: %v is not within 0 to %v", ErrCutoff, k, k.Time, longest)
		}
		if r.limit(k) <= 0 {
			return fmt.Errorf("plan: %w: %v: %v is before the start of the wave at %v", ErrCutoff, k, k.Time, r.Wave)
		}
		if i > 0 && r.limit(k) < r.limit(sorted[i-1]) {
			return fmt.Errorf("plan: %w: %v closes at %v, before %v at %v", ErrCutoff, k, r.limit(k), sorted[i-1], r.limit(sorted[i-1]))
		}
	}
	return nil
}
