package course

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// byList is measured without a heap and a chain: it sorts what is left again and again.
func byList(c *Course, o ClimbOptions) []leg {
	var at []int
	for _, l := range longest(c.elevation, math.SmallestNonzeroFloat64) {
		at = append(at, l.low, l.top)
	}
	z := func(i int) float64 {
		switch {
		case i < 0:
			return math.Inf(1)
		case i >= len(at):
			return math.Inf(-1)
		}
		return c.elevation[at[i]]
	}
	kept := map[[2]int]bool{}
	for {
		best := -1
		for i := 0; i+1 < len(at); i++ {
			d := math.Abs(z(i+1) - z(i))
			if kept[[2]int{at[i], at[i+1]}] || math.Abs(z(i)-z(i-1)) < d || math.Abs(z(i+2)-z(i+1)) < d {
				continue
			}
			if b := math.Abs(z(best+1) - z(best)); best < 0 || d < b || d == b && z(i) < z(i+1) && z(best) > z(best+1) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		a, b := at[best], at[best+1]
		if d := math.Abs(z(best+1) - z(best)); d < o.LeastRise || !(c.sizeOf(a, b, o) >= o.Least) {
			at = slices.Delete(at, best, best+2)
		} else {
			kept[[2]int{a, b}] = true
		}
	}
	var legs []leg
	for i := 0; i < len(at); i += 2 {
		legs = append(legs, leg{at[i], at[i+1]})
	}
	return legs
}

// A measure that does not go with height: the length, twice as much on every other
// 500 m. The sum over a longer stretch is never less, as effort's is not.
func TestMeasuredClimbs(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(5, 6))
	total := 0
	for k := range 1000 {
		x, z, least := randomProfile(random, k)
		c := asGiven(t, x, z)
		odd := func(x float64) float64 { return x + 500*math.Floor(x/1000) + min(math.Mod(x, 1000), 500) }
		o := ClimbOptions{LeastRise: least / 4, Gentle: -1, Least: 20 * least, Measure: func(from, to float64) float64 {
			if !(from <= to) {
				t.Fatalf("asked from %g to %g m", from, to)
			}
			return odd(to) - odd(from)
		}}
		if got, want := c.measured(o), byList(c, o); !slices.Equal(got, want) {
			t.Fatalf("profile %d of %v: %v, want %v", k, z, got, want)
		}
		end := -1
		for _, l := range c.find(o) {
			total++
			if l.low < end || z[l.top]-z[l.low] < o.LeastRise || o.Measure(x[l.low], x[l.top]) < o.Least {
				t.Fatalf("%v of %v after %d", l, z, end)
			}
			end = l.top
		}
	}
	if total < 1000 {
		t.Errorf("only %d climbs on 1000 profiles", total)
	}
}

// The dip of 20 m is regained in 100 m, at the foot of a rise of 300 m over 1500 m; the
// rise as a whole takes more than any least here.
func TestDipPartsWhereRegainingIsWorthIt(t *testing.T) {
	t.Parallel()
	c := asGiven(t, []float64{0, 1000, 1100, 2600}, []float64{0, 100, 80, 380})
	length := func(from, to float64) float64 { return to - from }
	for _, tt := range []struct {
		least float64
		want  int
	}{{99, 2}, {101, 1}, {2600, 1}, {2601, 0}, {math.NaN(), 0}, {0, 2}, {-5, 2}} {
		o := ClimbOptions{Measure: length, Least: tt.least}
		if got := c.ClimbsWith(o); len(got) != tt.want {
			t.Errorf("least %g: %+v, want %d", tt.least, got, tt.want)
		}
	}
	o := ClimbOptions{Measure: func(float64, float64) float64 { return math.NaN() }}
	if got := c.ClimbsWith(o); got != nil {
		t.Errorf("a measure of NaN is too little: %+v", got)
	}
}

// A profile of 100 000 points, each a turn: measured takes time of order n log n.
func BenchmarkMeasuredClimbs(b *testing.B) {
	random := rand.New(rand.NewPCG(9, 10))
	x, z := make([]float64, 100_000), make([]float64, 100_000)
	for i := range x {
		x[i], z[i] = 10*float64(i), 500+300*math.Sin(float64(i)/200)+random.Float64()
	}
	c := asGiven(b, x, z)
	o := ClimbOptions{Least: 300, Measure: func(from, to float64) float64 { return c.ReliefBetween(from, to).Ascent }}
	b.ReportAllocs()
	for b.Loop() {
		c.ClimbsWith(o)
	}
}
