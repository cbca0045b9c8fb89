package caution_test

import (
	"slices"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// What matters for a race is there, in order, once, and in words; what does not is not.
func TestFor(t *testing.T) {
	t.Parallel()
	day := time.Date(2026, 6, 14, 0, 0, 0, 0, time.UTC)
	weather := plan.Race{Surroundings: effort.Surroundings{Day: &effort.Day{}}}
	at := func(hour int) plan.Race { return plan.Race{Start: day.Add(time.Duration(hour) * time.Hour)} }
	always := []caution.ID{caution.First, caution.Stop, caution.Illness, caution.Doctor, caution.Drink, caution.Painkillers, caution.Chase}
	for _, tt := range []struct {
		name string
		gun  time.Duration
		race plan.Race
		more []caution.ID
	}{
		{"an hour", time.Hour, plan.Race{}, []caution.ID{caution.Weather}},
		{"an hour in known weather", time.Hour, weather, []caution.ID{caution.HeatKnown}},
		{"a day's race", 8 * time.Hour, at(7), []caution.ID{caution.Weather, caution.Carbohydrate}},
		{"a start at four", 3 * time.Hour, at(4), []caution.ID{caution.Weather, caution.Carbohydrate, caution.Night, caution.Driving}},
		{"into the night", 8 * time.Hour, at(15), []caution.ID{caution.Weather, caution.Carbohydrate, caution.Night, caution.Driving}},
		{"long, no clock", 13 * time.Hour, plan.Race{}, []caution.ID{caution.Weather, caution.Carbohydrate, caution.Night, caution.Driving}},
		{"two days", 40 * time.Hour, at(9), []caution.ID{caution.Weather, caution.Carbohydrate, caution.Night, caution.Driving, caution.Sleep}},
	} {
		p := &plan.Plan{Gun: tt.gun, Race: tt.race}
		got, want := caution.For(p), append(slices.Clone(always), tt.more...)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s:\ngot  %v\nwant %v", tt.name, got, want)
		}
		for _, text := range caution.Texts(p) {
			if len(text) < 20 {
				t.Errorf("%s: a caution says %q", tt.name, text)
			}
		}
	}
}
