package plan_test

import (
	"errors"
	"math"
	"strings"
	"sync"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A goal is met to the millisecond, whatever stands between gun and finish besides moving.
func TestGoalIsMet(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	stops := []plan.Stop{{Distance: 20_000, Duration: 3 * time.Minute}, {Distance: 50_000, Duration: 7 * time.Minute}}
	for _, goal := range []time.Duration{7 * time.Hour, 10*time.Hour + 30*time.Minute, 15 * time.Hour, 40 * time.Hour} {
		for _, net := range []bool{false, true} {
			r := plan.Race{Goal: goal, Net: net, StartDelay: 8 * time.Minute, Stops: stops}
			p := even(t, c, effort.Usual(12), r)
			want := goal
			if net {
				want += r.StartDelay
			}
			if p.Gun != want || p.Moving+p.Stopped+r.StartDelay != p.Gun {
				t.Errorf("goal %v, net %v: gun %v = %v + %v + %v", goal, net, p.Gun, p.Moving, p.Stopped, r.StartDelay)
			}
		}
	}
}

// Splits at any spacing end at the same finish, and their parts add up to it exactly.
func TestSplitsAddUp(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_123, rolling, course.Landmark{Name: "A", Distance: 30_000}, course.Landmark{Name: "B", Distance: 50_000})
	p := even(t, c, effort.Usual(12), plan.Race{
		StartDelay: 5 * time.Minute, Stops: []plan.Stop{{Distance: 30_000, Duration: 4 * time.Minute}, {Distance: 30_001, Duration: time.Minute}},
		Start: time.Date(2026, 6, 14, 5, 30, 0, 0, time.UTC),
	})
	for _, every := range []plan.Spacing{plan.AtLandmarks, plan.EveryKilometre, plan.EveryMile, 5000, 333, 100_000} {
		var moving, elapsed time.Duration
		var length, ascent float64
		elapsed = p.Race.StartDelay
		for _, s := range p.Splits(every) {
			moving, elapsed = moving+s.Took, elapsed+s.Took+s.Stop
			length, ascent = length+s.Length, ascent+s.Ascent
			if s.Moving != moving || s.Elapsed != elapsed || !s.Clock.Equal(p.Race.Start.Add(elapsed)) {
				t.Fatalf("every %g: at %g m moving %v, elapsed %v, clock %v; the parts give %v and %v", every, s.Distance, s.Moving, s.Elapsed, s.Clock, moving, elapsed)
			}
		}
		if moving != p.Moving || elapsed != p.Gun {
			t.Errorf("every %g: %v and %v, want %v and %v", every, moving, elapsed, p.Moving, p.Gun)
		}
		if math.Abs(length-c.Length()) > 1e-6 || math.Abs(ascent-c.Relief().Ascent) > 1e-6 {
			t.Errorf("every %g: %g m with %g m of ascent", every, length, ascent)
		}
	}
}

// Holding back is on beyond four hours only, opens easier, costs what it says, and can be
// switched off.
func TestHoldBack(t *testing.T) {
	t.Parallel()
	long := profile(t, 85_000, rolling)
	held := even(t, long, effort.Usual(12), plan.Race{})
	off := even(t, long, effort.Usual(12), plan.Race{HoldBack: plan.Off})
	if held.HoldBack.Share != plan.DefaultHoldBack || off.HoldBack != (plan.HoldBack{}) {
		t.Errorf("held back %+v and, off, %+v", held.HoldBack, off.HoldBack)
	}
	// The plan states the cost under its own gaits; those of the other differ in places.
	if cost := held.Moving - off.Moving; (cost-held.HoldBack.Cost).Abs() > time.Second || cost <= 0 || cost > time.Minute {
		t.Errorf("it costs %v and says %v", cost, held.HoldBack.Cost)
	}
	steady := effort.Usual(18) // runs all the way
	run := even(t, long, steady, plan.Race{})
	if cost := run.Moving - even(t, long, steady, plan.Race{HoldBack: plan.Off}).Moving; run.WalkingShare > 0 || cost != run.HoldBack.Cost {
		t.Errorf("running all the way it costs %v and says %v", cost, run.HoldBack.Cost)
	}
	first := func(p *plan.Plan) time.Duration { return p.Splits(5000)[0].LevelPace }
	if ratio := float64(first(held)) / float64(first(off)); ratio < 1.01 || ratio > 1.03 {
		t.Errorf("the first 5 km are %.4f times as slow as without", ratio)
	}
	short := profile(t, 42_195, flat)
	if p := even(t, short, effort.Usual(16), plan.Race{}); p.HoldBack.Share != 0 {
		t.Errorf("%v of marathon hold back %v", p.Moving, p.HoldBack.Share)
	}
	if p := even(t, short, effort.Usual(16), plan.Race{HoldBack: 0.05}); p.HoldBack.Share != 0.05 {
		t.Errorf("5 %% asked for, %v held back", p.HoldBack.Share)
	}
}

