package write

import (
	_ "embed"
	"errors"
	"fmt"
	"html/template"
	"io"
	"math"
	"strings"

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
	Stops                 bool
	Size, Small           string // of the letters
	Risks                 []string
	Walks                 string
	Titles                []string
	Rows                  []cardRow
	Row                   string // height of a line
	LeftOut               string
	Climbs, Late          []string
	Cautions              []string
}

type cardRow struct {
	At, Place string
	Stop      string
	Risk      bool
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
		Name: page.Plain(first.Course.Name()), Unit: t.units.Long, Clock: !first.Race.Start.IsZero(), Cutoffs: len(first.Cutoffs) > 0,
		Ground: fmt.Sprintf("%.1f %s, %.0f %s up, %.0f %s down. Gun time: from the gun.", first.Course.Length()/t.units.Distance, t.units.Long,
			relief.Ascent/t.units.Height, t.units.Short, relief.Descent/t.units.Height, t.units.Short),
		Titles: titles(o.Titles, len(plans)), Warning: cardWarning(o, plans), Cautions: caution.Texts(first),
	}
	c.Rows = append(t.startRow(plans), t.cardRows(every, plans)...)
	left := len(c.Rows)
	c.Rows = thinned(c.Rows, mostRows)
	if left -= len(c.Rows); left > 0 {
		c.LeftOut = fmt.Sprintf("%s left out.", say.Count(left, "place is", "places are"))
	}
	c.Stops = len(first.Stops) > 0
	c.Hints = len(plans) == 1 && !(c.Clock && (c.Cutoffs || c.Stops)) && !(c.Cutoffs && c.Stops)
	c.fill()
	c.Walks = t.cardWalks()
	for _, m := range first.Cutoffs {
		if text := cardRisk(m); text != "" {
			c.Risks = append(c.Risks, text)
		}
	}
	for _, line := range o.Late {
		c.Late = append(c.Late, page.Plain(line))
	}
	c.Climbs = t.cardClimbs(mostClimbs - len(c.Late))
	return c
}

// fill makes lines and letters as large as the page allows.
func (c *card) fill() {
	row := math.Min(10, cardHeight/float64(len(c.Rows)+1))
	size := math.Min(10.5, 8.5*row/cardHeight*(mostRows+1))
	if len(c.Titles) > 1 || c.Clock && c.Cutoffs && c.Stops {
		size = math.Min(9, size)
	}
	c.Row, c.Size, c.Small = fmt.Sprintf("%.2fmm", row), fmt.Sprintf("%.1fpt", size), fmt.Sprintf("%.1fpt", 0.85*size)
}

// cardRisk says in a line how the plan stands to a cutoff, where that is not well.
func cardRisk(m plan.Margin) string {
	name := page.Plain(m.Name)
	switch {
	case m.InHand < 0:
		return fmt.Sprintf("This plan misses the cutoff at %s by %s. Do not chase it: the officials decide who goes on.", name, spare(m.InHand))
	case m.AtRisk:
		return fmt.Sprintf("The cutoff at %s is tight: %s in hand.", name, spare(m.InHand))
	}
	return ""
}

// cardWalks lists the planned walks.
func (t *sheet) cardWalks() string {
	if len(t.plan.Walks) == 0 {
		return ""
	}
	minutes := int(math.Round(t.plan.Walks[0].Took.Minutes()))
	var at []string
	for _, w := range t.plan.Walks {
		if t.plan.Race.Walks.Fixed {
			at = append(at, say.HM(w.Start))
		} else {
			at = append(at, fmt.Sprintf("%.1f", w.From/t.units.Distance))
		}
	}
	if t.plan.Race.Walks.Fixed {
		return fmt.Sprintf("Walk %d min by the watch, gun time %s.", minutes, strings.Join(at, ", "))
	}
	return fmt.Sprintf("Walk %d min at %s %s.", minutes, strings.Join(at, ", "), t.units.Long)
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

// unitsOf are those that go with a spacing.
func unitsOf(every plan.Spacing) say.Units {
	if miles := float64(every / plan.EveryMile); every > 0 && math.Abs(miles-math.Round(miles)) < 1e-9 {
		return say.Imperial()
	}
	return say.Metric()
}
