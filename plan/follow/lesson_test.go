package follow_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/follow"
)

func review(t *testing.T, p *plan.Plan, a follow.Actual) (d *follow.Debrief, notes string) {
	t.Helper()
	d, err := follow.Review(p, a, follow.DebriefOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return d, strings.Join(d.Warnings, " ")
}

// More than the budget is the numbers' fault only after an even race on time; after a fast
// start and a slow end it is that of the start. Nothing quicker than the plan's best is held
// out as what even effort would have given.
func TestLessonOfOverspending(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 48_000, rolling), effort.Usual(12), plan.Race{Step: 100})
	d, notes := review(t, p, paced(t, p, func(s float64) float64 { return 1.15 - 0.30*s }, 0))
	if d.Budget <= 1.02 || d.Late <= 0 || d.Pacing.Verdict != follow.OpenedTooFast && d.Pacing.Verdict != follow.OpenedAndFaded {
		t.Fatalf("no such race: %.2f spent, late by %v, %v", d.Budget, d.Late, d.Pacing.Verdict)
	}
	if !strings.Contains(notes, "You spent more than you had in the first half, and paid for it in the second.") || strings.Contains(notes, "underrate") {
		t.Errorf("after a fast start: %s", notes)
	}
	if d.EvenMoving < p.Best.Moving || d.Uneven != d.Moving-d.EvenMoving {
		t.Errorf("evenly %v, the best is %v", d.EvenMoving, p.Best.Moving)
	}
	d, notes = review(t, p, paced(t, p, func(float64) float64 { return 1.04 }, 0))
	if d.Budget <= 1.02 || !strings.Contains(notes, "More likely they underrate you") || d.EvenMoving != 0 || d.Uneven != 0 {
		t.Errorf("even and early: %.2f spent, evenly %v, %s", d.Budget, d.EvenMoving, notes)
	}
}

// In a race too short for effort to be told apart within it nothing is said about even effort.
func TestShortRaceSaysNothingOfEvenness(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 10_000, flat), effort.Usual(16), plan.Race{Step: 25})
	d, _ := review(t, p, paced(t, p, func(s float64) float64 { return 1.08 - 0.2*s }, 0))
	var text bytes.Buffer
	if err := d.Text(&text); err != nil {
		t.Fatal(err)
	}
	if d.EvenMoving != 0 || strings.Contains(text.String(), "uneven") || strings.Contains(text.String(), "Halts") {
		t.Errorf("evenly %v\n%s", d.EvenMoving, text.String())
	}
}

// A section that is walked has no level pace, and a stop without a landmark is named for what
// it is.
func TestWalkedSectionsAndDropBags(t *testing.T) {
	t.Parallel()
	p := even(t, profile(t, 24_000, steep), effort.Usual(9), plan.Race{
		Step: 25, Stops: []plan.Stop{{Distance: 11_000, Duration: 5 * time.Minute, Kind: plan.DropBag}},
	})
	d, err := follow.Review(p, recorded(p, p.Traverse(), asPlanned), follow.DebriefOptions{Every: 1000})
	if err != nil {
		t.Fatal(err)
	}
	walked, run := 0, 0
	for _, s := range d.Sections {
		bouts := p.Bouts(s.From, s.To)
		if (s.LevelPace == 0) != (s.PlannedLevelPace == 0) {
			t.Errorf("%+v", s)
		}
		if len(bouts) > 1 {
			continue
		}
		if s.LevelPace == 0 {
			walked++
		} else {
			run++
		}
		if want := bouts[0].Gait == plan.Walk; (s.LevelPace == 0) != want {
			t.Errorf("to %g m walked %v, level pace %v", s.To, want, s.LevelPace)
		}
	}
	if walked < 3 || run < 3 {
		t.Errorf("%d walked, %d run", walked, run)
	}
	if len(d.Halts) != 1 || d.Halts[0].Place != "Drop bag" {
		t.Errorf("%+v", d.Halts)
	}
}
