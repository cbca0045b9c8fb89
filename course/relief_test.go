package course

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawCourse draws a course, smoothed or as given.
func drawCourse(t *rapid.T) *Course {
	x, z := drawProfile(t)
	o := Options{Smoothing: rapid.SampledFrom([]float64{AsGiven, 0, 40, 600}).Draw(t, "smoothing")}
	c, err := New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestAscentLessDescentIsNetRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCourse(t)
		from := rapid.Float64Range(0, 1).Draw(t, "from") * c.Length()
		to := rapid.Float64Range(0, 1).Draw(t, "to") * c.Length()
		r := c.ReliefBetween(from, to)
		want := c.Elevation(to) - c.Elevation(from)
		if from >= to {
			want = 0
		}
		if got := r.Ascent - r.Descent; math.Abs(got-want) > 1e-6 || r.Ascent < -1e-9 || r.Descent < -1e-9 {
			t.Fatalf("%g to %g m: ascent %g, descent %g, net rise %g", from, to, r.Ascent, r.Descent, want)
		}
	})
}

func TestReliefAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCourse(t)
		cut := rapid.Float64Range(0, 1).Draw(t, "cut") * c.Length()
		a, b, whole := c.ReliefBetween(0, cut), c.ReliefBetween(cut, c.Length()), c.Relief()
		if math.Abs(a.Ascent+b.Ascent-whole.Ascent) > 1e-6 || math.Abs(a.Descent+b.Descent-whole.Descent) > 1e-6 {
			t.Fatalf("%v and %v make %v", a, b, whole)
		}
	})
}

func TestReversalSwapsAscentAndDescent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, z := drawProfile(t)
		length := x[len(x)-1]
		back := reversed(x)
		for i := range back {
			back[i] = length - back[i]
		}
		o := Options{Smoothing: rapid.SampledFrom([]float64{AsGiven, 0}).Draw(t, "smoothing")}
		there, err := New(x, z, o)
		if err != nil {
			t.Fatal(err)
		}
		again, err := New(back, reversed(z), o)
		if err != nil {
			t.Fatal(err)
		}
		a, b := there.Relief(), again.Relief()
		// Differences of distances round; 10⁻⁴ m stands against ascents of up to 10⁵ m.
		if math.Abs(a.Ascent-b.Descent) > 1e-4 || math.Abs(a.Descent-b.Ascent) > 1e-4 {
			t.Fatalf("%v there, %v back", a, b)
		}
	})
}

func TestReliefNamesItsSmoothing(t *testing.T) {
	x, z := []float64{0, 1000, 2000}, []float64{0, 100, 0}
	for _, tt := range []struct{ smoothing, want float64 }{{AsGiven, 0}, {0, DefaultSmoothing}, {80, 80}} {
		c, err := New(x, z, Options{Smoothing: tt.smoothing})
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Relief().Smoothing; got != tt.want || c.Smoothing() != tt.want {
			t.Errorf("Smoothing %g: relief says %g, course %g, want %g", tt.smoothing, got, c.Smoothing(), tt.want)
		}
	}
}
