package effort

import (
	"math"
	"testing"
)

func TestNumbers(t *testing.T) {
	t.Parallel()
	names := map[string]bool{}
	a := Usual(12)
	for n := range Number(Numbers) {
		names[n.String()] = true
		near(t, n.String(), a.Set(n, 0.7).Get(n), 0.7, 0)
	}
	if len(names) != Numbers || a != Usual(12) {
		t.Error("names are not distinct, or Set changes its athlete")
	}
}

// The SD of a race's time is the quadrature of the numbers' and the noise, and its
// interval symmetrical about the centre in the logarithm.
func TestBasis(t *testing.T) {
	t.Parallel()
	var b Basis
	low, high := b.Interval(3600, [Numbers]float64{-0.9})
	if !b.Known() || low != 3600 || high != 3600 {
		t.Errorf("an athlete taken as known: %g to %g", low, high)
	}
	b = Basis{Noise: 0.03, Results: 3}
	b.Cov[HourPower][HourPower] = 0.05 * 0.05
	near(t, "SD", b.LogSD([Numbers]float64{-0.8}), 0.05, 1e-12) // 3, 4, 5
	low, high = b.Interval(3600, [Numbers]float64{-0.8})
	near(t, "middle", low*high, 3600*3600, 1e-6)
	near(t, "width", math.Log(high/low), 2*1.645*0.05, 1e-12)
	if b.Known() {
		t.Error("known from three results")
	}
}
