package chart

import (
	"slices"
	"strconv"

	"isoeffort.example/plan"
)

// A numbered climb is one that the table explains.
type numbered struct {
	plan.Climb
	number int
}

// climbTable numbers the climbs that have room below a height, the higher rated first, and
// sets their table.
func (p *page) climbTable(pl *plan.Plan, top float64) ([]numbered, table) {
	t := table{least: 250, columns: []column{
		{p.w.Number, 15, true},
		{p.w.Name, 0, false},
		{p.w.From + " " + p.u.long, 33, true},
		{p.w.Length, 26, true},
		{p.w.Rise + " " + p.u.short, 30, true},
		{p.w.Gradient, 29, true},
		{p.w.Rating, 25, true},
		{p.w.Took, 30, true},
		{p.w.Gait, 26, true},
	}}
	const feet = 40 // of notes and legend
	room := top - p.bottom - feet - axisRoom - paneLeast
	most := min(t.fits(p.right-p.left, room), int((p.right-p.left-60)/numberGap))
	ranked := slices.Clone(pl.Climbs)
	slices.SortStableFunc(ranked, func(a, b plan.Climb) int { return sign(b.Rating.Value - a.Rating.Value) })
	ranked = ranked[:min(len(ranked), most)]
	slices.SortStableFunc(ranked, func(a, b plan.Climb) int { return sign(a.Climb.Start - b.Climb.Start) })
	var list []numbered
	for i, c := range ranked {
		list = append(list, numbered{c, i + 1})
		t.rows = append(t.rows, p.climbRow(list[i]))
	}
	return list, t
}

func (p *page) climbRow(c numbered) []string {
	name := plain(c.Name)
	if name == "" {
		name = p.w.Climb
	}
	return []string{
		strconv.Itoa(c.number), name, p.u.along(c.Climb.Climb.Start), p.u.along(c.Length()),
		p.u.number(c.Rise/p.u.height, 0), p.u.number(100*c.Gradient(), 1) + " %",
		p.u.number(c.Rating.Value, 0), ms(c.Took), p.gait(c.Gait),
	}
}

// numberGap is how far numbers under the profile stand apart, pt.
const numberGap = 11

// numbers writes the climbs' numbers under them, moved where they would meet.
func (p *page) numbers(g pane, climbs []numbered) {
	if len(climbs) > 0 {
		p.write(p.w.Climbs, g.left-captionGap, g.bottom-8.5, 1, smallSize, false)
	}
	middles := make([]float64, len(climbs))
	for i, c := range climbs {
		middles[i] = g.x((c.Climb.Climb.Start + c.Climb.Climb.Top) / 2)
	}
	for i, x := range spread(middles, numberGap, g.left+4, g.right-4) {
		if x-middles[i] > 1 || middles[i]-x > 1 {
			p.line(pen{width: 0.4}, spot{middles[i], g.bottom}, spot{x, g.bottom - 2.2})
		}
		p.write(strconv.Itoa(climbs[i].number), x, g.bottom-8.5, 0.5, smallSize, true)
	}
}
