package fuel_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/energy"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

type fataler interface {
	Helper()
	Fatal(...any)
}

func planned(t fataler, length float64, a effort.Athlete, r plan.Race, stations ...course.Landmark) *plan.Plan {
	t.Helper()
	c, err := course.New([]float64{0, length / 2, length}, []float64{0, length / 100, 0}, course.Options{Landmarks: stations})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Even(c, a, r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func table(t fataler, p *plan.Plan, o fuel.Options) *fuel.Table {
	t.Helper()
	got, err := fuel.For(p, o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// Jeukendrup 2014, from memory; the runner burns enough for none of it to be reduced.
func TestRate(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		minutes   int
		rehearsed float64
		want      fuel.Range
	}{
		{44, 90, fuel.Range{}},
		{45, 0, fuel.Range{High: 30}},
		{120, 90, fuel.Range{High: 30}},
		{121, 0, fuel.Range{Low: 30, High: 60}},
		{150, 90, fuel.Range{Low: 30, High: 60}},
		{151, 90, fuel.Range{Low: 30, High: 90}},
		{151, 140, fuel.Range{Low: 30, High: 90}},
		{300, 40, fuel.Range{Low: 20, High: 40}},
		{-5, 40, fuel.Range{}},
		{300, -1, fuel.Range{}},
	} {
		if got := fuel.Rate(time.Duration(c.minutes)*time.Minute, c.rehearsed, 200); got != c.want {
			t.Errorf("%d min, rehearsed %g: %v, want %v", c.minutes, c.rehearsed, got, c.want)
		}
	}
	if got := fuel.Rate(time.Hour, 0, math.NaN()); got != (fuel.Range{}) {
		t.Errorf("NaN burnt: %v", got)
	}
}

// The high ends step where those of energy.IntakeRange do, between 45 minutes, below which nothing
// is eaten, and its longest. The two are one source read twice.
func TestRateStepsAsIntakeRange(t *testing.T) {
	t.Parallel()
	for minutes := 46; minutes < 2000; minutes++ {
		d := time.Duration(minutes) * time.Minute
		for _, rehearsed := range []bool{false, true} {
			want := energy.IntakeRange(d, rehearsed).High
			most := 0.0
			if rehearsed {
				most = fuel.MostRate
			}
			if got := fuel.Rate(d, most, 200).High; got != want {
				t.Fatalf("%v, rehearsed %v: %g, want %g", d, rehearsed, got, want)
			}
		}
	}
}

// By hand: h = (19 − 10)/18 = 0.5 and f = (10 − 6)/8 = 0.5 make 600 and 200 ml/h.
func TestFluid(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		wbgt, power float64
		d           time.Duration
		want        fuel.Range
	}{
		{19, 10, 3 * time.Hour, fuel.Range{Low: 200, High: 600}},
		{19, 10, 75 * time.Minute, fuel.Range{High: 600}},
		{19, 10, 76 * time.Minute, fuel.Range{Low: 200, High: 600}},
		{5, 4, 9 * time.Hour, fuel.Range{Low: 100, High: 400}},
		{28, 8, 9 * time.Hour, fuel.Range{Low: 187.5, High: 575}}, // f = 0.25
		{35, 4, 9 * time.Hour, fuel.Range{Low: 150, High: 500}},
		{35, 20, 9 * time.Hour, fuel.Range{Low: 300, High: 800}},
		{math.NaN(), math.NaN(), 9 * time.Hour, fuel.Range{Low: 150, High: 500}},
		{math.Inf(1), math.Inf(1), 9 * time.Hour, fuel.Range{Low: 300, High: 800}},
	} {
		if got := fuel.Fluid(c.wbgt, c.power, c.d); got != c.want {
			t.Errorf("%g °C, %g W/kg, %v: %v, want %v", c.wbgt, c.power, c.d, got, c.want)
		}
	}
}

// By hand: of a novice's 30 to 60 g/h the middle is 45, and 20 g every half hour come nearest
// without going above: from 0:30 to 4:00, and none at 4:30, the finish. That is 160 g in 4:30, or
// 35.6 g/h. A station at the middle of the way, and 50 g to be carried: two portions of four.
func TestWorked(t *testing.T) {
	t.Parallel()
	p := planned(t, 40_000, effort.Usual(15), plan.Race{Goal: 4*time.Hour + 30*time.Minute},
		course.Landmark{Name: "Mill", Distance: 20_000, Kind: course.Station})
	full := table(t, p, fuel.Options{Mass: 80})
	var got []float64
	for _, i := range full.Intakes {
		got = append(got, i.Grams)
	}
	want := []float64{20, 20, 20, 20, 20, 20, 20, 20}
	if full.Suggested != 40 || len(got) != len(want) || math.Abs(full.Total.PerHour-35.6) > 0.05 {
		t.Fatalf("%g g/h, %v", full.Suggested, got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Fatalf("%v, want %v", got, want)
		}
	}
	short := table(t, p, fuel.Options{Mass: 80, MaxCarry: 50})
	if short.Total.Eat != 80 || short.Total.Short != 80 {
		t.Errorf("carrying 50 g: eats %g, short %g; want 80 and 80", short.Total.Eat, short.Total.Short)
	}
}

// On level ground, running at v, the net cost is that of effort.RunningCost(0), in J/(kg m).
func TestEnergy(t *testing.T) {
	t.Parallel()
	c, err := course.New([]float64{0, 20_000}, []float64{0, 0}, course.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Even(c, effort.Usual(14), plan.Race{})
	if err != nil {
		t.Fatal(err)
	}
	kj := 70 * (20_000*effort.RunningCost(0) + effort.StandingPower*p.Gun.Seconds()) / 1000
	e := table(t, p, fuel.Options{Mass: 70}).Energy
	if math.Abs(e.Kilojoules/kj-1) > 1e-3 || math.Abs(e.Kilojoules/e.Kilocalories/4.184-1) > 1e-9 {
		t.Errorf("%g kJ, %g kcal; by hand %g kJ", e.Kilojoules, e.Kilocalories, kj)
	}
}

func TestShortRace(t *testing.T) {
	t.Parallel()
	got := table(t, planned(t, 5_000, effort.Usual(15), plan.Race{}), fuel.Options{Rehearsed: 90})
	if got.Total.Eat != 0 || got.Total.Carbohydrate.High != 0 || len(got.Intakes) != 0 {
		t.Errorf("%v", got.Total)
	}
}

func TestBadInput(t *testing.T) {
	t.Parallel()
	p := planned(t, 10_000, effort.Usual(15), plan.Race{})
	for name, o := range map[string]fuel.Options{
		"off":       {Stations: []float64{12_000}},
		"start":     {Stations: []float64{0}},
		"nan place": {Stations: []float64{math.NaN()}},
		"twice":     {Stations: []float64{5_000, 5_000}},
		"order":     {Stations: []float64{5_000, 4_000}},
	} {
		if _, err := fuel.For(p, o); !errors.Is(err, fuel.ErrStation) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, o := range map[string]fuel.Options{
		"rate":     {Rehearsed: -1},
		"nan":      {Rehearsed: math.NaN()},
		"mass":     {Mass: 5},
		"carry":    {MaxCarry: math.Inf(1)},
		"fluid":    {MaxFluid: -1},
		"interval": {Interval: time.Second},
		"portion":  {Portion: math.NaN()},
		"mouthful": {Portion: 31},
		"air":      {Air: &fuel.Air{Temperature: math.NaN()}},
	} {
		if _, err := fuel.For(p, o); !errors.Is(err, fuel.ErrOption) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := fuel.For(nil, fuel.Options{}); !errors.Is(err, fuel.ErrPlan) {
		t.Errorf("no plan: %v", err)
	}
}

// The weather is that of the hour at which a section is run, whichever the start; a race from
// 23 o'clock runs into the next day.
func TestWeatherByTheClock(t *testing.T) {
	t.Parallel()
	day, err := effort.NewDay([]effort.Hour{
		{Clock: 6 * time.Hour, WBGT: 10, Temperature: 12, Humidity: 60},
		{Clock: 18 * time.Hour, WBGT: 28, Temperature: 30, Humidity: 60},
	}, effort.Night{})
	if err != nil {
		t.Fatal(err)
	}
	at := func(hour int) *fuel.Table {
		p := planned(t, 40_000, effort.Usual(14), plan.Race{
			Goal: 4 * time.Hour, Start: time.Date(2026, 7, 4, hour, 0, 0, 0, time.UTC),
			Surroundings: effort.Surroundings{Day: day},
		})
		return table(t, p, fuel.Options{Stations: []float64{}})
	}
	// By hand: the middle of the way is at 10, 14 and 1 o'clock; from 6 to 18 o'clock it
	// grows by 1.5 °C an hour, and falls by as much in the night. Within 0.2 °C, what smoothing
	// of the day may move.
	for hour, want := range map[int]float64{8: 16, 12: 22, 23: 17.5} {
		if got := at(hour).Sections[0].WBGT; math.Abs(got-want) > 0.2 {
			t.Errorf("from %d o'clock: %.2f °C, want %.2f", hour, got, want)
		}
	}
	if cool, warm := at(8).Total.Fluid, at(12).Total.Fluid; cool.High >= warm.High {
		t.Errorf("cool %v, warm %v", cool, warm)
	}
}

// With no station everything is carried from the start.
func TestNoStation(t *testing.T) {
	t.Parallel()
	got := table(t, planned(t, 40_000, effort.Usual(14), plan.Race{}), fuel.Options{})
	if len(got.Sections) != 1 || got.Sections[0].Carry != got.Total.Eat || got.Total.Eat == 0 {
		t.Errorf("%+v of %+v", got.Sections, got.Total)
	}
}
