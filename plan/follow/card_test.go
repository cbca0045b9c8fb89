package follow_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
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
		if r.Advice != follow.Hold || !strings.Contains(r.Words, " km, 5 minutes late: hold the planned effort, no more. You finish at about ") || (r.Finish-p.Gun-5*time.Minute).Abs() > time.Second {
			t.Errorf("%+v", r)
		}
	}
	for _, o := range []follow.CardOptions{
		{Late: []time.Duration{0}}, {Late: []time.Duration{-time.Minute}}, {Late: []time.Duration{time.Hour, time.Minute}}, {Slower: -0.1}, {Slower: math.NaN()}, {InHand: -1}, {Every: 3}, {Every: plan.Spacing(math.NaN())},
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
	if len(c.Schedules) != 2 || len(c.Warnings) != 2 || !strings.HasPrefix(c.Warnings[0], "Even on time this plan misses the cutoff at Ford by 23 minutes, the cutoff at Mill by 62 minutes and ") || !strings.Contains(c.Warnings[1], "do not chase") {
		t.Errorf("%d schedules, %v", len(c.Schedules), c.Warnings)
	}
	for _, r := range c.Rules {
		if strings.Contains(r.Words, "cutoff") {
			t.Errorf("said once is enough: %s", r.Words)
		}
	}
}

// A goal beyond the runner has no times on a card and no rules, and a warning on top.
func TestCardBeyondTheRunner(t *testing.T) {
	t.Parallel()
	p := gated(t, plan.Race{Goal: 3 * time.Hour})
	c, err := follow.Paper(p, follow.CardOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Schedules) != 0 || len(c.Rules) != 0 || len(c.Lines()) != 0 || len(c.Warnings) != 1 || !strings.HasPrefix(c.Warnings[0], "NOT ADVISED") {
		t.Fatalf("%+v", c)
	}
	var text strings.Builder
	if err := c.Text(&text); err != nil {
		t.Fatal(err)
	}
	if i := strings.Index(text.String(), "NOT ADVISED"); i < 0 || i > 120 || strings.Contains(text.String(), "3:00:00") {
		t.Errorf("%s", text.String())
	}
}

// Rules name place and delay, and Lines say no more and no less than they do: every place
// and delay is covered by one line that gives the same advice.
func TestCardLines(t *testing.T) {
	t.Parallel()
	for _, share := range []float64{0.15, 0.3, 0.6, 1} {
		p := gated(t, plan.Race{Share: share})
		late := []time.Duration{4 * time.Minute, 12 * time.Minute, 25 * time.Minute, 50 * time.Minute, 90 * time.Minute}
		c, err := follow.Paper(p, follow.CardOptions{Late: late})
		if err != nil {
			t.Fatal(err)
		}
		lines := c.Lines()
		if len(lines) == 0 || len(lines) >= len(c.Rules) {
			t.Errorf("%d lines for %d rules", len(lines), len(c.Rules))
		}
		for _, r := range c.Rules {
			minutes := fmt.Sprintf("%.0f minutes late", r.Late.Minutes())
			if want := fmt.Sprintf("At %s, %s: ", r.Place, minutes); !strings.HasPrefix(r.Words, want) {
				t.Errorf("%q does not begin with %q", r.Words, want)
			}
			covered := 0
			for i, line := range lines {
				switch {
				case i == 0 && strings.HasPrefix(line, "Up to "):
					var most float64
					if _, err := fmt.Sscanf(line, "Up to %f minutes late anywhere", &most); err != nil {
						t.Fatal(err)
					}
					if r.Late.Minutes() <= most {
						covered++
						if r.Advice != follow.Hold || r.Cutoff != nil {
							t.Errorf("%q, and %q", line, r.Words)
						}
					}
				case strings.Contains(line, " late or more ") && strings.Contains(strings.SplitN(line, ":", 2)[0], r.Place) && r.Cutoff != nil:
					var from float64
					if _, err := fmt.Sscanf(line, "%f minutes late", &from); err != nil {
						t.Fatal(err)
					}
					if r.Late.Minutes() >= from && r.Cutoff.InHand < 0 {
						covered++
					}
				case strings.HasPrefix(line, minutes) && strings.Contains(strings.SplitN(line, ":", 2)[0], r.Place):
					covered++
					if r.Cutoff != nil && !strings.Contains(line, "cutoff") {
						t.Errorf("%q, and %q", line, r.Words)
					}
				}
			}
			if covered != 1 {
				t.Errorf("%d lines cover %q:\n%s", covered, r.Words, strings.Join(lines, "\n"))
			}
		}
	}
}

// Late is by the length of the race where nothing else is asked for.
func TestUsualDelays(t *testing.T) {
	t.Parallel()
	for length, want := range map[float64][]time.Duration{
		5_000:  {time.Minute, 2 * time.Minute, 3 * time.Minute},
		42_000: {5 * time.Minute, 10 * time.Minute, 15 * time.Minute},
		90_000: {10 * time.Minute, 20 * time.Minute, 30 * time.Minute},
	} {
		p := even(t, profile(t, length, flat, course.Landmark{Name: "Ford", Distance: length / 2}), effort.Usual(11), plan.Race{Step: 100})
		c, err := follow.Paper(p, follow.CardOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range c.Rules {
			if len(c.Rules) != 3 || r.Late != want[i] {
				t.Errorf("%g m: rule %d at %v late, want %v", length, i, r.Late, want)
			}
		}
	}
}
