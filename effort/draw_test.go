package effort

import (
	"math"
	"time"

	"isoeffort.example/course"
	"pgregory.net/rapid"
)

// near fails unless got is within tolerance of want.
func near(t rapid.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

// drawAthlete draws an athlete within the usual ranges.
func drawAthlete(t *rapid.T) Athlete {
	number := func(name string, low, top float64) float64 { return rapid.Float64Range(low, top).Draw(t, name) }
	return Athlete{
		HourPower:   number("hour power", 8, 20),
		Endurance:   number("endurance", 0.05, 0.15),
		Fade:        number("fade", 0, 0.05),
		FadeShape:   number("fade shape", 0.4, 1.3),
		Braking:     number("braking", 0, 2),
		Economy:     number("economy", 0.85, 1.15),
		FastestWalk: number("fastest walk", 1.5, 2.1),
	}
}

// drawCourse draws straight slopes, up to 35 % steep, with some surfaces.
func drawCourse(t *rapid.T) *course.Course {
	x, z := []float64{0}, []float64{1000}
	n := rapid.IntRange(1, 20).Draw(t, "slopes")
	for i := range n {
		length := rapid.Float64Range(30, 2500).Draw(t, "length")
		rise := length * rapid.Float64Range(-0.35, 0.35).Draw(t, "gradient")
		if math.Abs(z[i]+rise-1000) > 1200 { // stay within what a course may be
			rise = -rise
		}
		x, z = append(x, x[i]+length), append(z, z[i]+rise)
	}
	o := course.Options{Smoothing: course.AsGiven}
	if rapid.Bool().Draw(t, "rough") {
		o.Stretches = []course.Stretch{{From: 0.3 * x[n], To: 0.6 * x[n], Surface: LightBrush, Braking: 2}}
	}
	c, err := course.New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// drawGround draws a course in cells of 10 to 200 m.
func drawGround(t *rapid.T) *Ground {
	return ground(t, drawCourse(t), rapid.Float64Range(10, 200).Draw(t, "step"))
}

func ground(t rapid.TB, c *course.Course, step float64) *Ground {
	t.Helper()
	g, err := NewGround(c, step)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func integrator(t rapid.TB, g *Ground, a Athlete, s Surroundings) *Integrator {
	t.Helper()
	in, err := NewIntegrator(g, a, s)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

func solve(t rapid.TB, in *Integrator, from State, d Demand) Solution {
	t.Helper()
	s, err := in.Solve(from, d)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// allRun are gaits for running every cell of a ground.
func allRun(g *Ground) []Gait { return make([]Gait, g.Len()) }

// level is level ground of a length in metres, in cells of the usual step.
func level(t rapid.TB, length float64) *Ground {
	t.Helper()
	c, err := course.New([]float64{0, length}, []float64{0, 0}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return ground(t, c, 0)
}

// drawFullAthlete draws an athlete with every number switched on or off.
func drawFullAthlete(t *rapid.T) Athlete {
	a := drawAthlete(t)
	number := func(name string, low, top float64) float64 { return drawOrOff(t, name, low, top) }
	a.SlowestRun = number("slowest run", 0.8, 2.5)
	a.WalkFall = number("walk fall", 0.2, 3)
	a.FastestDescent = number("fastest descent", 1, 6)
	a.Mass = number("mass", 45, 110)
	a.Load = number("load", 0.5, 15)
	a.Eagerness = number("eagerness", 0.2, 3)
	a.Habit = rapid.SampledFrom([]Habit{RunAndWalk, RunAndWalk, RunOnly, WalkOnly}).Draw(t, "habit")
	return a
}

// drawOrOff draws a number, or half of the time 0.
func drawOrOff(t *rapid.T, name string, low, top float64) float64 {
	if !rapid.Bool().Draw(t, name+" on") {
		return 0
	}
	return rapid.Float64Range(low, top).Draw(t, name)
}

// drawFullSurroundings draws surroundings of a course of a length in metres, with every
// piece switched on or off.
func drawFullSurroundings(t *rapid.T, length float64) Surroundings {
	number := func(name string, low, top float64) float64 { return drawOrOff(t, name, low, top) }
	s := Surroundings{
		Drag:     rapid.SampledFrom([]float64{0, 0.005, 0.01}).Draw(t, "drag"),
		HeadWind: number("head wind", -3, 6),
		Wind:     Wind{Speed: number("wind", 0.1, 8), From: rapid.Float64Range(-360, 360).Draw(t, "from")},
		ThinAir:  rapid.Bool().Draw(t, "thin air"),
		Altitude: Altitude{
			Loss: number("altitude loss", 0.01, 0.1), Acclimatised: number("high living", 0, 1),
			From: rapid.SampledFrom([]float64{0, AtSea, 1500}).Draw(t, "high from"),
		},
		Start: drawClock(t, "start", -24, 48),
	}
	if rapid.Bool().Draw(t, "day") {
		s.Day = drawDay(t)
		s.Heat = Heat{
			Loss: number("heat loss", 0.001, 0.01), ColdLoss: number("cold loss", 0.001, 0.005), Growth: number("growth", 0.2, 1.5),
			Expected: drawClock(t, "expected", 0, 24), Acclimatised: number("used to heat", 0, 1),
		}
	}
	at := 0.0
	for range rapid.IntRange(0, 4).Draw(t, "stops") {
		at += length * rapid.Float64Range(0, 0.4).Draw(t, "stop")
		s.Stops = append(s.Stops, Stop{at, drawClock(t, "halt", 0, 1)})
	}
	return s
}

// drawClock draws a time between two hours.
func drawClock(t *rapid.T, name string, low, top float64) time.Duration {
	return Seconds(3600 * rapid.Float64Range(low, top).Draw(t, name))
}

// drawDay draws up to eight hours of weather, mostly warm, and a night.
func drawDay(t *rapid.T) *Day {
	var hours []Hour
	clock := drawClock(t, "first hour", -12, 12)
	for range rapid.IntRange(0, 8).Draw(t, "hours") {
		hours = append(hours, Hour{
			Clock: clock, Temperature: rapid.Float64Range(0, 36).Draw(t, "temperature"),
			Humidity: rapid.Float64Range(5, 100).Draw(t, "humidity"), WBGT: drawOrOff(t, "WBGT", 5, 32),
			Shade: rapid.Bool().Draw(t, "shade"),
		})
		clock += drawClock(t, "gap", 0.2, 6)
	}
	n := Night{Factor: drawOrOff(t, "night", 0.7, 1)}
	n.From = drawClock(t, "nightfall", 0, 24)
	n.To = (n.From + drawClock(t, "dark", 0.5, 23.5)) % (24 * time.Hour)
	return day(t, hours, n)
}

func day(t rapid.TB, hours []Hour, n Night) *Day {
	t.Helper()
	d, err := NewDay(hours, n)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// drawFullGround draws a course that turns, anywhere from the sea to 4000 m, in cells of
// 20 to 200 m.
func drawFullGround(t *rapid.T) *Ground {
	x, z := []float64{0}, []float64{rapid.Float64Range(0, 4000).Draw(t, "altitude")}
	lat, lon := 45.0, 7.0
	track := []course.Position{course.NewPosition(lat, lon)}
	for i := range rapid.IntRange(1, 12).Draw(t, "slopes") {
		length := rapid.Float64Range(100, 2500).Draw(t, "length")
		sin, cos := math.Sincos(2 * math.Pi * rapid.Float64Range(0, 1).Draw(t, "turn"))
		lat, lon = lat+length*cos/111_000, lon+length*sin/78_000
		rise := length * rapid.Float64Range(-0.35, 0.35).Draw(t, "gradient")
		if z[i]+rise < 0 || z[i]+rise > 5000 {
			rise = -rise
		}
		x, z = append(x, x[i]+length), append(z, z[i]+rise)
		track = append(track, course.NewPosition(lat, lon))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven, Track: track})
	if err != nil {
		t.Fatal(err)
	}
	return ground(t, c, rapid.Float64Range(20, 200).Draw(t, "step"))
}

// straight is ground of one gradient from an altitude on, heading one way, in cells of a
// step.
func straight(t rapid.TB, length, altitude, gradient, heading, step float64) *Ground {
	t.Helper()
	sin, cos := math.Sincos(heading * math.Pi / 180)
	c, err := course.New([]float64{0, length}, []float64{altitude, altitude + gradient*length}, course.Options{
		Smoothing: course.AsGiven,
		Track:     []course.Position{course.NewPosition(0, 0), course.NewPosition(length*cos/110_574, length*sin/111_320)},
	})
	if err != nil {
		t.Fatal(err)
	}
	return ground(t, c, step)
}
