package plan_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A share of the budget is what is spent.
func TestShare(t *testing.T) {
	t.Parallel()
	c := profile(t, 42_000, rolling)
	best := even(t, c, effort.Usual(13), plan.Race{})
	before := best.Moving
	for _, share := range []float64{1, 0.8, 0.5, 0.1, 0.01} {
		p := even(t, c, effort.Usual(13), plan.Race{Share: share})
		if math.Abs(p.Budget-share) > 1e-6 || p.Best.Moving != best.Best.Moving {
			t.Errorf("share %g: %.7f of the budget, best %v", share, p.Budget, p.Best.Moving)
		}
		if p.Moving < before {
			t.Errorf("share %g is faster than a greater one: %v, %v", share, p.Moving, before)
		}
		before = p.Moving
	}
}

// The fastest standard inside the budget is planned for; beyond all of them the slowest is,
// with a warning.
func TestStandards(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	list := []plan.Standard{{Name: "bronze", Time: 13 * time.Hour}, {Name: "gold", Time: 8*time.Hour + 50*time.Minute}, {Name: "silver", Time: 10 * time.Hour}}
	for _, tt := range []struct {
		hourPower float64
		want      string
		beyond    bool
	}{{15, "gold", false}, {14, "silver", false}, {11, "bronze", false}, {8, "bronze", true}} {
		p := even(t, c, effort.Usual(tt.hourPower), plan.Race{Standards: list, StartDelay: 5 * time.Minute})
		if p.Standard.Name != tt.want || p.Gun != p.Standard.Time || p.Budget > 1.02 != tt.beyond {
			t.Errorf("hour power %g: %+v in %v, %.3f of the budget", tt.hourPower, p.Standard, p.Gun, p.Budget)
		}
		if beyond := p.Needs.HourPower > tt.hourPower; beyond != tt.beyond {
			t.Errorf("hour power %g: needs %.2f", tt.hourPower, p.Needs.HourPower)
		}
	}
}

// What a goal beyond the runner needs is the hour power of one who can just make it.
func TestNeeds(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	r := plan.Race{Goal: 8 * time.Hour, HoldBack: plan.Off, ShortestBout: plan.Off}
	a := effort.Usual(12)
	a.HourPower = even(t, c, a, r).Needs.HourPower
	if p := even(t, c, a, r); math.Abs(p.Best.Gun.Hours()-8) > 0.01 {
		t.Errorf("hour power %.3f makes %v", a.HourPower, p.Best.Gun)
	}
}

// Every cutoff has the time in hand that was asked for, the tightest no more, and the plan
// gives less than the best.
func TestMakeCutoffs(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	c := profile(t, 85_000, rolling, course.Landmark{Name: "barn", Distance: 58_000, Kind: course.Station})
	rapid.Check(t, func(t *rapid.T) {
		r := plan.Race{
			MakeCutoffs: true, InHand: time.Duration(rapid.IntRange(0, 40).Draw(t, "in hand")) * time.Minute,
			StartDelay: 4 * time.Minute, Wave: time.Duration(rapid.IntRange(0, 30).Draw(t, "wave")) * time.Minute,
			ShortestBout: plan.Off, HoldBack: plan.Off, Step: 25,
			Stops: []plan.Stop{{Distance: 58_000, Duration: 11 * time.Minute}},
			Cutoffs: []plan.Cutoff{
				{Name: "tower", Distance: 27_000, Time: 5 * time.Hour},
				{Name: "barn", Distance: 58_000, Time: 10*time.Hour + time.Duration(rapid.IntRange(0, 90).Draw(t, "barn"))*time.Minute, Departure: rapid.Bool().Draw(t, "departure")},
				{Name: "finish", Distance: 85_000, Time: 15 * time.Hour, OwnGun: rapid.Bool().Draw(t, "own")},
			},
		}
		p := even(t, c, effort.Usual(13), r)
		tightest := time.Duration(math.MaxInt64)
		for _, m := range p.Cutoffs {
			tightest = min(tightest, m.InHand)
			passed := m.Passed
			if m.Departure {
				passed -= 11 * time.Minute
			}
			for _, s := range p.Splits(1000) {
				if s.Distance == m.Distance && s.Elapsed != passed {
					t.Fatalf("%v passed at %v, by the splits at %v", m.Cutoff, passed, s.Elapsed)
				}
			}
			limit := m.Time
			if !m.OwnGun {
				limit -= r.Wave
			}
			if m.Limit != limit || m.Passed+m.InHand != limit {
				t.Fatalf("%v: limit %v, passed %v, in hand %v", m.Cutoff, m.Limit, m.Passed, m.InHand)
			}
		}
		if off := tightest - r.InHand; off < -time.Second || off > 2*time.Second {
			t.Fatalf("%v in hand at the tightest, not %v", tightest, r.InHand)
		}
		if p.Budget >= 1 {
			t.Fatalf("%.3f of the budget", p.Budget)
		}
	})
}

