package write

import (
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// aim says what the plan was made for, beside the fastest time.
func (t *sheet) aim() string {
	p := t.plan
	switch r := p.Race; {
	case r.Share > 0:
		return "You asked for this share of it. With all of it the fastest gun time would be " + say.HMS(p.Best.Gun)
	case len(r.Standards) > 0 && p.Budget <= plan.BeyondBudget:
		return fmt.Sprintf("%s is the fastest of the standard times inside it. The fastest gun time would be %s", page.Plain(p.Standard.Name), say.HMS(p.Best.Gun))
	case len(r.Standards) > 0:
		return fmt.Sprintf("%s is the slowest of the standard times. With all of it the fastest gun time would be %s", page.Plain(p.Standard.Name), say.HMS(p.Best.Gun))
	case r.MakeCutoffs:
		return fmt.Sprintf("This is the least effort that is %s early at every cutoff. With all of it the fastest gun time would be %s", say.Short(r.InHand), say.HMS(p.Best.Gun))
	case r.Goal > 0:
		return "With all of it the fastest gun time would be " + say.HMS(p.Best.Gun)
	}
	return "No goal was given: this is the fastest time it allows"
}

// start says what the start takes and where it comes back.
func (t *sheet) start() {
	p := t.plan
	lost := p.Start.Delay + p.Start.Crowd
	if lost < time.Second {
		return
	}
	var parts []string
	if p.Start.Delay > 0 {
		parts = append(parts, "you cross the line "+say.Short(p.Start.Delay)+" after the gun")
	}
	if p.Start.Crowd >= time.Second {
		parts = append(parts, "the crowd costs "+say.Lasting(p.Start.Crowd))
	}
	t.Entry("Start", say.Sentence(strings.Join(parts, "; "))+" Do not chase it. "+t.back())
}

// back says how much of the time lost at the start is left at a few places.
func (t *sheet) back() string {
	p, length := t.plan, t.plan.Course.Length()
	if p.Behind(length) > p.Behind(0)/2 {
		return "With no gun time to make it stays lost: the same effort does not bring it back."
	}
	var at []string
	for _, share := range []float64{0.25, 0.5, 0.75} {
		d := share * length
		at = append(at, fmt.Sprintf("%s at %.0f %s", say.Short(p.Behind(d).Round(time.Second)), d/t.units.Distance, t.units.Long))
	}
	return "Even effort brings it back a little everywhere: you are still behind by " + strings.Join(at, ", ") + ", and on time at the finish."
}

// plannedWalks lists the walks that were asked for.
func (t *sheet) plannedWalks() {
	p := t.plan
	if len(p.Walks) == 0 {
		return
	}
	minutes := int(math.Round(p.Walks[0].Took.Minutes()))
	head := fmt.Sprintf("WALKS of %s, where they cost least (gun time)", say.Count(minutes, "minute", "minutes"))
	if p.Race.Walks.Fixed {
		head = fmt.Sprintf("WALKS of %s, by the watch (gun time)", say.Count(minutes, "minute", "minutes"))
	}
	t.Line("%s", head)
	var at []string
	for _, w := range p.Walks {
		at = append(at, fmt.Sprintf("%s (%.1f %s)", say.HM(w.Start), w.From/t.units.Distance, t.units.Long))
	}
	t.Wrap("  ", strings.Join(at, ", ")+".")
	cost := "They cost about nothing"
	if p.WalkCost >= time.Second {
		cost = "They cost " + say.Lasting(p.WalkCost)
	}
	t.Wrap("  ", cost+" by the arithmetic of effort, which knows nothing of eating, muscles and morale.")
	t.Line("")
}

// stops lists the planned halts.
func (t *sheet) stops() {
	p := t.plan
	if len(p.Stops) == 0 {
		return
	}
	t.Line("STOPS, %s in all", say.Short(p.Stopped))
	for _, s := range p.Stops {
		what := s.Kind.String()
		if s.Kind == plan.Halt {
			what = "the roadside"
		}
		if name := t.landmark(s.Distance); name != "" {
			what = name
			if s.Kind > plan.AidStation {
				what += " (" + s.Kind.String() + ")"
			}
		}
		text := say.Short(s.Duration) + " at " + what
		if s.Note != "" {
			text += ": " + page.Plain(s.Note)
		}
		t.Wrap(fmt.Sprintf("%6.1f %s  ", s.Distance/t.units.Distance, t.units.Long), text)
	}
	t.Line("")
}

// landmark is the name of the landmark at a place, or "".
func (t *sheet) landmark(distance float64) string {
	for _, l := range t.plan.Course.Landmarks() {
		if l.Distance == distance && l.Name != "" {
			return page.Clip(page.Plain(l.Name), 40)
		}
	}
	return ""
}

// cutoffs lists them with the time in hand.
func (t *sheet) cutoffs() {
	p := t.plan
	if len(p.Cutoffs) == 0 {
		return
	}
	t.Line("CUTOFFS (gun time%s)", map[bool]string{true: " of your own wave"}[p.Race.Wave > 0])
	for _, m := range p.Cutoffs {
		name := page.Plain(m.Name)
		if name == "" {
			name = t.landmark(m.Distance)
		}
		verb, hand := "be there by", "%s in hand"
		if m.Departure {
			verb = "leave by"
		}
		text := fmt.Sprintf("%s: %s %s", page.Clip(name, 30), verb, say.HMS(m.Limit))
		if !p.Race.Start.IsZero() {
			text += " (" + t.clock(m.Limit) + ")"
		}
		if m.InHand < 0 {
			hand = "missed by %s"
		}
		text += fmt.Sprintf("; you pass at %s, "+hand, say.HMS(m.Passed), spare(m.InHand))
		if m.AtRisk && m.InHand >= 0 {
			text += ", AT RISK"
		}
		t.Wrap(fmt.Sprintf("%6.1f %s  ", m.Distance/t.units.Distance, t.units.Long), text+".")
	}
	t.Line("")
}

// weather says what the day brings and costs, and what to do in heat.
func (t *sheet) weather() {
	p := t.plan
	day := p.Race.Surroundings.Day
	if day == nil || p.Race.Start.IsZero() {
		return
	}
	zero := sinceMidnight(p.Race.Start)
	coldest, hottest, peak := math.Inf(1), math.Inf(-1), time.Duration(0)
	for at := time.Duration(0); at <= p.Gun; at += 10 * time.Minute {
		v := day.Temperature(zero + at)
		coldest = math.Min(coldest, v)
		if v > hottest {
			hottest, peak = v, at
		}
	}
	if math.IsNaN(hottest) || math.IsInf(hottest, 0) {
		return
	}
	s := fmt.Sprintf("%.0f °C at the gun, between %.0f and %.0f °C on your way, the warmest at %s.", day.Temperature(zero), coldest, hottest, t.clockWords(peak))
	if p.WeatherCost >= time.Second {
		s += " The plan allows " + say.Lasting(p.WeatherCost) + " for weather and dark."
	}
	if hottest >= warm {
		s += " In heat slow down early, seek shade, keep your head wet. Dizzy, confused, or cold and shivering in the heat: stop and get help."
	}
	t.Entry("Weather", s)
}

// warm is the temperature in °C from which a plan speaks of heat. Common practice, no source.
const warm = 20

// sinceMidnight is the time of day by the clock on the wall.
func sinceMidnight(t time.Time) time.Duration {
	h, m, s := t.Clock()
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(s)*time.Second
}
