package brief_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
	"isoeffort.example/plan/story"
)

// Where several climbs round to the same rating, none is the hardest.
func TestHardest(t *testing.T) {
	t.Parallel()
	for c, want := range map[*course.Course]string{mountain(t): "It is one of the hardest of the course.", rollingLong(t): "It is one of the hardest of the course."} {
		b := made(t, even(t, c, 14, plan.Race{Step: 50}), brief.Options{})
		i := slices.IndexFunc(lines(b, brief.OneClimb), func(l brief.Line) bool { return l.Hardest })
		if l := lines(b, brief.OneClimb)[i]; !strings.Contains(l.Text, want) {
			t.Errorf("%q", l.Text)
		}
	}
	one := brief.Line{Kind: brief.OneClimb, Hardest: true, Climbs: []brief.Climb{{Start: 1000, Top: 3000, Rise: 200, Rating: 7}}}
	if s := said(one, metres); !strings.Contains(s, "It is the hardest climb of the course.") {
		t.Error(s)
	}
}

// Small things that a coach would not say.
func TestManners(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		line brief.Line
		want string
	}{
		{brief.Line{Kind: brief.Walking, Share: 0.29}, "You walk for nearly a third of the time."},
		{brief.Line{Kind: brief.Walking, Share: 0.25, Early: true}, "about a quarter of the time. Walking early is not weakness"},
		{brief.Line{Kind: brief.Stop, From: 5000, Took: 70 * time.Second, Count: 1}, "for 1 minute 10 seconds."},
		{brief.Line{Kind: brief.Stop, From: 5000, Took: 50 * time.Second, Count: 1}, "for 50 seconds."},
		{brief.Line{Kind: brief.Mark, MarkKind: story.Exposed, From: 1000, To: 2000, Night: true}, "no shelter from wind and cold."},
		{brief.Line{Kind: brief.Mark, MarkKind: story.Exposed, From: 1000, To: 2000}, "no shelter from sun or wind."},
		{brief.Line{Kind: brief.Ground, Length: 6300, Ascent: 3, Descent: 50, Sloping: 0.3, Took: 20 * time.Minute}, "Partly down, the rest about level: 50 m"},
		{brief.Line{Kind: brief.Ground, Length: 6300, Ascent: 3, Descent: 50, Sloping: 0.7, Took: 20 * time.Minute}, "Mostly down: 50 m"},
	} {
		if s := said(c.line, metres); !strings.Contains(s, c.want) {
			t.Errorf("no %q in %q", c.want, s)
		}
	}
	section := brief.Section{From: 0, To: 3700, Arrival: 13 * time.Minute}
	if s := brief.English().Heading(section, metres); s != "Start to 3.7 km, there after 13 minutes" {
		t.Error(s)
	}
	long := made(t, even(t, mountain(t), 8.5, plan.Race{Step: 50}), brief.Options{})
	if len(lines(long, brief.Sleepless)) != 1 || len(lines(made(t, even(t, oneBig(t), 8.5, plan.Race{}), brief.Options{}), brief.Sleepless)) != 0 {
		t.Error("a word on sleep: in a race of a day and more, and in no other")
	}
}

// A short race over a hill has a pace and a check early on, in the units asked for.
func TestShortRace(t *testing.T) {
	t.Parallel()
	p := even(t, shortRace(t), 18, plan.Race{})
	pace := time.Duration(float64(p.Moving) / 10).Round(time.Second)
	b := made(t, p, brief.Options{})
	if want := "about " + strings.NewReplacer("m", ":", "s", "").Replace(pace.String()) + " a kilometre on average."; !strings.Contains(lines(b, brief.Overview)[0].Text, want) {
		t.Errorf("no %q in %q", want, lines(b, brief.Overview)[0].Text)
	}
	if l := lines(b, brief.Check); len(l) == 0 || l[0].From > 2500 || !strings.Contains(l[0].Text, " minutes ") {
		t.Errorf("checks %v", l)
	}
	if s := lines(made(t, p, brief.Options{Imperial: true}), brief.Overview)[0].Text; !strings.Contains(s, " a mile on average") {
		t.Error(s)
	}
}
