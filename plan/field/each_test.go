package field_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// stub plans nothing: its plan only carries the athlete and the race that it was asked for.
func stub(_ *course.Course, a effort.Athlete, r plan.Race) (*plan.Plan, error) {
	return &plan.Plan{Athlete: a, Race: r}, nil
}

// crowd is n runners with different hour powers, the first with that of 10 W/kg.
func crowd(n int) []field.Runner {
	runners := make([]field.Runner, n)
	for i := range runners {
		runners[i] = field.Runner{Name: fmt.Sprintf("Runner %d", i+1), Athlete: effort.Usual(10 + float64(i)/float64(n))}
	}
	return runners
}

func TestEachKeepsOrder(t *testing.T) {
	t.Parallel()
	c, runners := level(t, 5000), crowd(500)
	slow := func(c *course.Course, a effort.Athlete, r plan.Race) (*plan.Plan, error) {
		for range rand.IntN(200) {
			runtime.Gosched()
		}
		return stub(c, a, r)
	}
	for _, workers := range []int{1, 2, 7, 600} {
		next, done := 0, 0
		progress := func(d, total int) {
			if d != done+1 || total != len(runners) {
				t.Fatalf("%d workers: progress %d of %d after %d", workers, d, total, done)
			}
			done = d
		}
		for out, err := range field.Each(t.Context(), c, plan.Race{}, field.Entries(runners...), field.Options{Workers: workers, Plan: slow, Progress: progress}) {
			if err != nil || out.Err != nil || out.Index != next || out.Plan.Athlete != runners[next].Athlete || out.Runner.Name != runners[next].Name {
				t.Fatalf("%d workers, outcome %d: %+v, %v", workers, next, out, err)
			}
			next++
		}
		if next != len(runners) || done != next {
			t.Errorf("%d workers: %d outcomes, progress up to %d", workers, next, done)
		}
	}
}

// Each does nothing else to a plan than package plan does.
func TestEachPlansLikeEven(t *testing.T) {
	t.Parallel()
	c := rolling(t, 12_000)
	race := plan.Race{StartDelay: time.Minute, Stations: plan.Stations{Each: 30 * time.Second}}
	for out, err := range field.Each(t.Context(), c, race, field.Entries(crowd(9)...), field.Options{Workers: 3}) {
		want, wantErr := plan.Even(c, out.Runner.Athlete, race)
		if err != nil || out.Err != nil || wantErr != nil {
			t.Fatal(err, out.Err, wantErr)
		}
		if out.Plan.Gun != want.Gun || out.Plan.Budget != want.Budget || out.Plan.GaitChanges != want.GaitChanges {
			t.Errorf("runner %d: %v on %g, want %v on %g", out.Index, out.Plan.Gun, out.Plan.Budget, want.Gun, want.Budget)
		}
	}
}

func TestEachErrorsHaveTheirRow(t *testing.T) {
	t.Parallel()
	runners := crowd(8)
	runners[1].Athlete.HourPower = 0
	runners[2].Goal = time.Minute // less than the delay
	runners[4].Name = " runner  1"
	runners[5].Name = "Boom"
	entries := field.Entries(runners...)
	entries[6].Err = errors.New("r.csv:9: refused while reading")
	for i := range entries {
		entries[i].Line = i + 3
	}
	entries[5].Line = 0
	boom := func(c *course.Course, a effort.Athlete, r plan.Race) (*plan.Plan, error) {
		if a == runners[5].Athlete {
			var none []int
			return nil, fmt.Errorf("never: %d", none[len(none)])
		}
		return plan.Even(c, a, r)
	}
	want := map[int]struct {
		cause error
		text  string
	}{
		1: {effort.ErrAthlete, `r.csv:4: "Runner 2": effort: athlete out of range: hour power 0 `},
		2: {plan.ErrGoal, `r.csv:5: "Runner 3": plan: goal out of range: 1m0s leaves no time`},
		4: {field.ErrDuplicate, `r.csv:7: " runner  1": name stands twice: it is that of line 3`},
		5: {field.ErrPanic, `r.csv: runner 6, "Boom": planning panicked: runtime error: index out of range`},
		6: {entries[6].Err, `r.csv:9: refused while reading`},
	}
	n := 0
	for out, err := range field.Each(t.Context(), level(t, 5000), plan.Race{StartDelay: 2 * time.Minute}, entries, field.Options{File: "r.csv", Plan: boom}) {
		w, bad := want[out.Index]
		switch {
		case err != nil:
			t.Fatal(err)
		case !bad && (out.Err != nil || out.Plan == nil):
			t.Errorf("entry %d: %v", out.Index, out.Err)
		case bad && (out.Plan != nil || !errors.Is(out.Err, w.cause) || !strings.HasPrefix(out.Err.Error(), w.text)):
			t.Errorf("entry %d: %v, want %q", out.Index, out.Err, w.text)
		}
		var p *field.Panic
		if errors.As(out.Err, &p) && !strings.Contains(string(p.Stack), "each_test.go") {
			t.Errorf("the stack does not lead here: %s", p.Stack)
		}
		n++
	}
	if n != len(entries) {
		t.Errorf("%d outcomes", n)
	}
}

