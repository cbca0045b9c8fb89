package chart

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"isoeffort.example/plan"
)

// A Passage is when a runner came by a place.
type Passage struct {
	Name     string        // empty for that of a landmark within 50 m
	Distance float64       // m from the start
	Time     time.Duration // since the runner's gun, on arrival
}

// Against draws a race as run against its plan: minutes behind it over the distance, with
// the places passed. The line between passages is straight; what happened there is not
// known. A start at the plan's own time is drawn unless a passage says otherwise.
//
// Passages must ascend in distance, from 0 to 1 m beyond the finish at most, and in time,
// or the error wraps ErrPassage; so it does for none. It wraps ErrPlan or ErrOption else.
func Against(p *plan.Plan, actual []Passage, o Options) (*Figure, error) {
	o, err := o.checked()
	if err != nil {
		return nil, err
	}
	if p == nil || p.Course == nil || p.Traverse() == nil {
		return nil, fmt.Errorf("chart: against: %w", ErrPlan)
	}
	if err := checkPassages(actual, p.Course.Length()); err != nil {
		return nil, err
	}
	page := newPage(o)
	page.against(p, actual)
	return page.done()
}

func checkPassages(list []Passage, length float64) error {
	if len(list) == 0 {
		return fmt.Errorf("chart: no passage: %w", ErrPassage)
	}
	for i, a := range list {
		switch {
		case !(a.Distance >= 0 && a.Distance <= length+1):
			return fmt.Errorf("chart: passage %d at %g m of a course of %.0f m: %w", i+1, a.Distance, length, ErrPassage)
		case i > 0 && !(a.Distance > list[i-1].Distance && a.Time > list[i-1].Time):
			return fmt.Errorf("chart: passage %d at %.0f m is not after the one before: %w", i+1, a.Distance, ErrPassage)
		case a.Time < 0 || a.Time > longest:
			return fmt.Errorf("chart: passage %d at %.0f m after %v: %w", i+1, a.Distance, a.Time, ErrPassage)
		}
	}
	return nil
}

// longest is the longest race that is drawn.
const longest = 1000 * time.Hour

func (p *page) against(pl *plan.Plan, actual []Passage) {
	c := pl.Course
	late := make([]float64, len(actual))
	for i, a := range actual {
		late[i] = (a.Time - gunTime(pl, a.Distance)).Minutes()
	}
	last := actual[len(actual)-1]
	result := p.w.Latest
	if last.Distance > c.Length()-1 {
		result = p.w.Result
	}
	p.heading(p.w.AgainstTitle, c.Name(), p.summary(pl)+" "+fill(result, "time", hms(last.Time), "at", p.u.places(last.Distance),
		"difference", p.w.signed(last.Time-gunTime(pl, last.Distance))))

	g := pane{left: p.left + lagLeft, right: p.right - 4, from: 0, to: c.Length()}
	flags := p.passageFlags(pl, actual, g)
	placed, h := p.hoist(0.29).raise(flags)
	g.low, g.high = lagRange(lagWith(pl, slices.Clone(late))...)

	p.againstNotes(pl, g, len(flags)-len(placed), len(flags))
	g.top, g.bottom = p.top-h.height(), p.bottom+lagFoot
	p.drawn = g.top - g.bottom
	if p.drawn < least {
		return
	}
	p.lagAxis(g)
	p.sides(g, p.w.Behind, p.w.Ahead)
	p.strip(pl, g)
	p.line(planPen, g.at(0, 0), g.at(c.Length(), 0))
	p.lagCutoffs(pl, g)
	for i := range placed {
		placed[i].foot = g.y(at(actual, late, placed[i].foot))
	}
	p.flags(h, placed, p.top)
	p.asRun(g, actual, late)
}

func (p *page) againstNotes(pl *plan.Plan, g pane, out, all int) {
	text := p.w.Caution
	if out > 0 {
		note := fill(p.w.LeftOut, "n", strconv.Itoa(out), "all", strconv.Itoa(all))
		p.warn(note)
		text += " " + note
	}
	keys := []key{{actualSymbol, p.w.Actual}, {planSymbol, p.w.Plan}, {runSymbol, p.w.Run}, {walkSymbol, p.w.Walk}}
	note, on := p.offPicture(pl, g)
	if on {
		keys = append(keys, key{cutoffSymbol, p.w.CutoffMark})
	}
	p.notes(text + note)
	p.legend(keys)
}

// asRun draws the line of the race.
func (p *page) asRun(g pane, actual []Passage, late []float64) {
	var line []spot
	if actual[0].Distance > 0 {
		line = append(line, g.at(0, 0))
	}
	for i, a := range actual {
		line = append(line, g.at(min(a.Distance, g.to), late[i]))
	}
	p.line(pen{width: 1.4}, line...)
	radius := 2.0
	if len(actual) > 60 {
		radius = 1
	}
	for _, s := range line[len(line)-len(actual):] {
		p.area(black, pen{}, ring(s.x, s.y, radius)...)
	}
}

// at returns the value at a distance on the line through values at passages.
func at(list []Passage, values []float64, distance float64) float64 {
	x0, y0 := 0.0, 0.0
	for i, a := range list {
		if distance <= a.Distance {
			return between(spot{x0, y0}, spot{a.Distance, values[i]}, distance)
		}
		x0, y0 = a.Distance, values[i]
	}
	return y0
}

func (p *page) passageFlags(pl *plan.Plan, actual []Passage, g pane) []flag {
	marks := p.landmarks(pl.Course)
	var flags []flag
	for _, a := range actual {
		if a.Distance == 0 {
			continue
		}
		l := flag{x: g.x(min(a.Distance, g.to)), foot: a.Distance, name: plain(a.Name), rank: placeRank, more: []string{
			p.passedBy(a.Distance, a.Time),
			fill(p.w.Met, "difference", p.w.signed(a.Time-gunTime(pl, a.Distance)), "time", hms(gunTime(pl, a.Distance))),
		}}
		if near := nearest(marks, a.Distance); near >= 0 {
			l.rank = marks[near].rank
			if l.name == "" {
				l.name = marks[near].name
			}
		} else if l.name == "" {
			l.rank, l.name = unnamedRank, p.u.places(a.Distance)
			l.more[0] = hms(a.Time)
		}
		flags = append(flags, l)
	}
	return flags
}
