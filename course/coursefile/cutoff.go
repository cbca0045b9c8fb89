package coursefile

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// A Cutoff is the time by which a runner must have reached a landmark, or left it, as
// the rules of the race say. The zero value is none.
type Cutoff struct {
	// Time is the time since the start, in whole seconds, or with Clock the time of day
	// at the course as a time since midnight, in whole minutes.
	Time  time.Duration
	Clock bool
}

// maxCutoff is the longest time of a cutoff: some six weeks.
const maxCutoff = 1000 * time.Hour

// ParseCutoff reads a cutoff: H:MM:SS is a time since the start, HH:MM a time of day, ""
// none. The hours go beyond 23: 26:30 is half past two on the second day, counted from
// the midnight before the start. The seconds tell the two apart; there is no other way
// to. 0:00:00 is refused.
func ParseCutoff(text string) (Cutoff, error) {
	if text == "" {
		return Cutoff{}, nil
	}
	units := []time.Duration{time.Hour, time.Minute, time.Second}
	parts := strings.Split(text, ":")
	c := Cutoff{Clock: len(parts) == 2}
	if len(parts) != 2 && len(parts) != 3 {
		return Cutoff{}, because(ErrCutoff, "%s", quoted(text))
	}
	for i, p := range parts {
		n, err := strconv.ParseUint(p, 10, 16)
		if err != nil || i == 0 && len(p) > 3 || i > 0 && (len(p) != 2 || n > 59) {
			return Cutoff{}, because(ErrCutoff, "%s", quoted(text))
		}
		c.Time += time.Duration(n) * units[i]
	}
	if c == (Cutoff{}) {
		return c, because(ErrCutoff, "%s", quoted(text))
	}
	return c, nil
}

// String returns the text that ParseCutoff reads as c.
func (c Cutoff) String() string {
	hours, minutes, seconds := c.Time/time.Hour, c.Time/time.Minute%60, c.Time/time.Second%60
	switch {
	case c.Clock:
		return fmt.Sprintf("%02d:%02d", hours, minutes)
	case c.Time == 0:
		return ""
	}
	return fmt.Sprintf("%d:%02d:%02d", hours, minutes, seconds)
}

// IsZero reports whether there is no cutoff.
func (c Cutoff) IsZero() bool { return c == Cutoff{} }

// After returns the cutoff as a time since a start, whose zone is taken for that of the
// course, and 0 for no cutoff. A time of day below 24:00 that is not after the start's
// stands for the next day. Where clocks change on the way, it is the clock on the wall
// that counts.
func (c Cutoff) After(start time.Time) time.Duration {
	if !c.Clock {
		return c.Time
	}
	year, month, day := start.Date()
	wall := func(day int) time.Time {
		return time.Date(year, month, day, int(c.Time/time.Hour), int(c.Time/time.Minute%60), 0, 0, start.Location())
	}
	at := wall(day)
	if !at.After(start) && c.Time < 24*time.Hour {
		at = wall(day + 1)
	}
	return at.Sub(start)
}

func (c Cutoff) check() error {
	unit := time.Second
	if c.Clock {
		unit = time.Minute
	}
	if c.Time < 0 || c.Time >= maxCutoff || c.Time%unit != 0 {
		return because(ErrCutoff, "%v", c.Time)
	}
	return nil
}
