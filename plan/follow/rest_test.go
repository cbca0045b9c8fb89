package follow_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

func from(t rapid.TB, p *plan.Plan, passages ...follow.Passage) *follow.Standing {
	t.Helper()
	s, err := follow.From(p, passages...)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func rest(t rapid.TB, s *follow.Standing, o follow.Options) *follow.Rest {
	t.Helper()
	r, err := s.Rest(o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// after is a passage so much later than planned.
func after(p *plan.Plan, distance float64, late time.Duration) follow.Passage {
	a := planned(p, distance, false)
	a.Gun += late
	return a
}

// Whatever was run before, the rest asks for some effort and for no more than what is left;
// where the budget is spent, for no more than the plan and no run.
func TestNeverZeroNeverMore(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := even(drawRace(t))
		at := p.Course.Length() * rapid.Float64Range(0.05, 0.95).Draw(t, "at")
		moving := effort.Seconds(p.State(at).Moving)
		a := after(p, at, time.Duration(rapid.Float64Range(-0.3, 0.6).Draw(t, "late")*float64(moving)))
		a.Felt = rapid.SampledFrom([]float64{0, 0.6, 1, 1.3}).Draw(t, "felt")
		s, err := follow.From(p, a)
		if errors.Is(err, follow.ErrTime) {
			t.Skip("faster than anybody")
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, aim := range []follow.Aim{follow.KeepGoal, follow.HoldEffort, follow.SpendAll, follow.Choose} {
			r := rest(t, s, follow.Options{Aim: aim, Intensity: 0.8})
			if !(r.Intensity > 0.01) || !(r.Gun > s.Gun) {
				t.Fatalf("%v: intensity %g, finish at %v from %v", aim, r.Intensity, r.Gun, s.Gun)
			}
			switch r.Advice {
			case follow.Hold, follow.Ease:
				if r.Budget > 1.02 {
					t.Fatalf("%v, %v: %.3f of the budget", aim, r.Advice, r.Budget)
				}
			default:
				if r.Intensity > p.Intensity || r.Intensity > 0.5 || len(r.Bouts) != 1 || r.Bouts[0].Gait != plan.Walk {
					t.Fatalf("%v, %v: intensity %g, bouts %+v", aim, r.Advice, r.Intensity, r.Bouts)
				}
			}
			if most := map[bool]float64{true: 1, false: 1 + follow.MostMore}[aim == follow.HoldEffort]; r.Share > most+1e-6 {
				t.Fatalf("%v: %.4f of the planned effort", aim, r.Share)
			}
			if s.State.Spent >= 1 && (r.Kept || r.Advice != follow.WalkOn && r.Advice != follow.Stop) {
				t.Fatalf("%v with %.3f spent: %v, kept %v", aim, s.State.Spent, r.Advice, r.Kept)
			}
			moving := 0.0
			for _, split := range r.Splits {
				moving += split.Took.Seconds()
				if split.Late != split.Gun-split.Planned {
					t.Fatalf("%+v", split)
				}
			}
			close(t, "parts", moving, r.State(p.Course.Length()).Moving-s.State.Moving, 0.01)
		}
	})
}

// A later runner has spent less, an earlier one more, and the estimate of both is the
// effort that they gave: paced by a factor, they are found to have given it.
func TestEffortIsFound(t *testing.T) {
	t.Parallel()
	c := profile(t, 40_000, rolling)
	for _, hourPower := range []float64{9, 12, 16} {
		p := even(t, c, effort.Usual(hourPower), plan.Race{Share: 0.6, HoldBack: plan.Off, Step: 25})
		for _, factor := range []float64{0.92, 0.97, 1.02, 1.05} {
			in, err := p.Integrator()
			if err != nil {
				t.Fatal(err)
			}
			ran := in.Traverse(effort.State{}, effort.Pace{Intensity: factor * p.Intensity, Gaits: p.Traverse().Gait}).Clone()
			var passages []follow.Passage
			for _, at := range []float64{8_000, 15_000, 24_000} {
				passages = append(passages, follow.Passage{Distance: at, Gun: effort.Seconds(ran.At(at).Moving)})
			}
			s := from(t, p, passages...)
			close(t, "spent", s.State.Spent/ran.At(24_000).Spent, 1, 2e-3)
			close(t, "work", s.State.Work/ran.At(24_000).Work, 1, 2e-4)
			// Going on as so far is going on as they did.
			close(t, "finish", s.Forecast.SoFar.Gun.Seconds(), ran.Finish().Moving, 2)
			if late := s.Late > 0; late != (factor < 1) || late != (s.State.Spent < s.PlannedBudget) {
				t.Errorf("factor %g: late %v, spent %.3f of %.3f", factor, s.Late, s.State.Spent, s.PlannedBudget)
			}
		}
	}
}

// Even effort from where the runner stands is the best that the budget left allows: no plan
// that spends more on one half of the rest and less on the other is faster.
func TestRestSpendsEvenly(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 30_000, rolling), effort.Usual(16), plan.Race{HoldBack: plan.Off, Step: 25})
	s := from(t, p, after(p, 10_000, 2*time.Minute))
	r := rest(t, s, follow.Options{Aim: follow.SpendAll})
	if close(t, "budget", r.Budget, 1, 1e-6); r.Share <= 1 || !r.Kept {
		t.Fatalf("late by easier effort leaves more, and gives %.3f", r.Share)
	}
	later := rest(t, from(t, p, after(p, 10_000, 4*time.Minute)), follow.Options{Aim: follow.SpendAll})
	if close(t, "effort", later.Share, 1+follow.MostMore, 1e-6); !(later.Budget < 1) || later.Gun <= later.Standing.Forecast.Best.Gun {
		t.Fatalf("later still, no more than a little of it: %.3f of the budget, %v", later.Budget, later.Gun)
	}
	in, err := p.Integrator()
	if err != nil {
		t.Fatal(err)
	}
	for _, tilt := range []float64{-0.05, 0.05} {
		d := effort.Demand{Tilt: tilt, Gaits: p.Traverse().Gait}
		other, err := in.Solve(s.State, d)
		if err != nil {
			t.Fatal(err)
		}
		if other.Finish().Moving <= r.State(30_000).Moving {
			t.Errorf("a tilt of %g is faster", tilt)
		}
	}
}

