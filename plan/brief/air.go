package brief

import (
	"time"
)

// Air is what the weather is forecast to be over a plan. Temperatures are in °C.
type Air struct {
	Start   float64 `json:"start_c"` // at the gun
	Warmest float64 `json:"warmest_c"`
	Coldest float64 `json:"coldest_c"`

	// Where it is warmest and coldest, in metres from the start, and the clock there; the
	// zero time if the race has no start time.
	WarmestFrom float64   `json:"warmest_m"`
	WarmestAt   time.Time `json:"warmest_clock,omitzero"`
	ColdestFrom float64   `json:"coldest_m"`
	ColdestAt   time.Time `json:"coldest_clock,omitzero"`

	WBGT float64 `json:"wbgt_c"` // the highest
}

// WBGT in °C from which a race in heat asks for care, and from which races are called off:
// the upper bounds of low and of high risk of the American College of Sports Medicine's
// position stands on running in heat (1987, MSSE 19:529; 1996, MSSE 28:i); from memory,
// both alike.
const (
	heatFrom   = 18.0
	severeFrom = 28.0
)

// gatherWeather tells of the weather, where the race knows it.
func (t *teller) gatherWeather() {
	day := t.plan.Race.Surroundings.Day
	air := t.air()
	if air == nil {
		return
	}
	l := Line{Kind: Weather, Air: air, Took: t.plan.WeatherCost, Allowed: t.plan.Race.Surroundings.Heat.Loss > 0}
	for i := 0; i <= looks && !l.Night; i++ {
		l.Night = day.Darkness(t.day(t.elapsed(t.length*float64(i)/looks))) > 0.5
	}
	weight := likely + 60
	if air.WBGT >= heatFrom {
		weight = must
	}
	t.open(weight, l)
}

// air is the weather along the plan, nil if it is not known.
func (t *teller) air() *Air {
	day := t.plan.Race.Surroundings.Day
	if day == nil {
		return nil
	}
	a := Air{Start: day.Temperature(t.day(0))}
	if a.Start != a.Start {
		return nil
	}
	a.Warmest, a.Coldest, a.WBGT = a.Start, a.Start, day.WBGT(t.day(0))
	a.WarmestAt, a.ColdestAt = t.clock(0), t.clock(0)
	for i := 1; i <= looks; i++ {
		from := t.length * float64(i) / looks
		after := t.elapsed(from)
		clock := t.day(after)
		a.WBGT = max(a.WBGT, day.WBGT(clock))
		switch c := day.Temperature(clock); {
		case c > a.Warmest:
			a.Warmest, a.WarmestFrom, a.WarmestAt = c, from, t.clock(after)
		case c < a.Coldest:
			a.Coldest, a.ColdestFrom, a.ColdestAt = c, from, t.clock(after)
		}
	}
	return &a
}
