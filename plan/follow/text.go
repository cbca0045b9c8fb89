package follow

import (
	"fmt"
	"io"
	"math"
	"time"

	"isoeffort.example/plan"
)

// Text prints where the runner stands, in at most 80 columns. Its error is the writer's.
func (s *Standing) Text(w io.Writer) error {
	var t page
	t.line("%s", clip(fmt.Sprintf("%s: where you stand", courseName(s.Plan)), pageWidth))
	t.line("")
	t.standing(s)
	t.cutoffs(s.Cutoffs)
	t.notes(s.Warnings)
	t.cautions(s.Plan)
	_, err := io.WriteString(w, t.String())
	return err
}

// Text prints the plan for the rest, in at most 80 columns. Its error is the writer's.
func (r *Rest) Text(w io.Writer) error {
	var t page
	s := r.Standing
	t.line("%s", clip(fmt.Sprintf("%s: the rest of the race", courseName(s.Plan)), pageWidth))
	t.line("")
	t.standing(s)
	for i, words := range r.Words {
		label := ""
		if i == 0 {
			label = "Do"
		}
		t.entry(label, words)
	}
	t.entry("Then", fmt.Sprintf("finish at %s%s, with %s of the effort budget spent.", hms(r.Gun), clockWords(s.Clock(r.Gun)), percent(r.Budget)))
	if !r.SameGaits {
		t.entry("Walk", walkWords(r.Bouts))
	}
	t.line("")
	t.rest(r)
	t.cutoffs(r.Cutoffs)
	t.notes(s.Warnings)
	t.cautions(s.Plan)
	_, err := io.WriteString(w, t.String())
	return err
}

// standing says where the runner is.
func (t *page) standing(s *Standing) {
	place := fmt.Sprintf("%.1f km", s.Distance/1000)
	if s.Place != "" {
		place = plain(s.Place) + ", " + place
	}
	t.entry("Now", fmt.Sprintf("%s at %s%s: %s.", place, hms(s.Gun), clockWords(s.Clock(s.Gun)), lateness(s.Late)))
	t.entry("Spent", fmt.Sprintf("about %s of the effort budget; the plan has %s here.", percent(s.State.Spent), percent(s.PlannedBudget)))
	if s.Distance > 0 {
		t.entry("Effort", fmt.Sprintf("%.0f %% of what you could hold for an hour at this point, going by your times; the plan has %.0f %%.", 100*s.Intensity, 100*s.PlannedIntensity))
	}
	if s.finished() {
		t.line("")
		return
	}
	f := s.Forecast
	steady := fmt.Sprintf("%s if you keep to the plan's effort", hms(f.Steady.Gun))
	if f.Steady.Intensity < 0.995*s.Plan.Intensity/s.Today {
		steady = fmt.Sprintf("%s if you ease to what is left", hms(f.Steady.Gun))
	}
	if s.walking {
		steady = fmt.Sprintf("%s if you walk from here", hms(f.Steady.Gun))
	}
	if f.High > 0 {
		steady += fmt.Sprintf(" (nine times in ten between %s and %s)", hms(f.Low), hms(f.High))
	}
	t.entry("Finish", fmt.Sprintf("%s; %s", steady, soFarWords(f)))
	t.line("")
}

// soFarWords says where going on as before leads.
func soFarWords(f Forecast) string {
	if f.SpentAt > 0 {
		return fmt.Sprintf("going on as so far, your budget is spent by %.1f km.", f.SpentAt/1000)
	}
	return fmt.Sprintf("%s if you go on as so far.", hms(f.SoFar.Gun))
}

func clockWords(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return " (" + at.Round(time.Second).Format("15:04:05") + ")"
}

func courseName(p *plan.Plan) string {
	if name := plain(p.Course.Name()); name != "" {
		return clip(name, pageWidth-25)
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
func (t *page) rest(r *Rest) {
	if len(r.Splits) == 0 {
		return
	}
	t.line("TO COME (part: moving time; late: against the plan)")
	clocked := !r.Standing.Plan.Race.Start.IsZero()
	rows := [][]string{{"place", "km", "part", "stop", "gun time", "planned", "late"}}
	if clocked {
		rows[0] = append(rows[0], "clock")
	}
	for _, s := range r.Splits {
		stop := ""
		if s.Stop > 0 {
			stop = ms(s.Stop)
		}
		row := []string{plain(s.Name), fmt.Sprintf("%.1f", s.Distance/1000), hms(s.Took), stop, hms(s.Gun), hms(s.Planned), signed(s.Late)}
		if clocked {
			row = append(row, s.Clock.Round(time.Second).Format("15:04"))
		}
		rows = append(rows, row)
	}
	t.table(rows)
	t.line("")
}

// cutoffs prints how cutoffs stand.
func (t *page) cutoffs(all []Cutoff) {
	if len(all) == 0 {
		return
	}
	t.line("CUTOFFS (gun time; latest: here, to make it at this effort)")
	rows := [][]string{{"place", "km", "closes", "you", "in hand", "latest", ""}}
	for _, c := range all {
		latest := ""
		if c.Latest > 0 {
			latest = hms(c.Latest)
		}
		rows = append(rows, []string{plain(c.Name), fmt.Sprintf("%.1f", c.Distance/1000), hms(c.Limit), hms(c.Steady), signed(c.InHand), latest, c.Reach.String()})
	}
	t.table(rows)
	t.line("")
}

func (t *page) notes(warnings []string) {
	for _, w := range warnings {
		t.entry("Note", plain(w))
	}
	if len(warnings) > 0 {
		t.line("")
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

func (t *page) cautions(p *plan.Plan) {
	t.list("CAUTIONS", cautions(p))
}

// round is a share in whole per cent, for words.
func round(share float64) float64 { return math.Round(100 * share) }
