package brief_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/brief"
)

// said is what English says of a line.
func said(l brief.Line, m brief.Measure) string { return brief.English().Lines[l.Kind](l, m) }

var metres = brief.Measure{Course: 50_000}

func text(t *testing.T, b *brief.Briefing) string {
	t.Helper()
	var out bytes.Buffer
	if err := brief.Text(&out, b); err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// A goal beyond the runner is advised against in the first words; the rest is the briefing
// of the fastest plan, line for line.
func TestGoalBeyondTheRunner(t *testing.T) {
	t.Parallel()
	for name, r := range map[string]plan.Race{
		"too fast":      {Goal: 4 * time.Hour, StartDelay: 2 * time.Minute},
		"no such pace":  {Goal: 3 * time.Minute, StartDelay: 2 * time.Minute},
		"early cutoff":  {MakeCutoffs: true, StartDelay: 2 * time.Minute, Cutoffs: []plan.Cutoff{{Name: "Glovers' Bridge", Distance: 10_000, Time: 45 * time.Minute}}},
		"too short day": {Standards: []plan.Standard{{Name: "gold", Time: 3 * time.Hour}}, StartDelay: 2 * time.Minute},
	} {
		p := even(t, flatCity(t), 11, r)
		best := even(t, flatCity(t), 11, plan.Race{StartDelay: r.StartDelay, Cutoffs: r.Cutoffs})
		got, want := made(t, p, brief.Options{}), made(t, best, brief.Options{})
		if !strings.HasPrefix(text(t, got), "NOT ADVISED: ") {
			t.Errorf("%s: begins %.60s", name, text(t, got))
		}
		if took := got.Opening[1].Took; (took - p.Best.Gun).Abs() > time.Second {
			t.Errorf("%s: told %v, the fastest is %v", name, took, p.Best.Gun)
		}
		for i, s := range got.Sections {
			for j, l := range s.Lines {
				if l.Text != want.Sections[i].Lines[j].Text {
					t.Errorf("%s: %q, want %q", name, l.Text, want.Sections[i].Lines[j].Text)
				}
			}
		}
	}
}

// What is told of the weather: temperatures of the hours given, the minutes that the same
// race without weather is shorter by, and what to do in heat.
func TestWeather(t *testing.T) {
	t.Parallel()
	gun := time.Date(2026, 6, 13, 9, 0, 0, 0, time.UTC)
	in := func(first, last, loss float64, o brief.Options) string {
		day, err := effort.NewDay([]effort.Hour{{Clock: 9 * time.Hour, Temperature: first, Humidity: 40}, {Clock: 15 * time.Hour, Temperature: last, Humidity: 40}}, effort.Night{})
		if err != nil {
			t.Fatal(err)
		}
		p := even(t, flatCity(t), 9.5, plan.Race{Start: gun, Goal: 6 * time.Hour, Surroundings: effort.Surroundings{Day: day, Heat: effort.Heat{Loss: loss}}})
		return lines(made(t, p, o), brief.Weather)[0].Text
	}
	for name, c := range map[string]struct {
		text string
		want []string
		not  string
	}{
		"hot":       {in(9, 29, effort.HeatLoss, brief.Options{}), []string{"9 °C at the start and 29 °C around 15:00.", "The plan allows ", "many lose more", "Slow down early", "Dizzy, confused", "get help"}, "dangerous"},
		"in feet":   {in(9, 29, effort.HeatLoss, brief.Options{Imperial: true}), []string{"48 °F at the start and 84 °F"}, "°C"},
		"no loss":   {in(9, 29, 0, brief.Options{}), []string{"The plan allows no time for heat", "Slow down early"}, "allows about"},
		"very hot":  {in(25, 38, effort.HeatLoss, brief.Options{}), []string{"dangerous", "called off", "get help"}, "\x00"},
		"mild":      {in(10, 11, effort.HeatLoss, brief.Options{}), []string{"about 10 °C from start to finish."}, "shade"},
		"cold":      {in(4, -3, effort.HeatLoss, brief.Options{}), []string{"4 °C at the start, and colder later.", "It falls to -3 °C around 15:00: have a warm"}, "shade"},
		"cold once": {in(-2, 8, effort.HeatLoss, brief.Options{}), []string{"-2 °C at the start and 8 °C", "Keep warm until the start"}, "shade"},
	} {
		for _, w := range c.want {
			if !strings.Contains(c.text, w) {
				t.Errorf("%s: no %q in %q", name, w, c.text)
			}
		}
		if strings.Contains(c.text, c.not) {
			t.Errorf("%s: %q in %q", name, c.not, c.text)
		}
	}
	night, err := effort.NewDay(nil, effort.Night{From: 21 * time.Hour, To: 5 * time.Hour})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []*effort.Day{nil, night} {
		b := made(t, even(t, shortRace(t), 12, plan.Race{Start: gun, Surroundings: effort.Surroundings{Day: d}}), brief.Options{})
		if len(lines(b, brief.Weather)) > 0 {
			t.Error("weather told that is not known")
		}
	}
}

// The minutes allowed are those by which the same race without weather is shorter, here of
// two plans that run all the way.
func TestAllowanceForHeat(t *testing.T) {
	t.Parallel()
	day, err := effort.NewDay([]effort.Hour{{Temperature: 26, Humidity: 60}}, effort.Night{})
	if err != nil {
		t.Fatal(err)
	}
	race := plan.Race{Start: time.Date(2026, 6, 13, 9, 0, 0, 0, time.UTC)}
	mild := even(t, flatCity(t), 16, race)
	race.Surroundings = effort.Surroundings{Day: day, Heat: effort.Heat{Loss: effort.HeatLoss}}
	hot := even(t, flatCity(t), 16, race)
	got := lines(made(t, hot, brief.Options{}), brief.Weather)[0].Took
	if want := hot.Moving - mild.Moving; want < time.Minute || (got-want).Abs() > time.Second {
		t.Errorf("allowed %v, want %v", got, want)
	}
}

// A time by the clock has the day's name where it is not the day of the gun, by the minute
// that it is rounded to; a cutoff is never rounded up.
func TestDaysByName(t *testing.T) {
	t.Parallel()
	gun := time.Date(2026, 6, 13, 20, 0, 0, 0, time.UTC) // a Saturday
	check := func(after time.Duration) string {
		return said(brief.Line{Kind: brief.Check, Ask: brief.Pacing, From: 20_000, Elapsed: after, Clock: gun.Add(after)}, metres)
	}
	cutoff := func(limit time.Duration) string {
		return said(brief.Line{Kind: brief.Cutoff, From: 20_000, Limit: limit, LimitAt: gun.Add(limit), InHand: time.Hour}, metres)
	}
	for text, want := range map[string]string{
		check(2*time.Hour + 10*time.Minute):  "start, at 22:10.",
		check(4*time.Hour - 40*time.Second):  "start, at 23:59.",
		check(4*time.Hour - 20*time.Second):  "start, Sunday 00:00.",
		check(30 * time.Hour):                "start, Monday 02:00.",
		check(148 * time.Hour):               "start, Saturday 20 June 00:00.",
		cutoff(4*time.Hour - 20*time.Second): "by 23:59.",
		cutoff(9*time.Hour + 59*time.Second): "by Sunday 05:00.",
		said(brief.Line{Kind: brief.Cutoff, Limit: 9*time.Hour + 59*time.Second, InHand: time.Hour}, metres): "within 9 hours of the gun.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	b := made(t, even(t, mountain(t), 11, plan.Race{Start: gun, Step: 50}), brief.Options{})
	for _, s := range b.Sections {
		day := s.Clock.Weekday().String() + s.Clock.Round(time.Minute).Format(" 15:04")
		if s.Arrival > 5*time.Hour && !strings.HasSuffix(s.Heading, ", "+day) || s.Arrival < 3*time.Hour && strings.Contains(s.Heading, "day ") {
			t.Errorf("%q, at %v", s.Heading, s.Clock)
		}
	}
}

// Where a plan runs first and walks the rest, both the opening and the section say so, and
// nobody hears that walking early is no weakness.
func TestWalkToTheFinish(t *testing.T) {
	t.Parallel()
	p := even(t, flatCity(t), 9, plan.Race{})
	bouts := p.Bouts(0, p.Course.Length())
	last := bouts[len(bouts)-1]
	if last.Gait != plan.Walk || len(bouts) > 2 {
		t.Fatalf("bouts %v: no plan to test with", bouts)
	}
	b := made(t, p, brief.Options{})
	if l := lines(b, brief.LastWalk); len(l) != 1 || l[0].From != last.From || !strings.Contains(l[0].Text, " you walk, to the end: ") {
		t.Errorf("told %v, walked from %g m", l, last.From)
	}
	if l := lines(b, brief.Walking); len(l) != 1 || !strings.HasPrefix(l[0].Text, "You run to ") {
		t.Errorf("opening: %v", l)
	}
	for _, p := range []*plan.Plan{p, even(t, flatCity(t), 18, plan.Race{})} {
		if strings.Contains(text(t, made(t, p, brief.Options{})), "not weakness") {
			t.Errorf("walking early is praised, and the plan walks %.0f %%", 100*p.WalkingShare)
		}
	}
	if n := len(lines(made(t, even(t, oneBig(t), 18, plan.Race{}), brief.Options{}), brief.LastWalk)); n > 0 {
		t.Error("a walk to the finish is told to somebody who runs")
	}
}

// Every planned walk is told with its place, to the tenth of a unit.
func TestPlannedWalks(t *testing.T) {
	t.Parallel()
	for _, every := range []time.Duration{30 * time.Minute, 5 * time.Minute} {
		p := even(t, flatCity(t), 13, plan.Race{Walks: plan.Walks{Every: every, Length: time.Minute}})
		var places []float64
		words := ""
		for _, l := range lines(made(t, p, brief.Options{}), brief.WalkPlaces) {
			places = append(places, l.Places...)
			words += l.Text
		}
		if len(places) != len(p.Walks) || len(places) < 4 {
			t.Fatalf("%d walks told, %d planned", len(places), len(p.Walks))
		}
		for i, w := range p.Walks {
			tenth := strconv.FormatFloat(math.Round(w.From/100)/10, 'g', -1, 64)
			if places[i] != w.From || every > 10*time.Minute && !strings.Contains(words, tenth) {
				t.Errorf("walk at %g m is not in %q", w.From, words)
			}
		}
	}
	many := make([]float64, 20)
	for i := range many {
		many[i] = 2000 * float64(i+1)
	}
	if s := said(brief.Line{Kind: brief.WalkPlaces, From: 2000, Took: time.Minute, Places: many}, metres); !strings.Contains(s, "20 planned walks of 1 minute here, the first at 2 km, then one about every 2 km.") {
		t.Error(s)
	}
}

// The great descent of a course is told whole, and time does not come back before its foot;
// ground that falls by less than 15 m a kilometre is not said to fall.
func TestDescents(t *testing.T) {
	t.Parallel()
	for _, hourPower := range []float64{18, 14, 11} {
		b := made(t, even(t, oneBig(t), hourPower, plan.Race{}), brief.Options{})
		deep := lines(b, brief.Descent)
		if len(deep) != 1 || !strings.Contains(deep[0].Text, "it drops 860 m in 7.8 km.") {
			t.Fatalf("descents told: %v", deep)
		}
		for _, l := range lines(b, brief.MakeUp) {
			if l.From < deep[0].To || strings.Contains(l.Text, "falls") {
				t.Errorf("%q after a descent to %g m", l.Text, deep[0].To)
			}
		}
	}
	falls := brief.Line{Kind: brief.MakeUp, From: 1000, Length: 2000, Descent: 40}
	if s := said(falls, metres); !strings.Contains(s, "falls gently") {
		t.Error(s)
	}
	down := brief.Line{Kind: brief.Drop, From: 1000, Length: 3000, Descent: 240, Gait: plan.Walk}
	if s := said(down, metres); !strings.Contains(s, "240 m in 3 km. Walk it") || strings.Contains(s, "carry you") {
		t.Error(s)
	}
}
