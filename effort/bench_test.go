package effort

import (
	"math"
	"testing"
)

// The two solves that are measured, both over 3600 cells: one all run, with a steady fade
// and no air, and one with everything.
var plain, everything = Usual(14), Athlete{HourPower: 11, Endurance: 0.1, Fade: 0.02, FadeShape: 1.2, Braking: 1}

const benchLength = 90_000

func benchIntegrator(t testing.TB, a Athlete, s Surroundings) *Integrator {
	t.Helper()
	g, err := NewGround(profile(t, benchLength, 10, waves), 25)
	if err != nil {
		t.Fatal(err)
	}
	in, err := NewIntegrator(g, a, s)
	if err != nil {
		t.Fatal(err)
	}
	if g.Len() != 3600 {
		t.Fatalf("%d cells", g.Len())
	}
	return in
}

func benchSolve(b *testing.B, in *Integrator, d Demand) {
	b.Helper()
	b.ReportAllocs()
	before := in.Sweeps()
	for b.Loop() {
		if _, err := in.Solve(State{}, d); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(in.Sweeps()-before)/float64(b.N), "sweeps/op")
}

func BenchmarkSolveRunning(b *testing.B) {
	benchSolve(b, benchIntegrator(b, plain, Surroundings{}), Demand{})
}

func BenchmarkSolveEverything(b *testing.B) {
	benchSolve(b, benchIntegrator(b, everything, Surroundings{Drag: DefaultDrag, HeadWind: 1}), Demand{})
}

// Everything, and a summer's day with night, altitude, thin air, and wind by heading.
func BenchmarkSolveHot(b *testing.B) {
	in := benchIntegrator(b, everything, Surroundings{})
	for j := range in.ground.cells {
		sin, cos := math.Sincos(float64(j) / 200)
		in.ground.heading = append(in.ground.heading, [2]float64{sin, cos})
	}
	if err := in.Reset(in.ground, everything, hot(b, Shift{}, 0.95)); err != nil {
		b.Fatal(err)
	}
	benchSolve(b, in, Demand{})
}

func BenchmarkSolveBouts(b *testing.B) {
	in := benchIntegrator(b, everything, Surroundings{Drag: DefaultDrag, HeadWind: 1})
	benchSolve(b, in, Demand{ShortestBout: 60})
}

func BenchmarkFastest(b *testing.B) {
	in := benchIntegrator(b, everything, Surroundings{Drag: DefaultDrag, HeadWind: 1})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Fastest(nil); err != nil {
			b.Fatal(err)
		}
	}
}

// The least that a sweep could do: one cost and one exponential for each step.
func BenchmarkFloor(b *testing.B) {
	b.ReportAllocs()
	sum := 0.0
	for b.Loop() {
		for j := range 3600 {
			x := float64(j) / 3600
			sum += RunningCost(0.1*x) * math.Exp(-0.02*x)
		}
	}
	if sum == 0 {
		b.Fatal(sum)
	}
}

func BenchmarkNewGround(b *testing.B) {
	c := profile(b, benchLength, 10, waves)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := NewGround(c, 25); err != nil {
			b.Fatal(err)
		}
	}
}

// A used integrator allocates nothing. Not parallel: it counts the whole program's.
func TestSolveAllocatesNothing(t *testing.T) {
	for name, c := range map[string]struct {
		athlete Athlete
		demand  Demand
	}{
		"running":    {plain, Demand{}},
		"everything": {everything, Demand{}},
		"a goal":     {everything, Demand{Moving: 45_000}},
		"tilt":       {everything, Demand{Tilt: -0.02}},
		"bouts":      {everything, Demand{ShortestBout: 60}},
	} {
		in := benchIntegrator(t, c.athlete, Surroundings{Drag: DefaultDrag, HeadWind: 1})
		run := func() {
			if err := in.Reset(in.ground, c.athlete, Surroundings{Drag: DefaultDrag, HeadWind: 1}); err != nil {
				t.Fatal(err)
			}
			if _, err := in.Solve(State{}, c.demand); err != nil {
				t.Fatal(err)
			}
		}
		run()
		if n := testing.AllocsPerRun(5, run); n != 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}
