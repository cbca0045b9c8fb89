package field_test

import (
	"context"
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
	"pgregory.net/rapid"
)

// On level ground, all run and without fade, even effort is even speed: the latest passage
// is the cutoff's time in proportion, whoever runs.
func TestLatestPassagesOnLevelGround(t *testing.T) {
	t.Parallel()
	c := level(t, 20_000, course.Landmark{Name: "Weir", Distance: 5000}, course.Landmark{Name: "Mill", Distance: 12_000}, course.Landmark{Name: "Lamp", Distance: 15_000})
	a := effort.Usual(12)
	a.Fade = 0
	race := plan.Race{HoldBack: plan.Off, StartDelay: 4 * time.Minute, Cutoffs: []plan.Cutoff{
		{Name: "finish", Distance: 20_000, Time: 124 * time.Minute}, // 6 min/km after the delay
		{Name: "Mill", Distance: 12_000, Time: 64 * time.Minute},    // 5 min/km after the delay
	}}
	passages, err := field.LatestPassages(t.Context(), c, race, []effort.Athlete{a}, field.PassageOptions{})
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		name          string
		latest, limit time.Duration
	}{
		{"Weir", 29 * time.Minute, 0}, // the mill's decides
		{"Mill", 64 * time.Minute, 64 * time.Minute},
		{"Lamp", 94 * time.Minute, 0}, // only the finish is left
		{"Finish", 124 * time.Minute, 124 * time.Minute},
	}
	if len(passages) != len(want) {
		t.Fatalf("%+v", passages)
	}
	for i, w := range want {
		p := passages[i]
		if p.Name != w.name || p.Limit != w.limit || (p.Latest-w.latest).Abs() > 2*time.Second || p.Latest > w.latest+time.Millisecond {
			t.Errorf("%+v, want %+v", p, w)
		}
	}
}

// Passages ascend, keep every cutoff with the time in hand, and are no later for several
// runners than for one of them.
func TestLatestPassagesLaws(t *testing.T) {
	t.Parallel()
	c := rolling(t, 7000)
	rapid.Check(t, func(t *rapid.T) {
		race, inHand := drawCutoffs(t)
		athletes := make([]effort.Athlete, rapid.IntRange(1, 2).Draw(t, "athletes"))
		for i, r := range drawField(t) {
			if i < len(athletes) {
				athletes[i] = r.Athlete
			}
		}
		for i := range athletes {
			if athletes[i].HourPower == 0 {
				athletes[i] = effort.Usual(10)
			}
		}
		o := field.PassageOptions{InHand: inHand}
		passages, err := field.LatestPassages(context.Background(), c, race, athletes, o)
		if err != nil {
			t.Fatal(err)
		}
		one, err := field.LatestPassages(context.Background(), c, race, athletes[:1], o)
		if err != nil || len(one) != len(passages) {
			t.Fatal(err, one)
		}
		for i, p := range passages {
			if i > 0 && (p.Distance <= passages[i-1].Distance || p.Latest < passages[i-1].Latest) {
				t.Fatalf("%+v after %+v", p, passages[i-1])
			}
			if p.Latest > one[i].Latest || p.Latest <= race.StartDelay {
				t.Fatalf("%+v, for one alone %+v", p, one[i])
			}
			for _, k := range race.Cutoffs {
				if limit := k.Time - race.Wave; k.Distance >= p.Distance && p.Latest > limit-inHand {
					t.Fatalf("%+v is too late for %v", p, k)
				}
			}
		}
	})
}

// drawCutoffs draws a race with cutoffs that somebody can make.
func drawCutoffs(t *rapid.T) (plan.Race, time.Duration) {
	race := plan.Race{Wave: 5 * time.Minute, StartDelay: 2 * time.Minute, Stations: plan.Stations{Each: 30 * time.Second}, Share: 0.4}
	at, by := 0.0, 15*time.Minute
	for range rapid.IntRange(1, 3).Draw(t, "cutoffs") {
		at += rapid.Float64Range(1000, 2300).Draw(t, "further")
		by += time.Duration(rapid.IntRange(12, 35).Draw(t, "minutes more")) * time.Minute
		race.Cutoffs = append(race.Cutoffs, plan.Cutoff{Name: "gate", Distance: math.Round(at), Time: by, Departure: rapid.Bool().Draw(t, "departure")})
	}
	return race, time.Duration(rapid.IntRange(0, 8).Draw(t, "in hand")) * time.Minute
}

// Whoever runs on the latest passages makes the cutoffs on the whole budget, and with a
// little less hour power does not.
func TestLatestPassagesAreTheLatest(t *testing.T) {
	t.Parallel()
	c := rolling(t, 18_000)
	race := plan.Race{Start: time.Date(2026, 6, 14, 5, 30, 0, 0, time.UTC), Step: field.QuickStep, Cutoffs: []plan.Cutoff{{Distance: 9000, Time: 80 * time.Minute}, {Distance: 18_000, Time: 3 * time.Hour}}}
	passages, err := field.LatestPassages(t.Context(), c, race, nil, field.PassageOptions{})
	if err != nil {
		t.Fatal(err)
	}
	first := passages[0]
	if !first.Clock.Equal(race.Start.Add(first.Latest)) {
		t.Errorf("clock %v of %v", first.Clock, first.Latest)
	}
	for factor, makes := range map[float64]bool{1: true, 1.01: true, 0.999: false, 0.99: false} {
		p, err := plan.Even(c, effort.Usual(first.HourPower*factor), race)
		if err != nil {
			t.Fatal(err)
		}
		made := p.Cutoffs[0].InHand >= 0 && p.Cutoffs[1].InHand >= 0
		if made != makes {
			t.Errorf("%g times the hour power: makes the cutoffs %v, in hand %v and %v", factor, made, p.Cutoffs[0].InHand, p.Cutoffs[1].InHand)
		}
	}
}

func TestLatestPassagesErrors(t *testing.T) {
	t.Parallel()
	c := rolling(t, 6000)
	cut := func(d float64, by time.Duration) plan.Race {
		return plan.Race{Cutoffs: []plan.Cutoff{{Name: "gate", Distance: d, Time: by}}}
	}
	for name, v := range map[string]struct {
		race   plan.Race
		a      []effort.Athlete
		inHand time.Duration
		cause  error
	}{
		"no cutoffs":     {plan.Race{}, nil, 0, field.ErrOption},
		"in hand":        {cut(3000, time.Hour), nil, -1, field.ErrOption},
		"nobody can":     {cut(6000, 3*time.Minute), nil, 0, field.ErrPassage},
		"all in hand":    {cut(6000, time.Hour), nil, time.Hour, field.ErrPassage},
		"off the course": {cut(7000, time.Hour), nil, 0, plan.ErrCutoff},
		"no athlete":     {cut(3000, time.Hour), []effort.Athlete{{Endurance: 9}}, 0, effort.ErrAthlete},
	} {
		if got, err := field.LatestPassages(t.Context(), c, v.race, v.a, field.PassageOptions{InHand: v.inHand}); !errors.Is(err, v.cause) || got != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := field.LatestPassages(ctx, c, cut(3000, time.Hour), nil, field.PassageOptions{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
}
