package fuel

import (
	"testing"
	"time"
)

// Above 60 g/h bites are 15 to 20 minutes apart, and never of more than 30 g: common practice.
// The rates are by hand: a portion times the portions in an hour.
func TestBites(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		rate    float64
		o       Options
		minutes int
		portion float64
	}{
		{0, Options{}, 60, 20},
		{15, Options{}, 60, 20},
		{30, Options{}, 40, 20},                   // 30 g/h
		{40, Options{}, 30, 20},                   // 40 g/h
		{45, Options{}, 30, 20},                   // 40 g/h; at 25 minutes it would be 48
		{60, Options{}, 20, 20},                   // 60 g/h
		{70, Options{}, 20, 20},                   // 60 g/h; 25 g would be 75
		{75, Options{}, 20, 25},                   // 75 g/h
		{90, Options{}, 20, 30},                   // 90 g/h
		{90, Options{Portion: 20}, 15, 20},        // 80 g/h
		{90, Options{Portion: 30}, 20, 30},        // 90 g/h
		{45, Options{Portion: 30}, 40, 30},        // 45 g/h
		{10, Options{Portion: 5}, 30, 5},          // 10 g/h
		{60, Options{Interval: half}, 30, 30},     // 60 g/h
		{90, Options{Interval: half}, 30, 30},     // no more at one time
		{45, Options{Interval: half}, 30, 20},     // 45 g/h is 22.5 g each time
		{90, Options{Interval: half / 2}, 15, 20}, // 22.5 g
	} {
		interval, portion := bites(c.rate, c.o)
		if interval != time.Duration(c.minutes)*time.Minute || portion != c.portion {
			t.Errorf("%g g/h, %+v: %g g every %v, want %g g every %d min", c.rate, c.o, portion, interval, c.portion, c.minutes)
		}
	}
}

const half = 30 * time.Minute

// 22:20 and 7:10 later is 5:30 of the next day; half a minute rounds up, into the next day too.
func TestClock(t *testing.T) {
	t.Parallel()
	table := &Table{Start: time.Date(2026, 7, 4, 22, 20, 0, 0, time.UTC)} // a Saturday
	for _, c := range []struct {
		gun         time.Duration
		cell, words string
	}{
		{0, "22:20", "22:20"},
		{99*time.Minute + 29*time.Second, "23:59", "23:59"},
		{99*time.Minute + 30*time.Second, "00:00 +1", "Sunday 00:00"},
		{7*time.Hour + 10*time.Minute, "05:30 +1", "Sunday 05:30"},
		{31 * time.Hour, "05:20 +2", "Monday 05:20"},
	} {
		if cell, words := table.clock(c.gun), table.clockWords(c.gun); cell != c.cell || words != c.words {
			t.Errorf("%v: %q, %q; want %q, %q", c.gun, cell, words, c.cell, c.words)
		}
	}
	if got := (&Table{}).clock(time.Hour); got != "" {
		t.Errorf("no start: %q", got)
	}
}
