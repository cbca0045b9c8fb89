package fuel

import (
	"fmt"
	"math"
	"time"
)

// clock is the time of day so long after the gun, to the nearest minute, with the days since
// the start, or nothing where the start is not known.
func (t *Table) clock(gun time.Duration) string {
	if t.Start.IsZero() {
		return ""
	}
	at, days := t.at(gun)
	if days > 0 {
		return fmt.Sprintf("%s +%d", at.Format("15:04"), days)
	}
	return at.Format("15:04")
}

// clockWords is the same in a sentence, with the day of the week where it is not the start's.
func (t *Table) clockWords(gun time.Duration) string {
	at, days := t.at(gun)
	if days > 0 {
		return at.Format("Monday 15:04")
	}
	return at.Format("15:04")
}

// at is a gun time by the clock, and how many midnights of the start's place lie before it.
func (t *Table) at(gun time.Duration) (at time.Time, days int) {
	at = t.Start.Add(gun).Round(time.Minute)
	noon := func(t time.Time) time.Time {
		y, m, d := t.Date()
		return time.Date(y, m, d, 12, 0, 0, 0, time.UTC)
	}
	return at, int(math.Round(noon(at).Sub(noon(t.Start)).Hours() / 24))
}