// Planned walks leave no stretch longer than asked without a walk, last whole minutes to
// within a cell, and cost no less than nothing.
func TestPlannedWalks(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	rapid.Check(t, func(t *rapid.T) {
		ground := rapid.SampledFrom([]func(float64) float64{flat, rolling}).Draw(t, "ground")
		c := profile(t, rapid.Float64Range(12_000, 30_000).Draw(t, "length"), ground)
		w := plan.Walks{
			Every:  time.Duration(rapid.IntRange(15, 70).Draw(t, "every")) * time.Minute,
			Length: time.Duration(rapid.IntRange(1, 5).Draw(t, "minutes")) * time.Minute,
		}
		a := effort.Usual(rapid.Float64Range(10, 18).Draw(t, "hour power"))
		p := even(t, c, a, plan.Race{Walks: w})
		// A walk that saves less than a change of gait must is left out of even effort, and
		// gains that where it is planned: 0.1 % of the time at most in some hundred draws.
		if p.WalkCost < -p.Moving/500 {
			t.Fatalf("walks gain %v", -p.WalkCost)
		}
		for _, walk := range p.Walks {
			if walk.Took < w.Length-8*time.Second { // a cell
				t.Fatalf("a walk of %v lasts %v", w.Length, walk.Took)
			}
		}
		// First is an hour at most, and no walk is started that the finish would cut short.
		for i, b := range p.Bouts(0, c.Length()) {
			ran, most := effort.Seconds(p.State(b.To).Moving-p.State(b.From).Moving), w.Every
			if i == 0 {
				most = min(w.Every, time.Hour)
			}
			if b.To == c.Length() {
				most += w.Length
			}
			if b.Gait == plan.Run && ran > most+30*time.Second {
				t.Fatalf("%v without a walk from %.0f m on, %v asked for", ran, b.From, w.Every)
			}
		}
	})
}

// Walks by the watch start when the watch says, to within a cell or two.
func TestFixedWalks(t *testing.T) {
	t.Parallel()
	c := profile(t, 42_000, rolling)
	for _, hourPower := range []float64{11, 14, 17} {
		p := even(t, c, effort.Usual(hourPower), plan.Race{Walks: plan.Walks{Every: 20 * time.Minute, Length: 2 * time.Minute, Fixed: true}})
		for i, w := range p.Walks {
			if due := time.Duration(i+1) * 20 * time.Minute; (w.Start-due).Abs() > 10*time.Second || (w.Took-2*time.Minute).Abs() > 5*time.Second {
				t.Errorf("hour power %g: walk %d at %v for %v", hourPower, i, w.Start, w.Took)
			}
		}
		if want := int(p.Moving / (20 * time.Minute)); len(p.Walks) < want-1 || len(p.Walks) > want {
			t.Errorf("%d walks in %v", len(p.Walks), p.Moving)
		}
	}
}

// A climb is walked when its name is called.
func TestWalkClimb(t *testing.T) {
	t.Parallel()
	c := profile(t, 20_000, func(x float64) float64 { return 80 - 80*math.Abs(math.Mod(x, 10_000)/5000-1) },
		course.Landmark{Name: "Fir Tree", Distance: 5000, Kind: course.Top})
	a := effort.Usual(16)
	if p := even(t, c, a, plan.Race{}); p.WalkingShare != 0 {
		t.Fatalf("it walks of itself: %g", p.WalkingShare)
	}
	p := even(t, c, a, plan.Race{WalkClimbs: []string{"fir tree"}})
	for _, climb := range p.Climbs {
		if called := climb.Name == "Fir Tree"; (climb.WalkingShare > 0.99) != called {
			t.Errorf("%s: %.2f walked", climb.Label(), climb.WalkingShare)
		}
	}
}

