package elevation

import (
	"math"
	"testing"
)

// roughOf returns the ground of a recording as Clean tells it.
func roughOf(t *testing.T, m made, noise float64) rough {
	t.Helper()
	x, z := m.record(fault{noise: noise}, 1)
	r, err := newRecording(x, z)
	if err != nil {
		t.Fatal(err)
	}
	g := gather(r, 10)
	g.level()
	rise := g.rises(nil)
	ground, off := newSplit(newPeriodogram(rise), g.spacing, g.rounding, 0).spectra()
	return evenGround(ground, g.spacing).uneven(rise, g.seenRises(nil), g.spacing, ground, off)
}

// Undulations on the first half only are found there; those of all the way are found even.
func TestRoughness(t *testing.T) {
	t.Parallel()
	long := wave{0.05, 6000, 0}
	half := sumOf("half", 40_000, []part{long, train{wave{0.045, 300, 0}, 0, 20_000}})
	for _, noise := range []float64{0.5, 2} {
		r := roughOf(t, half, noise)
		if r.even() {
			t.Fatalf("noise %g m: found even", noise)
		}
		// A train has its full power at its middle and 3/8 of it in its mean: log(16/3) is
		// 1.67, and a stretch tells it to some 0.4. The second half has none.
		if first, second := r.log[1][1000], r.log[1][3000]; math.Abs(first-math.Log(16.0/3)) > 0.5 || second > -1 {
			t.Errorf("noise %g m: logarithms of roughness %.1f and %.1f", noise, first, second)
		}
		if r := roughOf(t, waves("all", 40_000, long, wave{0.03, 300, 0}), noise); !r.even() {
			t.Errorf("noise %g m: even ground found uneven", noise)
		}
	}
}

// Where a roughness changes, the forms are those of the autoregression there.
func TestRoughForms(t *testing.T) {
	t.Parallel()
	spectrum := func(omega float64) float64 { return 1 / (0.05 + u(omega)) }
	r := evenGround(spectrum, 10)
	const n = 100
	for b := range r.log {
		r.log[b] = make([]float64, n)
		for i := n / 2; i < n; i++ {
			r.log[b][i] = 1.5
		}
	}
	var weights []float64
	r.forms(n, func(_ int, _ []float64, weight float64) { weights = append(weights, weight) })
	// All ranges rougher by exp(1.5): the same predictions, errors larger by that.
	if got, want := weights[n-1]/weights[n/2-1], math.Exp(-1.5); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("weights in the ratio of %g, want %g", got, want)
	}
}

// A profile on a steady slope keeps its ends: they are not drawn to the mean slope.
func TestEndsOnSlopes(t *testing.T) {
	t.Parallel()
	m := madeProfiles()[1] // up and down at 8 %
	off, n := 0.0, 6.0
	for seed := range uint64(n) {
		x, z := m.record(fault{noise: 2}, seed)
		p := clean(t, x, z, Options{})
		last := len(p.Elevation) - 1
		off += (p.Elevation[0] - m.height(0) + p.Elevation[last] - m.height(m.length)) / 2 / n
	}
	// Noise of 2 m in some ten heights at each of twelve ends has a mean of SD 0.2 m.
	if math.Abs(off) > 0.6 {
		t.Errorf("ends off by %+.2f m in the mean", off)
	}
}
