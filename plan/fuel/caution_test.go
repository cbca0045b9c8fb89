package fuel_test

import (
	"slices"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

// Every table has the plan's cautions about the body, its own beside them, and the notes that its race and runner call for, no others.
func TestCautionsAndNotes(t *testing.T) {
	t.Parallel()
	ids := func(of []fuel.Caution) (got []string) {
		for _, c := range of {
			got = append(got, c.ID)
		}
		return got
	}
	half := 30 * time.Minute
	mild := &fuel.Air{Temperature: 10}
	for _, c := range []struct {
		length float64
		goal   time.Duration
		o      fuel.Options
		want   []string
	}{
		{8_000, 40 * time.Minute, fuel.Options{Air: mild}, []string{"none"}},
		{12_000, time.Hour, fuel.Options{}, []string{"rinse", "air"}},
		{50_000, 5 * time.Hour, fuel.Options{Air: mild, Mass: 100, Rehearsed: 120}, []string{"mixed", "capped", "water"}}, // nobody carries five hours' drink
		{50_000, 5 * time.Hour, fuel.Options{Air: mild, Mass: 100, Rehearsed: 90, Interval: half, MaxFluid: 9e3}, []string{"mixed", "at-once"}},
		{150_000, 25 * time.Hour, fuel.Options{Air: mild, Mass: 40, MaxCarry: 20, MaxFluid: 100}, []string{"long", "slower", "carry", "water"}},
	} {
		got := table(t, planned(t, c.length, effort.Usual(16), plan.Race{Goal: c.goal}), c.o)
		if n := ids(got.Notes); !slices.Equal(n, c.want) {
			t.Errorf("%v: notes %v, want %v", c.goal, n, c.want)
		}
		want := []string{"overdrinking", "first", "stop", "illness", "doctor", "drink"}
		if c.goal > 75*time.Minute {
			want = append(want, "carbohydrate")
		}
		want = append(want, "painkillers", "weather", "medicines", "sickness", "untested")
		if n := ids(got.Cautions); !slices.Equal(n, want) {
			t.Errorf("%v: cautions %v, want %v", c.goal, n, want)
		}
	}
}
