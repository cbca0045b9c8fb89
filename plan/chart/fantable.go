package chart

import (
	"math"
	"slices"

	"isoeffort.example/plan"
)

// fanTable sets the table of named points that have room, those of higher rank first.
func (p *page) fanTable(f Forecast, pl *plan.Plan, room float64) table {
	low, high := f.Quantiles[0], f.Quantiles[len(f.Quantiles)-1]
	t := table{least: 270, columns: []column{
		{p.w.At, 0, false},
		{p.u.long, 26, true},
		{p.w.Likely, 35, true},
		{fill(p.w.Range, "low", p.percent(low), "high", p.percent(high)), 72, true},
	}}
	if i := f.middle(); i != f.median() {
		t.columns[2].head = fill(p.w.Quantile, "percent", p.percent(f.Quantiles[i]))
	}
	if pl != nil {
		t.columns = append(t.columns, column{p.w.Arrival, 35, true})
	}
	cutoffs := pl != nil && len(pl.Cutoffs) > 0
	if cutoffs {
		t.columns = append(t.columns, column{p.w.CutoffTime, 35, true})
	}
	for _, pt := range p.named(f, pl, t.fits(p.right-p.left, room)) {
		row := []string{
			plain(pt.Name), p.u.along(pt.Distance), hms(pt.Times[f.middle()]),
			hms(pt.Times[0]) + "–" + hms(pt.Times[len(pt.Times)-1]),
		}
		if pl != nil {
			row = append(row, hms(gunTime(pl, pt.Distance)))
		}
		if cutoffs {
			row = append(row, limitAt(pl, pt.Distance))
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// limitAt writes the earliest cutoff at a place, if it has one.
func limitAt(pl *plan.Plan, distance float64) string {
	for _, m := range pl.Cutoffs {
		if math.Abs(m.Distance-distance) <= sameSpot {
			return hms(m.Limit)
		}
	}
	return ""
}

// named returns at most so many of the points with names, those of higher rank first.
func (p *page) named(f Forecast, pl *plan.Plan, most int) []FanPoint {
	var list []FanPoint
	for _, pt := range f.Points {
		if plain(pt.Name) != "" {
			list = append(list, pt)
		}
	}
	rank := p.ranks(pl)
	slices.SortStableFunc(list, func(a, b FanPoint) int { return rank(b.Distance) - rank(a.Distance) })
	list = list[:min(len(list), most)]
	slices.SortStableFunc(list, func(a, b FanPoint) int { return sign(a.Distance - b.Distance) })
	return list
}

// ranks returns the rank of what stands at a distance.
func (p *page) ranks(pl *plan.Plan) func(distance float64) int {
	var sites []site
	if pl != nil {
		sites = p.sites(pl)
	}
	return func(distance float64) int {
		if near := nearest(sites, distance); near >= 0 {
			return sites[near].rank
		}
		return placeRank
	}
}
