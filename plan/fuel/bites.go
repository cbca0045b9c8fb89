package fuel

import (
	"math"
	"time"
)

// MostAtOnce is the most carbohydrate in g that is ever planned at one time: common practice,
// no source. A stomach at work takes little and often better than much and seldom.
const MostAtOnce = 30

// Above fastRate, in g/h, bites are 15 to 20 minutes apart: common practice, no source.
const (
	fastRate     = 60
	fastInterval = 20 * time.Minute
)

// bite sets how often to eat and how much at a time. Where the interval is not the runner's own,
// the rate becomes that of one portion each time.
func (m *maker) bite() {
	t := &m.table
	t.Interval, t.Portion = bites(t.Suggested, m.o)
	if m.o.Interval == 0 {
		t.Suggested = min(t.Suggested, t.Portion/t.Interval.Hours())
	}
	m.o.Interval, m.o.Portion = t.Interval, t.Portion
}

// bites returns how often to eat and how much at a time, for a rate in g/h, where the options
// leave it open. Left to itself it is one portion each time, at whole 5 minutes and in whole
// 5 g, as near to the rate as that comes without going above it [Our own]: a rule that can be
// kept in the head.
func bites(rate float64, o Options) (interval time.Duration, portion float64) {
	interval, portion = o.Interval, o.Portion
	switch {
	case interval != 0:
	case rate > fastRate && portion == 0:
		interval = fastInterval
	default:
		interval = apart(rate, portion)
	}
	if portion == 0 {
		portion = 5 * math.Floor(rate*interval.Hours()/5+1e-9)
		portion = max(DefaultPortion, min(portion, MostAtOnce))
	}
	return interval, portion
}

// apart is how far apart portions are eaten for a rate, 10 minutes to an hour.
func apart(rate, portion float64) time.Duration {
	if portion == 0 {
		portion = DefaultPortion
	}
	minutes := 60.0
	if rate > 0 {
		minutes = min(60, max(10, 5*math.Ceil(60*portion/rate/5-1e-9)))
	}
	if rate > fastRate {
		minutes = min(minutes, fastInterval.Minutes())
	}
	return time.Duration(minutes) * time.Minute
}