// In a bubble of package synctest time only passes when everybody waits, and a goroutine
// left behind fails the test.
func TestEachIsCancelled(t *testing.T) {
	t.Parallel()
	synctest.Test(t, func(t *testing.T) {
		reason := errors.New("the office closes")
		ctx, cancel := context.WithCancelCause(t.Context())
		var begun atomic.Int64
		second := func(c *course.Course, a effort.Athlete, r plan.Race) (*plan.Plan, error) {
			begun.Add(1)
			time.Sleep(time.Second)
			return stub(c, a, r)
		}
		time.AfterFunc(10*time.Second+time.Second/2, func() { cancel(reason) })
		start, n, last := time.Now(), 0, error(nil)
		for out, err := range field.Each(ctx, nil, plan.Race{}, field.Entries(crowd(1000)...), field.Options{Workers: 4, Plan: second}) {
			if last = err; err == nil {
				if out.Index != n || out.Err != nil {
					t.Fatalf("outcome %d: %+v", n, out)
				}
				n++
			}
		}
		if took := time.Since(start); took != 11*time.Second {
			t.Errorf("it ended after %v: not with the plans at hand", took)
		}
		if n != 44 || begun.Load() != 44 { // four at a time, eleven times
			t.Errorf("%d begun, %d yielded", begun.Load(), n)
		}
		if !errors.Is(last, reason) || last.Error() != "field: stopped after 44 of 1000 runners: the office closes" {
			t.Errorf("error %v", last)
		}
	})
}

func TestEachIsLeft(t *testing.T) {
	t.Parallel()
	synctest.Test(t, func(t *testing.T) {
		for range field.Each(t.Context(), nil, plan.Race{}, field.Entries(crowd(100)...), field.Options{Workers: 3, Plan: stub}) {
			break
		}
		func() {
			defer func() { _ = recover() }()
			for range field.Each(t.Context(), nil, plan.Race{}, field.Entries(crowd(100)...), field.Options{Workers: 3, Plan: stub}) {
				panic("the caller's own")
			}
		}()
		ctx, cancel := context.WithCancel(t.Context())
		cancel()
		for out, err := range field.Each(ctx, nil, plan.Race{}, field.Entries(crowd(100)...), field.Options{Workers: 3, Plan: stub}) {
			if !errors.Is(err, context.Canceled) || out.Plan != nil {
				t.Errorf("cancelled before: %+v, %v", out, err)
			}
		}
	})
}

// However slow the caller is, few plans wait.
func TestEachHoldsFewPlans(t *testing.T) {
	t.Parallel()
	synctest.Test(t, func(t *testing.T) {
		const workers = 3
		var made, taken atomic.Int64
		count := func(c *course.Course, a effort.Athlete, r plan.Race) (*plan.Plan, error) {
			made.Add(1)
			return stub(c, a, r)
		}
		for range field.Each(t.Context(), nil, plan.Race{}, field.Entries(crowd(100)...), field.Options{Workers: workers, Plan: count}) {
			synctest.Wait()
			if held := made.Load() - taken.Load(); held > 2*workers+2 {
				t.Fatalf("%d plans are held", held)
			}
			taken.Add(1)
		}
	})
}

