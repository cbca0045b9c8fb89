package write

import (
	"fmt"
	"time"
	"unicode/utf8"

	"isoeffort.example/plan"
)

// nameWidth is what the table of splits leaves for the place.
const nameWidth = 18

// splits prints the table. The time of each part is the difference of the rounded gun
// times, less the planned stops in it, so that delay, parts and stops add up to the
// finish as printed.
func (t *page) splits(every plan.Spacing) {
	u := t.units
	t.line("SPLITS (part: moving time; level: the pace of that effort on the level, /%s)", u.long)
	t.line("%6s %s %4s %4s %-5s %7s %5s %5s %8s %s", u.long, pad("place", nameWidth), "up", "down", "gait",
		"part", "pace", "level", "gun time", t.clockHead())
	p := t.plan
	left := seconds(p.Race.StartDelay)
	if left > 0 {
		t.line("%6s %s %4s %4s %-5s %7s %5s %5s %8s %s", "0.0", pad("Start line", nameWidth), "", "", "", "", "", "",
			hms(p.Race.StartDelay), t.clock(p.Race.StartDelay))
	}
	for _, s := range p.Splits(every) {
		arrived := seconds(s.Elapsed)
		part := arrived - left - seconds(s.Stop)
		left = arrived
		t.line("%6.1f %s %4.0f %4.0f %-5s %7s %5s %5s %8s %s", s.Distance/u.distance, pad(clip(t.place(s), nameWidth), nameWidth),
			s.Ascent/u.height, s.Descent/u.height, s.Gait, hms(time.Duration(part)*time.Second),
			ms(u.pace(s.Pace)), ms(u.pace(s.LevelPace)), hms(s.Elapsed), t.clock(s.Elapsed))
	}
	t.line("")
}

// place is the landmark of a split, or the first one on the way to it.
func (t *page) place(s plan.Split) string {
	if s.Landmark != nil {
		return plain(s.Landmark.Name)
	}
	for _, l := range t.plan.Course.Landmarks() {
		if l.Distance > s.Distance-s.Length && l.Distance <= s.Distance {
			return plain(l.Name)
		}
	}
	return ""
}

func (t *page) clockHead() string {
	if t.plan.Race.Start.IsZero() {
		return ""
	}
	return "clock"
}

// clock is the time of day so long after the gun, or nothing.
func (t *page) clock(elapsed time.Duration) string {
	start := t.plan.Race.Start
	if start.IsZero() {
		return ""
	}
	return start.Add(elapsed).Round(time.Second).Format("15:04")
}

// pad fills a text with spaces to n characters.
func pad(s string, n int) string {
	return fmt.Sprintf("%s%*s", s, n-utf8.RuneCountInString(s), "")
}
