package brief

import (
	"math"
	"time"

	"isoeffort.example/internal/say"
)

// place is Place, and "the start" for what rounds to none of a unit.
func (m Measure) place(metres float64) string {
	if at := m.Place(metres); at != "0 "+m.symbol() {
		return at
	}
	return "the start"
}

// name is the name of the unit of distance.
func (m Measure) name() string {
	if m.Imperial {
		return "mile"
	}
	return "kilometre"
}

// span writes a duration in words: seconds under two minutes, minutes and seconds up to
// ten, minutes up to an hour, and hours and minutes beyond.
func (m Measure) span(d time.Duration) string {
	switch s := int64(math.Round(d.Seconds())); {
	case s < 120 && s != 60:
		return count(s, "second")
	case s < 600 && s%60 != 0:
		return count(s/60, "minute") + " " + count(s%60, "second")
	}
	return m.minutes(d)
}

// about writes a duration as one that nobody keeps to the second: to ten seconds under a
// minute and a half, and to the minute beyond.
func (m Measure) about(d time.Duration) string {
	if d < 90*time.Second {
		return m.span(max(d.Round(10*time.Second), time.Second))
	}
	return "about " + m.minutes(d)
}

// minutes writes a duration to the minute, one that rounds to none to the second.
func (m Measure) minutes(d time.Duration) string {
	all := int64(math.Round(d.Minutes()))
	if all < 1 {
		return count(max(int64(math.Round(d.Seconds())), 1), "second")
	}
	if all < 60 {
		return count(all, "minute")
	}
	if all%60 == 0 {
		return count(all/60, "hour")
	}
	return count(all/60, "hour") + " " + count(all%60, "minute")
}

// around writes a duration in words to the minute, to five minutes beyond three hours and
// to a quarter beyond ten.
func (m Measure) around(d time.Duration) string {
	switch {
	case d > 10*time.Hour:
		d = d.Round(15 * time.Minute)
	case d > 3*time.Hour:
		d = d.Round(5 * time.Minute)
	}
	return m.minutes(max(d, time.Minute))
}

// count writes a number of things whose plural ends in s.
func count(n int64, one string) string {
	return say.Count(n, one, one+"s")
}
