package follow

import (
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// From wholeMinutes on times in sentences are given to the minute, and finishes to come
// from aboutMinutes on.
const (
	wholeMinutes = 6 * time.Hour
	aboutMinutes = 2 * time.Hour
)

// timeWords is a time since the gun.
func timeWords(d time.Duration) string {
	if d >= wholeMinutes {
		return say.HM(d)
	}
	return say.HMS(d)
}

// spell is a length of time in words, to the minute from a minute and a half on.
func spell(d time.Duration) string {
	if d < 90*time.Second && d != time.Minute {
		return say.Count(int(math.Round(d.Seconds())), "second", "seconds")
	}
	minutes := int(math.Round(d.Minutes()))
	switch h, m := minutes/60, minutes%60; {
	case minutes < 100:
		return say.Count(minutes, "minute", "minutes")
	case m == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m)
	}
}

// margin is time in hand in words, rounded down: to ten seconds under twenty minutes, and
// to the minute from there.
func margin(d time.Duration) string {
	switch d = d.Truncate(10 * time.Second); {
	case d >= 20*time.Minute:
		return spell(d.Truncate(time.Minute))
	case d <= 0:
		return "nothing"
	case d < time.Minute:
		return say.Count(int(d.Seconds()), "second", "seconds")
	case d%time.Minute == 0:
		return spell(d)
	}
	return fmt.Sprintf("%d min %d s", d/time.Minute, d%time.Minute/time.Second)
}

// clock is a gun time by the clock to the nearest minute, with the day where that is not
// the start's, or "" for a race without a start time.
func clock(p *plan.Plan, gun time.Duration) string {
	if p.Race.Start.IsZero() {
		return ""
	}
	at := p.Race.Start.Add(gun).Round(time.Minute)
	if daysAfter(p, at) == 0 {
		return at.Format("15:04")
	}
	return at.Format("Monday 15:04")
}

// clockCell is the same for a table: the days after the start stand behind.
func clockCell(p *plan.Plan, at time.Time) string {
	at = at.Round(time.Minute)
	if n := daysAfter(p, at); n > 0 {
		return fmt.Sprintf("%s +%d", at.Format("15:04"), n)
	}
	return at.Format("15:04")
}

// daysAfter is how many midnights lie between the start and a time.
func daysAfter(p *plan.Plan, at time.Time) int {
	day := func(t time.Time) time.Time {
		y, m, d := t.Date()
		return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	}
	return int(day(at).Sub(day(p.Race.Start)).Hours() / 24)
}

// clockWords is the clock in brackets, with the space before it.
func clockWords(p *plan.Plan, gun time.Duration) string {
	if text := clock(p, gun); text != "" {
		return " (" + text + ")"
	}
	return ""
}

// about is a finish to come: by the clock if there is one.
func about(p *plan.Plan, gun time.Duration) string {
	switch text := clock(p, gun); {
	case text != "":
		return text
	case gun < aboutMinutes:
		return say.HMS(gun) + " after the gun"
	}
	return say.HM(gun) + " after the gun"
}

// lateness is how late in words.
func lateness(d time.Duration) string {
	switch d = d.Round(time.Second); {
	case d == 0:
		return "as planned"
	case d > 0:
		return spell(d) + " later than planned"
	}
	return spell(-d) + " earlier than planned"
}

// where is a cutoff's place in words.
func where(c Cutoff) string {
	switch name := page.Plain(c.Name); {
	case strings.EqualFold(name, "finish"):
		return "at the finish"
	case name != "":
		return "at " + name
	}
	return fmt.Sprintf("at %.1f km", c.Distance/1000)
}

// change is an effort beside the planned one, in whole per cent.
func change(share float64) int { return int(math.Round(100 * (share - 1))) }

// Bounds of relative intensity for what a runner can still say, as in plans and briefings;
// common practice, no source.
const (
	wholeSentences = 0.87
	shortSentences = 0.97
)

// talk is how an intensity feels.
func talk(intensity float64) string {
	switch {
	case intensity < wholeSentences:
		return "easy enough to speak whole sentences"
	case intensity < shortSentences:
		return "short sentences at most"
	}
	return "no more than a few words at a time"
}

// beside is an intensity beside the planned one.
func beside(got, planned float64) string {
	switch c := change(got / planned); {
	case c > 0:
		return fmt.Sprintf("%d %% harder than planned", c)
	case c < 0:
		return fmt.Sprintf("%d %% easier than planned", -c)
	}
	return "as planned"
}

func courseName(p *plan.Plan) string {
	if name := page.Plain(p.Course.Name()); name != "" {
		return page.Clip(name, page.Width-25)
	}
	return "Course"
}

// listed is a list in words.
func listed(all []string) string {
	if n := len(all); n > 1 {
		return strings.Join(all[:n-1], ", ") + " and " + all[n-1]
	}
	return strings.Join(all, "")
}

// farBeyond is the share of the budget from which a figure of it would only puzzle.
const farBeyond = 1.5

// spentWords is what is spent of the budget, beside the plan's.
func spentWords(got, planned float64) string {
	if got > farBeyond {
		return "far more than you have to give, going by your times."
	}
	return fmt.Sprintf("about %s of what you have to give; the plan has %s here.", say.Percent(got), say.Percent(planned))
}
