package effort

import (
	"math"
	"testing"
	"time"
)

// Altitude and heat by value, worked by hand: Wehrlin & Hallén's 0.063 for 1000 m above
// 300 m (from memory) leaves 0.8929 at 2000 m; Mantzios and others' 0.0035 a degree above
// 15 °C leaves 0.965 at 25 °C WBGT.
func TestLossesByValue(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"2000 m", Altitude{Loss: AltitudeLoss}.Factor(2000), 0.8929},
		{"250 m", Altitude{Loss: AltitudeLoss}.Factor(250), 1},
		{"from the sea", Altitude{Loss: AltitudeLoss, From: AtSea}.Factor(1000), 0.937},
		{"half acclimatised", Altitude{Loss: AltitudeLoss, Acclimatised: 0.5}.Factor(2000), 0.94645},
		{"no lower", Altitude{Loss: 0.2}.Factor(9000), 0.3},
		{"25 °C", Heat{Loss: HeatLoss}.Factor(25), 0.965},
		{"15 °C", Heat{Loss: HeatLoss}.Factor(15), 1},
		{"half acclimatised to heat", Heat{Loss: HeatLoss, Acclimatised: 0.5}.Factor(25), 0.9825},
		{"twice as long", Heat{Loss: HeatLoss, Growth: 1, Expected: 270 * time.Minute}.Factor(25), 0.93},
		{"faster than the fastest", Heat{Loss: HeatLoss, Growth: 1, Expected: time.Hour}.Factor(25), 0.965},
		{"cold, none by default", Heat{Loss: HeatLoss}.Factor(-5), 1},
		{"cold", Heat{ColdLoss: 0.002}.Factor(2.5), 0.99},
		{"no lower in heat", Heat{Loss: 0.05}.Factor(45), 0.3},
	} {
		near(t, c.what, c.got, c.want, 1e-12)
	}
	if f := (Altitude{Loss: -1}).Factor(2000); !math.IsNaN(f) {
		t.Errorf("a negative loss gives %g", f)
	}
}

// What a runner gets of a west wind of 4 m/s: all of it head on running west, none along but
// all across running north, its half running so that 60 degrees are between them.
func TestWindByValue(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ heading, head, cross float64 }{
		{270, 4, 0}, {90, -4, 0}, {0, 0, 4}, {180, 0, 4}, {210, 2, 4 * math.Sqrt(3) / 2},
	} {
		sin, cos := math.Sincos(c.heading * math.Pi / 180)
		head, cross := Wind{Speed: 4, From: 270}.along([2]float64{sin, cos})
		near(t, "head", head, c.head, 1e-12)
		near(t, "cross", math.Abs(cross), c.cross, 1e-12)
	}
	a := air{drag: 0.01, wind: 3, cross: 4} // 0.01 · 2 · 5 · √(25+16)
	near(t, "power", a.airPower(2), 0.1*math.Sqrt(41), 1e-12)
}

// On one cell the power on offer is the product of all factors, worked here one by one;
// cold without a loss to heat counts too.
func TestOfferByValue(t *testing.T) {
	t.Parallel()
	g := straight(t, 100, 2000, 0, 0, 100)
	d := day(t, []Hour{{Temperature: 20, Humidity: 50, WBGT: 25}}, Night{From: 20 * time.Hour, To: 6 * time.Hour, Factor: 0.9})
	s := Surroundings{
		Drag: 0.01, ThinAir: true, Day: d, Start: 23 * time.Hour,
		Altitude: Altitude{Loss: AltitudeLoss}, Heat: Heat{Loss: HeatLoss},
	}
	in := integrator(t, g, Athlete{HourPower: 12, Endurance: 0.1}, s)
	p := in.offerAt(0, State{}, 100, 0.8)
	near(t, "offer", p, 0.8*12*0.8929*0.965*0.9, 1e-9)
	// 794.95 hPa at 2000 m (ICAO, from memory) and 20 °C: 0.9447 kg/m³, 0.7712 of 1.225.
	near(t, "drag", in.mover.drag, 0.01*79495/(287.053*293.15)/1.225, 1e-7)
	cold := day(t, []Hour{{Temperature: 0, Humidity: 50, WBGT: 2.5}}, Night{})
	in = integrator(t, g, Athlete{HourPower: 12, Endurance: 0.1}, Surroundings{Day: cold, Heat: Heat{ColdLoss: 0.002}})
	near(t, "cold", in.offerAt(0, State{}, 100, 1), 12*0.99, 1e-9)
	twice, err := cold.Shifted(Shift{WBGT: 1})
	if err == nil {
		twice, err = twice.Shifted(Shift{WBGT: 2})
	}
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shifted twice", twice.WBGT(0), 5.5, 1e-12)
}

// Load, a falling fastest walk and a greatest speed on descents, by hand.
func TestMotionByValue(t *testing.T) {
	t.Parallel()
	a := Athlete{HourPower: 12, Endurance: 0.1, Braking: 1, Mass: 60, Load: 6, WalkFall: 2, FastestDescent: 2.5, Habit: RunOnly}
	s, err := NewSlope(a, 0, Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a tenth more to carry", s.Run(12).Speed, 12/(3.6*1.1), 1e-12)
	near(t, "a tenth more, net", s.Power(Walk, 1.34), 1.1*WalkingPower(1.34, 0), 1e-7)
	for _, c := range []struct{ gradient, speed float64 }{{-0.1, 2.5}, {-0.01, 12 / (1.1 * (RunningCost(-0.01) + BrakingCost(-0.01)))}} {
		if s, err = NewSlope(a, c.gradient, Surroundings{}); err != nil {
			t.Fatal(err)
		}
		near(t, "down", s.Run(12).Speed, c.speed, 1e-12)
		near(t, "oxygen down", s.Metabolic(Run, 2), 2*1.1*RunningCost(c.gradient), 1e-12)
	}
	if s, err = NewSlope(a, 0.2, Surroundings{}); err != nil {
		t.Fatal(err)
	}
	near(t, "fastest walk up 20 %", s.Walk(39).Speed, 1.8/1.4, 1e-12)
}

// A walk at ease meets the condition of the least price, (ε_w/ε)^n = e (n−1)/(n−e), e taken
// at even effort.
func TestEasedWalk(t *testing.T) {
	t.Parallel()
	m := newMover(Usual(10), Surroundings{})
	c := modelGround.uniform(0.2)
	even := m.evenWalk(&c, 8, 0)
	e := even.Elasticity
	near(t, "eased", m.easedWalk(&c, 8, even).Power, 8*math.Pow(e*9/(10-e), 0.1), 1e-9)
}

// What does nothing is said.
func TestWarnings(t *testing.T) {
	t.Parallel()
	g := level(t, 1000)
	for _, s := range []Surroundings{
		{HeadWind: 2},
		{Drag: 0.01, Wind: Wind{Speed: 3}},
		{ThinAir: true},
		{Stops: []Stop{{500, time.Minute}}},
		{Day: &Day{}, Heat: Heat{Loss: HeatLoss}},
		{Day: day(t, []Hour{{Temperature: 20}}, Night{})},
	} {
		if w := integrator(t, g, Usual(12), s).Warnings(); len(w) != 1 {
			t.Errorf("%+v: %q", s, w)
		}
	}
	if w := integrator(t, g, Usual(12), Surroundings{Drag: 0.01, HeadWind: 2}).Warnings(); w != nil {
		t.Errorf("%q", w)
	}
}