// With a gun time as the goal the time that the start takes is all back at the finish, a
// little of it everywhere; without one nothing of the delay comes back.
func TestBehind(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	r := plan.Race{Goal: 10 * time.Hour, StartDelay: 8 * time.Minute, HoldBack: plan.Off}
	p := even(t, c, effort.Usual(15), r)
	if p.Behind(0) != r.StartDelay || p.Behind(85_000).Abs() > time.Second {
		t.Errorf("behind by %v at first and %v at last", p.Behind(0), p.Behind(85_000))
	}
	for x := 10_000.0; x < 85_000; x += 10_000 {
		even := time.Duration((1 - x/85_000) * float64(r.StartDelay))
		if got := p.Behind(x); (got - even).Abs() > 45*time.Second {
			t.Errorf("behind by %v at %.0f km, about %v wanted", got, x/1000, even)
		}
	}
	r.Goal = 0
	p = even(t, c, effort.Usual(15), r)
	if got := p.Behind(85_000); got != r.StartDelay {
		t.Errorf("best: behind by %v at the finish", got)
	}
	r.Surroundings.Crowd = effort.Crowd{Speed: 1.5, Over: 3000}
	crowded := even(t, c, effort.Usual(15), r)
	if crowded.Start.Crowd <= 0 || crowded.Behind(85_000) != r.StartDelay+crowded.Start.Crowd {
		t.Errorf("the crowd takes %v, behind by %v", crowded.Start.Crowd, crowded.Behind(85_000))
	}
	if at3 := crowded.Behind(3000) - r.StartDelay; at3 <= crowded.Start.Crowd {
		t.Errorf("the effort saved in the crowd is not used: %v at 3 km, %v at the finish", at3, crowded.Start.Crowd)
	}
}

// Halts at stations come by rule, unless one is given there.
func TestStations(t *testing.T) {
	t.Parallel()
	c := profile(t, 50_000, flat,
		course.Landmark{Name: "A", Distance: 10_000, Kind: course.Station}, course.Landmark{Name: "B", Distance: 20_000},
		course.Landmark{Name: "C", Distance: 30_000, Kind: course.Station}, course.Landmark{Name: "D", Distance: 50_000, Kind: course.Station})
	r := plan.Race{
		Stations: plan.Stations{Each: time.Minute, PerHour: 40 * time.Second, Crowd: 2 * time.Minute, CrowdOver: 20_000},
		Stops:    []plan.Stop{{Distance: 20_000, Duration: 30 * time.Second, Note: "salt"}},
		HoldBack: plan.Off,
	}
	p := even(t, c, effort.Usual(14), r)
	hours := p.State(30_000).Moving/3600 - p.State(10_000).Moving/3600
	first := (2*time.Minute + effort.Seconds(40*hours)).Round(10 * time.Second)
	hours = p.State(50_000).Moving/3600 - p.State(30_000).Moving/3600
	second := (time.Minute + effort.Seconds(40*hours)).Round(10 * time.Second)
	want := []plan.Stop{
		{Distance: 10_000, Duration: first, Kind: plan.AidStation},
		r.Stops[0],
		{Distance: 30_000, Duration: second, Kind: plan.AidStation},
	}
	if len(p.Stops) != 3 || p.Stops[0] != want[0] || p.Stops[1] != want[1] || p.Stops[2] != want[2] {
		t.Errorf("got  %v\nwant %v", p.Stops, want)
	}
	if sum := first + second + 30*time.Second; p.Stopped != sum || p.Gun != p.Moving+sum {
		t.Errorf("stopped %v of %v, gun %v, moving %v", p.Stopped, sum, p.Gun, p.Moving)
	}
	none := even(t, profile(t, 20_000, flat), effort.Usual(14), plan.Race{Stations: r.Stations})
	if len(none.Stops) > 0 || !strings.Contains(strings.Join(none.Warnings, "\n"), "no aid stations") {
		t.Errorf("a course without stations: %v, %q", none.Stops, none.Warnings)
	}
	r.Stops = []plan.Stop{{Distance: 10_010, Duration: 5 * time.Minute}}
	if p := even(t, c, effort.Usual(14), r); len(p.Stops) != 2 || p.Stops[0] != (plan.Stop{Distance: 10_000, Duration: 5 * time.Minute}) {
		t.Errorf("given one at the station: %v", p.Stops)
	}
}

// Where planned walks go depends on the plan; the best that stands beside it does not.
func TestBestDoesNotDependOnTheGoal(t *testing.T) {
	t.Parallel()
	c := profile(t, 20_000, rolling)
	r := plan.Race{Walks: plan.Walks{Every: 25 * time.Minute}}
	want := even(t, c, effort.Usual(15), r).Best
	for _, slower := range []time.Duration{0, 2 * time.Minute, 30 * time.Minute, 2 * time.Hour} {
		r.Goal = want.Gun + slower
		if got := even(t, c, effort.Usual(15), r).Best; got != want {
			t.Errorf("for a goal of %v the best is %v, without one %v", r.Goal, got.Gun, want.Gun)
		}
	}
}

