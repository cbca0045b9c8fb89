package brief

import (
	"time"

	"isoeffort.example/plan"
)

// looks is at how many places along a course the sky is looked at.
const looks = 200

// Sleep is a matter from sleepFrom on, as in the cautions, and it is night between
// nightFrom and nightTo where the race does not say. [Our own]
const (
	sleepFrom = 24 * time.Hour
	nightFrom = 22
	nightTo   = 5
)

// day is the time since the midnight before the start, so long after the gun, as a Day
// counts it.
func (t *teller) day(elapsed time.Duration) time.Duration {
	start := t.plan.Race.Start
	if start.IsZero() {
		return t.plan.Race.Surroundings.Start - t.plan.Race.StartDelay + elapsed
	}
	h, m, s := start.Clock()
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(s)*time.Second + elapsed
}

// night reports whether it is known to be dark at a place.
func (t *teller) night(distance float64) bool {
	if t.plan.Race.Start.IsZero() {
		return false
	}
	elapsed := t.elapsed(distance)
	if day := t.plan.Race.Surroundings.Day; day != nil && day.Darkness(t.day(elapsed)) > 0.5 {
		return true
	}
	h := t.clock(elapsed).Hour()
	return h >= nightFrom || h < nightTo
}

// gatherDark tells when it gets dark and light, where the plan knows the night.
func (t *teller) gatherDark() {
	day := t.plan.Race.Surroundings.Day
	if day == nil || t.plan.Race.Start.IsZero() {
		return
	}
	dark := func(distance float64) bool { return day.Darkness(t.day(t.elapsed(distance))) > 0.5 }
	was, changes := dark(0), 0
	if was {
		t.tell(likely, Line{Kind: Dark})
	}
	for i := 1; i < looks && changes < 6; i++ {
		at := t.length * float64(i) / looks
		if is := dark(at); is != was {
			kind := Light
			if is {
				kind = Dark
			}
			t.tell(likely, Line{Kind: kind, From: at})
			was, changes = is, changes+1
		}
	}
}

// sleepless is what a race through the nights asks for.
func (t *teller) sleepless() (Line, bool) {
	l := Line{Kind: Sleepless, From: t.length}
	for _, s := range t.plan.Stops {
		if s.Kind == plan.Sleep {
			l.Count++
		}
	}
	return l, t.plan.Gun >= sleepFrom
}
