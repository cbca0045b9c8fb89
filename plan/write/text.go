package write

import (
	"fmt"
	"io"
	"strings"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
	"isoeffort.example/plan/forecast"
)

// sheet is the page that a plan is printed on.
type sheet struct {
	page.Page
	plan  *plan.Plan
	units say.Units
}

// Text prints a plan as plain text of at most 80 columns: what it asks for, the splits,
// the climbs with what to do on each, and the cautions. Splits every mile, or every few,
// are printed with distances in miles and heights in feet, all others in kilometres and metres.
//
// Text panics where plan.Splits does; its error is the writer's.
func Text(w io.Writer, p *plan.Plan, every plan.Spacing) error {
	t := sheet{plan: p, units: unitsOf(every)}
	t.notAdvised()
	t.title()
	t.summary()
	t.warnings()
	t.climbs()
	t.splits(every)
	t.cutoffs()
	t.stops()
	t.plannedWalks()
	t.cautions()
	return t.Print(w)
}

// notAdvised heads the page of a goal beyond the runner.
func (t *sheet) notAdvised() {
	if text := forecast.Warning(1, t.plan.Budget); text != "" {
		t.Wrap("", text)
		t.Line("")
	}
}

func (t *sheet) title() {
	name := page.Plain(t.plan.Course.Name())
	if name == "" {
		name = "Course"
	}
	relief := t.plan.Course.Relief()
	t.Line("%s: even-effort plan", page.Clip(name, page.Width-20))
	heights := "heights as given"
	if relief.Smoothing > 0 {
		heights = fmt.Sprintf("heights smoothed over %.0f m", relief.Smoothing)
	}
	u := t.units
	if sd, _, ok := t.plan.Course.ReliefSD(); ok {
		heights = fmt.Sprintf("heights cleaned; up give or take %.0f %s", 2*sd/u.Height, u.Short)
	}
	t.Line("%.1f %s, %.0f %s up, %.0f %s down (%s)", t.plan.Course.Length()/u.Distance, u.Long,
		relief.Ascent/u.Height, u.Short, relief.Descent/u.Height, u.Short, heights)
	t.Line("")
}

// summary says what the plan asks for and how that stands to what the runner can give.
func (t *sheet) summary() {
	p := t.plan
	t.Entry("Finish", t.finish())
	t.start()
	t.weather()
	t.Entry("Effort", t.effort())
	t.Entry("Budget", t.budget())
	t.Entry("Walking", t.walking())
	t.Entry("Halves", fmt.Sprintf("%s for the first half of the distance, %s for the second (moving).",
		say.HMS(p.FirstHalf), say.HMS(p.Moving.Round(time.Second)-p.FirstHalf.Round(time.Second))))
	t.Entry("Talk test", talk(p))
	t.Line("")
}

// walking says how much is walked, and where if that is quickly said.
func (t *sheet) walking() string {
	p := t.plan
	var walks []plan.Bout
	for _, b := range p.Bouts(0, p.Course.Length()) {
		if b.Gait == plan.Walk {
			walks = append(walks, b)
		}
	}
	if len(walks) == 0 {
		if p.Gun < walklessFrom {
			return "none."
		}
		return "none: the arithmetic of effort sees no need of one. Many runners do well to walk a minute or two every half hour (common practice)."
	}
	if p.WalkingShare > 0.995 {
		return "all of it."
	}
	s := fmt.Sprintf("%.0f %% of the moving time, in %s.", 100*p.WalkingShare, say.Count(len(walks), "stretch", "stretches"))
	if len(walks) <= listedWalks {
		s += " At " + t.places(walks) + "."
	} else {
		s += " Mostly on the climbs: see there."
	}
	if p.BoutCost >= time.Second {
		s += fmt.Sprintf(" Changing between running and walking no more often than that costs %s.", say.Lasting(p.BoutCost))
	}
	return s
}

// A plan without a walk says so from walklessFrom on, and more than listedWalks walks are
// not listed.
const (
	walklessFrom = 3 * time.Hour
	listedWalks  = 16
)

// places lists stretches.
func (t *sheet) places(walks []plan.Bout) string {
	var at []string
	for _, b := range walks {
		at = append(at, fmt.Sprintf("%.1f-%.1f", b.From/t.units.Distance, b.To/t.units.Distance))
	}
	return strings.Join(at, ", ") + " " + t.units.Long
}

func (t *sheet) finish() string {
	p := t.plan
	s := say.HMS(p.Gun) + " gun time"
	if p.Race.StartDelay > 0 {
		s += fmt.Sprintf(", %s net (%s from the gun to the start line)", say.HMS(p.Gun-p.Race.StartDelay), say.Short(p.Race.StartDelay))
	}
	if p.Stopped > 0 {
		s += ", stops of " + say.Short(p.Stopped) + " included"
	}
	if start := p.Race.Start; !start.IsZero() {
		s += fmt.Sprintf("; gun at %s, finish at %s", t.clockWords(0), t.clockWords(p.Gun))
	}
	return s + "."
}

func (t *sheet) effort() string {
	p := t.plan
	s := fmt.Sprintf("even, on every climb, descent and flat: %.0f %% of what you could hold for one hour at that point of the race.", 100*p.Effort())
	if h := p.HoldBack; h.Share > 0 {
		s += fmt.Sprintf(" A little less at first: start %.1f %% easier than that, finish %.1f %% harder. It costs %s and guards against opening too fast.",
			100*h.Share, 100*h.Share, say.Lasting(h.Cost))
	}
	return s
}

func (t *sheet) budget() string {
	p := t.plan
	s := fmt.Sprintf("%s of what one race allows.", budgetWords(p.Budget))
	if p.Budget > plan.BeyondBudget {
		s = fmt.Sprintf("beyond what one race allows: it takes %.0f %% more effort than you can hold.", 100*(p.Intensity/p.Best.Intensity-1))
	}
	s += " " + t.aim()
	if p.Best.High > 0 {
		s += fmt.Sprintf(" (nine times in ten between %s and %s)", say.HMS(p.Best.Low), say.HMS(p.Best.High))
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

func (t *sheet) warnings() {
	if len(t.plan.Warnings) == 0 {
		return
	}
	for _, w := range t.plan.Warnings {
		t.Entry("Note", say.Sentence(page.Plain(w)))
	}
	t.Line("")
}

func (t *sheet) climbs() {
	if len(t.plan.Climbs) == 0 {
		t.Line("NO CLIMB of %d %s or more.", int(30/t.units.Height+0.5), t.units.Short)
		t.Line("")
		return
	}
	u := t.units
	t.Line("CLIMBS, rated 0 to 10 for how hard each is where it stands, and what to do")
	for _, c := range t.plan.Climbs {
		name := page.Plain(c.Name)
		if name == "" {
			name = "Climb"
		}
		where := fmt.Sprintf("%5.1f-%.1f %s ", c.Climb.Start/u.Distance, c.Climb.Top/u.Distance, u.Long)
		t.Wrap(page.Pad(where, 15), fmt.Sprintf("%s: %.0f %s up in %.1f %s (%.1f %%), rated %.0f, %s at %s /%s. %s", page.Clip(name, 40),
			c.Rise/u.Height, u.Short, c.Length()/u.Distance, u.Long, 100*c.Gradient(), c.Rating.Value,
			say.Short(c.Took), say.MS(u.Pace(c.Pace)), u.Long, say.Sentence(c.Describe(u.Distance, u.Long))))
	}
	t.Line("")
}

func (t *sheet) cautions() {
	t.List("CAUTIONS", caution.Texts(t.plan))
}
