package effort

import (
	"math"
	"testing"
)

// The grid over which gait-chosen speeds are timed: 4 to 20 W/kg, -30 to +30 %.
func gridPower(i int) float64    { return 4 + 16*float64(i%41)/40 }
func gridGradient(i int) float64 { return -0.3 + 0.6*float64(i%61)/60 }

// One running polynomial on the same grid: the unit of the two below.
func BenchmarkRunningPolynomial(b *testing.B) {
	gradients := make([]float64, 41*61)
	for i := range gradients {
		gradients[i] = gridGradient(i)
	}
	sum := 0.0
	for b.Loop() {
		for _, g := range gradients {
			sum += RunningCost(g)
		}
	}
	perPoint(b, sum)
}

// A gait-chosen speed on prepared gradients.
func BenchmarkChoose(b *testing.B) {
	var slopes []*Slope
	for i := range 61 {
		s, err := NewSlope(Usual(12), gridGradient(i), Surroundings{})
		if err != nil {
			b.Fatal(err)
		}
		slopes = append(slopes, s)
	}
	powers := make([]float64, 41)
	for i := range powers {
		powers[i] = gridPower(i)
	}
	b.ReportAllocs()
	sum := 0.0
	for b.Loop() {
		for _, s := range slopes {
			for _, p := range powers {
				_, stride := s.Choose(p)
				sum += stride.Speed
			}
		}
	}
	perPoint(b, sum)
}

// A gait-chosen speed from nothing prepared.
func BenchmarkMove(b *testing.B) {
	a := Usual(12)
	b.ReportAllocs()
	sum := 0.0
	for b.Loop() {
		for i := range 41 * 61 {
			_, stride, err := Move(a, gridGradient(i), gridPower(i), Surroundings{})
			if err != nil {
				b.Fatal(err)
			}
			sum += stride.Speed
		}
	}
	perPoint(b, sum)
}

func perPoint(b *testing.B, sum float64) {
	if math.IsNaN(sum) || sum == 0 {
		b.Fatal(sum)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/(41*61), "ns/point")
}
