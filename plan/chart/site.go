package chart

import (
	"math"
	"slices"
	"strings"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// A site is a place that gets a label: a landmark, a cutoff, or both.
type site struct {
	distance float64
	name     string
	lines    []string
	rank     int
	symbol   symbol
	cutoff   bool
}

// Ranks of sites: who goes before whom where room is scarce.
const (
	unnamedRank = 1
	placeRank   = 10
	topRank     = 20
	stationRank = 50
	cutoffRank  = 100
	finishRank  = 1000
)

// sites returns the places of a plan with their target times, in order.
func (p *page) sites(pl *plan.Plan) []site {
	list := p.landmarks(pl.Course)
	for i := range list {
		list[i].lines = []string{p.passedBy(list[i].distance, gunTime(pl, list[i].distance))}
	}
	for _, m := range pl.Cutoffs {
		near := nearest(list, m.Distance)
		if near < 0 {
			list = append(list, site{
				distance: m.Distance, name: plain(m.Name), rank: placeRank, symbol: placeSymbol,
				lines: []string{p.passedBy(m.Distance, gunTime(pl, m.Distance))},
			})
			near = len(list) - 1
		}
		s := &list[near]
		s.rank, s.cutoff = max(s.rank, cutoffRank), true
		s.lines = append(s.lines, fill(p.cutoffWords(m), "time", hms(m.Limit)))
	}
	for _, stop := range pl.Stops {
		if near := nearest(list, stop.Distance); near >= 0 {
			list[near].lines = append(list[near].lines, fill(p.w.Stop, "time", ms(stop.Duration)))
		}
	}
	for i := range list {
		if l := list[i].lines; len(l) > 2 {
			list[i].lines = []string{l[0], strings.Join(l[1:], ", ")}
		}
	}
	slices.SortStableFunc(list, func(a, b site) int { return sign(a.distance - b.distance) })
	return list
}

func (p *page) cutoffWords(m plan.Margin) string {
	switch {
	case m.InHand < 0:
		return p.w.Missed
	case m.AtRisk:
		return p.w.AtRisk
	}
	return p.w.Cutoff
}

// landmarks returns the landmarks of a course past the start, and the finish.
func (p *page) landmarks(c *course.Course) []site {
	var list []site
	finish := false
	for _, l := range c.Landmarks() {
		if l.Distance < 1 {
			continue
		}
		s := site{distance: l.Distance, name: plain(l.Name), rank: placeRank, symbol: placeSymbol}
		switch l.Kind {
		case course.Station:
			s.rank, s.symbol = stationRank, stationSymbol
		case course.Top:
			s.rank, s.symbol = topRank, topSymbol
		}
		if l.Distance > c.Length()-1 && !finish {
			s.rank, s.symbol, finish = finishRank, finishSymbol, true
		}
		if s.name == "" {
			s.name = p.w.Place
		}
		list = append(list, s)
	}
	if !finish {
		list = append(list, site{distance: c.Length(), name: p.w.Finish, rank: finishRank, symbol: finishSymbol})
	}
	return list
}

// nearest returns the site at a distance, or -1.
func nearest(list []site, distance float64) int {
	best, off := -1, float64(sameSpot)
	for i, s := range list {
		if d := math.Abs(s.distance - distance); d <= off {
			best, off = i, d
		}
	}
	return best
}
