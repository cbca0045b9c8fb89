package duration_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort/duration"
)

// Two efforts by hand: 400 s at 20 W/kg are 8000 J/kg, 1200 s at 18 are 21,600. The line
// through them has 13,600 J/kg for 800 s, 17 W/kg, and starts at 1200 J/kg. The power law
// has k = ln(20/18)/ln 3 = 0.0959.
func TestThroughByHand(t *testing.T) {
	t.Parallel()
	a, b := duration.Effort{Time: 400 * time.Second, Power: 20}, duration.Effort{Time: 1200 * time.Second, Power: 18}
	h := must[duration.Hyperbolic](t)(duration.HyperbolicThrough(b, a))
	near(t, "critical power", h.Critical, 17, 1e-15)
	near(t, "reserve", h.Reserve, 1200, 1e-15)
	p := must[duration.PowerLaw](t)(duration.PowerLawThrough(a, b))
	near(t, "endurance", p.Endurance, 0.0959, 0.00005/0.0959)
	l := must[duration.Logarithmic](t)(duration.LogarithmicThrough(400*time.Second, b, a, duration.Effort{}))
	near(t, "nominal", l.Nominal, 20, 1e-15)
	near(t, "slope, 0.1/ln 3", l.Long, 0.091024, 1e-5)
}

// Each curve comes back from what it says of two or three times.
func TestThroughAgain(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		share := func(name string, low, top float64) float64 { return rapid.Float64Range(low, top).Draw(t, name) }
		t1, t2 := drawTime(t, 6*time.Minute, 20*time.Minute), drawTime(t, time.Hour, 5*time.Hour)
		const rounding = 1e-11
		p := duration.PowerLaw{HourPower: share("hour power", 5, 25), Endurance: share("endurance", 0.02, 0.4)}
		gotP, err := duration.ToPowerLaw(p, t2, t1)
		near(t, "hour power", gotP.HourPower, p.HourPower, rounding)
		near(t, "endurance", gotP.Endurance, p.Endurance, rounding)
		h := duration.Hyperbolic{Critical: share("critical", 5, 25), Reserve: share("reserve", 200, 2000)}
		gotH, errH := duration.HyperbolicThrough(duration.EffortOf(h, t1), duration.EffortOf(h, t2))
		near(t, "critical power", gotH.Critical, h.Critical, rounding)
		near(t, "reserve", gotH.Reserve, h.Reserve, rounding)
		l := duration.Logarithmic{Nominal: share("nominal", 5, 25), Time: 6 * time.Minute, Short: share("short", 0.02, 0.3), Long: share("long", 0.02, 0.15)}
		gotL, errL := duration.LogarithmicThrough(0, duration.EffortOf(l, t1), duration.EffortOf(l, t2), duration.EffortOf(l, 2*time.Minute))
		near(t, "nominal", gotL.Nominal, l.Nominal, rounding)
		near(t, "short", gotL.Short, l.Short, rounding)
		near(t, "long", gotL.Long, l.Long, rounding)
		if err := errors.Join(err, errH, errL); err != nil {
			t.Error(err)
		}
	})
}

// No curve is put through what no runner does.
func TestThroughImpossible(t *testing.T) {
	t.Parallel()
	good := duration.Effort{Time: 10 * time.Minute, Power: 18}
	for name, bad := range map[string]duration.Effort{
		"nothing":               {},
		"the same time":         {Time: 10 * time.Minute, Power: 17},
		"negative time":         {Time: -time.Minute, Power: 25},
		"no power":              {Time: time.Hour, Power: 0},
		"negative power":        {Time: time.Hour, Power: -15},
		"power that is NaN":     {Time: time.Hour, Power: math.NaN()},
		"infinite power":        {Time: time.Minute, Power: math.Inf(1)},
		"longer at equal power": {Time: time.Hour, Power: 18},
		"longer at more":        {Time: time.Hour, Power: 18.1},
		"less work for longer":  {Time: time.Hour, Power: 2.9},
		"as much for longer":    {Time: time.Hour, Power: 3},
		"shorter at less":       {Time: 5 * time.Minute, Power: 17},
	} {
		for range 2 {
			_, errP := duration.PowerLawThrough(good, bad)
			_, errH := duration.HyperbolicThrough(good, bad)
			_, errL := duration.LogarithmicThrough(time.Second, good, bad, duration.Effort{})
			for _, err := range []error{errP, errH, errL} {
				if !errors.Is(err, duration.ErrInput) {
					t.Errorf("%s: error %v", name, err)
				}
			}
			good, bad = bad, good
		}
	}
}

func TestLogarithmicThroughImpossible(t *testing.T) {
	t.Parallel()
	a, b := duration.Effort{Time: 10 * time.Minute, Power: 18}, duration.Effort{Time: time.Hour, Power: 15}
	for name, r := range map[string]struct {
		at          time.Duration
		long, short duration.Effort
	}{
		"break beyond an effort":      {11 * time.Minute, b, duration.Effort{}},
		"negative break":              {-time.Minute, b, duration.Effort{}},
		"third beyond the break":      {0, b, duration.Effort{Time: 7 * time.Minute, Power: 18.5}},
		"third at the break":          {0, b, duration.Effort{Time: 6 * time.Minute, Power: 18.5}},
		"third at less power":         {0, b, duration.Effort{Time: 3 * time.Minute, Power: 18}},
		"third with more work":        {0, b, duration.Effort{Time: 3 * time.Minute, Power: 40}},
		"third of no power":           {0, b, duration.Effort{Time: 3 * time.Minute}},
		"work that grows and shrinks": {0, duration.Effort{Time: 10 * time.Hour, Power: 0.31}, duration.Effort{}},
	} {
		if got, err := duration.LogarithmicThrough(r.at, a, r.long, r.short); !errors.Is(err, duration.ErrInput) {
			t.Errorf("%s: %+v, error %v", name, got, err)
		}
	}
}