// What keeping the plan's gaits costs where the rest keeps them is below noise.
func TestKeptGaitsCostLittle(t *testing.T) {
	t.Parallel()
	kept, most := 0, 0.0
	for _, ground := range []func(float64) float64{rolling, steep} {
		for _, hourPower := range []float64{9, 11, 13} {
			p := even(t, profile(t, 40_000, ground), effort.Usual(hourPower), plan.Race{Share: 0.7, Step: 25})
			in, err := p.Integrator()
			if err != nil {
				t.Fatal(err)
			}
			for _, late := range []float64{-0.04, -0.02, 0.02, 0.04} {
				s := from(t, p, after(p, 14_000, effort.Seconds(late*p.State(14_000).Moving)))
				r := rest(t, s, follow.Options{Aim: follow.Choose, Intensity: (1 - math.Abs(late)) * p.Intensity})
				if !r.SameGaits {
					continue
				}
				kept++
				free, err := in.Solve(s.State, effort.Demand{Budget: r.Budget, Tilt: -p.HoldBack.Share, ShortestBout: 180})
				if err != nil {
					t.Fatal(err)
				}
				moving := r.State(40_000).Moving - s.State.Moving
				most = math.Max(most, 1-(free.Finish().Moving-s.State.Moving)/moving)
			}
		}
	}
	t.Logf("%d of 24 keep their gaits, which costs %.2f %% of the time at most", kept, 100*most)
	if kept < 12 || most > 0.01 {
		t.Errorf("%d of 24 keep their gaits, which costs %.2f %%", kept, 100*most)
	}
}

// A runner who feels more than the times tell is planned for less; one who feels less is not
// planned for more, and one who feels what the plan has is as planned.
func TestFelt(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 40_000, rolling), effort.Usual(13), plan.Race{Share: 0.8, Step: 25})
	a := planned(p, 20_000, false)
	plain := from(t, p, a)
	for _, felt := range []float64{0, 0.7 * plain.Intensity, plain.Intensity, 1.1 * plain.Intensity, 1.9} {
		a.Felt = felt
		s := from(t, p, a)
		want := 1.0
		if felt > plain.Intensity {
			want = math.Max(0.85, math.Sqrt(plain.Intensity/felt))
		}
		close(t, "today", s.Today, want, 1e-12)
		if want == 1 && (s.State != plain.State || len(s.Warnings) > 0) || want < 1 && (s.State.Spent <= plain.State.Spent || s.Forecast.Best.Gun <= plain.Forecast.Best.Gun || len(s.Warnings) != 1) {
			t.Errorf("felt %.3f: %+v, best %v of %v", felt, s.State, s.Forecast.Best.Gun, plain.Forecast.Best.Gun)
		}
	}
}

