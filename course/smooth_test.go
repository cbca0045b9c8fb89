package course

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// drawProfile draws distances that increase by 0.01 to 500 m from 0, and elevations.
func drawProfile(t *rapid.T) (x, z []float64) {
	steps := rapid.SliceOfN(rapid.Float64Range(0.01, 500), 1, 200).Draw(t, "steps")
	x = []float64{0}
	for _, s := range steps {
		x = append(x, x[len(x)-1]+s)
	}
	z = rapid.SliceOfN(rapid.Float64Range(-400, 3000), len(x), len(x)).Draw(t, "elevations")
	return x, z
}

// areaBetween sums the area under a straight-line profile, the slow way.
func areaBetween(x, z []float64, from, to float64) float64 {
	area := 0.0
	for i := 1; i < len(x); i++ {
		a, b := max(x[i-1], from), min(x[i], to)
		if a >= b {
			continue
		}
		slope := (z[i] - z[i-1]) / (x[i] - x[i-1])
		middle := z[i-1] + slope*((a+b)/2-x[i-1])
		area += (b - a) * middle
	}
	return area
}

func TestGridKeepsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, z := drawProfile(t)
		length := x[len(x)-1]
		gx, gz := Grid(x, z, rapid.Float64Range(1, 100).Draw(t, "step"))
		n := len(gx) - 1
		step := length / float64(n)
		if gx[0] != 0 || gx[n] != length || gz[0] != z[0] || gz[n] != z[len(z)-1] {
			t.Fatalf("ends: %g, %g to %g, %g", gx[0], gz[0], gx[n], gz[n])
		}
		sum := 0.0
		for i := 1; i < n; i++ {
			sum += gz[i] * step
		}
		if n < 2 {
			return
		}
		if want := areaBetween(x, z, step/2, length-step/2); math.Abs(sum-want) > 1e-9*3000*length {
			t.Fatalf("area %g, want %g", sum, want)
		}
	})
}

func TestGridAndSmoothKeepStraightGround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, z := drawProfile(t)
		start, gradient := rapid.Float64Range(-400, 3000).Draw(t, "start"), rapid.Float64Range(-0.5, 0.5).Draw(t, "gradient")
		for i := range x {
			z[i] = start + gradient*x[i]
		}
		gx, gz := Grid(x, z, 10)
		gz = Smooth(gz, gx[1], rapid.Float64Range(0, 2000).Draw(t, "width"))
		for i := range gx {
			if want := start + gradient*gx[i]; math.Abs(gz[i]-want) > 1e-6 {
				t.Fatalf("at %g m: %.9f, want %.9f", gx[i], gz[i], want)
			}
		}
	})
}

func TestGridSpacing(t *testing.T) {
	for _, tt := range []struct {
		length, step float64
		points       int
	}{
		{100, 10, 11},
		{104, 10, 11},
		{106, 10, 12},
		{3, 10, 2},
	} {
		x, _ := Grid([]float64{0, tt.length}, []float64{0, 0}, tt.step)
		if len(x) != tt.points {
			t.Errorf("Grid of %g m by %g m has %d points, want %d", tt.length, tt.step, len(x), tt.points)
		}
	}
}

// A weighted straight line through z = 0, 0, 0, 1, 0, 0, 0 has at the middle the value
// w(0)/Σw, since it is even there. With a half width of 3 spacings the weights are 1,
// (26/27)³ and (19/27)³.
func TestSmoothOfSpike(t *testing.T) {
	w1, w2 := math.Pow(26.0/27, 3), math.Pow(19.0/27, 3)
	got := Smooth([]float64{0, 0, 0, 1, 0, 0, 0}, 10, 60)
	if want := 1 / (1 + 2*w1 + 2*w2); math.Abs(got[3]-want) > 1e-15 {
		t.Errorf("middle %g, want %g", got[3], want)
	}
	if got[0] != 0 || got[6] != 0 {
		t.Errorf("ends %g, %g lie beyond the window and should be 0", got[0], got[6])
	}
}

func TestSmoothOfTwoSpacingsChangesNothing(t *testing.T) {
	z := []float64{3, 1, 4, 1, 5}
	for i, got := range Smooth(z, 10, 20) {
		if got != z[i] {
			t.Errorf("point %d: %g", i, got)
		}
	}
}

func TestSmoothIsEven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.SliceOfN(rapid.Float64Range(-400, 3000), 2, 100).Draw(t, "elevations")
		width := rapid.Float64Range(0, 500).Draw(t, "width")
		there, back := Smooth(z, 10, width), Smooth(reversed(z), 10, width)
		for i, want := range there {
			if got := back[len(z)-1-i]; math.Abs(got-want) > 1e-8 {
				t.Fatalf("point %d: %.9f and, reversed, %.9f", i, want, got)
			}
		}
	})
}

// The window of a course of a nanometre holds 10¹¹ spacings.
func TestSmoothOfTinyCourse(t *testing.T) {
	begin := time.Now()
	c, err := New([]float64{0, 1e-9}, []float64{100, 101}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if z := c.Elevation(0); z != 100 || time.Since(begin) > time.Second {
		t.Errorf("start at %g m after %v", z, time.Since(begin))
	}
}

func reversed(s []float64) []float64 {
	out := make([]float64, len(s))
	for i, v := range s {
		out[len(s)-1-i] = v
	}
	return out
}

func BenchmarkNew(b *testing.B) {
	const n = 36_000
	x, z := make([]float64, n), make([]float64, n)
	for i := range x {
		x[i], z[i] = 10*float64(i), 500+300*math.Sin(float64(i)/200)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := New(x, z, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
