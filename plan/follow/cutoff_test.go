package follow_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// gated is a plan with cutoffs at three places, the second one for leaving it.
func gated(t rapid.TB, r plan.Race) *plan.Plan {
	t.Helper()
	c := profile(t, 42_000, rolling, course.Landmark{Name: "Ford", Distance: 12_000}, course.Landmark{Name: "Mill", Distance: 28_000, Kind: course.Station})
	r.Stops = []plan.Stop{{Distance: 28_000, Duration: 6 * time.Minute}}
	r.StartDelay, r.Wave, r.Step, r.ShortestBout = 2*time.Minute, 10*time.Minute, 25, plan.Off
	r.Cutoffs = []plan.Cutoff{
		{Name: "Ford", Distance: 12_000, Time: 2 * time.Hour},
		{Name: "Mill", Distance: 28_000, Time: 4*time.Hour + 30*time.Minute, Departure: true},
		{Name: "Finish", Distance: 42_000, Time: 6*time.Hour + 40*time.Minute, OwnGun: true},
	}
	return even(t, c, effort.Usual(12), r)
}

// On plan every cutoff has what the plan has in hand, and from the latest time here steady
// effort makes it with nothing in hand.
func TestCutoffsAhead(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := gated(t, plan.Race{Goal: time.Duration(rapid.IntRange(280, 380).Draw(t, "goal")) * time.Minute})
		if p.Budget > 1 {
			t.Skip("beyond the runner")
		}
		at := rapid.SampledFrom([]float64{0, 5_000, 11_990, 12_000, 20_000, 28_000, 35_000}).Draw(t, "at")
		s := from(t, p, planned(p, at, false))
		for i, c := range s.Cutoffs {
			if m := p.Cutoffs[i]; (c.InHand-m.InHand).Abs() > 20*time.Millisecond || c.Limit != m.Limit || c.Distance != m.Distance {
				t.Fatalf("at %g m: %s limit %v, in hand %v; planned %v, %v", at, c.Name, c.Limit, c.InHand, m.Limit, m.InHand)
			}
			if behind := c.Distance < at+25 && !c.Departure; behind != (c.Reach <= follow.Missed) && c.Distance < 28_000 {
				t.Fatalf("at %g m: %s %v", at, c.Name, c.Reach)
			}
		}
		last := s.Cutoffs[len(s.Cutoffs)-1]
		if p.Budget > 0.5 || last.InHand < 0 {
			return
		}
		late := planned(p, at, false)
		late.Gun, late.Halted = last.Latest, last.Latest-s.Gun
		if at == 0 {
			late.Halted = 0
		}
		if got := from(t, p, late).Cutoffs[len(s.Cutoffs)-1]; got.InHand.Abs() > 20*time.Millisecond || got.Reach != follow.Tight {
			t.Fatalf("from the latest time, %v: %+v", last.Latest, got)
		}
	})
}

// The reach of a cutoff follows the time in hand, and of one missed nobody is told to chase
// it.
func TestReach(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{Share: 0.3})
	seen := map[follow.Reach]bool{}
	for late := time.Duration(0); late < 2*time.Hour; late += 4 * time.Minute {
		s := from(t, p, follow.Passage{Distance: 20_000, Gun: planned(p, 20_000, false).Gun + late, Halted: late})
		mill := s.Cutoffs[1]
		seen[mill.Reach] = true
		r := rest(t, s, follow.Options{Aim: follow.MakeCutoffs, InHand: time.Minute})
		words := strings.Join(r.Words, " ")
		switch mill.Reach {
		case follow.Safe, follow.Tight:
			if mill.InHand < 0 || (mill.Reach == follow.Safe) != (mill.InHand >= 10*time.Minute) {
				t.Errorf("%v with %v in hand", mill.Reach, mill.InHand)
			}
		case follow.OnlyFaster:
			if mill.InHand >= 0 || mill.Most > mill.Limit {
				t.Errorf("%+v", mill)
			}
		case follow.OutOfReach:
			if mill.Most <= mill.Limit || r.Kept || !strings.Contains(words, "officials decide") && !strings.Contains(words, "Do not chase") {
				t.Errorf("%+v: %s", mill, words)
			}
		default:
			t.Errorf("%+v", mill)
		}
		if r.Kept {
			tightest := r.Cutoffs[0].InHand
			for _, c := range r.Cutoffs {
				tightest = min(tightest, c.InHand)
			}
			// Where the rest goes over from the plan's gaits to others, arrivals jump by some
			// seconds; the safe side of the jump is taken.
			if tightest < time.Minute-10*time.Millisecond || tightest > 80*time.Second {
				t.Errorf("late by %v: %v in hand at the tightest", late, tightest)
			}
		}
	}
	for _, r := range []follow.Reach{follow.Safe, follow.Tight, follow.OnlyFaster, follow.OutOfReach} {
		if !seen[r] {
			t.Errorf("no cutoff was %v", r)
		}
	}
}

// Behind, cutoffs are passed or missed by the times between passages.
func TestCutoffsBehind(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{Share: 0.3})
	limit := p.Cutoffs[0].Limit
	for _, late := range []time.Duration{-time.Minute, time.Minute} {
		s := from(t, p, follow.Passage{Distance: 12_000, Gun: limit + late}, follow.Passage{Distance: 20_000, Gun: limit + late + time.Hour})
		ford := s.Cutoffs[0]
		if want := map[bool]follow.Reach{true: follow.Missed, false: follow.Passed}[late > 0]; ford.Reach != want || (ford.InHand+late).Abs() > 2*time.Millisecond {
			t.Errorf("%v after it closed: %+v", late, ford)
		}
	}
	s := from(t, p, planned(p, 42_000, false))
	if len(s.Cutoffs) != 3 || s.Forecast != (follow.Forecast{}) {
		t.Errorf("at the finish %+v, %+v", s.Cutoffs, s.Forecast)
	}
	if _, err := s.Rest(follow.Options{}); !errors.Is(err, follow.ErrAim) {
		t.Errorf("a rest from the finish: %v", err)
	}
}

// A budget that is spent makes a walk, and where walking does not make a cutoff, a stop.
func TestSpent(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{})
	fast := planned(p, 27_000, false)
	fast.Gun = time.Duration(0.88 * float64(fast.Gun))
	s := from(t, p, fast)
	r := rest(t, s, follow.Options{})
	if s.State.Spent < 1 || r.Advice != follow.WalkOn || r.Intensity <= 0 || r.Intensity > 0.5 {
		t.Errorf("%.2f spent: %v at %g", s.State.Spent, r.Advice, r.Intensity)
	}
	slower := even(t, p.Course, effort.Usual(9.5), p.Race)
	fast = planned(slower, 27_000, false)
	fast.Gun = time.Duration(0.88 * float64(fast.Gun))
	s = from(t, slower, fast)
	r = rest(t, s, follow.Options{})
	if s.State.Spent < 1 || r.Advice != follow.Stop || !strings.Contains(strings.Join(r.Words, " "), "officials decide") || r.Intensity <= 0 {
		t.Errorf("%.2f spent: %v at %g: %v; %+v", s.State.Spent, r.Advice, r.Intensity, r.Words, s.Cutoffs)
	}
}
