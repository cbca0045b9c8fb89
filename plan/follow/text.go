package follow

import (
	"fmt"
	"io"
	"math"
	"strings"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// Text prints where the runner stands, in at most 80 columns. Its error is the writer's.
func (s *Standing) Text(w io.Writer) error {
	var t sheet
	t.Line("%s", page.Clip(fmt.Sprintf("%s: where you stand", courseName(s.Plan)), page.Width))
	t.Line("")
	t.now(s)
	t.ahead(s)
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
	t.now(s)
	t.Entry("Do", strings.Join(r.Words, " "))
	t.Entry("Finish", fmt.Sprintf("%s%s, %s%s.", timeWords(r.Gun), clockWords(s.Plan, r.Gun), lateness(r.Late), r.spread()))
	if !r.SameGaits {
		t.Entry("Walk", walkWords(s.Plan, r.Bouts))
	}
	t.Line("")
	t.rest(r)
	t.cutoffs(r.Cutoffs)
	t.notes(s.Warnings)
	t.cautions(s.Plan)
	return t.Print(w)
}

// leastSpent is the share of the budget from which it is worth words.
const leastSpent = 0.01

// now says where the runner is.
func (t *sheet) now(s *Standing) {
	place := fmt.Sprintf("%.1f km", s.Distance/1000)
	if s.Place != "" {
		place = page.Plain(s.Place) + ", " + place
	}
	t.Entry("Now", fmt.Sprintf("%s at %s%s: %s.", place, say.HMS(s.Gun), clockWords(s.Plan, s.Gun), lateness(s.Late)))
	if s.State.Spent >= leastSpent && s.PlannedBudget >= leastSpent {
		t.Entry("Spent", spentWords(s.State.Spent, s.PlannedBudget))
	}
	if s.Distance > 0 {
		t.Entry("Effort", fmt.Sprintf("going by your times %s: %s.", beside(s.Intensity, s.PlannedIntensity), talk(s.Intensity)))
	}
}

// ahead says where going on leads.
func (t *sheet) ahead(s *Standing) {
	if s.finished() {
		t.Line("")
		return
	}
	f := s.Forecast
	steady := "%s%s at the planned effort"
	switch {
	case s.walking:
		steady = "%s%s if you walk from here"
	case !s.holds:
		steady = "%s%s if you ease to what you have left"
	}
	text := fmt.Sprintf(steady, timeWords(f.Steady.Gun), clockWords(s.Plan, f.Steady.Gun))
	if f.High > 0 {
		text += fmt.Sprintf(" (nine times in ten between %s and %s)", timeWords(f.Low), timeWords(f.High))
	}
	t.Entry("Finish", text+"; "+soFarWords(f))
	t.Line("")
}

// soFarWords says where going on as before leads.
func soFarWords(f Forecast) string {
	if f.SpentAt > 0 {
		return fmt.Sprintf("going on as so far, you have nothing left by %.1f km.", f.SpentAt/1000)
	}
	return fmt.Sprintf("%s if you go on as so far.", timeWords(f.SoFar.Gun))
}

// spread is the interval of the finish, where the rest is the steady one.
func (r *Rest) spread() string {
	f := r.Standing.Forecast
	if f.High == 0 || r.Gun != f.Steady.Gun {
		return ""
	}
	return fmt.Sprintf("; nine times in ten between %s and %s", timeWords(f.Low), timeWords(f.High))
}

// mostRanges is how many walks are listed one by one.
const mostRanges = 6

// walkWords says where to walk.
func walkWords(p *plan.Plan, bouts []plan.Bout) string {
	var ranges []string
	up, walked, runs := 0.0, 0.0, 0
	for _, b := range bouts {
		if b.Gait != plan.Walk {
			runs++
			continue
		}
		ranges = append(ranges, fmt.Sprintf("%.1f-%.1f", b.From/1000, b.To/1000))
		walked += b.To - b.From
		if relief := p.Course.ReliefBetween(b.From, b.To); relief.Ascent > relief.Descent {
			up += b.To - b.From
		}
	}
	switch {
	case runs == 0:
		return "all the way."
	case len(ranges) == 0:
		return "nowhere: run on."
	case len(ranges) <= mostRanges:
		return "at " + strings.Join(ranges, ", ") + " km; run the rest."
	}
	ground := "in all, up and down"
	if up > 0.8*walked {
		ground = "in all, the steeper climbs"
	}
	return fmt.Sprintf("%d stretches, %.0f km %s; the next one at %s km. Run the rest.", len(ranges), walked/1000, ground, ranges[0])
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
			row = append(row, clockCell(r.Standing.Plan, s.Clock))
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
		rows = append(rows, []string{page.Plain(c.Name), fmt.Sprintf("%.1f", c.Distance/1000), say.HMS(c.Limit), say.HMS(c.Steady), say.Signed(c.InHand), latest, c.Reach.words()})
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
