package chart

import (
	"math"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/plan"
)

// A lag pane shows minutes behind the plan over distance, with the profile under it.

// Room of a lag pane, pt.
const (
	lagLeft   = 76 // for the axis and what its sides mean
	stripHigh = 34 // of the profile under it
	lagFoot   = stripHigh + bandHeight + 2*smallSize + 14
)

// lagRange returns the least and greatest minutes of an axis that shows some values and the
// plan, never less than two minutes to either side. [Our own]
func lagRange(minutes ...float64) (low, high float64) {
	low, high = -2, 2
	for _, m := range minutes {
		low, high = min(low, m), max(high, m)
	}
	rim := 0.06 * (high - low)
	return low - rim, high + rim
}

// minuteStep returns the least step of an axis of minutes that is at least so much: parts of
// hours, not of hundreds.
func minuteStep(least float64) float64 {
	for _, s := range []float64{0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 240} {
		if s >= least {
			return s
		}
	}
	return 60 * step(least/60)
}

// inHours reports whether an axis of minutes is written in hours.
func (g pane) inHours() bool { return max(g.high, -g.low) > 120 }

// lagTick writes a number of minutes of an axis of such a step.
func (p *page) lagTick(g pane, minutes, every float64) string {
	switch {
	case !g.inHours():
		return p.u.number(minutes, decimalsOf(every))
	case math.Mod(every, 60) == 0:
		return p.u.number(minutes/60, 0)
	}
	return hm(time.Duration(math.Round(minutes * float64(time.Minute))))
}

// lagAxis draws the axis of minutes and the plan's line.
func (p *page) lagAxis(g pane) {
	every := minuteStep(15 * (g.high - g.low) / (g.top - g.bottom))
	for _, m := range ticks(g.low, g.high, every) {
		y := g.y(m)
		if y-3 < g.bottom || y+4 > g.top {
			continue
		}
		if m != 0 {
			p.line(pen{ink: 0.75, width: 0.35}, spot{g.left, y}, spot{g.right, y})
		}
		text := p.lagTick(g, math.Abs(m), every)
		switch {
		case m > 1e-9:
			text = "+" + text
		case m < -1e-9:
			text = "−" + text
		default:
			text = "0"
		}
		p.write(text, g.left-5, y-smallSize*0.35, 1, smallSize, false)
	}
	p.box(unseen, pen{width: 0.6}, g.left, g.bottom, g.right, g.top)
}

// sides says what lies above and below the plan, {unit} being minutes or hours.
func (p *page) sides(g pane, above, below string) {
	unit := p.w.Minute
	if g.inHours() {
		unit = p.w.Hour
	}
	p.side(fill(above, "unit", unit), g.top-smallSize)
	below = fill(below, "unit", unit)
	lines := float64(len(p.sideLines(below)))
	p.side(below, g.bottom+(lines-1)*smallSize*leading+2)
}

const sideWidth = lagLeft - 28

func (p *page) sideLines(s string) []string {
	lines := wrap(s, false, smallSize, sideWidth)
	return lines[:min(len(lines), 4)]
}

// side writes what a side of the plan means, left of the axis.
func (p *page) side(s string, y float64) {
	for _, l := range p.sideLines(s) {
		p.write(l, p.left, y, 0, smallSize, false)
		y -= smallSize * leading
	}
}

// strip draws the profile, gaits and distances of a plan under a lag pane.
func (p *page) strip(pl *plan.Plan, g pane) {
	s := g
	s.top = g.bottom - 4
	s.bottom = s.top - stripHigh
	s.heights(pl.Course, s.steepness(pl.Course))
	p.ground(pl.Course, s, 0.78, 0.7)
	p.line(pen{width: 0.6}, spot{s.left, s.bottom}, spot{s.right, s.bottom})
	p.band(pl, g, s.bottom-3)
	p.distances(g, s.bottom-3-bandHeight, func(d float64) string { return hm(gunTime(pl, d)) })
}

// lagWith returns those of the cutoffs' minutes that a picture of some minutes shows
// without growing by much. [Our own]
func lagWith(pl *plan.Plan, minutes []float64) []float64 {
	low, high := lagRange(minutes...)
	rim := 0.25 * (high - low)
	for _, m := range pl.Cutoffs {
		if late := m.InHand.Minutes(); late < high+rim && late > low-rim {
			minutes = append(minutes, late)
		}
	}
	return minutes
}

// lagCutoffs draws the cutoffs that lie on a lag pane.
func (p *page) lagCutoffs(pl *plan.Plan, g pane) {
	for _, m := range pl.Cutoffs {
		if late := m.InHand.Minutes(); late >= g.low && late <= g.high {
			p.symbol(cutoffSymbol, g.x(m.Distance), g.y(late))
		}
	}
}

// offPicture says which cutoffs lie above and below a lag pane, and whether any lies on it.
func (p *page) offPicture(pl *plan.Plan, g pane) (note string, on bool) {
	var above, below []string
	for _, m := range pl.Cutoffs {
		name := plain(m.Name)
		if name == "" {
			name = p.u.places(m.Distance)
		}
		name = clip(name, false, smallSize, 100) + " (" + hm(m.InHand.Abs()) + ")"
		switch late := m.InHand.Minutes(); {
		case late > g.high:
			above = append(above, name)
		case late < g.low:
			below = append(below, name)
		}
	}
	if len(above) > 0 {
		note += " " + fill(p.w.Above, "places", p.list(above))
	}
	if len(below) > 0 {
		note += " " + fill(p.w.Below, "places", p.list(below))
	}
	return note, len(above)+len(below) < len(pl.Cutoffs)
}

// list writes places one after the other, the first of them where they are many.
func (p *page) list(places []string) string {
	const most = 5
	if more := len(places) - most; more > 0 {
		return strings.Join(places[:most], ", ") + " " + fill(p.w.More, "n", strconv.Itoa(more))
	}
	return strings.Join(places, ", ")
}
