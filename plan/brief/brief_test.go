package brief_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
	"isoeffort.example/plan/story"
)

func even(t *testing.T, c *course.Course, hourPower float64, r plan.Race) *plan.Plan {
	t.Helper()
	p, err := plan.Even(c, effort.Usual(hourPower), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func made(t *testing.T, p *plan.Plan, o brief.Options) *brief.Briefing {
	t.Helper()
	b, err := brief.Make(p, o)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// lines are those of a kind.
func lines(b *brief.Briefing, kind brief.Kind) (found []brief.Line) {
	for l := range b.Lines() {
		if l.Kind == kind {
			found = append(found, l)
		}
	}
	return found
}

// The times that are told are those of the plan's splits, which come by another way.
func TestTimesAreThePlans(t *testing.T) {
	t.Parallel()
	for _, e := range examples(t) {
		for i, r := range e.races {
			r.Step = 50
			p := even(t, e.course, runners[i], r)
			if beyond(p) {
				r.Goal = 0
				p = even(t, e.course, runners[i], r)
			}
			b := made(t, p, brief.Options{Marks: e.marks})
			splits := map[float64]plan.Split{}
			for _, s := range p.Splits(plan.AtLandmarks) {
				splits[s.Distance] = s
			}
			n := 0
			for _, s := range b.Sections {
				if split, ok := splits[s.To]; ok {
					n++
					if s.Arrival != split.Elapsed || !s.Clock.Equal(split.Clock) {
						t.Errorf("%s-%d: %s: %v and %v, want %v and %v", e.name, i, s.Heading, s.Arrival, s.Clock, split.Elapsed, split.Clock)
					}
				}
			}
			for _, l := range lines(b, brief.Check) {
				if split, ok := splits[l.From]; ok && l.Elapsed != split.Elapsed {
					t.Errorf("%s-%d: %s: %v, want %v", e.name, i, l.Text, l.Elapsed, split.Elapsed)
				}
			}
			for _, l := range slices.Concat(lines(b, brief.LastClimb), lines(b, brief.ToGo)) {
				if l.Elapsed+l.Took != p.Gun {
					t.Errorf("%s-%d: %s: %v and %v, want %v in all", e.name, i, l.Text, l.Elapsed, l.Took, p.Gun)
				}
			}
			if n == 0 || lines(b, brief.Overview)[0].Took != p.Gun {
				t.Errorf("%s-%d: %d sections end at landmarks; %v, want %v", e.name, i, n, lines(b, brief.Overview)[0].Took, p.Gun)
			}
		}
	}
}

// Laps are found by their landmarks, and not where there are none, or at other places or
// heights.
func TestLapsAreFound(t *testing.T) {
	t.Parallel()
	lap := ground(t, "", 50, []piece{{1500, 40}, {2500, -35}}, station("Green", 1.2), course.Landmark{Name: "Gate", Distance: 0})
	bare := ground(t, "", 50, []piece{{1500, 40}, {2500, -35}})
	times := func(c *course.Course, n int) *course.Course {
		out, err := c.Laps(n)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	back, err := lap.OutAndBack()
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		course *course.Course
		want   int
	}{
		"six laps": {times(lap, 6), 6}, "two laps": {times(lap, 2), 2}, "one way": {lap, 1}, "nothing to tell them by": {times(bare, 6), 1},
		"out and back":  {back, 1},
		"other heights": {ground(t, "", 50, []piece{{1500, 40}, {2500, -40}, {1500, 80}, {2500, -80}}, station("Green", 1.2), station("Green", 5.2)), 1},
		"other places":  {ground(t, "", 50, []piece{{1500, 40}, {2500, -40}, {1500, 40}, {2500, -40}}, station("Green", 1.2), station("Green", 5.6)), 1},
	} {
		b := made(t, even(t, c.course, 12, plan.Race{Step: 50}), brief.Options{})
		got := 1
		if l := lines(b, brief.Laps); len(l) > 0 {
			got = l[0].Count
		}
		if got != c.want {
			t.Errorf("%s: told as %d laps, want %d", name, got, c.want)
		}
	}
	if b := made(t, even(t, times(bare, 6), 12, plan.Race{Step: 50}), brief.Options{Laps: 6}); lines(b, brief.Laps)[0].Count != 6 || len(b.Sections) != 3 {
		t.Error("six laps that were stated are not told")
	}
}

// What a coach must not get wrong, on the six courses.
func TestWhatIsTold(t *testing.T) {
	t.Parallel()
	has := func(c *course.Course, hp float64, r plan.Race, o brief.Options) func(brief.Kind) int {
		b := made(t, even(t, c, hp, r), o)
		return func(k brief.Kind) int { return len(lines(b, k)) }
	}
	if n := has(flatCity(t), 14, plan.Race{}, brief.Options{}); n(brief.Pace) != 1 || n(brief.Halfway) != 1 || n(brief.Hills)+n(brief.OneClimb)+n(brief.LastClimb)+n(brief.MakeUp) != 0 {
		t.Error("flat city: pace and half way, and nothing of hills")
	}
	if n := has(oneBig(t), 14, plan.Race{}, brief.Options{}); n(brief.OneClimb) != 1 || n(brief.LastClimb) != 1 || n(brief.MakeUp) == 0 || n(brief.Pace) != 0 {
		t.Error("one climb: it, what comes after it, and where time comes back")
	}
	if n := has(rollingLong(t), 12, plan.Race{}, brief.Options{}); n(brief.Decoy) != 2 || n(brief.ToGo) == 0 || n(brief.LastClimb) != 1 || n(brief.Check) < 3 {
		t.Error("rolling: both decoys, a marathon to go, the last climb, checks")
	}
	if n := has(tenLaps(t), 12, plan.Race{}, brief.Options{}); n(brief.LapClimb) != 1 || n(brief.LapTimes) != 1 || n(brief.FinalLap) != 1 || n(brief.OneClimb) != 1 {
		t.Error("ten laps: one told in full, the changes once")
	}
	mark := []story.Mark{{From: 1000, To: 2000, Kind: story.Crowded, Note: "a footbridge"}}
	b := made(t, even(t, shortRace(t), 14, plan.Race{}), brief.Options{Marks: mark})
	if l := lines(b, brief.Mark); len(l) != 1 || !strings.Contains(l[0].Text, "A footbridge.") {
		t.Errorf("mark told as %v", l)
	}
	all := 0
	for range b.Lines() {
		all++
	}
	if all > 13 {
		t.Errorf("%d lines for 10 km", all)
	}
}

// A runner who holds 6 of 10 at first and gives all ends just under 10; an easy day rises
// less; the goal that is beyond the runner feels like the one that is not.
func TestFeel(t *testing.T) {
	t.Parallel()
	c := flatCity(t)
	feel := func(r plan.Race) brief.Feel {
		return *lines(made(t, even(t, c, 12, r), brief.Options{}), brief.Effort)[0].Feel
	}
	full, easy, beyond := feel(plan.Race{}), feel(plan.Race{Share: 0.4}), feel(plan.Race{Goal: 3 * time.Hour})
	if full.Last != 9 || easy.Last >= full.Last || beyond != full {
		t.Errorf("full %v, easy %v, beyond %v", full, easy, beyond)
	}
	last := 0
	for s := -0.5; s <= 1.5; s += 0.01 {
		at := full.At(s)
		if at < last || at < full.First || at > full.Last {
			t.Fatalf("at %g of the race it feels like %d", s, at)
		}
		last = at
	}
	if full.At(0) != full.First || full.At(1) != full.Last {
		t.Errorf("from %d to %d, want %v", full.At(0), full.At(1), full)
	}
}

func TestErrors(t *testing.T) {
	t.Parallel()
	p := even(t, shortRace(t), 12, plan.Race{})
	for _, laps := range []int{-1, 501} {
		if _, err := brief.Make(p, brief.Options{Laps: laps}); !errors.Is(err, brief.ErrLaps) {
			t.Errorf("%d laps: %v", laps, err)
		}
	}
	for _, m := range []story.Mark{{From: -1, To: 5}, {From: 0, To: 1e9}, {From: 5, To: 5}, {From: math.NaN(), To: 5}} {
		if _, err := brief.Make(p, brief.Options{Marks: []story.Mark{m}}); !errors.Is(err, story.ErrMark) {
			t.Errorf("mark %v: %v", m, err)
		}
	}
}
