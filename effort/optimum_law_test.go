package effort

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// everyLever is an athlete with every habit of speed, and the surroundings to go with it.
func everyLever(t *testing.T) (Athlete, Surroundings) {
	t.Helper()
	a := Usual(11)
	a.FadeShape, a.WalkFall, a.FastestDescent, a.Load, a.Eagerness = 0.8, 0.5, 2.5, 3, 2
	return a, hot(t, Shift{}, 0.95)
}

// At one intensity a spread is a traverse, cell by cell.
func TestSpreadIsTraverse(t *testing.T) {
	t.Parallel()
	odd, day := everyLever(t)
	for _, p := range profiles {
		for _, c := range []struct {
			a Athlete
			s Surroundings
		}{{Usual(10), Surroundings{}}, {odd, Surroundings{}}, {Usual(12), day}, {odd, day}} {
			in := integrator(t, hilly(t, p.each, p.gradient), c.a, c.s)
			out := in.Traverse(State{}, Pace{Intensity: 0.83}).Clone()
			if !slices.Contains(out.Gait, Walk) || !slices.Contains(out.Gait, Run) {
				t.Fatal("not a course of both gaits")
			}
			s := newSpread(in, out.Gait, 0.83)
			restore := s.begin()
			var at State
			for j, end := range out.End {
				at = s.step(j, at, 0.83)
				for _, n := range [][2]float64{
					{at.Moving, end.Moving}, {at.Work, end.Work}, {at.Worn, end.Worn}, {at.Spent, end.Spent},
				} {
					near(t, p.name, n[0], n[1], 1e-10*n[1])
				}
			}
			restore()
		}
	}
}

// The slopes that the optimiser goes by are those of the time that it minimises.
func TestSpreadSlopes(t *testing.T) {
	t.Parallel()
	a, day := everyLever(t)
	for _, c := range []struct {
		a Athlete
		s Surroundings
	}{{Usual(10), Surroundings{}}, {a, day}} {
		in := integrator(t, hilly(t, 1250, mountains), c.a, c.s)
		out := in.Traverse(State{}, Pace{Intensity: 0.8})
		s := newSpread(in, out.Gait, 0.8)
		z := s.evenly(0.8)
		for j := range z {
			z[j] = math.Min(z[j], 2) + 0.05*math.Sin(float64(3*j))
		}
		s.balance(z)
		slopes := s.reduced(z)
		moving := func(j int, by float64) float64 {
			trial := slices.Clone(z)
			trial[j] += by
			return s.balance(trial).Moving
		}
		for j := range z {
			const h = 1e-3 // within which the heat of one cell passes a kink
			near(t, "slope", slopes[j], (moving(j, h)-moving(j, -h))/(2*h), 1e-3*math.Abs(slopes[j])+5e-3)
		}
	}
}

// drawHilly draws 40 stretches of up to 30 %.
func drawHilly(t *rapid.T) *Ground {
	each, height := rapid.Float64Range(500, 2500).Draw(t, "stretch"), 0.0
	return hilly(t, each, func(int) float64 {
		gradient := rapid.Float64Range(-0.3, 0.3).Draw(t, "gradient")
		if math.Abs(height+each*gradient) > 1000 {
			gradient = -gradient
		}
		height += each * gradient
		return gradient
	})
}

// Run all the way without air, even effort is the optimum: from uneven starts a direct
// optimiser comes back to it and finds nothing faster, whatever the athlete, the hills
// and the altitude. The tolerances are those of the budget, 1e-9, and of the optimiser.
// [Our own theorem: see the package comment.]
func TestEvenEffortIsTheOptimum(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a, sur := drawAthlete(t), Surroundings{}
		if rapid.Bool().Draw(t, "high") {
			sur.Altitude = Altitude{Loss: AltitudeLoss, From: AtSea}
		}
		in := integrator(t, drawHilly(t), a, sur)
		gaits := allRun(in.ground)
		even, err := in.Fastest(gaits)
		if err != nil {
			t.Fatal(err)
		}
		s := newSpread(in, gaits, even.Intensity)
		z := make([]float64, len(gaits))
		for j := range z {
			z[j] = math.Log(even.Intensity) + rapid.Float64Range(-0.3, 0.3).Draw(t, "uneven")
		}
		if start := s.balance(slices.Clone(z)); start.Moving < even.Moving*(1-1e-8) {
			t.Fatalf("uneven %.6f s, even %.6f s", start.Moving, even.Moving)
		}
		best := s.optimise(t, z)
		near(t, "optimum over even effort", best.Moving/even.Moving, 1, 1e-8)
		for j := range z {
			near(t, "intensity over even effort's", math.Exp(z[j])/even.Intensity, 1, 1e-3)
		}
	})
}
