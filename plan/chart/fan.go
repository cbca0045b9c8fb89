package chart

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"isoeffort.example/plan"
)

// Fan draws a forecast about a plan: how many minutes later or earlier than the plan a race
// may pass each place, in bands from the middle outwards, with the cutoffs; named points
// are told of in a table. p may be nil: times then count from the quantile nearest to the
// middle, and there is no ground and no cutoff.
//
// The error wraps ErrFan, ErrPlan or ErrOption.
func Fan(f Forecast, p *plan.Plan, o Options) (*Figure, error) {
	o, err := o.checked()
	if err != nil {
		return nil, err
	}
	length := math.Inf(1)
	if p != nil {
		if p.Course == nil || p.Traverse() == nil {
			return nil, fmt.Errorf("chart: fan: %w", ErrPlan)
		}
		length = p.Course.Length()
	}
	if err := f.check(length); err != nil {
		return nil, err
	}
	page := newPage(o)
	page.fan(f, p)
	return page.done()
}

// fanEnd is the room for what quantiles are called, pt.
const fanEnd = 40

func (p *page) fan(f Forecast, pl *plan.Plan) {
	low, high := f.Quantiles[0], f.Quantiles[len(f.Quantiles)-1]
	title, name, to, foot := p.w.Alone, "", f.Points[len(f.Points)-1].Distance, float64(lagFootAlone)
	late := f.late(pl)
	minutes := slices.Concat(late...)
	if pl != nil {
		title, name, to, foot = p.w.FanTitle, pl.Course.Name(), pl.Course.Length(), lagFoot
		minutes = lagWith(pl, minutes)
	}
	p.heading(title, name, fill(p.w.FanNote, "percent", p.percent(high-low)+" %"))
	g := pane{left: p.left + lagLeft, right: p.right - fanEnd, from: 0, to: to}
	g.low, g.high = lagRange(minutes...)

	flags := p.fanFlags(f, pl, g)
	placed, h := p.hoist(0.2).raise(flags)
	p.fanNotes(f, pl, g, len(flags)-len(placed), len(flags))
	p.table(p.fanTable(f, pl, p.top-h.height()-p.bottom-foot-paneLeast))

	g.top, g.bottom = p.top-h.height(), p.bottom+foot
	p.drawn = g.top - g.bottom
	if p.drawn < least {
		return
	}
	p.bands(f, late, g)
	p.lagAxis(g)
	for i := range placed {
		placed[i].foot = g.bottom
	}
	p.flags(h, placed, p.top)
	p.line(planPen, g.at(0, 0), g.at(g.to, 0))
	if pl == nil {
		p.sides(g, p.w.Later, p.w.Earlier)
		p.distances(g, g.bottom, nil)
		return
	}
	p.sides(g, p.w.Behind, p.w.Ahead)
	p.strip(pl, g)
	p.lagCutoffs(pl, g)
}

// lagFootAlone is the height of an axis under a fan without a plan, pt.
const lagFootAlone = smallSize + 14

// late returns the minutes of each quantile at each point behind the plan or the middle.
func (f Forecast) late(pl *plan.Plan) [][]float64 {
	lines := make([][]float64, len(f.Quantiles))
	for _, pt := range f.Points {
		for i, t := range pt.Times {
			lines[i] = append(lines[i], (t - f.planned(pl, pt)).Minutes())
		}
	}
	return lines
}

func (f Forecast) planned(pl *plan.Plan, pt FanPoint) time.Duration {
	if pl == nil {
		return pt.Times[f.middle()]
	}
	return gunTime(pl, pt.Distance)
}

// percent writes a share of races.
func (p *page) percent(q float64) string {
	d := 0
	for d < 2 && math.Abs(100*q*math.Pow10(d)-math.Round(100*q*math.Pow10(d))) > 1e-6 {
		d++
	}
	return p.u.number(100*q, d)
}

// bands fills between the outermost quantiles, then the next, darker inwards, and draws a
// line for each: dashed outside, thin inside, thick for the median.
func (p *page) bands(f Forecast, late [][]float64, g pane) {
	lines := make([][]spot, len(late))
	for i, l := range late {
		lines[i] = []spot{g.at(0, 0)}
		for k, pt := range f.Points {
			lines[i] = append(lines[i], g.at(min(pt.Distance, g.to), l[k]))
		}
	}
	n := len(lines)
	for i := range n / 2 {
		tone := grey(0.88 - 0.17*float64(min(i, 3)))
		back := slices.Clone(lines[n-1-i])
		slices.Reverse(back)
		p.area(tone, pen{}, append(slices.Clone(lines[i]), back...)...)
	}
	ends := make([]float64, n)
	for i, l := range lines {
		rim := min(i, n-1-i)
		style := pen{width: 0.6}
		switch {
		case i == f.median():
			style.width = 1.5
		case rim == 0:
			style.dash = []float64{2, 1.5}
		}
		p.line(style, l...)
		ends[i] = l[len(l)-1].y
	}
	p.quantiles(f, lines, ends, g)
}

// quantiles writes what each line is at its end.
func (p *page) quantiles(f Forecast, lines [][]spot, ends []float64, g pane) {
	for i, y := range spread(ends, smallSize*1.15, g.bottom+3, g.top-4) {
		text := fill(p.w.Quantile, "percent", p.percent(f.Quantiles[i]))
		if i == f.median() {
			text = p.w.Median
		}
		end := lines[i][len(lines[i])-1]
		p.line(pen{width: 0.4}, end, spot{g.right + 5, y})
		p.write(clip(text, false, smallSize, fanEnd-7), g.right+7, y-smallSize*0.35, 0, smallSize, i == f.median())
	}
}

func (p *page) fanNotes(f Forecast, pl *plan.Plan, g pane, out, all int) {
	text := p.w.Caution
	if out > 0 {
		text += " " + fill(p.w.LeftOut, "n", strconv.Itoa(out), "all", strconv.Itoa(all))
	}
	var keys []key
	if f.median() >= 0 {
		keys = append(keys, key{medianSymbol, p.w.Median})
	}
	if pl == nil {
		p.notes(text)
		p.legend(keys)
		return
	}
	keys = append(keys, key{planSymbol, p.w.Plan}, key{runSymbol, p.w.Run}, key{walkSymbol, p.w.Walk})
	note, on := p.offPicture(pl, g)
	if on {
		keys = append(keys, key{cutoffSymbol, p.w.CutoffMark})
	}
	p.notes(text + note)
	p.legend(keys)
}

func (p *page) fanFlags(f Forecast, pl *plan.Plan, g pane) []flag {
	var flags []flag
	rank := p.ranks(pl)
	for _, pt := range f.Points {
		if name := plain(pt.Name); name != "" {
			flags = append(flags, flag{
				x: g.x(min(pt.Distance, g.to)), name: name, rank: rank(pt.Distance), more: []string{p.u.places(pt.Distance)},
			})
		}
	}
	return flags
}
