package fuel

import (
	"fmt"
	"io"
	"math"
	"strings"
	"time"
	"unicode/utf8"
)

// Units says how distances and drink are printed. Grams are grams everywhere.
type Units int

// The units: kilometres and millilitres, or miles and US fluid ounces.
const (
	Metric Units = iota
	Imperial
)

// Exact by definition: the international mile, and the US fluid ounce of 231/128 cubic inches.
const (
	metresPerMile = 1609.344
	mlPerOunce    = 29.5735295625
)

const width = 80 // columns

func (u Units) distance(m float64) string {
	if u == Imperial {
		return fmt.Sprintf("%.1f mi", m/metresPerMile)
	}
	return fmt.Sprintf("%.1f km", m/1000)
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
	var b strings.Builder
	b.WriteString("FOOD AND DRINK\n\n")
	t.head(&b)
	for _, s := range t.Sections {
		b.WriteString("\n")
		s.write(&b, u)
	}
	t.eatAt(&b, u)
	b.WriteString("\nTake care\n")
	for _, c := range append(append([]Caution{}, t.Cautions...), t.Notes...) {
		wrap(&b, "- ", c.Text)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (t *Table) head(b *strings.Builder) {
	switch {
	case t.Rate.High == 0:
		wrap(b, "", fmt.Sprintf("You are out for %s. You need no food on the way.", hm(t.Duration)))
	case t.Suggested == 0:
		wrap(b, "", fmt.Sprintf("You are out for %s. You need no food, and can eat up to %.0f g an hour.", hm(t.Duration), t.Rate.High))
	default:
		wrap(b, "", fmt.Sprintf("You are out for %s. Eat %.0f to %.0f g of carbohydrate an hour. This plan is made with about %.0f g an hour: %.0f g in all.",
			hm(t.Duration), t.Rate.Low, t.Rate.High, t.Suggested, t.Total.Eat))
	}
	wrap(b, "", fmt.Sprintf("The race uses about %.0f kcal (%.0f kJ) at %.0f kg. You need not eat that back on the way.",
		100*math.Round(t.Energy.Kilocalories/100), 100*math.Round(t.Energy.Kilojoules/100), t.Energy.Mass))
	wrap(b, "", "Drink to thirst. The ranges below are only a guide to what to have with you.")
}

func (s *Section) write(b *strings.Builder, u Units) {
	wrap(b, "", fmt.Sprintf("%s (%s) to %s (%s), %s", s.FromName, u.distance(s.From), s.ToName, u.distance(s.To), hm(s.Duration)))
	food := "no food"
	if s.Eat > 0 {
		food = fmt.Sprintf("%.0f g", s.Eat)
	}
	line := "Take with you: " + food + "."
	if s.Carbohydrate.High > 0 {
		line += fmt.Sprintf(" Range for this part: %.0f to %.0f g.", math.Floor(s.Carbohydrate.Low), math.Floor(s.Carbohydrate.High))
	}
	wrap(b, "  ", line)
	if s.Short > 0 {
		wrap(b, "  ", fmt.Sprintf("You cannot carry it all: %.0f g left out.", s.Short))
	}
	wrap(b, "  ", "Drink: about "+u.drink(s.Fluid)+", by thirst. Less is fine if you are not thirsty.")
	if s.FluidShort > 0 {
		wrap(b, "  ", "This may be more than you can carry. Look for water on the way.")
	}
}

func (t *Table) eatAt(b *strings.Builder, u Units) {
	if len(t.Intakes) == 0 {
		return
	}
	b.WriteString("\nWhen to eat (time since the gun)\n")
	for _, i := range t.Intakes {
		fmt.Fprintf(b, "  %6s  %8s  %3.0f g\n", hm(i.Time), u.distance(i.Distance), i.Grams)
	}
}

// hm is a duration as h:mm, rounded to the minute.
func hm(d time.Duration) string {
	minutes := int(d.Round(time.Minute).Minutes())
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

// wrap writes a paragraph behind a prefix, further lines indented as far. A word too long for a line is cut.
func wrap(b *strings.Builder, prefix, text string) {
	indent := strings.Repeat(" ", len(prefix))
	line, empty := prefix, true
	for _, word := range strings.Fields(text) {
		for {
			room := width - utf8.RuneCountInString(line)
			if !empty {
				room--
			}
			if n := utf8.RuneCountInString(word); n <= room {
				if !empty {
					line += " "
				}
				line, empty = line+word, false
				break
			}
			if empty {
				r := []rune(word)
				b.WriteString(line + string(r[:room]) + "\n")
				word = string(r[room:])
			} else {
				b.WriteString(line + "\n")
			}
			line, empty = indent, true
		}
	}
	b.WriteString(line + "\n")
}
