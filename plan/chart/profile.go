package chart

import (
	"fmt"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/plan"
)

// ground is the grey of the ground.
const ground grey = 0.86

// sameSpot is how near a cutoff lies to the landmark that it is taken to be for, m. [Our own]
const sameSpot = 50

// Profile draws the ground with its landmarks and the plan's gun times at them, climbs
// numbered and explained in a table, gaits, and gun times along the axis. Where not all
// landmarks have room, cutoffs go before aid stations, those before tops and other places;
// where not all climbs have, those rated higher go before.
//
// Heights are drawn at most 25 times too tall, on short courses less, which is said on the
// figure. What of the height a flat course has no use for is cut off: Figure.Size tells.
//
// The error wraps ErrPlan or ErrOption.
func Profile(p *plan.Plan, o Options) (*Figure, error) {
	o, err := o.checked()
	if err != nil {
		return nil, err
	}
	if p == nil || p.Course == nil || p.Traverse() == nil {
		return nil, fmt.Errorf("chart: profile: %w", ErrPlan)
	}
	page := newPage(o)
	page.profile(p)
	return page.done()
}

func (p *page) profile(pl *plan.Plan) {
	c := pl.Course
	p.heading(p.w.ProfileTitle, c.Name(), p.summary(pl))
	g := pane{left: p.left + axisLeft, right: p.right - 4, from: 0, to: c.Length()}

	sites := p.sites(pl)
	flags := make([]flag, len(sites))
	for i, s := range sites {
		flags[i] = flag{x: g.x(s.distance), foot: s.distance, name: s.name, more: s.lines, rank: s.rank}
	}
	placed, h := p.hoist(0.29).raise(flags)
	g.top = p.top - h.height()

	climbs, table := p.climbTable(pl, g.top)
	foot := profileFoot{climbs: table, keys: p.profileKeys(pl)}
	foot.leftOut(p, len(flags)-len(placed), len(flags), len(pl.Climbs)-len(climbs), len(pl.Climbs))
	g.bottom = p.bottom + foot.height(p) + axisRoom
	g.heights(c, g.steepness(c))
	foot.splits = p.splitTable(pl, max(g.spare(c), g.top-g.bottom-paneFair))

	g.bottom = p.bottom + foot.height(p) + axisRoom
	times := g.steepness(c)
	g.heights(c, times)
	spare := g.spare(c)
	p.bottom += spare
	foot.write(p, times)
	g.bottom += spare
	p.drawn = g.top - g.bottom
	if p.drawn < least {
		return
	}
	g.heights(c, times)

	p.drawProfile(pl, g, climbs)
	for i := range placed {
		placed[i].foot = g.y(c.Elevation(placed[i].foot))
	}
	p.flags(h, placed, p.top)
	p.sitesMarks(c, g, sites)
	p.crop(spare)
}

// Room about a profile, pt.
const (
	axisLeft  = 42                                // for heights and headings
	axisRoom  = 11 + bandHeight + 2*smallSize + 8 // under it: numbers of climbs, gaits, axis
	paneLeast = 92                                // of the drawing itself, beside a table of climbs
	paneFair  = 150                               // beside a table of splits
)

// hoist returns the room for flags, up to a share of the figure's height.
func (p *page) hoist(share float64) hoist {
	return hoist{left: p.left, right: p.right, most: share * p.height, lines: 2}
}

// summary says what a plan asks for, and if that is more than there is.
func (p *page) summary(pl *plan.Plan) string {
	r := pl.Course.Relief()
	text := fill(p.w.Summary, "length", p.u.places(pl.Course.Length()), "up", p.u.tall(r.Ascent), "down", p.u.tall(r.Descent),
		"gun", hms(pl.Gun), "walking", fmt.Sprintf("%.0f %%", 100*pl.WalkingShare))
	if pl.Budget > 1.005 { // 101 % when rounded
		text += " " + fill(p.w.TooMuch, "budget", fmt.Sprintf("%.0f %%", 100*pl.Budget))
	}
	return text
}

// drawProfile draws the ground and what lies under it.
func (p *page) drawProfile(pl *plan.Plan, g pane, climbs []numbered) {
	p.levels(g)
	p.ground(pl.Course, g, ground, 0)
	for _, c := range pl.Climbs {
		p.hatch(profileLine(pl.Course, g, c.Climb.Start, c.Climb.Top), g.bottom)
	}
	p.line(pen{width: 1.1}, profileLine(pl.Course, g, 0, pl.Course.Length())...)
	p.line(pen{width: 0.6}, spot{g.left, g.bottom}, spot{g.right, g.bottom})
	p.numbers(g, climbs)
	p.band(pl, g, g.bottom-11)
	p.distances(g, g.bottom-11-bandHeight, func(d float64) string { return hm(gunTime(pl, d)) })
}

// sitesMarks draws the symbols of all places on the profile.
func (p *page) sitesMarks(c *course.Course, g pane, sites []site) {
	for _, s := range sites {
		x, y := g.x(s.distance), g.y(c.Elevation(s.distance))
		if s.cutoff {
			p.symbol(cutoffSymbol, x, y)
		}
		p.symbol(s.symbol, x, y)
	}
}

// passedBy is the line of a label that says where and when.
func (p *page) passedBy(distance float64, t time.Duration) string {
	return fill(p.w.Target, "at", p.u.places(distance), "time", hms(t))
}
