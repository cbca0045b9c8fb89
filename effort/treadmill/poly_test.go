package treadmill

import (
	"math"
	"testing"
)

// Sign changes of polynomials whose roots are known, at and beside the ends, multiple
// ones, ones so close that their turning points underflow, and vanishing last coefficients.
func TestSignChanges(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name  string
		c     []float64
		roots []float64
	}{
		{"none", []float64{1, 0, 1}, nil},
		{"constant", []float64{-2}, nil},
		{"zero", []float64{0, 0, 0}, nil},
		{"line", []float64{-0.5, 1}, []float64{0.5}},
		{"at both ends", []float64{-1, 0, 1}, nil},
		{"double", []float64{0, 0, 1}, nil},
		{"triple", []float64{0, 0, 0, 1}, []float64{0}},
		{"three in one", []float64{0, -1e-300, 0, 1}, []float64{0}},
		{"double and single", []float64{0, 0, -0.5, 1}, []float64{0.5}},
		{"outside", []float64{-3, 1}, nil},
		{"Chebyshev's fourth", []float64{1, 0, -8, 0, 8}, []float64{-math.Cos(math.Pi / 8), -math.Cos(3 * math.Pi / 8), math.Cos(3 * math.Pi / 8), math.Cos(math.Pi / 8)}},
		{"last ones vanish", []float64{-0.25, 0, 1, 0, 1e-18, -1e-20}, []float64{-0.5, 0.5}},
	}
	for _, c := range cases {
		p := poly{terms: len(c.c)}
		copy(p.c[:], c.c)
		got := p.signChanges()
		if len(got) != len(c.roots) {
			t.Errorf("%s: %v, want %v", c.name, got, c.roots)
			continue
		}
		for k, root := range c.roots {
			if !(math.Abs(got[k]-root) <= 1e-15) {
				t.Errorf("%s: %v, want %v", c.name, got, c.roots)
			}
		}
	}
}
