package forecast_test

import (
	"math"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
)

// BenchmarkThousand is the target: 1000 draws over 85 km in a second on one core.
func BenchmarkThousand(b *testing.B) {
	c := profile(b, 85_000, rolling, marked(85_000, 8500)...)
	d := drawer(b, effort.Usual(12), prior(), forecast.FieldTilt())
	b.ReportAllocs()
	for b.Loop() {
		of(b, c, d, plan.Race{}, forecast.Options{})
	}
}

// BenchmarkFloor is the floor of package effort: one evaluation of the running curve and one
// exponential for each of 3600 cells. It says how fast the machine is now.
func BenchmarkFloor(b *testing.B) {
	sum := 0.0
	for b.Loop() {
		for j := range 3600 {
			x := float64(j) / 3600
			sum += effort.RunningCost(0.1*x) * math.Exp(-0.02*x)
		}
	}
	if sum == 0 {
		b.Fatal(sum)
	}
}
