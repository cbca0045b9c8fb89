package write

import (
	"fmt"
	"math"
	"time"
)

// clock is the time of day so long after the gun to the nearest minute, with the days since
// the start, or nothing where there is no start.
func (t *sheet) clock(elapsed time.Duration) string {
	start := t.plan.Race.Start
	if start.IsZero() {
		return ""
	}
	at := start.Add(elapsed).Round(time.Minute)
	if days := daysBetween(start, at); days > 0 {
		return fmt.Sprintf("%s +%d", at.Format("15:04"), days)
	}
	return at.Format("15:04")
}

// clockWords is the same in a sentence, with the day of the week where it is another.
func (t *sheet) clockWords(elapsed time.Duration) string {
	start := t.plan.Race.Start
	at := start.Add(elapsed).Round(time.Minute)
	if daysBetween(start, at) > 0 {
		return at.Format("15:04 on Monday")
	}
	return at.Format("15:04")
}

// daysBetween is how many midnights lie between two times, by the clock of the first's place.
func daysBetween(from, to time.Time) int {
	midnight := func(t time.Time) time.Time {
		y, m, d := t.Date()
		return time.Date(y, m, d, 12, 0, 0, 0, time.UTC)
	}
	return int(math.Round(midnight(to).Sub(midnight(from)).Hours() / 24))
}

// spare is a time in hand, in words that cannot be taken for a time of day.
func spare(d time.Duration) string {
	d = d.Abs().Round(time.Second)
	switch {
	case d < 2*time.Minute:
		return fmt.Sprintf("%d s", int(d.Seconds()))
	case d < 10*time.Minute && d%time.Minute != 0:
		return fmt.Sprintf("%d min %02d s", int(d.Minutes()), int(d.Seconds())%60)
	case d < time.Hour:
		return fmt.Sprintf("%d min", int(d.Minutes()))
	}
	return fmt.Sprintf("%d h %02d min", int(d.Hours()), int(d.Minutes())%60)
}