func TestEachOptions(t *testing.T) {
	t.Parallel()
	for _, err := range field.Each(t.Context(), nil, plan.Race{}, nil, field.Options{Workers: -1}) {
		if !errors.Is(err, field.ErrOption) {
			t.Errorf("%v", err)
		}
	}
	for range field.Each(t.Context(), nil, plan.Race{}, nil, field.Options{}) {
		t.Error("nobody runs, and somebody was planned")
	}
	for given, want := range map[float64]float64{0: field.QuickStep, 10: field.QuickStep, 250: 250} {
		for out := range field.Each(t.Context(), nil, plan.Race{Step: given}, field.Entries(crowd(1)...), field.Options{Quick: true, Plan: stub}) {
			if out.Plan.Race.Step != want {
				t.Errorf("step %g became %g", given, out.Plan.Race.Step)
			}
		}
	}
}

// The runner's own aim and start go before the race's.
func TestRaceOf(t *testing.T) {
	t.Parallel()
	race := plan.Race{Share: 0.5, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}
	for name, v := range map[string]struct {
		runner field.Runner
		want   plan.Race
	}{
		"as the race":   {field.Runner{}, race},
		"goal":          {field.Runner{Goal: time.Hour}, plan.Race{Goal: time.Hour, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
		"net":           {field.Runner{Goal: time.Hour, Net: true}, plan.Race{Goal: time.Hour, Net: true, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
		"fastest":       {field.Runner{Goal: plan.Off}, plan.Race{StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
		"share":         {field.Runner{Share: 0.9}, plan.Race{Share: 0.9, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
		"impossible":    {field.Runner{Goal: -time.Hour}, plan.Race{Goal: -time.Hour, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
		"no delay":      {field.Runner{StartDelay: plan.Off, Wave: plan.Off}, plan.Race{Share: 0.5, HoldBack: 0.03}},
		"other wave":    {field.Runner{Wave: 2 * time.Hour}, plan.Race{Share: 0.5, StartDelay: time.Minute, Wave: 2 * time.Hour, HoldBack: 0.03}},
		"race of own":   {field.Runner{Race: &plan.Race{HoldBack: 0.1}, StartDelay: time.Second}, plan.Race{HoldBack: 0.1, StartDelay: time.Second}},
		"basis of own":  {field.Runner{Basis: effort.Basis{Results: 3}}, plan.Race{Share: 0.5, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03, Basis: effort.Basis{Results: 3}}},
		"two of an aim": {field.Runner{Goal: time.Hour, Share: 0.5}, plan.Race{Goal: time.Hour, Share: 0.5, StartDelay: time.Minute, Wave: time.Hour, HoldBack: 0.03}},
	} {
		if d := diff(v.want, v.runner.RaceOf(race)); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

// Quick plans are as near as its comment says.
func TestQuickIsNear(t *testing.T) {
	t.Parallel()
	c := demoCourse()
	var runners []field.Runner
	for _, power := range []float64{8, 10, 12, 14} {
		runners = append(runners, field.Runner{Athlete: effort.Usual(power)})
	}
	for out, err := range field.Each(t.Context(), c, plan.Race{}, field.Entries(runners...), field.Options{Quick: true}) {
		if err != nil || out.Err != nil {
			t.Fatal(err, out.Err)
		}
		full, err := plan.Even(c, out.Runner.Athlete, plan.Race{})
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range full.Splits(plan.AtLandmarks) {
			if off := (out.Plan.Splits(plan.AtLandmarks)[i].Moving - want.Moving).Abs(); off > full.Moving/400 {
				t.Errorf("%g W/kg at %.1f km: off by %v of %v", out.Runner.Athlete.HourPower, want.Distance/1000, off, full.Moving)
			}
		}
	}
}

func BenchmarkEach(b *testing.B) {
	c, entries := demoCourse(), field.Entries(crowd(8)...)
	for name, quick := range map[string]bool{"full": false, "quick": true} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				for _, err := range field.Each(b.Context(), c, plan.Race{}, entries, field.Options{Quick: quick}) {
					if err != nil {
						b.Fatal(err)
					}
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*len(entries))/1000, "ms/runner")
		})
	}
}
