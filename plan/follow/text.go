package follow

import (
	"fmt"
	"io"
	"math"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// Text prints where the runner stands, in at most 80 columns. Its error is the writer's.
func (s *Standing) Text(w io.Writer) error {
	var t sheet
	t.Line("%s", page.Clip(fmt.Sprintf("%s: where you stand", courseName(s.Plan)), page.Width))
	t.Line("")
	t.standing(s)
	t.cutoffs(s.Cutoffs)
	t.notes(s.Warnings)
	t.cautions(s.Plan)
	return t.Print(w)
}

// Text prints the plan for the rest, in at most 80 columns. Its error is the writer's.
func (r *Rest) Text(w io.Writer) error {
	var t sheet
	s := r.Standing
	t.Line("%s", page.Clip(fmt.Sprintf("%s: the rest of the race", courseName(s.Plan)), page.Width))
	t.Line("")
	t.standing(s)
	for i, words := range r.Words {
		label := ""
		if i == 0 {
			label = "Do"
		}
		t.Entry(label, words)
	}
	t.Entry("Then", fmt.Sprintf("finish at %s%s, with %s of the effort budget spent.", say.HMS(r.Gun), clockWords(s.Clock(r.Gun)), say.Percent(r.Budget)))
	if !r.SameGaits {
		t.Entry("Walk", walkWords(r.Bouts))
	}
	t.Line("")
	t.rest(r)
	t.cutoffs(r.Cutoffs)
	t.notes(s.Warnings)
	t.cautions(s.Plan)
	return t.Print(w)
}

// standing says where the runner is.
func (t *sheet) standing(s *Standing) {
	place := fmt.Sprintf("%.1f km", s.Distance/1000)
	if s.Place != "" {
		place = page.Plain(s.Place) + ", " + place
	}
	t.Entry("Now", fmt.Sprintf("%s at %s%s: %s.", place, say.HMS(s.Gun), clockWords(s.Clock(s.Gun)), lateness(s.Late)))
	t.Entry("Spent", fmt.Sprintf("about %s of the effort budget; the plan has %s here.", say.Percent(s.State.Spent), say.Percent(s.PlannedBudget)))
	if s.Distance > 0 {
		t.Entry("Effort", fmt.Sprintf("%.0f %% of what you could hold for an hour at this point, going by your times; the plan has %.0f %%.", 100*s.Intensity, 100*s.PlannedIntensity))
	}
	if s.finished() {
		t.Line("")
		return
	}
	f := s.Forecast
	steady := fmt.Sprintf("%s if you keep to the plan's effort", say.HMS(f.Steady.Gun))
	if f.Steady.Intensity < 0.995*s.Plan.Intensity/s.Today {
		steady = fmt.Sprintf("%s if you ease to what is left", say.HMS(f.Steady.Gun))
	}
	if s.walking {
		steady = fmt.Sprintf("%s if you walk from here", say.HMS(f.Steady.Gun))
	}
	if f.High > 0 {
		steady += fmt.Sprintf(" (nine times in ten between %s and %s)", say.HMS(f.Low), say.HMS(f.High))
	}
	t.Entry("Finish", fmt.Sprintf("%s; %s", steady, soFarWords(f)))
	t.Line("")
}

// soFarWords says where going on as before leads.
func soFarWords(f Forecast) string {
	if f.SpentAt > 0 {
		return fmt.Sprintf("going on as so far, your budget is spent by %.1f km.", f.SpentAt/1000)
	}
	return fmt.Sprintf("%s if you go on as so far.", say.HMS(f.SoFar.Gun))
}

func clockWords(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return " (" + at.Round(time.Second).Format("15:04:05") + ")"
}

func courseName(p *plan.Plan) string {
	if name := page.Plain(p.Course.Name()); name != "" {
		return page.Clip(name, page.Width-25)
	}
	return "Course"
}

// walkWords says where to walk.
func walkWords(bouts []plan.Bout) string {
	text, n := "", 0
	for _, b := range bouts {
		if b.Gait != plan.Walk {
			continue
		}
		if n++; n > 1 {
			text += ", "
		}
		text += fmt.Sprintf("%.1f-%.1f", b.From/1000, b.To/1000)
	}
	if n == 0 {
		return "nowhere that was not planned: run on."
	}
	return "at " + text + " km; run the rest."
}

// rest prints the places to come.
func (t *sheet) rest(r *Rest) {
	if len(r.Splits) == 0 {
		return
	}
	t.Line("TO COME (part: moving time; late: against the plan)")
	clocked := !r.Standing.Plan.Race.Start.IsZero()
	rows := [][]string{{"place", "km", "part", "stop", "gun time", "planned", "late"}}
	if clocked {
		rows[0] = append(rows[0], "clock")
	}
	for _, s := range r.Splits {
		stop := ""
		if s.Stop > 0 {
			stop = say.Short(s.Stop)
		}
		row := []string{page.Plain(s.Name), fmt.Sprintf("%.1f", s.Distance/1000), say.HMS(s.Took), stop, say.HMS(s.Gun), say.HMS(s.Planned), say.Signed(s.Late)}
		if clocked {
			row = append(row, s.Clock.Round(time.Second).Format("15:04"))
		}
		rows = append(rows, row)
	}
	t.places(rows)
	t.Line("")
}

// cutoffs prints how cutoffs stand.
func (t *sheet) cutoffs(all []Cutoff) {
	if len(all) == 0 {
		return
	}
	t.Line("CUTOFFS (gun time; latest: here, to make it at this effort)")
	rows := [][]string{{"place", "km", "closes", "you", "in hand", "latest", ""}}
	for _, c := range all {
		latest := ""
		if c.Latest > 0 {
			latest = say.HMS(c.Latest)
		}
		rows = append(rows, []string{page.Plain(c.Name), fmt.Sprintf("%.1f", c.Distance/1000), say.HMS(c.Limit), say.HMS(c.Steady), say.Signed(c.InHand), latest, c.Reach.String()})
	}
	t.places(rows)
	t.Line("")
}

func (t *sheet) notes(warnings []string) {
	for _, w := range warnings {
		t.Entry("Note", page.Plain(w))
	}
	if len(warnings) > 0 {
		t.Line("")
	}
}

// Cautions stand under everything that this package prints.
var Cautions = [...]string{
	"Trust the course's markers over your watch.",
	"Never chase a lost minute or a cutoff: go by effort. The race's officials decide about cutoffs, and its medical team about going on; both come before this page.",
	"Stop and seek help for chest pain, collapse, confusion, dark urine or repeated vomiting.",
	"What is spent is an estimate from times: it does not know why you are late. If you feel worse than it says, believe the feeling.",
	"Drink to thirst, never a fixed large amount.",
}

func (t *sheet) cautions(p *plan.Plan) {
	t.List("CAUTIONS", cautions(p))
}

// round is a share in whole per cent, for words.
func round(share float64) float64 { return math.Round(100 * share) }
