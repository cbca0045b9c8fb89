package write

import (
	"fmt"
	"io"
	"strings"
	"time"

	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
)

// pageWidth is the number of columns that no line exceeds.
const pageWidth = 80

// page collects lines of text.
type page struct {
	strings.Builder
	plan  *plan.Plan
	units units
}

// Text prints a plan as plain text of at most 80 columns: what it asks for, the splits,
// the climbs with what to do on each, and the cautions. Splits every mile, or every few,
// are printed with distances in miles and heights in feet, all others in kilometres and metres.
//
// Text panics where plan.Splits does; its error is the writer's.
func Text(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	t := page{plan: p, units: unitsOf(every)}
	t.title()
	t.summary()
	t.warnings()
	t.climbs()
	t.splits(every)
	t.cutoffs()
	t.stops()
	t.plannedWalks()
	t.cautions()
	_, err := io.WriteString(w, t.String())
	return err
}

func (t *page) title() {
	name := plain(t.plan.Course.Name())
	if name == "" {
		name = "Course"
	}
	relief := t.plan.Course.Relief()
	t.line("%s: even-effort plan", clip(name, pageWidth-20))
	heights := "heights as given"
	if relief.Smoothing > 0 {
		heights = fmt.Sprintf("heights smoothed over %.0f m", relief.Smoothing)
	}
	u := t.units
	if sd, _, ok := t.plan.Course.ReliefSD(); ok {
		heights = fmt.Sprintf("heights cleaned; up give or take %.0f %s", 2*sd/u.height, u.short)
	}
	t.line("%.1f %s, %.0f %s up, %.0f %s down (%s)", t.plan.Course.Length()/u.distance, u.long,
		relief.Ascent/u.height, u.short, relief.Descent/u.height, u.short, heights)
	t.line("")
}

// summary says what the plan asks for and how that stands to what the runner can give.
func (t *page) summary() {
	p := t.plan
	t.entry("Finish", t.finish())
	t.start()
	t.entry("Effort", t.effort())
	t.entry("Budget", t.budget())
	t.entry("Walking", t.walking())
	t.entry("Halves", fmt.Sprintf("%s for the first half of the distance, %s for the second (moving).",
		hms(p.FirstHalf), hms(time.Duration(seconds(p.Moving)-seconds(p.FirstHalf))*time.Second)))
	t.entry("Talk test", talk(p))
	t.line("")
}

// walking says how much is walked, and where if that is quickly said.
func (t *page) walking() string {
	p := t.plan
	var walks []plan.Bout
	for _, b := range p.Bouts(0, p.Course.Length()) {
		if b.Gait == plan.Walk {
			walks = append(walks, b)
		}
	}
	if len(walks) == 0 {
		return "none."
	}
	s := fmt.Sprintf("%.0f %% of the moving time, in %s.", 100*p.WalkingShare, count(len(walks), "stretch", "stretches"))
	if len(walks) <= 60 && p.WalkingShare < 0.95 {
		s += " At " + t.places(walks) + "."
	}
	if p.BoutCost >= time.Second {
		s += fmt.Sprintf(" Changing between running and walking no more often than that costs %s.", short(p.BoutCost))
	}
	return s
}

// places lists stretches.
func (t *page) places(walks []plan.Bout) string {
	var at []string
	for _, b := range walks {
		at = append(at, fmt.Sprintf("%.1f-%.1f", b.From/t.units.distance, b.To/t.units.distance))
	}
	return strings.Join(at, ", ") + " " + t.units.long
}

func (t *page) finish() string {
	p := t.plan
	s := hms(p.Gun) + " gun time"
	if p.Race.StartDelay > 0 {
		s += fmt.Sprintf(", %s net (%s from the gun to the start line)", hms(p.Gun-p.Race.StartDelay), brief(p.Race.StartDelay))
	}
	if p.Stopped > 0 {
		s += ", stops of " + brief(p.Stopped) + " included"
	}
	if start := p.Race.Start; !start.IsZero() {
		s += fmt.Sprintf("; gun at %s, finish at %s", start.Format("15:04:05"), start.Add(p.Gun).Round(time.Second).Format("15:04:05"))
	}
	return s + "."
}

func (t *page) effort() string {
	p := t.plan
	s := fmt.Sprintf("even, on every climb, descent and flat: %.0f %% of what you could hold for one hour at that point of the race.", 100*p.Effort())
	if h := p.HoldBack; h.Share > 0 {
		s += fmt.Sprintf(" A little less at first: start %.1f %% easier than that, finish %.1f %% harder. It costs %s and guards against opening too fast.",
			100*h.Share, 100*h.Share, short(h.Cost))
	}
	return s
}

func (t *page) budget() string {
	p := t.plan
	s := fmt.Sprintf("%s of what one race allows.", percent(p.Budget))
	s += " " + t.aim()
	if p.Best.High > 0 {
		s += fmt.Sprintf(" (nine times in ten between %s and %s)", hms(p.Best.Low), hms(p.Best.High))
	}
	return s + "."
}

// talk says how a plan should feel. Common practice, no source.
func talk(p *plan.Plan) string {
	switch e := p.Effort(); {
	case p.Budget > plan.BeyondBudget:
		return "no effort that feels right will do this."
	case e < 0.87:
		return "you can speak in whole sentences all the time, uphill too. If not, ease off."
	case e < 0.97:
		return "you can speak in short sentences. If you cannot, ease off."
	}
	return "a few words at a time."
}

func (t *page) warnings() {
	if len(t.plan.Warnings) == 0 {
		return
	}
	for _, w := range t.plan.Warnings {
		t.entry("Note", sentence(plain(w)))
	}
	t.line("")
}

func (t *page) climbs() {
	if len(t.plan.Climbs) == 0 {
		t.line("NO CLIMB of %d %s or more.", int(30/t.units.height+0.5), t.units.short)
		t.line("")
		return
	}
	u := t.units
	t.line("CLIMBS, rated 0 to 10 for how hard each is where it stands, and what to do")
	for _, c := range t.plan.Climbs {
		name := plain(c.Name)
		if name == "" {
			name = "Unnamed climb"
		}
		where := fmt.Sprintf("%5.1f-%.1f %s ", c.Climb.Start/u.distance, c.Climb.Top/u.distance, u.long)
		t.wrap(pad(where, 15), fmt.Sprintf("%s: %.0f %s up in %.1f %s (%.1f %%), rated %.0f, %s at %s /%s. %s", clip(name, 40),
			c.Rise/u.height, u.short, c.Length()/u.distance, u.long, 100*c.Gradient(), c.Rating.Value,
			brief(c.Took), ms(u.pace(c.Pace)), u.long, sentence(c.Describe(u.distance, u.long))))
	}
	t.line("")
}

func (t *page) cautions() {
	t.line("CAUTIONS")
	for _, c := range caution.Texts(t.plan) {
		t.wrap("", c)
	}
}

// entry prints a labelled paragraph.
func (t *page) entry(label, text string) { t.wrap(fmt.Sprintf("%-11s", label), text) }

// wrap prints a paragraph behind a label, the later lines indented as deep.
func (t *page) wrap(label, text string) {
	indent := strings.Repeat(" ", columns(label))
	if label == "" {
		label, indent = "- ", "  "
	}
	line := label
	for _, word := range strings.Fields(text) {
		if columns(line)+1+columns(word) > pageWidth && strings.TrimSpace(line) != "" {
			t.line("%s", line)
			line = indent
		}
		if !strings.HasSuffix(line, " ") && line != "" {
			line += " "
		}
		line += word
	}
	t.line("%s", line)
}

func (t *page) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}
