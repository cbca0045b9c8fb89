package effort

import (
	"slices"
	"testing"
	"time"

	"isoeffort.example/effort/weather"
	"pgregory.net/rapid"
)

// A piece is something that is present but switched off.
type piece struct {
	name string
	add  func(a *Athlete, s *Surroundings)
}

// offPieces are all pieces, each switched off in the way its comment says.
func offPieces(t rapid.TB) []piece {
	hours := []Hour{{Clock: 6 * time.Hour, Temperature: 31, Humidity: 70}, {Clock: 15 * time.Hour, Temperature: -3, Humidity: 40}}
	night := Night{From: 0, To: 12 * time.Hour}
	full := night
	full.Factor = 1
	return []piece{
		{"a day without hours", func(_ *Athlete, s *Surroundings) { s.Day = day(t, nil, Night{}) }},
		{"a night of 0", func(_ *Athlete, s *Surroundings) { s.Day = day(t, nil, night) }},
		{"heat on a day without weather", func(_ *Athlete, s *Surroundings) { s.Day, s.Heat = day(t, nil, full), Heat{Loss: 0.01, ColdLoss: 0.01} }},
		{"weather without heat", func(_ *Athlete, s *Surroundings) {
			s.Day, s.Heat = day(t, hours, full), Heat{Above: 5, Growth: 1, Expected: 9 * time.Hour}
		}},
		{"got used to heat", func(_ *Athlete, s *Surroundings) {
			s.Day, s.Heat = day(t, hours, full), Heat{Loss: 0.01, Acclimatised: 1, Growth: 1, Expected: 9 * time.Hour}
		}},
		{"start and stops", func(_ *Athlete, s *Surroundings) {
			s.Start, s.Stops = 7*time.Hour, []Stop{{0, time.Hour}, {500, time.Hour}}
		}},
		{"altitude without loss", func(_ *Athlete, s *Surroundings) { s.Altitude = Altitude{From: AtSea} }},
		{"altitude beyond", func(_ *Athlete, s *Surroundings) { s.Altitude = Altitude{Loss: 0.1, From: 9000} }},
		{"used to altitude", func(_ *Athlete, s *Surroundings) { s.Altitude = Altitude{Loss: 0.1, From: AtSea, Acclimatised: 1} }},
		{"a calm", func(_ *Athlete, s *Surroundings) { s.Wind = Wind{From: 77} }},
		{"mass without load", func(a *Athlete, _ *Surroundings) { a.Mass = 93 }},
		{"defaults by name", func(a *Athlete, _ *Surroundings) { a.SlowestRun, a.Mass = 1.5, 70 }},
		{"a fast descent", func(a *Athlete, _ *Surroundings) { a.FastestDescent = 20 }},
	}
}

// sameTraverse fails unless two traverses are the same to the last bit.
func sameTraverse(t rapid.TB, name string, got, want *Traverse) {
	t.Helper()
	if !slices.Equal(got.End, want.End) || !slices.Equal(got.Gait, want.Gait) || !slices.Equal(got.Power, want.Power) {
		t.Errorf("%s: finish %+v, plain %+v", name, got.Finish(), want.Finish())
	}
}

// What is switched off changes no bit, whichever way it is off.
func TestSwitchedOff(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a, s := drawFullGround(t), drawAthlete(t), drawSurroundings(t)
		p := Pace{Intensity: rapid.Float64Range(0.5, 1.2).Draw(t, "intensity"), Tilt: rapid.Float64Range(-0.1, 0.1).Draw(t, "tilt")}
		plain := integrator(t, g, a, s).Traverse(State{}, p)
		for _, off := range offPieces(t) {
			a, s := a, s
			off.add(&a, &s)
			sameTraverse(t, off.name, integrator(t, g, a, s).Traverse(State{}, p), plain)
		}
		if s.Drag == 0 { // air that is not there may blow
			s.Wind, s.ThinAir = Wind{Speed: 20, From: 30}, true
			sameTraverse(t, "wind without drag", integrator(t, g, a, s).Traverse(State{}, p), plain)
		}
	})
}

