package brief

import (
	"fmt"
	"strings"
	"time"

	"isoeffort.example/internal/say"
)

// heading is the English heading of a section.
func heading(s Section, m Measure) string {
	var name string
	switch {
	case s.FirstLap > 0 && s.FirstLap == s.LastLap:
		name = fmt.Sprintf("Lap %d", s.FirstLap)
	case s.FirstLap > 0:
		name = fmt.Sprintf("Laps %d to %d", s.FirstLap, s.LastLap)
	case s.ToName != "":
		name = "To " + s.ToName
	case s.To >= m.Course-samePlace:
		name = "To the finish"
	}
	end := m.place(s.To)
	if s.To >= m.Course-samePlace {
		end = m.Exactly(s.To)
	}
	text := m.place(s.From) + " to " + end
	if s.From < samePlace {
		text = "start to " + end
	}
	if name != "" {
		text = name + ": " + text
	}
	text += ", there after " + m.minutes(s.Arrival)
	if !s.Clock.IsZero() {
		text += ", " + at(s.Clock, s.Arrival)
	}
	return say.Capital(text)
}

// timeOfDay writes the time by the clock so long after the gun, to the nearest minute; with
// the day of the week where that is not the day of the gun, and with the date where the
// days of the week come again.
func timeOfDay(t time.Time, after time.Duration) string {
	gun := t.Add(-after)
	t = t.Round(time.Minute)
	const week = 6 * 24 * time.Hour
	switch {
	case gun.YearDay() == t.YearDay() && gun.Year() == t.Year():
		return t.Format("15:04")
	case after < week:
		return t.Format("Monday 15:04")
	}
	return t.Format("Monday 2 January 15:04")
}

// at is timeOfDay as part of a sentence: "at 15:04", or "Sunday 15:04".
func at(t time.Time, after time.Duration) string {
	s := timeOfDay(t, after)
	if strings.Contains(s, " ") {
		return s
	}
	return "at " + s
}

// numeral writes small numbers as words.
func numeral(n int) string {
	names := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(names) {
		return names[n]
	}
	return fmt.Sprint(n)
}

// turn is one of several ways to say a thing, by how often it was said before: the first
// once, and then the others by turns.
func turn(l Line, ways ...string) string {
	if l.Nth == 0 || len(ways) == 1 {
		return ways[0]
	}
	return ways[1+(l.Nth-1)%(len(ways)-1)]
}

// where names the place of a line: "Mill Bank (12 km)", or "12 km".
func where(l Line, m Measure) string {
	if l.Name == "" {
		return m.place(l.From)
	}
	return l.Name + " (" + m.place(l.From) + ")"
}

// when is the time of a line as the runner meets it.
func when(l Line, m Measure) string {
	if !l.Clock.IsZero() {
		return after(l, m) + ", " + at(l.Clock, l.Elapsed)
	}
	return after(l, m)
}

// after is the time of a line since the start, or the gun.
func after(l Line, m Measure) string {
	if l.Delayed {
		return m.passing(l.Elapsed) + " after the gun"
	}
	return m.passing(l.Elapsed) + " after the start"
}

// part is a share in words.
func part(share float64) string {
	for _, p := range []struct {
		below float64
		words string
	}{{0.07, "a small part"}, {0.14, "about a tenth"}, {0.22, "about a fifth"}, {0.275, "about a quarter"}, {0.32, "nearly a third"}, {0.365, "about a third"}, {0.43, "about two fifths"}, {0.48, "nearly half"}, {0.53, "about half"}, {0.6, "more than half"}, {0.71, "about two thirds"}, {0.79, "about three quarters"}, {0.95, "most"}} {
		if share < p.below {
			return p.words
		}
	}
	return "all"
}

// noted is a note as a sentence.
func noted(note string) string {
	if note == "" {
		return ""
	}
	if !strings.ContainsAny(note[len(note)-1:], ".!?") {
		note += "."
	}
	return " " + say.Capital(note)
}
