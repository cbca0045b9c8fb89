package fuel_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

func TestLaws(t *testing.T) {
	t.Parallel()
	var plans []*plan.Plan
	for _, hours := range []float64{0.7, 1.1, 2.2, 2.8, 7, 26} {
		plans = append(plans, planned(t, 10_000*hours, effort.Usual(14), plan.Race{
			Goal: time.Duration(hours * float64(time.Hour)), StartDelay: time.Minute,
			Stops: []plan.Stop{{Distance: 2_000, Duration: time.Minute}},
		}))
	}
	rapid.Check(t, func(rt *rapid.T) {
		p := rapid.SampledFrom(plans).Draw(rt, "plan")
		o := fuel.Options{
			Stations:  []float64{},
			Rehearsed: rapid.SampledFrom([]float64{0, 20, 45, 75, 90, 120}).Draw(rt, "rehearsed"),
			Mass:      rapid.Float64Range(30, 120).Draw(rt, "mass"),
			MaxCarry:  rapid.SampledFrom([]float64{0, 10, 60, 300}).Draw(rt, "carry"),
			MaxFluid:  rapid.SampledFrom([]float64{0, 300, 1000}).Draw(rt, "fluid"),
			Portion:   rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(5, fuel.MostAtOnce)).Draw(rt, "portion"),
			Interval:  time.Duration(rapid.OneOf(rapid.Just(0), rapid.IntRange(10, 60)).Draw(rt, "minutes")) * time.Minute,
			Air:       &fuel.Air{Temperature: rapid.Float64Range(-20, 40).Draw(rt, "air")},
		}
		n := rapid.IntRange(0, 6).Draw(rt, "stations")
		for i := range n {
			o.Stations = append(o.Stations, p.Course.Length()*float64(i+1)/float64(n+1))
		}
		laws(rt, p, o, table(rt, p, o))
	})
}

func laws(t *rapid.T, p *plan.Plan, o fuel.Options, got *fuel.Table) {
	if len(got.Sections) != len(o.Stations)+1 {
		t.Fatalf("%d sections", len(got.Sections))
	}
	var d time.Duration
	var eat, short, taken, fluid float64
	for _, s := range got.Sections {
		d += s.Duration
		eat, short, fluid = eat+s.Eat, short+s.Short, fluid+s.Fluid.High
		before := taken
		for _, i := range got.Intakes {
			if i.Time >= p.Elapsed(s.From) && (s.To == p.Course.Length() || i.Time < p.Elapsed(s.To)) {
				taken += i.Grams
			}
		}
		switch {
		case math.Abs(taken-before-s.Carry) > 1e-9 || s.PickUp != s.Carry:
			t.Fatalf("carries %g, picks up %g, eats %g", s.Carry, s.PickUp, taken-before)
		case o.MaxCarry > 0 && s.Carry > o.MaxCarry+1e-9, s.Carry < 0, s.Short < 0, s.Fluid.Low < 0:
			t.Fatalf("impossible: %+v", s)
		case s.Fluid.High > 800*s.Duration.Hours()+1e-9:
			t.Fatalf("too much to drink: %+v", s)
		case o.MaxFluid > 0 && s.FluidShort != max(0, s.Fluid.High-o.MaxFluid):
			t.Fatalf("not said that it cannot be carried: %+v", s)
		case s.Eat+s.Short > s.Carbohydrate.High || s.Eat+s.Short < s.Carbohydrate.Low:
			t.Fatalf("what is planned is outside of its own range: %+v", s)
		case s.Carbohydrate.High > got.Rate.High*s.Duration.Hours()+fuel.MostAtOnce+1e-9:
			t.Fatalf("a range moved by more than a bite: %+v", s)
		}
	}
	if d != got.Duration || d != p.Gun-time.Minute || eat != got.Total.Eat || short != got.Total.Short ||
		fluid != got.Total.Fluid.High || math.Abs(taken-eat) > 1e-9 {
		t.Fatalf("sums: %v %g %g %g %g of %+v", d, eat, short, fluid, taken, got.Total)
	}
	if c := got.Total.Carbohydrate; math.Abs(c.High-max(got.Rate.High*d.Hours(), eat+short)) > 1e-9 || c.Low > eat+short+1e-9 {
		t.Fatalf("%v in all at %v an hour", c, got.Rate)
	}
	published := 60.0
	switch {
	case d < 45*time.Minute:
		published = 0
	case d <= 2*time.Hour:
		published = 30
	case d > 150*time.Minute && o.Rehearsed > 60:
		published = min(90, o.Rehearsed)
	}
	if got.Rate.High > published || got.Rate.Low > got.Rate.High || got.Suggested > got.Rate.High {
		t.Fatalf("rate %v, suggested %g, published %g", got.Rate, got.Suggested, published)
	}
	if got.Suggested > 60 && o.Portion == 0 && o.Interval == 0 && (got.Interval < 15*time.Minute || got.Interval > 20*time.Minute) {
		t.Fatalf("%g g/h, %v apart", got.Suggested, got.Interval)
	}
	if math.Abs(got.Total.PerHour*d.Hours()-taken) > 1e-6 || got.Total.PerHour > got.Rate.High {
		t.Fatalf("%g g/h come of %g g in %v", got.Total.PerHour, taken, d)
	}
	sum, last := 0.0, -1.0
	for _, i := range got.Intakes {
		if i.Grams > fuel.MostAtOnce {
			t.Fatalf("%g g at one time", i.Grams)
		}
		sum += i.Grams
		if sum > got.Rate.High*(i.Time-time.Minute).Hours()+1e-6 || i.Distance < last {
			t.Fatalf("%g g at %v, %g m", sum, i.Time, i.Distance)
		}
		last = i.Distance
	}
}
