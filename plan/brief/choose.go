package brief

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"isoeffort.example/internal/page"
)

// wordsFor is about how many words are told of a course of a length in metres; see the
// package comment.
func wordsFor(length float64) int {
	return int(math.Min(170+8*length/1000, 1250))
}

// choose says all lines, and keeps those for which there are words.
func (t *teller) choose() {
	words := t.words.over(English())
	all := []*[]Line{&t.opening, &t.lines, &t.closing}
	var order []*Line
	for _, list := range all {
		for i := range *list {
			l := &(*list)[i]
			l.Text = words.say(*l, t.measure)
			order = append(order, l)
		}
	}
	slices.SortStableFunc(order, func(a, b *Line) int { return -cmp.Compare(a.weight, b.weight) })
	left := wordsFor(t.length)
	for _, l := range order {
		n := len(strings.Fields(l.Text))
		if l.weight < must-100 && n > left || l.Text == "" {
			l.weight = -1
			continue
		}
		left -= n
	}
	nth := [kinds]int{}
	for _, list := range all {
		*list = slices.DeleteFunc(*list, func(l Line) bool { return l.weight < 0 })
		for i := range *list {
			l := &(*list)[i]
			l.Nth = nth[l.Kind]
			nth[l.Kind]++
			l.Text = words.say(*l, t.measure)
		}
	}
}

// briefing puts the lines into their sections.
func (t *teller) briefing() *Briefing {
	words := t.words.over(English())
	b := &Briefing{
		Course: page.Plain(t.plan.Course.Name()), Length: t.length, Imperial: t.measure.Imperial,
		Opening: t.opening, Closing: t.closing, Cautions: cautions(t.plan, words), words: words,
	}
	for _, l := range t.lines {
		at := l.From
		switch l.Kind {
		case Check, Cutoff, Stop, ToGo, Halfway, LastClimb:
			at -= 1e-6 // on arrival: where two sections meet, the earlier
		}
		s := &t.sections[t.sectionAt(at)]
		s.Lines = append(s.Lines, l)
	}
	for _, s := range t.sections {
		if len(s.Lines) > 0 {
			s.Heading = words.Heading(s, t.measure)
			b.Sections = append(b.Sections, s)
		}
	}
	return b
}

// Words counts the words of the lines, cautions and headings not counted.
func (b *Briefing) Words() (n int) {
	for l := range b.Lines() {
		n += len(strings.Fields(l.Text))
	}
	return n
}

// Lines are all lines in the order in which they are told.
func (b *Briefing) Lines() iter.Seq[Line] {
	return func(yield func(Line) bool) {
		lists := [][]Line{b.Opening}
		for _, s := range b.Sections {
			lists = append(lists, s.Lines)
		}
		for _, l := range slices.Concat(append(lists, b.Closing)...) {
			if !yield(l) {
				return
			}
		}
	}
}