// A goal plan holds back at the cost that it states: that much slower at the same budget.
func TestHoldBackCostOfGoal(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	p := even(t, c, effort.Usual(12), plan.Race{Goal: 11 * time.Hour})
	off := even(t, c, effort.Usual(12), plan.Race{Goal: 11 * time.Hour, HoldBack: plan.Off})
	if p.Budget <= off.Budget || p.HoldBack.Cost <= 0 || p.HoldBack.Cost > 2*time.Minute {
		t.Errorf("budget %v, without holding back %v; cost %v", p.Budget, off.Budget, p.HoldBack.Cost)
	}
}

// A goal beyond the athlete is planned and flagged, with what it needs and what is
// sensible; one within is not.
func TestGoalBeyond(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	best := even(t, c, effort.Usual(12), plan.Race{})
	if math.Abs(best.Budget-1) > 1e-6 || best.Gun != best.Best.Gun {
		t.Errorf("the best plan spends %v in %v, the best is %v", best.Budget, best.Gun, best.Best.Gun)
	}
	beyond := even(t, c, effort.Usual(12), plan.Race{Goal: best.Gun * 9 / 10})
	if beyond.Budget < 1.5 || !strings.Contains(strings.Join(beyond.Warnings, "\n"), "beyond this runner") {
		t.Errorf("budget %v, warnings %q", beyond.Budget, beyond.Warnings)
	}
	within := even(t, c, effort.Usual(12), plan.Race{Goal: best.Gun * 11 / 10})
	if within.Budget > 0.6 || len(within.Warnings) != 0 {
		t.Errorf("budget %v, warnings %q", within.Budget, within.Warnings)
	}
	if d := beyond.Best.Gun - best.Gun; d != 0 {
		t.Errorf("the best depends on the goal by %v", d)
	}
}

// Plans that a coach believes.
func TestBelievable(t *testing.T) {
	t.Parallel()
	marathon, long := profile(t, 42_195, flat), profile(t, 85_000, rolling)
	p := even(t, marathon, effort.Usual(16.2), plan.Race{})
	second := p.Moving - p.FirstHalf
	if p.Moving < 2*time.Hour+55*time.Minute || p.Moving > 3*time.Hour+5*time.Minute || float64(second) > 1.03*float64(p.FirstHalf) {
		t.Errorf("marathon in %v: halves %v and %v", p.Moving, p.FirstHalf, second)
	}
	for power := 11.0; power <= 16; power++ {
		own := even(t, marathon, effort.Usual(power), plan.Race{}).Splits(42_195)[0].Pace
		p := even(t, long, effort.Usual(power), plan.Race{})
		opening := p.Splits(5000)[0].LevelPace
		if slower := float64(opening)/float64(own) - 1; slower < 0.05 {
			t.Errorf("hour power %g: 85 km open %.1f %% slower than the marathon pace", power, 100*slower)
		}
		if rate := float64(p.GaitChanges) / p.Moving.Hours(); rate > 5 {
			t.Errorf("hour power %g: %.1f changes of gait an hour", power, rate)
		}
	}
}

