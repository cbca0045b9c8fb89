package follow_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// The card's first schedule is the plan; the slower one is as much slower as asked; the last
// one makes every cutoff, the tightest just so. Rules say what a standing there says.
func TestCard(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{Share: 0.4})
	c, err := follow.Paper(p, follow.CardOptions{Slower: 0.08, InHand: 5 * time.Minute})
	if err != nil {
		t.Fatal(err)
	}
	splits := p.Splits(plan.AtLandmarks)
	if len(c.Places) != len(splits) || len(c.Schedules) != 3 || len(c.Rules) != 3*(len(splits)-1) {
		t.Fatalf("%d places, %d schedules, %d rules", len(c.Places), len(c.Schedules), len(c.Rules))
	}
	for i, s := range splits {
		if c.Schedules[0].Times[i] != s.Elapsed || c.Places[i].Distance != s.Distance {
			t.Errorf("%s at %v, planned %v", c.Places[i].Name, c.Schedules[0].Times[i], s.Elapsed)
		}
	}
	still := p.Race.StartDelay + p.Stopped
	close(t, "slower", float64(c.Schedules[1].Finish-still)/float64(p.Moving), 1.08, 1e-6)
	tightest := time.Duration(math.MaxInt64)
	for i, m := range p.Cutoffs {
		at := c.Schedules[2].Times[i]
		if m.Departure {
			at += 6 * time.Minute
		}
		tightest = min(tightest, m.Limit-at)
		if c.Places[i].Closes != m.Limit {
			t.Errorf("%s closes at %v", m.Name, c.Places[i].Closes)
		}
	}
	if off := tightest - 5*time.Minute; off < -time.Second || off > 2*time.Second {
		t.Errorf("%v in hand at the tightest", tightest)
	}
	for _, r := range c.Rules {
		a := planned(p, r.Distance, false)
		a.Gun, a.Halted = a.Gun+r.Late, r.Late
		if s := from(t, p, a); (s.Forecast.Steady.Gun-r.Finish).Abs() > time.Second || r.Words == "" {
			t.Errorf("%+v; a passage there says %v", r, s.Forecast.Steady.Gun)
		}
	}
}

// Late by the card's latest time, nothing is in hand at the tightest cutoff from there on.
func TestCardLatest(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{Share: 0.4})
	c, err := follow.Paper(p, follow.CardOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range c.Places[:len(c.Places)-1] {
		a := planned(p, at.Distance, false)
		a.Halted, a.Gun = at.Latest-a.Gun, at.Latest
		tightest := time.Duration(math.MaxInt64)
		for _, k := range from(t, p, a).Cutoffs {
			if k.Distance >= at.Distance {
				tightest = min(tightest, k.InHand)
			}
		}
		if tightest.Abs() > 50*time.Millisecond {
			t.Errorf("%s by %v: %v in hand", at.Name, at.Latest, tightest)
		}
	}
}

// Without cutoffs there is no schedule for them, and without landmarks a line every five
// kilometres.
func TestCardWithoutCutoffs(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 23_000, flat), effort.Usual(12), plan.Race{})
	c, err := follow.Paper(p, follow.CardOptions{Late: []time.Duration{5 * time.Minute}})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Schedules) != 2 || len(c.Places) != 5 || len(c.Rules) != 4 || c.Places[4].Name != "Finish" {
		t.Errorf("%+v", c)
	}
	for _, r := range c.Rules {
		if r.Advice != follow.Hold || !strings.HasPrefix(r.Words, "Hold the effort; you finish at") || (r.Finish-p.Gun-5*time.Minute).Abs() > time.Second {
			t.Errorf("%+v", r)
		}
	}
	for _, o := range []follow.CardOptions{
		{Late: []time.Duration{0}}, {Late: []time.Duration{-time.Minute}}, {Slower: -0.1}, {Slower: math.NaN()}, {InHand: -1}, {Every: 3}, {Every: plan.Spacing(math.NaN())},
	} {
		if _, err := follow.Paper(p, o); !errors.Is(err, follow.ErrAim) {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// Cutoffs that nobody like this makes leave that schedule out and say so.
func TestCardOutOfReach(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{})
	p = even(t, p.Course, effort.Usual(7), p.Race)
	c, err := follow.Paper(p, follow.CardOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Schedules) != 2 || len(c.Warnings) != 1 || !strings.Contains(c.Warnings[0], "do not chase") {
		t.Errorf("%d schedules, %v", len(c.Schedules), c.Warnings)
	}
}
