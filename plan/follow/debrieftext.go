package follow

import (
	"fmt"
	"io"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// Text prints the debrief in at most 80 columns. Its error is the writer's.
func (d *Debrief) Text(w io.Writer) error {
	var t sheet
	t.Line("%s", page.Clip(fmt.Sprintf("%s: debrief", courseName(d.Plan)), page.Width))
	t.Line("")
	t.result(d)
	t.sections(d)
	t.halts(d)
	t.notes(d.Warnings)
	t.List("HOW FAR TO TRUST THIS", []string{
		"Effort is reckoned from your times by the numbers that the plan rests on, averaged over 20 minutes. Heat, illness, a wrong turn or a sore foot all look like little effort.",
		"A bad patch in one race is no reason to train through it. If something hurt or you felt ill, see a doctor before the next race.",
	})
	return t.Print(w)
}

// result says how the whole race went.
func (t *sheet) result(d *Debrief) {
	t.Entry("Finish", fmt.Sprintf("%s, %s.", say.HMS(d.Gun), lateness(d.Late)))
	t.Entry("Moving", fmt.Sprintf("%s, planned %s (%s).", say.HMS(d.Moving), say.HMS(d.PlannedMoving), say.Signed(d.Moving-d.PlannedMoving)))
	if d.Halted > 0 || d.PlannedStopped > 0 {
		t.Entry("Halts", fmt.Sprintf("%s, planned %s (%s).", say.HMS(d.Halted), say.HMS(d.PlannedStopped), say.Signed(d.Halted-d.PlannedStopped)))
	}
	t.Entry("Effort", say.Sentence(beside(d.Intensity, d.PlannedIntensity)))
	if d.Budget >= leastSpent {
		t.Entry("Spent", debriefSpent(d))
	}
	if d.EvenMoving > 0 {
		t.Entry("Evenly", evenWords(d))
	}
	t.Entry("Pacing", d.pacingWords())
	t.Line("")
}

// debriefSpent is what was spent of the budget.
func debriefSpent(d *Debrief) string {
	got := say.Percent(d.Budget)
	if d.Budget > farBeyond {
		got = "far more than all"
	}
	return fmt.Sprintf("%s of what you have to give in one race, planned %s.", got, say.Percent(d.PlannedBudget))
}

// worthSaying is the share of the moving time from which uneven effort is said to have cost
// something. [Our own.]
const worthSaying = 0.001

// evenWords says what the same budget would have given.
func evenWords(d *Debrief) string {
	text := fmt.Sprintf("spread as planned, what you gave makes %s of moving: ", say.HMS(d.EvenMoving))
	switch {
	case d.Uneven >= time.Duration(worthSaying*float64(d.Moving)):
		return text + "uneven effort took " + spell(d.Uneven) + "."
	case d.Pacing.Verdict == Even || d.Pacing.Verdict == TooShort:
		return text + "nothing was lost by uneven effort."
	}
	return text + "uneven effort took little time, and more of your strength."
}

// pacingWords says how the effort ran.
func (d *Debrief) pacingWords() string {
	p := d.Pacing
	opening := "The first fifth was as planned."
	switch off := round(p.Opening - 1); {
	case off > 0:
		opening = fmt.Sprintf("You opened %.0f %% above the planned effort.", off)
	case off < 0:
		opening = fmt.Sprintf("You opened %.0f %% below the planned effort.", -off)
	}
	at := fmt.Sprintf("From about %.1f km (%s) your effort fell, by %.0f %% at the finish, more than the tiring that the plan reckons with.", p.From/1000, say.HM(p.Gun), round(p.Drop))
	switch p.Verdict {
	case TooShort:
		return opening + " The race is too short, or its splits too few, to say more."
	case OpenedTooFast:
		return opening + " After that your effort fell steadily: you started too fast. Next time open easier."
	case Faded:
		return opening + " " + at + " It was no fast start: look at food, drink, heat and legs."
	case OpenedAndFaded:
		return opening + " " + at + " One race cannot tell how much of that the fast start brought on."
	case FellSteadily:
		return opening + " Your effort fell steadily from the start. That is how a fast start for the day looks, and how tiring more than the plan reckons with looks: one race cannot tell them apart."
	}
	return opening + " Your effort did not fall."
}

func (t *sheet) sections(d *Debrief) {
	if len(d.Sections) == 0 {
		return
	}
	t.Line("SECTIONS (level: pace of that effort on the level, where you mostly run;")
	t.Line("effort in %% of that of one hour; spent in %% of what you have to give)")
	rows := [][]string{{"to", "km", "moving", "lost", "level", "plan", "effort", "plan", "spent", "plan", "late"}}
	for _, s := range d.Sections {
		rows = append(rows, []string{
			page.Plain(s.Name), fmt.Sprintf("%.1f", s.To/1000), say.HMS(s.Took), say.Signed(s.Lost), paceCell(s.LevelPace), paceCell(s.PlannedLevelPace),
			fmt.Sprintf("%.0f", 100*s.Intensity), fmt.Sprintf("%.0f", 100*s.PlannedIntensity),
			fmt.Sprintf("%.1f", 100*s.Budget), fmt.Sprintf("%.1f", 100*s.PlannedBudget), say.Signed(s.Late),
		})
	}
	t.places(rows)
	t.Line("")
}

func paceCell(d time.Duration) string { return hmsOrNone(d > 0, say.Short(d)) }

func (t *sheet) halts(d *Debrief) {
	if len(d.Halts) == 0 {
		return
	}
	t.Line("HALTS")
	rows := [][]string{{"place", "km", "gun time", "halt", "planned"}}
	for _, h := range d.Halts {
		planned := ""
		if h.Planned > 0 {
			planned = say.Short(h.Planned)
		}
		rows = append(rows, []string{page.Plain(h.Place), fmt.Sprintf("%.1f", h.Distance/1000), say.HMS(h.Gun), say.Short(h.Took), planned})
	}
	t.places(rows)
	t.Line("")
}
