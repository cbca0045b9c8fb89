package write

import (
	_ "embed"
	"errors"
	"fmt"
	"html/template"
	"io"
	"math"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
	"isoeffort.example/plan/caution"
	"isoeffort.example/plan/forecast"
)

// CardOptions of Card. The zero value is ready.
type CardOptions struct {
	// Titles head the schedules. Left out, the first is "plan".
	Titles []string

	// Late are lines of what to do when late, printed on the back.
	Late []string

	// Goal is the forecast's probability of making the goal of the first plan, nil if none
	// was made. By forecast.Allowed it decides, with the budget, whether there is a card.
	Goal *forecast.Chance

	// Override prints a card for a goal beyond the runner all the same, with a warning on
	// both of its sides.
	Override bool
}

// ErrBeyond is wrapped by the error for a card of a goal that the runner cannot make, or
// hardly: a card is followed.
var ErrBeyond = errors.New("the goal is beyond this runner: no card without an override")

// mostPlans is how many schedules a card has room for.
const mostPlans = 3

//go:embed card.html
var cardPage string

var cardTemplate = template.Must(template.New("card").Parse(cardPage))

// Card prints a card to fold as a page of HTML that prints on one side of A4: on the
// front one line for each landmark, or each split of a spacing, with the times of up to
// three plans of one course side by side; on the back the climbs, what to do when late,
// and the cautions. It needs nothing else: no script, no font, no picture.
// A card of one plan has seconds, and how each stretch is covered.
//
// Where there are more lines than the page holds, those without an aid station, a stop or a
// cutoff are left out, evenly, and the card says how many.
//
// The error wraps ErrBeyond, ErrCard or is the writer's. Card panics where plan.Splits
// does.
func Card(w io.Writer, every plan.Spacing, o CardOptions, plans ...*plan.Plan) error {
	if err := checkCard(o, plans); err != nil {
		return err
	}
	return cardTemplate.Execute(w, newCard(every, o, plans))
}

// ErrCard is wrapped by the error for plans that do not fit on a card together.
var ErrCard = errors.New("plans do not make a card")

func checkCard(o CardOptions, plans []*plan.Plan) error {
	if len(plans) == 0 || len(plans) > mostPlans {
		return fmt.Errorf("write: %w: %d plans, 1 to %d wanted", ErrCard, len(plans), mostPlans)
	}
	if len(o.Titles) > len(plans) {
		return fmt.Errorf("write: %w: %d titles for %d plans", ErrCard, len(o.Titles), len(plans))
	}
	for _, p := range plans[1:] {
		if p.Course != plans[0].Course {
			return fmt.Errorf("write: %w: they are of several courses", ErrCard)
		}
	}
	if o.Override {
		return nil
	}
	for i, p := range plans {
		if ok, reason := forecast.Allowed(o.probability(i), p.Budget); !ok {
			return fmt.Errorf("write: %w: %s; the fastest sensible gun time is %s", ErrBeyond, reason, say.HMS(p.Best.Gun))
		}
	}
	return nil
}

// probability is the forecast's for plan i, 1 where there is none.
func (o CardOptions) probability(i int) float64 {
	if o.Goal == nil || i > 0 {
		return 1
	}
	return o.Goal.P
}

// card is what the page is filled with.
type card struct {
	Name, Ground, Warning string
	Unit                  string
	Clock, Cutoffs, Hints bool
	Titles                []string
	Rows                  []cardRow
	Row                   string // height of a line
	LeftOut               string
	Climbs, Late          []string
	Cautions              []string
}

type cardRow struct {
	At, Place string
	Station   bool
	Times     []string
	Clock     string
	Cutoff    string
	Gait      string
}

func newCard(every plan.Spacing, o CardOptions, plans []*plan.Plan) card {
	first := plans[0]
	t := sheet{plan: first, units: unitsOf(every)}
	relief := first.Course.Relief()
	c := card{
		Name: page.Plain(first.Course.Name()), Unit: t.units.Long, Clock: !first.Race.Start.IsZero(), Cutoffs: len(first.Cutoffs) > 0, Hints: len(plans) == 1,
		Ground: fmt.Sprintf("%.1f %s, %.0f %s up, %.0f %s down. Gun time: from the gun.", first.Course.Length()/t.units.Distance, t.units.Long,
			relief.Ascent/t.units.Height, t.units.Short, relief.Descent/t.units.Height, t.units.Short),
		Titles: titles(o.Titles, len(plans)), Warning: cardWarning(o, plans), Cautions: caution.Texts(first),
	}
	c.Rows = t.cardRows(every, plans)
	left := len(c.Rows)
	c.Rows = thinned(c.Rows, mostRows)
	if left -= len(c.Rows); left > 0 {
		c.LeftOut = fmt.Sprintf("%s left out.", say.Count(left, "place is", "places are"))
	}
	c.Row = fmt.Sprintf("%.2fmm", math.Min(8, cardHeight/float64(len(c.Rows)+1)))
	for _, line := range o.Late {
		c.Late = append(c.Late, page.Plain(line))
	}
	c.Climbs = t.cardClimbs(mostClimbs - len(c.Late))
	return c
}

