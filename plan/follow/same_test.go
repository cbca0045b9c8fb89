package follow_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

// planned is the passage that a plan has at a distance.
func planned(p *plan.Plan, distance float64, leaving bool) follow.Passage {
	gun := p.Race.StartDelay + time.Duration(math.Round(p.State(distance).Moving*1000))*time.Millisecond
	for _, s := range p.Stops {
		if s.Distance < distance || leaving && math.Abs(s.Distance-distance) < 25 {
			gun += s.Duration
		}
	}
	return follow.Passage{Distance: distance, Gun: gun, Leaving: leaving}
}

// A plan remade at kilometre 0 or at passages as planned is the same plan: times to a second,
// gaits the same.
func TestRemadeIsTheSamePlan(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := even(drawRace(t))
		length := p.Course.Length()
		var passages []follow.Passage
		for i := range rapid.IntRange(0, 4).Draw(t, "passages") {
			at := length * (float64(i) + rapid.Float64Range(0.01, 0.99).Draw(t, "at")) / 4
			passages = append(passages, planned(p, at, false))
		}
		s, err := follow.From(p, passages...)
		if err != nil {
			t.Fatal(err)
		}
		if s.Late.Abs() > 2*time.Millisecond || s.Today != 1 {
			t.Fatalf("late by %v, today %g", s.Late, s.Today)
		}
		want := p.State(s.Distance)
		close(t, "spent", s.State.Spent, want.Spent, 1e-4)
		close(t, "work", s.State.Work, want.Work, 1e-5*(1+want.Work))
		close(t, "intensity", s.Intensity, s.PlannedIntensity, 1e-3)
		r, err := s.Rest(follow.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if p.Budget > 1.02 {
			if r.Kept || r.Advice == follow.Hold || r.Budget > 1.02 {
				t.Fatalf("a plan on %.3f of the budget: %v, %.3f", p.Budget, r.Advice, r.Budget)
			}
			return
		}
		same(t, p, r)
	})
}

// same holds a rest against the plan.
func same(t *rapid.T, p *plan.Plan, r *follow.Rest) {
	t.Helper()
	if !r.Kept || r.Advice != follow.Hold || !r.SameGaits {
		t.Fatalf("kept %v, advice %v, gaits the plan's %v", r.Kept, r.Advice, r.SameGaits)
	}
	close(t, "effort", r.Share, 1, 1e-3)
	close(t, "budget", r.Budget, p.Budget, 1e-4)
	for _, split := range r.Splits {
		if split.Late.Abs() > time.Second {
			t.Fatalf("%s %v later", split.Name, split.Late)
		}
	}
	for _, split := range p.Splits(1000) {
		if split.Distance > r.Standing.Distance && (r.Arrival(split.Distance)-split.Elapsed).Abs() > time.Second {
			t.Fatalf("at %g m %v, planned %v", split.Distance, r.Arrival(split.Distance), split.Elapsed)
		}
	}
	if (r.Gun-p.Gun).Abs() > time.Second || r.Late != r.Gun-p.Gun {
		t.Fatalf("finish at %v, planned %v, late by %v", r.Gun, p.Gun, r.Late)
	}
	want := p.Bouts(r.Standing.Distance, p.Course.Length())
	if len(want) != len(r.Bouts) {
		t.Fatalf("%d bouts, planned %d", len(r.Bouts), len(want))
	}
	for i, b := range r.Bouts {
		if b.Gait != want[i].Gait || math.Abs(b.From-want[i].From) > 1e-6 || math.Abs(b.To-want[i].To) > 1e-6 {
			t.Fatalf("bout %d %+v, planned %+v", i, b, want[i])
		}
	}
}

func close(t rapid.TB, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Fatalf("%s %.9g, want %.9g ± %.2g", name, got, want, tolerance)
	}
}
