package effort

import (
	"math"
	"testing"
	"time"
)

// hot is a summer's day, the second half of a night, and every other piece switched on.
func hot(t testing.TB, shift Shift, night float64) Surroundings {
	t.Helper()
	day, err := NewDay([]Hour{
		{Clock: 4 * time.Hour, Temperature: 9, Humidity: 85, Shade: true},
		{Clock: 7 * time.Hour, Temperature: 19, Humidity: 75},
		{Clock: 12 * time.Hour, Temperature: 27, Humidity: 50},
		{Clock: 15 * time.Hour, Temperature: 30, Humidity: 40},
		{Clock: 21 * time.Hour, Temperature: 22, Humidity: 65, Shade: true},
	}, Night{From: 21 * time.Hour, To: 5 * time.Hour, Factor: night})
	if err != nil {
		t.Fatal(err)
	}
	if day, err = day.Shifted(shift); err != nil {
		t.Fatal(err)
	}
	return Surroundings{
		Drag: 0.01, HeadWind: 0.5, Wind: Wind{Speed: 4, From: 250}, ThinAir: true,
		Altitude: Altitude{Loss: AltitudeLoss, Acclimatised: 0.2},
		Heat:     Heat{Loss: HeatLoss, ColdLoss: 0.001, Below: 14.5, Growth: 1, Expected: 11 * time.Hour},
		Day:      day, Start: 4 * time.Hour, Stops: []Stop{{20_000, 10 * time.Minute}, {50_000, 15 * time.Minute}},
	}
}

// pulled returns the athlete and surroundings with a lever moved by so much.
func pulled(t testing.TB, a Athlete, l Lever, by float64) (Athlete, Surroundings) {
	t.Helper()
	a = a.filled()
	hot := func(t testing.TB, shift Shift, night float64) Surroundings {
		s := hot(t, shift, night)
		s.Heat.Acclimatised = 0.1
		return s
	}
	s := hot(t, Shift{}, 0.95)
	switch l {
	case ByTemperature:
		return a, hot(t, Shift{Temperature: by}, 0.95)
	case ByHumidity:
		return a, hot(t, Shift{Humidity: by}, 0.95)
	case ByWBGT:
		return a, hot(t, Shift{WBGT: by}, 0.95)
	case ByNightFactor:
		return a, hot(t, Shift{}, 0.95+by)
	case ByStart:
		s.Start += time.Duration(by * 1e9)
		return a, s
	case ByHeatExpected:
		s.Heat.Expected += time.Duration(by * 1e9)
		return a, s
	}
	s.Altitude.From, s.Heat.Above = 300, 15
	number := map[Lever]*float64{
		ByHourPower: &a.HourPower, ByEndurance: &a.Endurance, ByFade: &a.Fade, ByFadeShape: &a.FadeShape,
		ByBraking: &a.Braking, ByEconomy: &a.Economy, ByFastestWalk: &a.FastestWalk, ByWalkFall: &a.WalkFall,
		ByFastestDescent: &a.FastestDescent, ByMass: &a.Mass, ByLoad: &a.Load, ByEagerness: &a.Eagerness,
		ByDrag: &s.Drag, ByHeadWind: &s.HeadWind, ByWindSpeed: &s.Wind.Speed, ByWindFrom: &s.Wind.From,
		ByAltitudeLoss: &s.Altitude.Loss, ByHeatLoss: &s.Heat.Loss, ByColdLoss: &s.Heat.ColdLoss,
		ByAltitudeFrom: &s.Altitude.From, ByAltitudeAcclimatised: &s.Altitude.Acclimatised, ByHeatAbove: &s.Heat.Above,
		ByHeatGrowth: &s.Heat.Growth, ByHeatAcclimatised: &s.Heat.Acclimatised, ByColdBelow: &s.Heat.Below,
	}[l]
	*number += by
	return a, s
}