// A goal that no pace of the runner makes is planned as the best, and said.
func TestUnmet(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	c := profile(t, 85_000, rolling)
	walker := effort.Usual(12)
	walker.Habit = effort.WalkOnly
	held := plan.Race{Goal: 7 * time.Hour, Surroundings: effort.Surroundings{Limits: []effort.Limit{{From: 0, To: 40_000, Walk: true}}}}
	early := plan.Race{MakeCutoffs: true, Cutoffs: []plan.Cutoff{{Distance: 40_000, Time: 3 * time.Hour}}}
	for name, r := range map[string]plan.Race{
		"a time": {Goal: 11 * time.Hour}, "with a delay": {Goal: 11 * time.Hour, StartDelay: time.Minute},
		"cutoffs": early, "no time to move": {MakeCutoffs: true, InHand: 3 * time.Hour, Cutoffs: early.Cutoffs},
		"walks": {Goal: 9 * time.Hour, Walks: plan.Walks{Every: 30 * time.Minute}},
	} {
		p := even(t, c, walker, r)
		if !p.Unmet || p.Moving != p.Best.Moving || !strings.Contains(strings.Join(p.Warnings, "\n"), "No pace of this runner makes the goal") {
			t.Errorf("%s: unmet %v, %v, best %v, %q", name, p.Unmet, p.Moving, p.Best.Moving, p.Warnings)
		}
	}
	if p := even(t, c, effort.Usual(14), held); p.Budget < 1.02 {
		t.Errorf("half of it walked, in 7 h: %.3f of the budget", p.Budget)
	}
	if p := even(t, profile(t, 10_000, flat), walker, plan.Race{Share: 0.9}); !strings.Contains(strings.Join(p.Warnings, "\n"), "can be spent at this runner's greatest speeds") {
		t.Errorf("a share that cannot be spent: %.4f, %q", p.Budget, p.Warnings)
	}
}

// Cells longer than a walk still hold one.
func TestWalksOnCoarseCells(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, flat)
	for _, step := range []float64{250, 500, 1000} {
		p := even(t, c, effort.Usual(15), plan.Race{Step: step, Walks: plan.Walks{Every: 20 * time.Minute, Length: time.Minute}})
		if len(p.Walks) < 4 {
			t.Errorf("cells of %g m: %d walks in %v", step, len(p.Walks), p.Moving)
		}
	}
}

// Holding back costs what the plan says: its time less that of a plan without, where joined
// bouts let the two be compared.
func TestHoldBackCosts(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	steep := func(x float64) float64 { return 0.08 * math.Min(x, 21_000) }
	for _, ground := range []func(float64) float64{flat, rolling, steep} {
		c := profile(t, 42_000, ground)
		for _, hourPower := range []float64{9, 10, 11, 12, 15, 18} {
			for _, share := range []float64{0.02, 0.1} {
				held := even(t, c, effort.Usual(hourPower), plan.Race{HoldBack: share})
				free := even(t, c, effort.Usual(hourPower), plan.Race{HoldBack: plan.Off})
				truly := held.Moving - free.Moving
				if held.HoldBack.Cost < 0 {
					t.Errorf("hour power %g, %g: it costs %v", hourPower, share, held.HoldBack.Cost)
				}
				if off := held.HoldBack.Cost - max(truly, 0); off < -time.Second {
					t.Errorf("hour power %g, %g: it says %v, truly %v", hourPower, share, held.HoldBack.Cost, truly)
				}
			}
		}
	}
}

// No planned walk is asked for twice, whatever else the day holds.
func TestWalksAreApart(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	c := profile(t, 85_000, rolling, course.Landmark{Name: "A", Distance: 40_000, Kind: course.Station})
	for _, hourPower := range []float64{10, 11, 12, 13.3, 15, 18} {
		p := even(t, c, effort.Usual(hourPower), plan.Race{
			Walks: plan.Walks{Every: 45 * time.Minute}, Stations: plan.Stations{Each: 2 * time.Minute, PerHour: time.Minute}, StartDelay: 5 * time.Minute,
		})
		for i := 1; i < len(p.Walks); i++ {
			if p.Walks[i].From < p.Walks[i-1].To {
				t.Errorf("hour power %g: a walk at %.0f m, before the one up to %.0f m ends", hourPower, p.Walks[i].From, p.Walks[i-1].To)
			}
		}
	}
}