// The 13 reference runs are the same to the last bit with every piece present but
// switched off, and without a heading under a gale.
func TestReferenceRunsSwitchedOff(t *testing.T) {
	t.Parallel()
	for i, r := range []struct {
		length  float64
		height  func(float64) float64
		athlete Athlete
		drag    float64
	}{
		{10_000, slope(0), Athlete{HourPower: 12, Endurance: 0.0566, Braking: 1}, 0},
		{42_195, slope(0), Athlete{HourPower: 12, Endurance: 0.0566, Braking: 1}, 0},
		{42_195, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0},
		{42_195, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.02, FadeShape: 1.3, Braking: 1}, 0},
		{100_000, slope(0), Athlete{HourPower: 14, Endurance: 0.1, Fade: 0.05, FadeShape: 0.5, Braking: 1}, 0},
		{42_195, slope(0), Athlete{HourPower: 16, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0.01},
		{5000, slope(0.05), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0},
		{5000, slope(-0.1), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0},
		{3000, slope(0.2), Athlete{HourPower: 12, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0},
		{20_000, oneHill, Athlete{HourPower: 14, Endurance: 0.08, Fade: 0.02, Braking: 1}, 0},
		{80_000, waves, Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0},
		{80_000, waves, Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, Braking: 2}, 0},
		{80_000, waves, Athlete{HourPower: 9, Endurance: 0.1, Fade: 0.02, Braking: 1}, 0},
	} {
		g := ground(t, profile(t, r.length, 10, r.height), 0)
		plain := solve(t, integrator(t, g, r.athlete, Surroundings{Drag: r.drag}), State{}, Demand{})
		a, s := r.athlete, Surroundings{Drag: r.drag}
		for _, off := range offPieces(t) {
			if off.name != "heat on a day without weather" {
				off.add(&a, &s)
			}
		}
		s.Wind = Wind{Speed: 15, From: 10} // this course knows no heading
		with := solve(t, integrator(t, g, a, s), State{}, Demand{})
		sameTraverse(t, "reference run", with.Traverse, plain.Traverse)
		if with.Intensity != plain.Intensity {
			t.Errorf("run %d: intensity %g, plain %g", i, with.Intensity, plain.Intensity)
		}
	}
}

// Thin air at the standard's density is plain air: at sea level and 15 °C within 1e-6 of
// the drag, which the constants of the standard atmosphere leave. Higher up it is thinner,
// and no slower; colder air is denser, and no faster.
func TestThinAirOnTheWay(t *testing.T) {
	t.Parallel()
	mild := []Hour{{Temperature: 15, Humidity: 50}}
	at := func(altitude float64, hours []Hour, thin bool) float64 {
		s := Surroundings{Drag: 0.01, HeadWind: 2, ThinAir: thin}
		if hours != nil {
			s.Day = day(t, hours, Night{})
		}
		in := integrator(t, straight(t, 10_000, altitude, 0, 0, 100), Usual(14), s)
		return in.Traverse(State{}, Pace{Intensity: 1}).Finish().Moving
	}
	plain := at(0, nil, false)
	near(t, "standard air", at(0, nil, true), plain, 1e-6*plain)
	near(t, "a mild day", at(0, mild, true), plain, 1e-6*plain)
	before := plain * (1 + 1e-6)
	for altitude := 0.0; altitude <= 5000; altitude += 500 {
		now := at(altitude, nil, true)
		if now > before {
			t.Errorf("at %g m %.3f s, lower %.3f s", altitude, now, before)
		}
		before = now
	}
	if cold := at(0, []Hour{{Temperature: -15, Humidity: 50}}, true); cold <= plain {
		t.Errorf("in cold air %.3f s, in mild air %.3f s", cold, plain)
	}
	a := Surroundings{Drag: 0.01 * weather.AirDensity(2000, weather.StandardTemperature(2000)) / weather.StandardDensity, HeadWind: 2}
	by := integrator(t, straight(t, 10_000, 2000, 0, 0, 100), Usual(14), a).Traverse(State{}, Pace{Intensity: 1}).Finish().Moving
	near(t, "at 2000 m by hand", at(2000, nil, true), by, 1e-9*by)
}

// Higher is slower: with more loss, from lower down, less used to it, and on a course
// raised as a whole.
func TestAltitudeSlows(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		base := Altitude{
			Loss: rapid.Float64Range(0.01, 0.1).Draw(t, "loss"), From: rapid.Float64Range(1, 2000).Draw(t, "from"),
			Acclimatised: rapid.Float64Range(0, 0.9).Draw(t, "acclimatised"),
		}
		more := rapid.Float64Range(1.01, 2).Draw(t, "more")
		height, gradient := rapid.Float64Range(300, 2800).Draw(t, "height"), rapid.Float64Range(-0.2, 0.2).Draw(t, "gradient")
		at := func(l Altitude, height float64) float64 {
			in := integrator(t, straight(t, 8000, height+1600, gradient, 0, 100), a, Surroundings{Altitude: l})
			f, err := in.Fastest(allRun(in.ground))
			if err != nil {
				t.Fatal(err)
			}
			return f.Moving
		}
		low := at(base, height)
		for name, slower := range map[string]float64{
			"more loss":         at(Altitude{base.Loss * more, base.From, base.Acclimatised}, height),
			"from lower down":   at(Altitude{base.Loss, base.From / more, base.Acclimatised}, height),
			"less acclimatised": at(Altitude{base.Loss, base.From, base.Acclimatised / more}, height),
			"higher":            at(base, height*more),
		} {
			if slower < low*(1-1e-9) {
				t.Errorf("%s: %.6f s, before %.6f s", name, slower, low)
			}
		}
	})
}
