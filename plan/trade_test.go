package plan_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// Common practice, no source: nobody runs a climb of 6 % for 2 km late in a race of eleven
// hours.
func TestLateClimbIsWalked(t *testing.T) {
	t.Parallel()
	late := func(x float64) float64 {
		switch {
		case x < 74_000:
			return rolling(x)
		case x < 76_000:
			return rolling(74_000) + 0.06*(x-74_000)
		}
		return rolling(74_000) + 120 - 0.01*(x-76_000)
	}
	c := profile(t, 85_000, late)
	p := even(t, c, effort.Usual(12), plan.Race{})
	if p.Gun < 10*time.Hour || p.Gun > 12*time.Hour+30*time.Minute {
		t.Fatalf("no race of about eleven hours: %v", p.Gun)
	}
	walked := p.Traverse().WalkingTime(74_000, 76_000)
	took := p.State(76_000).Moving - p.State(74_000).Moving
	if walked < 0.95*took {
		t.Errorf("%.0f of %.0f s are walked", walked, took)
	}
}

// Common practice, no source: where the climbing is mostly in the first half, the halves'
// level paces differ by less than 6 %, and the clock shows the first half slower. It holds
// up to some ten hours: a fade of 0.02 alone makes 8 % of eleven hours, so that hour power 12
// differs by 6.5 % and 11, who takes over twelve, by 7.8 %.
func TestClimbingFirst(t *testing.T) {
	t.Parallel()
	c := profile(t, 85_000, func(x float64) float64 {
		return rolling(x) + 700*math.Sin(math.Pi*math.Min(x/42_500, 1)/2) - 700*math.Max(0, x/42_500-1)
	})
	for _, hourPower := range []float64{13, 14, 16} {
		p := even(t, c, effort.Usual(hourPower), plan.Race{})
		halves := p.Splits(42_500)
		first, second := halves[0], halves[1]
		if first.Ascent < 1.3*second.Ascent {
			t.Fatalf("ascent %.0f and %.0f m", first.Ascent, second.Ascent)
		}
		if first.Took <= second.Took {
			t.Errorf("hour power %g: first half %v, second %v", hourPower, first.Took, second.Took)
		}
		if r := second.LevelPace.Seconds() / first.LevelPace.Seconds(); r < 0.94 || r > 1.06 {
			t.Errorf("hour power %g: level paces %v and %v", hourPower, first.LevelPace, second.LevelPace)
		}
	}
}

// Common practice, no source: a walk at least hourly, and one within the first hour.
func TestHourlyWalk(t *testing.T) {
	t.Parallel()
	c := profile(t, 60_000, flat)
	p := even(t, c, effort.Usual(16), plan.Race{Walks: plan.Walks{Every: time.Hour}})
	before := time.Duration(0)
	for _, w := range p.Walks {
		if w.Start-before > time.Hour+10*time.Second {
			t.Errorf("%v without a walk before %v", w.Start-before, w.Start)
		}
		before = w.Start + w.Took
	}
	if p.Gun-before > time.Hour+3*time.Minute {
		t.Errorf("%v without a walk at the end", p.Gun-before)
	}
}