// A halt that is told is time without effort: the plan for the rest is the plan, later.
func TestHalted(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 40_000, rolling), effort.Usual(13), plan.Race{
		Share: 0.8, Step: 25, StartDelay: 3 * time.Minute,
		Stops: []plan.Stop{{Distance: 18_000, Duration: 5 * time.Minute}},
	})
	a := after(p, 20_000, 7*time.Minute)
	a.Halted = 7 * time.Minute
	s := from(t, p, a)
	close(t, "spent", s.State.Spent, s.PlannedBudget, 1e-6)
	r := rest(t, s, follow.Options{})
	if (r.Late-7*time.Minute).Abs() > 10*time.Millisecond || !r.SameGaits {
		t.Errorf("later by %v", r.Late)
	}
	// The same told by arrival and departure at the stop, and by a later line.
	arrived, left := planned(p, 18_000, false), planned(p, 18_000, true)
	left.Gun += 7 * time.Minute
	for name, passages := range map[string][]follow.Passage{
		"at the stop": {arrived, left},
		"at the line": {{Distance: 0, Gun: 10 * time.Minute}, after(p, 20_000, 7*time.Minute)},
	} {
		got := rest(t, from(t, p, passages...), follow.Options{})
		if (got.Late-7*time.Minute).Abs() > 10*time.Millisecond || math.Abs(got.Budget-p.Budget) > 1e-5 {
			t.Errorf("%s: later by %v, budget %.6f of %.6f", name, got.Late, got.Budget, p.Budget)
		}
	}
	// A runner who is at the line early, or cuts the stop short, is early by that.
	for name, passages := range map[string][]follow.Passage{
		"at the line": {{Distance: 0, Gun: time.Minute}},
		"at the stop": {arrived, {Distance: 18_000, Leaving: true, Gun: arrived.Gun + 3*time.Minute}},
	} {
		got := from(t, p, passages...)
		if got.Late != -2*time.Minute || (rest(t, got, follow.Options{Aim: follow.HoldEffort}).Late+2*time.Minute).Abs() > 10*time.Millisecond {
			t.Errorf("%s: late by %v", name, got.Late)
		}
	}
}

// A chosen effort is what the rest gives, up to a little more than planned.
func TestChosenEffort(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 40_000, rolling), effort.Usual(13), plan.Race{Share: 0.6, Step: 25})
	s := from(t, p, planned(p, 15_000, false))
	most := (1 + follow.MostMore) * p.Intensity
	for _, intensity := range []float64{0.5, 0.7, p.Intensity, 1.01 * p.Intensity, 1.2} {
		r := rest(t, s, follow.Options{Aim: follow.Choose, Intensity: intensity})
		if close(t, "intensity", r.Intensity, min(intensity, most), 0.02); r.Kept != (intensity < most) || r.Advice != follow.Hold {
			t.Errorf("%g: kept %v, %v, %.3f of the budget", intensity, r.Kept, r.Advice, r.Budget)
		}
		if intensity == p.Intensity && r.Late.Abs() > 10*time.Millisecond {
			t.Errorf("the plan's own effort is %v later", r.Late)
		}
	}
}

// Too fast a first half is told by where the budget would end, and eased.
func TestSpentBeforeTheFinish(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 40_000, rolling), effort.Usual(14), plan.Race{HoldBack: plan.Off, Step: 25})
	in, err := p.Integrator()
	if err != nil {
		t.Fatal(err)
	}
	ran := in.Traverse(effort.State{}, effort.Pace{Intensity: 1.05 * p.Intensity, Gaits: p.Traverse().Gait}).Clone()
	s := from(t, p, follow.Passage{Distance: 20_000, Gun: effort.Seconds(ran.At(20_000).Moving)})
	close(t, "spent there", ran.At(s.Forecast.SpentAt).Spent, 1, 5e-3)
	for _, aim := range []follow.Aim{follow.KeepGoal, follow.HoldEffort, follow.SpendAll} {
		r := rest(t, s, follow.Options{Aim: aim})
		if r.Advice != follow.Ease || r.Budget > 1.02 || r.Share > 1 || !strings.Contains(r.Words[0], "Ease") {
			t.Errorf("%v: %v, %.3f, %.3f, %s", aim, r.Advice, r.Budget, r.Share, r.Words[0])
		}
	}
	if s := from(t, p, planned(p, 20_000, false)); s.Forecast.SpentAt != 0 {
		t.Errorf("on plan it is spent at %g m", s.Forecast.SpentAt)
	}
}

