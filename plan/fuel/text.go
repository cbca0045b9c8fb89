package fuel

import (
	"fmt"
	"io"
	"math"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// longList is how long a race may be for its intakes to be printed one by one. [Our own]
const longList = 10 * time.Hour

// hard is a space between a number and its unit, at which no line breaks.
const hard = page.HardSpace

// portionWords say what a portion looks like. Tables of food, from memory: a small banana of 100 g
// without its skin has 20 g of starch and sugars, fibre apart; gels have 20 to 30 g.
const portionWords = "20" + hard + "g of carbohydrate is about what a small gel or a small banana has. Read the label."

// WriteText writes the table as plain text of at most 80 columns, for a coach to hand to the
// runner, with its cautions. Times are to the minute, with a day where it is not that of the
// start; food is to 5 g. In races of over 10 hours a rule stands for the list of Intakes. It
// returns the writer's error.
func (t *Table) WriteText(w io.Writer, u Units) error {
	var p page.Page
	t.title(&p, u)
	t.head(&p)
	at := t.Finish - t.Duration
	for _, s := range t.Sections {
		p.Line("")
		t.section(&p, s, at, u)
		at += s.Duration
	}
	t.eatAt(&p, u)
	p.Line("")
	p.Line("Take care")
	for _, c := range append(append([]Caution{}, t.Cautions...), t.Notes...) {
		p.Wrap("- ", c.Text)
	}
	return p.Print(w)
}

func (t *Table) title(p *page.Page, u Units) {
	p.Line("FOOD AND DRINK")
	course := u.distance(t.Length)
	if name := page.Plain(t.Course); name != "" {
		course = name + ", " + course
	}
	finish := say.HM(t.Finish) + " after the gun"
	if !t.Start.IsZero() {
		finish = fmt.Sprintf("%s (%s)", t.clockWords(t.Finish), finish)
	}
	p.Wrap("", fmt.Sprintf("%s. Planned finish: %s.", course, finish))
	p.Line("")
}

func (t *Table) head(p *page.Page) {
	switch {
	case t.Rate.High == 0:
		p.Wrap("", "You need no food on the way.")
	case t.Suggested == 0:
		p.Wrap("", fmt.Sprintf("You need no food, and can eat up to %.0f g of carbohydrate an hour.", t.Rate.High))
	default:
		p.Wrap("", fmt.Sprintf("Eat %.0f to %.0f"+hard+"g of carbohydrate an hour. %s", down5(t.Rate.Low), t.Rate.High, t.comes()))
		p.Wrap("", portionWords)
	}
	p.Wrap("", fmt.Sprintf("The race uses about %.0f kcal at %.0f kg. You need not eat that back on the way.",
		100*math.Round(t.Energy.Kilocalories/100), t.Energy.Mass))
	p.Wrap("", "Drink to thirst. The ranges below are only a guide to what to have with you.")
}

// comes says what the plan comes to, which is less than it is made with: nothing is eaten in the
// first minutes and the last.
func (t *Table) comes() string {
	if t.Total.Eat == 0 {
		return "This plan has none."
	}
	return fmt.Sprintf("This plan comes to %.0f"+hard+"g in all, about %.0f"+hard+"g an hour.", t.Total.Eat, 5*math.Round(t.Total.PerHour/5))
}

// section writes one that begins at a gun time.
func (t *Table) section(p *page.Page, s Section, at time.Duration, u Units) {
	p.Wrap("", fmt.Sprintf("%s (%s) to %s (%s), %s", page.Plain(s.FromName), t.where(u, s.From, at),
		page.Plain(s.ToName), t.where(u, s.To, at+s.Duration), say.HM(s.Duration)))
	food := "no food"
	if s.Eat > 0 {
		food = fmt.Sprintf("%.0f g", s.Eat)
	}
	line := "Take with you: " + food + "."
	if s.Carbohydrate.High > 0 {
		line += " Range for this part: " + s.grams() + "."
	}
	p.Wrap("  ", line)
	if s.Short > 0 {
		p.Wrap("  ", fmt.Sprintf("You cannot carry it all: %.0f g left out.", s.Short))
	}
	p.Wrap("  ", s.drink(u))
	if s.FluidShort > 0 {
		p.Wrap("  ", "Long way without a station: you cannot carry all you may want. Drink to thirst before you leave; ask the race where there is water.")
	}
}

// where says where a place is and, if the start is known, when by the clock it is reached.
func (t *Table) where(u Units, x float64, gun time.Duration) string {
	if t.Start.IsZero() {
		return u.distance(x)
	}
	return u.distance(x) + ", " + t.clock(gun)
}

// grams is the range of food, to 5 g downwards but for what the plan itself asks for.
func (s Section) grams() string {
	r := Range{down5(s.Carbohydrate.Low), down5(s.Carbohydrate.High)}.with(s.Eat + s.Short)
	if r.Low == r.High {
		return fmt.Sprintf("%.0f g", r.High)
	}
	return fmt.Sprintf("%.0f to %.0f g", r.Low, r.High)
}

func down5(x float64) float64 { return 5 * math.Floor(x/5+1e-9) }

func (s Section) drink(u Units) string {
	switch {
	case s.Fluid.Low > 0:
		return "Drink: about " + u.drink(s.Fluid) + ", by thirst. Less is fine if you are not thirsty."
	case s.WBGT > MildWBGT:
		return "Drink: little is needed. Drink if you are thirsty."
	}
	return "Drink: nothing needed. A mouthful if you are thirsty."
}
