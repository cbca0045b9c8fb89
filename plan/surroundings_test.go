package plan_test

import (
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// A summer's day costs time, more the later the start; the race's own clock, delay and
// stops say when the runner is where.
func TestDay(t *testing.T) {
	t.Parallel()
	c := profile(t, 50_000, rolling)
	day, err := effort.NewDay([]effort.Hour{
		{Clock: 6 * time.Hour, Temperature: 12, Humidity: 80},
		{Clock: 14 * time.Hour, Temperature: 30, Humidity: 45},
		{Clock: 22 * time.Hour, Temperature: 18, Humidity: 70},
	}, effort.Night{})
	if err != nil {
		t.Fatal(err)
	}
	hot := effort.Surroundings{Day: day, Heat: effort.Heat{Loss: effort.HeatLoss, Growth: 1}}
	at := func(hour int, r plan.Race) time.Duration {
		r.Start = time.Date(2026, 7, 4, hour, 0, 0, 0, time.UTC)
		return even(t, c, effort.Usual(12), r).Moving
	}
	plain := at(5, plan.Race{})
	early, late := at(5, plan.Race{Surroundings: hot}), at(10, plan.Race{Surroundings: hot})
	if !(plain < early && early < late) {
		t.Errorf("without heat %v, from 5 o'clock %v, from 10 o'clock %v", plain, early, late)
	}
	delayed := at(5, plan.Race{Surroundings: hot, StartDelay: time.Hour})
	stopped := at(5, plan.Race{Surroundings: hot, Stops: []plan.Stop{{Distance: 40_000, Duration: time.Minute}, {Distance: 1, Duration: time.Hour}}})
	six := at(6, plan.Race{Surroundings: hot})
	if d := delayed - six; d != 0 {
		t.Errorf("an hour's delay is %v off an hour later", d)
	}
	if d := stopped - six; d < -5*time.Second || d > 15*time.Second {
		t.Errorf("an hour's stop at the start is %v off an hour later", d)
	}
	hot.Heat.Growth = 0
	if fast := at(10, plan.Race{Surroundings: hot}); fast >= late {
		t.Errorf("a loss that grows with the duration costs nothing: %v, %v", fast, late)
	}
}

// Walks at ease are faster for someone who walks most of the way, and change nothing for a
// runner on the flat.
func TestEase(t *testing.T) {
	t.Parallel()
	c := profile(t, 50_000, func(x float64) float64 { return 12 * rolling(x) })
	slow := effort.Usual(8)
	if even, eased := even(t, c, slow, plan.Race{}), even(t, c, slow, plan.Race{Ease: true}); eased.Moving >= even.Moving {
		t.Errorf("at ease %v, even %v", eased.Moving, even.Moving)
	}
	flat := profile(t, 20_000, func(float64) float64 { return 0 })
	fast := effort.Usual(14)
	if even, eased := even(t, flat, fast, plan.Race{}), even(t, flat, fast, plan.Race{Ease: true}); eased.Moving != even.Moving {
		t.Errorf("at ease %v, even %v", eased.Moving, even.Moving)
	}
}