// Whatever the passage, the default never asks for more than the planned effort, and says no
// word of more; it has the one finish of the steady forecast; who is late holds, and who is
// early by giving more is eased back to the planned effort first.
func TestNobodyIsChased(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := even(drawRace(t))
		if p.Budget > 1 {
			t.Skip("beyond the runner")
		}
		at := p.Course.Length() * rapid.Float64Range(0.05, 0.95).Draw(t, "at")
		share := rapid.Float64Range(-0.1, 0.6).Draw(t, "late")
		a := after(p, at, effort.Seconds(share*p.State(at).Moving))
		if rapid.Bool().Draw(t, "halted") && share > 0 {
			a.Halted = effort.Seconds(share * p.State(at).Moving)
		}
		s, err := follow.From(p, a)
		if errors.Is(err, follow.ErrTime) {
			t.Skip("faster than anybody")
		}
		if err != nil {
			t.Fatal(err)
		}
		r := rest(t, s, follow.Options{})
		words := strings.Join(r.Words, " ")
		if r.Share > 1 || r.Aim != follow.HoldEffort || strings.Contains(words, "more effort") && !strings.Contains(words, "You have given more effort") || strings.Contains(words, "harder") {
			t.Fatalf("%.4f of the planned effort: %s", r.Share, words)
		}
		if r.Gun != s.Forecast.Steady.Gun || r.Intensity != s.Forecast.Steady.Intensity {
			t.Fatalf("%v at %g, and steady %+v", r.Gun, r.Intensity, s.Forecast.Steady)
		}
		if share > 0.02 && (r.Advice != follow.Hold || r.Share != 1 || !r.SameGaits || !strings.HasPrefix(words, "Hold the planned effort, no more. You finish at about ")) && p.Budget < 0.98 && s.State.Spent <= s.PlannedBudget {
			t.Fatalf("late by %v: %v, %.3f: %s", s.Late, r.Advice, r.Share, words)
		}
		if share < -0.02 && s.State.Spent > 1.05*s.PlannedBudget && (r.Advice == follow.Hold || r.Share == 1 && !strings.Contains(words, "ack to the planned effort")) {
			t.Fatalf("early by %v: %v, %.3f: %s", -s.Late, r.Advice, r.Share, words)
		}
		if r.Share == 1 && share < -0.02 && r.Late > s.Late/4 {
			t.Fatalf("early by %v and at the planned effort late by %v", -s.Late, r.Late)
		}
	})
}

// Keeping the goal asks for a little more of a late runner, never for less of an early one,
// and lets go what would need more.
func TestKeepGoal(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 40_000, rolling), effort.Usual(13), plan.Race{Share: 0.6, Step: 25})
	for _, c := range []struct {
		late  time.Duration
		kept  bool
		share [2]float64
		words string
	}{
		{-6 * time.Minute, true, [2]float64{1, 1}, "You are 6 minutes ahead: too fast. Ease back to the planned effort now."},
		{0, true, [2]float64{1, 1}, "Hold the planned effort, no more."},
		{time.Minute, true, [2]float64{1.003, 1.02}, "If you feel good and ask for it: up to 1 % more effort than planned,"},
		{20 * time.Minute, false, [2]float64{1, 1}, "That would take more than 2 % above the planned effort: let it go. Hold the planned effort, no more."},
	} {
		a := after(p, 20_000, c.late)
		a.Halted = max(c.late, 0)
		r := rest(t, from(t, p, a), follow.Options{Aim: follow.KeepGoal})
		if r.Kept != c.kept || r.Share < c.share[0] || r.Share > c.share[1] || !strings.HasPrefix(r.Words[0], c.words) {
			t.Errorf("late by %v: kept %v, %.4f of the planned effort: %s", c.late, r.Kept, r.Share, r.Words[0])
		}
		if c.kept && r.Gun > p.Gun+time.Second {
			t.Errorf("late by %v: finish at %v, planned %v", c.late, r.Gun, p.Gun)
		}
	}
}
