package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A wind along the course is a head wind, against it a wind from behind, on any heading.
// The heading of 5 km is that of the ellipsoid, so a degree of the map is not quite one of
// the wind: 1e-4 of the time.
func TestWindByHeading(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		heading, speed := rapid.Float64Range(0, 360).Draw(t, "heading"), rapid.Float64Range(0, 8).Draw(t, "wind")
		g := straight(t, 5000, 1500, rapid.Float64Range(-0.2, 0.2).Draw(t, "gradient"), heading, 100)
		at := func(s Surroundings) float64 {
			s.Drag = 0.01
			return integrator(t, g, Usual(12), s).Traverse(State{}, Pace{Intensity: 1}).Finish().Moving
		}
		still := at(Surroundings{})
		near(t, "against", at(Surroundings{Wind: Wind{speed, heading}}), at(Surroundings{HeadWind: speed}), 1e-6*still)
		near(t, "from behind", at(Surroundings{Wind: Wind{speed, heading - 180}}), at(Surroundings{HeadWind: -speed}), 1e-6*still)
		if side := at(Surroundings{Wind: Wind{speed, heading - 90}}); side < still*(1-1e-9) {
			t.Errorf("%.4f s in a cross wind, %.4f s in still air", side, still)
		}
	})
}

// A head wind never speeds a runner and a wind from behind never slows one, whatever else
// is on, at one power: stride by stride, in either gait and by the rule. A wind from
// ahead and the side never speeds one either.
func TestWindOnASlope(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawFullAthlete(t)
		i, p := rapid.Float64Range(-0.5, 0.5).Draw(t, "gradient"), rapid.Float64Range(2, 30).Draw(t, "power")
		drag, wind := rapid.Float64Range(0.001, 0.03).Draw(t, "drag"), rapid.Float64Range(0, 8).Draw(t, "wind")
		cross := rapid.Float64Range(0, 8).Draw(t, "cross wind")
		at := func(wind, cross float64) *Slope {
			s, err := NewSlope(a, i, Surroundings{Drag: drag, HeadWind: wind})
			if err != nil {
				t.Fatal(err)
			}
			s.mover.cross = cross
			return s
		}
		for name, speed := range map[string]func(*Slope) float64{
			"run":     func(s *Slope) float64 { return s.Run(p).Speed },
			"walk":    func(s *Slope) float64 { return s.Walk(p).Speed },
			"by rule": func(s *Slope) float64 { _, v := s.Choose(p); return v.Speed },
		} {
			const rounding = 1 + 1e-10
			still := speed(at(0, 0))
			if v := speed(at(wind, cross)); v > still*rounding {
				t.Errorf("%s: %.9g m/s against %g m/s and %g from the side, %.9g in still air", name, v, wind, cross, still)
			}
			if v := speed(at(-wind, 0)); v*rounding < still {
				t.Errorf("%s: %.9g m/s with %g m/s from behind, %.9g in still air", name, v, wind, still)
			}
		}
	})
}

// A wind from behind and the side may slow a runner, because what meets the runner from
// the side makes the air ahead resist more: at 4 m/s a wind of 8 m/s from 100° off the
// heading does. Power against the air is drag v u √(u² + c²): 1.35 times that of still air
// here, at u = 4 − 1.39 and c = 7.88 m/s.
func TestWindFromBehindAndTheSideMaySlow(t *testing.T) {
	t.Parallel()
	g := straight(t, 10_000, 0, 0, 0, 100)
	at := func(from float64) float64 {
		in := integrator(t, g, Usual(15), Surroundings{Drag: 0.01, Wind: Wind{8, from}})
		return in.Traverse(State{}, Pace{Intensity: 1}).Finish().Moving
	}
	in := integrator(t, g, Usual(15), Surroundings{Drag: 0.01})
	still := in.Traverse(State{}, Pace{Intensity: 1}).Finish().Moving
	if slow := at(100); slow <= still {
		t.Errorf("%.2f s in a wind from 100°, %.2f s in still air", slow, still)
	}
	if fast := at(180); fast >= still {
		t.Errorf("%.2f s in a wind from behind, %.2f s in still air", fast, still)
	}
	sin, cos := math.Sincos(100 * math.Pi / 180)
	u := 4 + 8*cos
	near(t, "ratio of powers", u*math.Hypot(u, 8*sin)/16, 1.35, 0.01)
}
