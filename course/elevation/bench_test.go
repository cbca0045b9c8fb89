package elevation

import (
	"math"
	"math/rand/v2"
	"testing"
)

// BenchmarkClean cleans 100 000 heights: 10 m apart with noise of 2 m and 300 spikes, and
// 3 m apart.
func BenchmarkClean(b *testing.B) {
	for _, bb := range []struct {
		name  string
		apart float64
	}{{"10m", 9.99}, {"3m", 3}} {
		const n = 100_000
		r := rand.New(rand.NewPCG(1, 2))
		x, z := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = bb.apart * float64(i)
			z[i] = 800 + 300*math.Sin(x[i]/1500) + 1.4*math.Sin(x[i]/47) + 2*r.NormFloat64()
		}
		for range 300 {
			z[r.IntN(n)] += 60
		}
		b.Run(bb.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Clean(x, z, Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
