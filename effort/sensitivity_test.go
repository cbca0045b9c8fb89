package effort

import (
	"math"
	"testing"
)

// A whole solve on either side, with its gaits chosen anew, must see the slopes that
// Fastest finds with the gaits held.
func TestFastestSlopes(t *testing.T) {
	t.Parallel()
	a := Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1, Braking: 1}
	g, err := NewGround(profile(t, 80_000, 10, waves), 0)
	if err != nil {
		t.Fatal(err)
	}
	solve := func(a Athlete) Fastest {
		in, err := NewIntegrator(g, a, Surroundings{})
		if err != nil {
			t.Fatal(err)
		}
		f, err := in.Fastest(nil)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	base := solve(a)
	for n := range Number(Numbers) {
		const step = 0.02
		up, down := solve(a.Set(n, a.Get(n)*(1+step))), solve(a.Set(n, a.Get(n)*(1-step)))
		want := math.Log(up.Moving/down.Moving) / math.Log((1+step)/(1-step))
		t.Logf("%v: %.5f, by whole solves %.5f", n, base.Slope[n], want)
		if math.Abs(base.Slope[n]-want) > 0.02*math.Abs(want) {
			t.Errorf("%v: slope %.5f, by whole solves %.5f", n, base.Slope[n], want)
		}
	}
}

// With the gaits held, the slopes are exact: central differences agree to 2e-6. Long
// cells keep the kinks, where a walk comes to its greatest speed, apart from the points.
func TestFastestSlopesExact(t *testing.T) {
	t.Parallel()
	for _, a := range []Athlete{
		{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1.2, Braking: 1},
		{HourPower: 8, Endurance: 0.12, Fade: 0.04, FadeShape: 0.6, Braking: 2, FastestWalk: 1.6},
		{HourPower: 17, Endurance: 0.07, Fade: 0.01, FadeShape: 1, Braking: 0.5, Economy: 0.95},
	} {
		g, err := NewGround(profile(t, 80_000, 10, waves), 2000)
		if err != nil {
			t.Fatal(err)
		}
		in, err := NewIntegrator(g, a, Surroundings{Drag: 0.01, HeadWind: 1})
		if err != nil {
			t.Fatal(err)
		}
		base, err := in.Fastest(nil)
		if err != nil {
			t.Fatal(err)
		}
		gaits := append([]Gait(nil), in.Gaits()...)
		at := func(a Athlete) float64 {
			if err := in.Reset(g, a, Surroundings{Drag: 0.01, HeadWind: 1}); err != nil {
				t.Fatal(err)
			}
			f, err := in.Fastest(gaits)
			if err != nil {
				t.Fatal(err)
			}
			return math.Log(f.Moving)
		}
		for n := range Number(Numbers) {
			const h = 1e-3
			v := a.Get(n)
			// Fourth-order central difference.
			want := (8*(at(a.Set(n, v*(1+h)))-at(a.Set(n, v*(1-h)))) -
				(at(a.Set(n, v*(1+2*h))) - at(a.Set(n, v*(1-2*h))))) / (12 * h)
			if math.Abs(base.Slope[n]-want) > 2e-6*math.Max(1, math.Abs(want)) {
				t.Errorf("%+v: %v: slope %.9f, by differences %.9f", a, n, base.Slope[n], want)
			}
		}
	}
}