// leverSteps are steps for central differences, about 1/1000 of a usual value, smaller
// where kinks are near.
var leverSteps = [Levers]float64{
	ByHourPower: 0.01, ByEndurance: 1e-4, ByFade: 2e-5, ByFadeShape: 1e-3, ByBraking: 1e-3, ByEconomy: 5e-4,
	ByFastestWalk: 2e-4, ByWalkFall: 1e-3, ByFastestDescent: 1e-3, ByMass: 0.05, ByLoad: 0.005, ByEagerness: 1e-3,
	ByDrag: 1e-5, ByHeadWind: 1e-2, ByWindSpeed: 1e-2, ByWindFrom: 0.2, ByAltitudeLoss: 1e-4, ByHeatLoss: 1e-5,
	ByColdLoss: 1e-5, ByTemperature: 1e-2, ByHumidity: 2e-2, ByWBGT: 1e-2, ByNightFactor: 1e-3, ByStart: 5,
	ByAltitudeFrom: 1, ByAltitudeAcclimatised: 1e-3, ByHeatAbove: 1e-2, ByHeatGrowth: 1e-3, ByHeatExpected: 20,
	ByHeatAcclimatised: 1e-3, ByColdBelow: 1e-2,
}

// Every derivative of a whole solve with everything on agrees with fourth-order central
// differences to 1e-6 of itself, but for rounding. A kink within a step (a greatest speed
// reached, 15 °C passed) upsets a difference and not the derivative, so three steps are
// tried, each a fifth of the one before: a wrong derivative fits none.
func TestLevers(t *testing.T) {
	t.Parallel()
	pullsAny := [Levers]bool{}
	for i, a := range []Athlete{
		{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1.2, Braking: 1, WalkFall: 0.5, FastestDescent: 2.5, Load: 5, Eagerness: 2},
		{HourPower: 8, Endurance: 0.12, Fade: 0.04, FadeShape: 0.6, Braking: 2, FastestWalk: 1.6, WalkFall: 1, FastestDescent: 1.9, Load: 2, Mass: 60, Eagerness: 0.5},
		{HourPower: 17, Endurance: 0.07, Fade: 0.01, FadeShape: 1, Braking: 0.5, Economy: 0.95, WalkFall: 0.3, FastestDescent: 4, Load: 1, Eagerness: 1},
		{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1.2, Braking: 1, WalkFall: 0.5, FastestDescent: 2.5, Load: 5, Eagerness: 2},
	} {
		g := ground(t, profile(t, 80_000, 10, func(x float64) float64 { return 1200 + waves(x) }), 2000)
		for j := range g.cells {
			sin, cos := math.Sincos(float64(j) / 7)
			g.heading = append(g.heading, [2]float64{0.98 * sin, 0.98 * cos})
		}
		limits := []Limit{{From: 30_000, To: 38_000, Intensity: 0.7}, {From: 50_000, To: 56_000, Walk: true}, {From: 60_000, To: 64_000, Speed: 1.9}}
		pulled := func(t testing.TB, a Athlete, l Lever, by float64) (Athlete, Surroundings) {
			a, s := pulled(t, a, l, by)
			if i == 3 {
				s.Crowd, s.Limits = Crowd{Speed: 1.7, Over: 9000}, limits
			}
			return a, s
		}
		a, s := pulled(t, a, ByHourPower, 0)
		in := integrator(t, g, a, s)
		base, err := in.Fastest(nil)
		if err != nil {
			t.Fatal(err)
		}
		gaits := append([]Gait(nil), in.Gaits()...)
		for l := range Lever(Levers) {
			at := func(by float64) float64 {
				a, s := pulled(t, a, l, by)
				if err := in.Reset(g, a, s); err != nil {
					t.Fatal(err)
				}
				f, err := in.Fastest(gaits)
				if err != nil {
					t.Fatal(err)
				}
				return f.Moving
			}
			got, off := base.ByLever[l], math.Inf(1)
			for h := leverSteps[l]; h > leverSteps[l]/30; h /= 5 {
				want := (8*(at(h)-at(-h)) - (at(2*h) - at(-2*h))) / (12 * h)
				rounding := 1e-12 * base.Moving / h
				off = math.Min(off, math.Max(0, math.Abs(got-want)-rounding)/math.Max(math.Abs(want), rounding))
			}
			t.Logf("athlete %d: %-20v %14.6f s for 1 %s, %.2g off", i, l, got, l.Unit(), off)
			if !(off <= 1e-6) {
				t.Errorf("athlete %d: %v: %.9g s for 1 %s, %.2g off", i, l, got, l.Unit(), off)
			}
			pullsAny[l] = pullsAny[l] || math.Abs(got)*leverSteps[l] > 1e-4
		}
	}
	for l, pulls := range pullsAny {
		if !pulls {
			t.Errorf("%v moves no athlete's time: it is not tested", Lever(l))
		}
	}
}
