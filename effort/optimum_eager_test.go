package effort

import (
	"math"
	"slices"
	"testing"
)

// levelSpread is running over level ground in 40 stretches, at even effort.
func levelSpread(t *testing.T, a Athlete, length float64) (s *spread, even Fastest) {
	t.Helper()
	g := hilly(t, length/stretches, func(int) float64 { return 0 })
	in := integrator(t, g, a, Surroundings{})
	even, err := in.Fastest(allRun(g))
	if err != nil {
		t.Fatal(err)
	}
	return newSpread(in, allRun(g), even.Intensity), even
}

// quarters returns the mean intensity of the first and the last quarter over that of all.
func quarters(z []float64) (first, last float64) {
	sums := [5]float64{}
	for j, v := range z {
		sums[4*j/len(z)] += math.Exp(v)
		sums[4] += math.Exp(v) / 4
	}
	return sums[0] / sums[4], sums[3] / sums[4]
}

// What an eager athlete's best opening is: by how much the first quarter of level ground,
// all run, lies below the mean intensity and the last one above it, and what that gains on
// even effort. With m of 2 to 4 the usual athlete opens 0.4 to 0.6 % easier in a marathon,
// 0.9 to 1.1 % in nine hours and 1.6 % in twenty. It takes a fade of 0.05 to make that
// 1 to 1.6 %, 2.6 to 2.9 % and 4.5 to 5.4 %. More eagerness is not always an easier
// opening: below an intensity of 1 it also lets less count. [Computed.]
func TestEagerOpening(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		power, length, fade, eagerness float64
		below, above                   float64 // %
		gain                           float64 // s/h
	}{
		{16, 42_195, 0.02, 0, 0, 0, 0},
		{16, 42_195, 0.02, 2, 0.37, 0.37, 0.14},
		{16, 42_195, 0.02, 4, 0.60, 0.59, 0.36},
		{14, 100_000, 0.02, 0, 0, 0, 0},
		{14, 100_000, 0.02, 2, 0.86, 0.84, 0.71},
		{14, 100_000, 0.02, 4, 1.07, 1.06, 1.13},
		{12, 170_000, 0.02, 2, 1.59, 1.52, 2.26},
		{12, 170_000, 0.02, 4, 1.61, 1.60, 2.50},
		{16, 42_195, 0.05, 2, 1.01, 0.98, 0.96},
		{16, 42_195, 0.05, 4, 1.58, 1.57, 2.41},
		{14, 100_000, 0.05, 2, 2.57, 2.41, 5.38},
		{14, 100_000, 0.05, 4, 2.93, 2.93, 7.82},
		{12, 170_000, 0.05, 2, 5.39, 4.89, 19.45},
		{12, 170_000, 0.05, 4, 4.52, 4.59, 17.92},
	} {
		a := Usual(c.power)
		a.Fade, a.Eagerness = c.fade, c.eagerness
		s, even := levelSpread(t, a, c.length)
		z := s.evenly(even.Intensity)
		best := s.optimise(t, z)
		first, last := quarters(z)
		near(t, "first quarter below the mean, %", 100*(1-first), c.below, 0.02)
		near(t, "last quarter above the mean, %", 100*(last-1), c.above, 0.02)
		near(t, "gain, s/h", 3600*(1-best.Moving/even.Moving), c.gain, 0.02)
		checkEager(t, s, z)
	}
}

// checkEager compares a best spread of an eager athlete, all run on level ground, with the
// condition for it:
//
//	ε^n ∝ 1 − m ω,  ω = Λ ε^m p/(3600 P60),  Λ = φ ∫ F'(h) (n − mω)/(n−1) dt
//
// over what is left, Λ being the seconds that one hour-equivalent more, as the fade counts
// it, costs. It follows from the least of 1/(εc) + λ ε^(n−1)/c + Λ ε^m for each unit of
// work, c being capability. [Our own.]
func checkEager(t *testing.T, s *spread, z []float64) {
	t.Helper()
	a, n := s.in.athlete, s.in.mover.order
	m, price := a.Eagerness, 0.0
	want := make([]float64, len(z))
	for j, from := range slices.Backward(s.states[:len(z)]) {
		to := s.states[j+1]
		dt := to.Moving - from.Moving
		_, byWork, _ := fadeTimeSlopes((from.Worn+to.Worn)/2, a.FadeShape)
		perSecond := (to.Worn - from.Worn) / dt
		half := price + a.Fade*byWork*dt/2
		omega := half * perSecond
		price += a.Fade * byWork * dt * (n - m*omega) / (n - 1)
		want[j] = math.Log(1-m*omega) / n
	}
	shift := 0.0
	for j := range z {
		shift += (z[j] - want[j]) / float64(len(z))
	}
	for j := range z {
		near(t, "ln ε", z[j], want[j]+shift, 3e-4)
	}
}

// What opening 5 % easier over the first quarter of level ground costs the usual athlete:
// 12 s per hour without eagerness; less, but more than it gains, with it: the best opening
// above is easier by less. [Computed.]
func TestCostOfEasyOpening(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ length, eagerness, cost float64 }{
		{42_195, 0, 12.42}, {42_195, 2, 10.12}, {42_195, 4, 9.06}, {100_000, 0, 12.01}, {100_000, 4, 6.83},
	} {
		a := Usual(16)
		a.Eagerness = c.eagerness
		s, even := levelSpread(t, a, c.length)
		ends, intensity := []int{stretches/4 - 1, stretches - 1}, []float64{0.95 * even.Intensity, even.Intensity}
		for range 20 {
			balance(s.in, s.gaits, ends, intensity, 1) // not exact at once where haste counts
		}
		finish := piecewise(s.in, s.gaits, ends, intensity)
		near(t, "budget", finish.Spent, 1, 1e-6)
		near(t, "cost, s/h", 3600*(finish.Moving/even.Moving-1), c.cost, 0.1)
	}
}