// Room on a card: the height in mm of its table, and how many lines there are on either
// side.
const (
	cardHeight = 236
	mostRows   = 44
	mostClimbs = 22
	fewClimbs  = 8

	widestOnCard = 32 // columns of a place: two lines
)

func titles(given []string, n int) []string {
	out := []string{"plan", "slower", "cutoffs"}[:n]
	for i, s := range given {
		out[i] = page.Plain(s)
	}
	return out
}

// cardWarning is printed on both sides where a card was asked for against the rule.
func cardWarning(o CardOptions, plans []*plan.Plan) string {
	for i, p := range plans {
		if text := forecast.Warning(o.probability(i), p.Budget); text != "" {
			return text
		}
	}
	return ""
}

// cardRows are the lines of all places: the splits, and cutoffs between them.
func (t *sheet) cardRows(every plan.Spacing, plans []*plan.Plan) []cardRow {
	first := plans[0]
	var rows []cardRow
	from := 0.0
	for _, s := range first.Splits(every) {
		for _, m := range first.Cutoffs {
			if m.Distance > from && m.Distance < s.Distance {
				rows = append(rows, t.cardRow(plans, first.Between(from, m.Distance), page.Plain(m.Name)))
				from = m.Distance
			}
		}
		if from > s.Distance-s.Length { // a cutoff cut it
			landmark := s.Landmark
			s = first.Between(from, s.Distance)
			s.Landmark = landmark
		}
		rows = append(rows, t.cardRow(plans, s, t.place(s)))
		from = s.Distance
	}
	return rows
}

func (t *sheet) cardRow(plans []*plan.Plan, s plan.Split, place string) cardRow {
	r := cardRow{At: fmt.Sprintf("%.1f", s.Distance/t.units.Distance), Place: page.Clip(place, widestOnCard), Clock: t.clock(s.Elapsed), Gait: gaitHint(s)}
	for _, p := range plans {
		if at := p.Elapsed(s.Distance); len(plans) == 1 {
			r.Times = append(r.Times, say.HMS(at))
		} else {
			r.Times = append(r.Times, say.HM(at))
		}
	}
	for _, stop := range t.plan.Stops {
		r.Station = r.Station || stop.Distance == s.Distance
	}
	for _, m := range t.plan.Cutoffs {
		if m.Distance == s.Distance {
			r.Cutoff = say.HM(m.Limit)
		}
	}
	return r
}

// gaitHint is what a stretch is covered by, in a word.
func gaitHint(s plan.Split) string {
	if s.Gait == plan.Mixed {
		return fmt.Sprintf("walk %.0f %%", 100*s.WalkingShare)
	}
	return s.Gait.String()
}

// thinned leaves out lines, evenly, until there are no more than so many; those with a
// cutoff, a station and the finish stay as long as there is room for them.
func thinned(rows []cardRow, most int) []cardRow {
	if len(rows) <= most {
		return rows
	}
	kept, rest := 0, 0
	matters := func(i int) bool { return rows[i].Cutoff != "" || rows[i].Station || i == len(rows)-1 }
	for i := range rows {
		if matters(i) {
			kept++
		}
	}
	if rest = most - kept; rest < 0 { // too many of them: every so many of all
		matters, kept, rest = func(i int) bool { return i == len(rows)-1 }, 1, most-1
	}
	var out []cardRow
	seen, taken, others := 0, 0, len(rows)-kept
	for i, r := range rows {
		if matters(i) {
			out = append(out, r)
			continue
		}
		if seen++; taken < seen*rest/others {
			taken++
			out = append(out, r)
		}
	}
	return out
}

// cardClimbs are the climbs for the back, the hardest ones where there are many.
func (t *sheet) cardClimbs(room int) []string {
	room = max(room, fewClimbs)
	least := 0.0
	for len(t.climbsFrom(least)) > room {
		least += 0.25
	}
	var lines []string
	for _, c := range t.climbsFrom(least) {
		name := page.Plain(c.Name)
		if name == "" {
			name = "climb"
		}
		lines = append(lines, fmt.Sprintf("%.1f-%.1f %s: %s, %.0f %s up, rated %.0f. %s", c.Climb.Start/t.units.Distance, c.Climb.Top/t.units.Distance,
			t.units.Long, page.Clip(name, 24), c.Rise/t.units.Height, t.units.Short, c.Rating.Value, say.Sentence(c.Describe(t.units.Distance, t.units.Long))))
	}
	return lines
}

// climbsFrom are the climbs rated so hard or harder.
func (t *sheet) climbsFrom(least float64) (out []plan.Climb) {
	for _, c := range t.plan.Climbs {
		if c.Rating.Value >= least {
			out = append(out, c)
		}
	}
	return out
}

// unitsOf are those that go with a spacing.
func unitsOf(every plan.Spacing) say.Units {
	if miles := float64(every / plan.EveryMile); every > 0 && math.Abs(miles-math.Round(miles)) < 1e-9 {
		return say.Imperial()
	}
	return say.Metric()
}
