package elevation

import (
	"math"
	"testing"
)

// TestLongNoise shows what the package comment says cannot be told: noise that is
// correlated over 40 m as exp(−d/40 m). Up to 1 m the ascent is within 5 %, and
// however large it is the error stays below that of the raw sum by half.
func TestLongNoise(t *testing.T) {
	t.Parallel()
	table := newTable("noise correlated over 40 m")
	for _, m := range madeProfiles() {
		truth := m.ascent()
		for _, sd := range []float64{0.5, 1, 2, 4} {
			off, raw := 0.0, 0.0
			const n = 3
			for seed := range uint64(n) {
				x, z := m.record(fault{}, seed)
				wandering(z, sd, 40, seed)
				p := clean(t, x, z, Options{})
				off += 100 * (p.Ascent/truth - 1) / n
				raw += 100 * (p.RawAscent/truth - 1) / n
			}
			table.line("%-14s %3.1f m: ascent off by %+5.1f %%, raw sum by %+5.0f %%", m.name, sd, off, raw)
			if sd <= 1 && math.Abs(off) > 5 || math.Abs(off) > math.Abs(raw)/2+1 {
				t.Errorf("%s, %g m: ascent off by %+.1f %%, raw sum by %+.0f %%", m.name, sd, off, raw)
			}
		}
	}
	t.Log(table)
}
