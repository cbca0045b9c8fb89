package effort

import (
	"math"

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