func TestBestOfUncertainAthlete(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, rolling)
	b := effort.Basis{Noise: 0.03, Results: 1, Longest: 40 * time.Minute}
	b.Cov[effort.HourPower][effort.HourPower] = 0.05 * 0.05
	p := even(t, c, effort.Usual(12), plan.Race{Basis: b})
	if !(p.Best.Low < p.Best.Gun && p.Best.Gun < p.Best.High) {
		t.Errorf("%v to %v about %v", p.Best.Low, p.Best.High, p.Best.Gun)
	}
	if text := strings.Join(p.Warnings, "\n"); !strings.Contains(text, "times as long as the longest result") {
		t.Errorf("warnings %q", text)
	}
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	c := profile(t, 10_000, flat)
	for _, r := range []struct {
		name string
		race plan.Race
		want error
	}{
		{"negative goal", plan.Race{Goal: -1}, plan.ErrGoal},
		{"goal within the delay", plan.Race{Goal: time.Minute, StartDelay: 2 * time.Minute}, plan.ErrGoal},
		{"endless goal", plan.Race{Goal: 2000 * time.Hour}, plan.ErrGoal},
		{"negative delay", plan.Race{StartDelay: -1}, plan.ErrOption},
		{"hold back", plan.Race{HoldBack: math.NaN()}, plan.ErrOption},
		{"bout", plan.Race{ShortestBout: -2}, plan.ErrOption},
		{"stop off the course", plan.Race{Stops: []plan.Stop{{Distance: 10_001, Duration: time.Minute}}}, plan.ErrStop},
		{"stop at NaN", plan.Race{Stops: []plan.Stop{{Distance: math.NaN(), Duration: time.Minute}}}, plan.ErrStop},
		{"stop of no time", plan.Race{Stops: []plan.Stop{{Distance: 5000, Duration: 0}}}, plan.ErrStop},
		{"step", plan.Race{Step: math.Inf(1)}, effort.ErrStep},
		{"wind", plan.Race{Surroundings: effort.Surroundings{HeadWind: math.NaN()}}, effort.ErrSurroundings},
	} {
		if _, err := plan.Even(c, effort.Usual(12), r.race); !errors.Is(err, r.want) {
			t.Errorf("%s: %v, want %v", r.name, err, r.want)
		}
	}
	if _, err := plan.Even(c, effort.Athlete{}, plan.Race{}); !errors.Is(err, effort.ErrAthlete) {
		t.Errorf("no athlete: %v", err)
	}
}

// A goal set to the best time spends about the whole budget and is not called beyond the
// runner, with bouts and without.
func TestGoalAtBest(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]*course.Course{"rolling": profile(t, 85_000, rolling), "rollers": profile(t, 50_000, rollers)} {
		for _, power := range []float64{9, 10, 10.2, 11, 12, 14} {
			for _, bout := range []time.Duration{0, plan.Off} {
				best := even(t, c, effort.Usual(power), plan.Race{ShortestBout: bout})
				p := even(t, c, effort.Usual(power), plan.Race{Goal: best.Gun, ShortestBout: bout})
				near := 0.02
				if bout == plan.Off {
					near = 0.003
				}
				if math.Abs(p.Budget-1) > near || strings.Contains(strings.Join(p.Warnings, "\n"), "beyond") {
					t.Errorf("%s, hour power %g, bout %v: budget %.4f, warnings %q", name, power, bout, p.Budget, p.Warnings)
				}
			}
		}
	}
}

// rollers is a sine of 20 m up and down every 1257 m.
func rollers(x float64) float64 { return 500 + 20*math.Sin(x/200) }

// On regular rollers a plan either changes gait at most five times an hour or says that
// it changes more often; the runners between a walk and a run on every hill are those.
func TestFewChanges(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("minutes under the race detector")
	}
	c := profile(t, 50_000, rollers)
	for power := 8.0; power <= 18; power += 0.2 {
		p := even(t, c, effort.Usual(power), plan.Race{})
		rate := float64(p.GaitChanges) / p.Moving.Hours()
		said := strings.Contains(strings.Join(p.Warnings, "\n"), "changes between running and walking")
		if rate > 5 != said {
			t.Errorf("hour power %.1f: %.1f changes of gait an hour, warnings %q", power, rate, p.Warnings)
		}
		if rate > 5 && (power < 9 || power > 11.5) {
			t.Errorf("hour power %.1f, which is not between the gaits: %.1f changes of gait an hour", power, rate)
		}
	}
}

// A course and a plan may be shared between goroutines; the race detector watches.
func TestShared(t *testing.T) {
	t.Parallel()
	c := profile(t, 30_000, rolling, course.Landmark{Name: "A", Distance: 10_000})
	p := even(t, c, effort.Usual(12), plan.Race{})
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			if q := even(t, c, effort.Usual(12), plan.Race{}); q.Moving != p.Moving {
				t.Errorf("%v, before %v", q.Moving, p.Moving)
			}
			if n := len(p.Splits(plan.EveryKilometre)); n != 30 {
				t.Errorf("%d splits", n)
			}
			p.Bouts(0, c.Length())
			c.Climbs(0)
		})
	}
	wait.Wait()
}
