package field_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
	"pgregory.net/rapid"
)

// drawField draws some runners who differ in everything that a plan looks at.
func drawField(t *rapid.T) []field.Runner {
	runners := make([]field.Runner, rapid.IntRange(1, 8).Draw(t, "runners"))
	for i := range runners {
		a := effort.Usual(rapid.Float64Range(7, 18).Draw(t, "hour power"))
		a.Endurance = rapid.Float64Range(0.06, 0.14).Draw(t, "endurance")
		a.Fade = rapid.Float64Range(0, 0.05).Draw(t, "fade")
		a.Braking = rapid.Float64Range(0.5, 3).Draw(t, "braking")
		runners[i] = field.Runner{Name: fmt.Sprint("Runner ", i), Athlete: a}
	}
	return runners
}

// Every runner is in one group at most, and it is the fastest whose target they can hold
// and whose schedule asks no more than the stated budget of them.
func TestGroupsLaws(t *testing.T) {
	t.Parallel()
	c := rolling(t, 9000)
	rapid.Check(t, func(t *rapid.T) {
		runners := drawField(t)
		o := field.GroupOptions{
			Targets: rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) time.Duration {
				return time.Duration(rapid.IntRange(35, 95).Draw(t, "minutes")) * time.Minute
			}), 1, 4, rapid.ID).Draw(t, "targets"),
			Within: rapid.SampledFrom([]float64{0, 0.5, 0.8}).Draw(t, "within"),
		}
		within := o.Within
		if within == 0 {
			within = 1
		}
		g, err := field.Groups(context.Background(), c, plan.Race{}, field.Entries(runners...), o)
		if err != nil {
			t.Fatal(err)
		}
		in := map[int]int{}
		for j, group := range g.Groups {
			if j > 0 && group.Target <= g.Groups[j-1].Target {
				t.Fatalf("groups out of order: %v", g.Groups)
			}
			for _, m := range group.Members {
				if _, twice := in[m.Index]; twice {
					t.Fatalf("runner %d is in two groups", m.Index)
				}
				in[m.Index] = j
				if m.Budget > within {
					t.Fatalf("runner %d needs %g", m.Index, m.Budget)
				}
			}
		}
		if len(in)+len(g.Others) != len(runners) {
			t.Fatalf("%d runners, %d in groups, %d in none", len(runners), len(in), len(g.Others))
		}
		for i, r := range runners {
			checkFastest(t, g, r, i, in, within)
		}
	})
}

// checkFastest looks whether a group before the runner's would have done.
func checkFastest(t *rapid.T, g *field.Grouping, r field.Runner, i int, in map[int]int, within float64) {
	mine, placed := in[i]
	for j, group := range g.Groups {
		if group.Plan == nil || placed && j >= mine {
			continue
		}
		f, err := field.Follow(group.Plan, r.Athlete, plan.AtLandmarks)
		if err != nil {
			t.Fatal(err)
		}
		own, err := plan.Even(group.Plan.Course, r.Athlete, plan.Race{Step: field.QuickStep, Share: within})
		if err != nil {
			t.Fatal(err)
		}
		if f.Budget <= within && own.Gun <= group.Target {
			t.Fatalf("runner %d could be in group %d (%v) with %g of %g, and is in %d (%v)", i, j, group.Target, f.Budget, within, mine, placed)
		}
	}
}

func TestGroups(t *testing.T) {
	t.Parallel()
	runners := crowd(30)
	runners[3].Athlete.HourPower = 0
	entries := field.Entries(runners...)
	entries[5].Err = errors.New("refused")
	var progress []int
	g, err := field.Groups(t.Context(), rolling(t, 15_000), plan.Race{Walks: plan.Walks{Every: 20 * time.Minute, Fixed: true}, Share: 0.3}, entries,
		field.GroupOptions{Count: 3, Round: time.Minute, Options: field.Options{Progress: func(done, _ int) { progress = append(progress, done) }}})
	if err != nil {
		t.Fatal(err)
	}
	if len(g.Groups) != 3 || len(g.Others) != 2 || g.Others[0].Index != 3 || !errors.Is(g.Others[0].Err, effort.ErrAthlete) || g.Others[1].Err != entries[5].Err {
		t.Fatalf("%+v", g)
	}
	if len(progress) != 30 || !slices.IsSorted(progress) || progress[29] != 30 {
		t.Errorf("progress %v", progress)
	}
	for _, group := range g.Groups {
		if len(group.Members) < 6 || group.Target%time.Minute != 0 || group.Plan.Gun != group.Target {
			t.Errorf("%v: %d members, %v", group.Target, len(group.Members), group.Plan.Gun)
		}
		if len(group.Plan.Walks) < 3 {
			t.Errorf("%v: %d walks by the watch", group.Target, len(group.Plan.Walks))
		}
		if !slices.ContainsFunc(group.Members, func(m field.Member) bool { return m.Index == group.MadeFor }) {
			t.Errorf("%v: the runner that it is made for is not in it", group.Target)
		}
	}
}

