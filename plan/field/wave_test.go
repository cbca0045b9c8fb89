package field_test

import (
	"testing"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// A runner of a later wave starts later by the clock, and meets the same cutoffs by it.
func TestWaveByTheClock(t *testing.T) {
	t.Parallel()
	gun := time.Date(2026, 6, 14, 8, 0, 0, 0, time.UTC)
	race := plan.Race{Start: gun}
	for wave, want := range map[time.Duration]time.Time{0: gun, 30 * time.Minute: gun.Add(30 * time.Minute), plan.Off: gun} {
		if got := (field.Runner{Wave: wave}).RaceOf(race); !got.Start.Equal(want) {
			t.Errorf("wave %v: gun at %v", wave, got.Start)
		}
	}
	later := plan.Race{Start: gun.Add(20 * time.Minute), Wave: 20 * time.Minute}
	if got := (field.Runner{Wave: plan.Off}).RaceOf(later); !got.Start.Equal(gun) || got.Wave != 0 {
		t.Errorf("the first wave of a race given by its second: %v, %v", got.Start, got.Wave)
	}
	if got := (field.Runner{Wave: time.Minute}).RaceOf(plan.Race{}); !got.Start.IsZero() {
		t.Errorf("no clock: %v", got.Start)
	}
}
