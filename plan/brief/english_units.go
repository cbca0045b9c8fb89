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

// exactPlace is a distance from the start to the tenth of a unit, never beyond the finish.
func (m Measure) exactPlace(metres float64) string {
	return trimmed(math.Min(math.Round(10*metres/m.unit()), math.Floor(10*m.Course/m.unit()+1e-6))/10) + " " + m.symbol()
}

// name is the name of the unit of distance.
func (m Measure) name() string {
	if m.Imperial {
		return "mile"
	}
	return "kilometre"
}

// span writes a duration in words: seconds under a minute, minutes and seconds up to ten,
// minutes up to an hour, and hours and minutes beyond.
func (m Measure) span(d time.Duration) string { return m.spanTo(d, 10*time.Minute) }

// spanTo is span, with seconds up to a bound.
func (m Measure) spanTo(d, bound time.Duration) string {
	switch s := int64(math.Round(d.Seconds())); {
	case s < 60:
		return count(s, "second")
	case s < int64(bound.Seconds()) && s%60 != 0:
		return count(s/60, "minute") + " " + count(s%60, "second")
	}
	return m.minutes(d)
}

// passing writes when a runner is at a place: to five seconds in the first twenty minutes,
// where a minute is much of a pace, and to the minute beyond.
func (m Measure) passing(d time.Duration) string {
	const fine = 20 * time.Minute
	if d < fine {
		d = max(d.Round(5*time.Second), time.Second)
	}
	return m.spanTo(d, fine)
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