// A margin, of budget or for what results tell, makes groups slower and never faster.
func TestGroupsMargins(t *testing.T) {
	t.Parallel()
	c, runners := rolling(t, 15_000), crowd(12)
	for i := range runners {
		runners[i].Basis = effort.Basis{Results: 4, Noise: 0.03, Longest: 2 * time.Hour}
	}
	group := func(o field.GroupOptions) map[int]int {
		for m := 100; m <= 160; m += 4 {
			o.Targets = append(o.Targets, time.Duration(m)*time.Minute)
		}
		g, err := field.Groups(t.Context(), c, plan.Race{}, field.Entries(runners...), o)
		if err != nil {
			t.Fatal(err)
		}
		in := map[int]int{}
		for j, group := range g.Groups {
			for _, m := range group.Members {
				in[m.Index] = j
			}
		}
		return in
	}
	full := group(field.GroupOptions{})
	for name, o := range map[string]field.GroupOptions{"within": {Within: 0.5}, "safe": {Safe: true}} {
		slower, careful := 0, group(o)
		for i, j := range full {
			later, ok := careful[i]
			if ok && later < j {
				t.Errorf("%s: runner %d goes with a faster group", name, i)
			}
			if !ok || later > j {
				slower++
			}
		}
		if slower < 6 {
			t.Errorf("%s: only %d of %d runners go slower", name, slower, len(full))
		}
	}
}

func TestGroupsErrors(t *testing.T) {
	t.Parallel()
	c, entries := rolling(t, 6000), field.Entries(crowd(3)...)
	hour := []time.Duration{time.Hour}
	for name, v := range map[string]struct {
		o     field.GroupOptions
		cause error
	}{
		"neither":      {field.GroupOptions{}, field.ErrTarget},
		"both":         {field.GroupOptions{Targets: hour, Count: 1}, field.ErrTarget},
		"twice":        {field.GroupOptions{Targets: []time.Duration{time.Hour, time.Hour}}, field.ErrTarget},
		"backwards":    {field.GroupOptions{Targets: []time.Duration{-time.Hour}}, field.ErrTarget},
		"count":        {field.GroupOptions{Count: -1}, field.ErrTarget},
		"within":       {field.GroupOptions{Targets: hour, Within: 1.5}, field.ErrOption},
		"round":        {field.GroupOptions{Count: 1, Round: -time.Hour}, field.ErrOption},
		"every":        {field.GroupOptions{Targets: hour, Every: -1}, field.ErrOption},
		"many workers": {field.GroupOptions{Targets: hour, Options: field.Options{Workers: 1 << 20}}, field.ErrOption},
	} {
		if _, err := field.Groups(t.Context(), c, plan.Race{}, entries, v.o); !errors.Is(err, v.cause) {
			t.Errorf("%s: %v", name, err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := field.Groups(ctx, c, plan.Race{}, entries, field.GroupOptions{Targets: hour}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	g, err := field.Groups(t.Context(), c, plan.Race{}, entries, field.GroupOptions{Targets: []time.Duration{time.Minute}})
	if err != nil || len(g.Others) != 3 || g.Groups[0].Plan != nil || g.Groups[0].MadeFor != -1 {
		t.Errorf("a target that nobody holds: %+v, %v", g, err)
	}
}

// Best counts from each one's own start, as their plan does, in a group and outside of any.
func TestGroupsBestIsTheirOwn(t *testing.T) {
	t.Parallel()
	c := rolling(t, 12_000)
	race := plan.Race{Step: 50, StartDelay: time.Minute}
	entries := field.Entries(
		field.Runner{Name: "Ilva", Athlete: effort.Usual(13), StartDelay: 4 * time.Minute},
		field.Runner{Name: "Oddo", Athlete: effort.Usual(12), StartDelay: plan.Off},
		field.Runner{Name: "Fenna", Athlete: effort.Usual(12.5)},
		field.Runner{Name: "Hob", Athlete: effort.Usual(6), StartDelay: 3 * time.Minute})
	own := map[int]plan.Best{}
	for out, err := range field.Each(t.Context(), c, race, entries, field.Options{}) {
		if err != nil || out.Err != nil {
			t.Fatal(err, out.Err)
		}
		own[out.Index] = out.Plan.Best
	}
	g, err := field.Groups(t.Context(), c, race, entries, field.GroupOptions{Targets: []time.Duration{90 * time.Minute}})
	if err != nil || len(g.Groups[0].Members) != 3 || len(g.Others) != 1 {
		t.Fatalf("%+v, %v", g, err)
	}
	got := map[int]plan.Best{g.Others[0].Index: g.Others[0].Best}
	for _, m := range g.Groups[0].Members {
		got[m.Index] = m.Best
	}
	for i, want := range own {
		if got[i] != want {
			t.Errorf("%s: %+v, planned %+v", entries[i].Runner.Name, got[i], want)
		}
	}
}
