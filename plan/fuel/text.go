package fuel

import (
	"fmt"
	"io"
	"math"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// Units says how distances and drink are printed. Grams are grams everywhere.
type Units int

// The units: kilometres and millilitres, or miles and US fluid ounces.
const (
	Metric Units = iota
	Imperial
)

// mlPerOunce is exact by definition: the US fluid ounce is 231/128 cubic inches.
const mlPerOunce = 29.5735295625

func (u Units) distance(m float64) string {
	if u == Imperial {
		return say.Imperial().At(m)
	}
	return say.Metric().At(m)
}

// drink rounds down to 50 ml or an ounce: a range is no measurement, and down is the safe side.
func (u Units) drink(r Range) string {
	step, unit, per := 50.0, "ml", 1.0
	if u == Imperial {
		step, unit, per = 1, "oz", mlPerOunce
	}
	down := func(x float64) float64 { return step * math.Floor(x/per/step+1e-9) }
	return fmt.Sprintf("%.0f to %.0f %s", down(r.Low), down(r.High), unit)
}

// WriteText writes the table as plain text of at most 80 columns, for a coach to hand to the
// runner, with its cautions. It returns the writer's error.
func (t *Table) WriteText(w io.Writer, u Units) error {
	var p page.Page
	p.Line("FOOD AND DRINK")
	p.Line("")
	t.head(&p)
	for _, s := range t.Sections {
		p.Line("")
		s.write(&p, u)
	}
	t.eatAt(&p, u)
	p.Line("")
	p.Line("Take care")
	for _, c := range append(append([]Caution{}, t.Cautions...), t.Notes...) {
		p.Wrap("- ", c.Text)
	}
	return p.Print(w)
}

func (t *Table) head(p *page.Page) {
	switch {
	case t.Rate.High == 0:
		p.Wrap("", fmt.Sprintf("You are out for %s. You need no food on the way.", say.HM(t.Duration)))
	case t.Suggested == 0:
		p.Wrap("", fmt.Sprintf("You are out for %s. You need no food, and can eat up to %.0f g an hour.", say.HM(t.Duration), t.Rate.High))
	default:
		p.Wrap("", fmt.Sprintf("You are out for %s. Eat %.0f to %.0f g of carbohydrate an hour. This plan is made with about %.0f g an hour: %.0f g in all.",
			say.HM(t.Duration), t.Rate.Low, t.Rate.High, t.Suggested, t.Total.Eat))
	}
	p.Wrap("", fmt.Sprintf("The race uses about %.0f kcal (%.0f kJ) at %.0f kg. You need not eat that back on the way.",
		100*math.Round(t.Energy.Kilocalories/100), 100*math.Round(t.Energy.Kilojoules/100), t.Energy.Mass))
	p.Wrap("", "Drink to thirst. The ranges below are only a guide to what to have with you.")
}

func (s *Section) write(p *page.Page, u Units) {
	p.Wrap("", fmt.Sprintf("%s (%s) to %s (%s), %s", page.Plain(s.FromName), u.distance(s.From), page.Plain(s.ToName), u.distance(s.To), say.HM(s.Duration)))
	food := "no food"
	if s.Eat > 0 {
		food = fmt.Sprintf("%.0f g", s.Eat)
	}
	line := "Take with you: " + food + "."
	if s.Carbohydrate.High > 0 {
		line += fmt.Sprintf(" Range for this part: %.0f to %.0f g.", math.Floor(s.Carbohydrate.Low), math.Floor(s.Carbohydrate.High))
	}
	p.Wrap("  ", line)
	if s.Short > 0 {
		p.Wrap("  ", fmt.Sprintf("You cannot carry it all: %.0f g left out.", s.Short))
	}
	p.Wrap("  ", "Drink: about "+u.drink(s.Fluid)+", by thirst. Less is fine if you are not thirsty.")
	if s.FluidShort > 0 {
		p.Wrap("  ", "This may be more than you can carry. Look for water on the way.")
	}
}

func (t *Table) eatAt(p *page.Page, u Units) {
	if len(t.Intakes) == 0 {
		return
	}
	p.Line("")
	p.Line("When to eat (time since the gun)")
	for _, i := range t.Intakes {
		p.Line("  %6s  %8s  %3.0f g", say.HM(i.Time), u.distance(i.Distance), i.Grams)
	}
}
