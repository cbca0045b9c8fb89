package elevation

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Straight ground stays as it is, however unevenly its points lie.
func TestStraightStays(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.Float64Range(0.5, 40), 2, 400).Draw(t, "steps")
		start, gradient := rapid.Float64Range(-400, 3000).Draw(t, "start"), rapid.Float64Range(-0.3, 0.3).Draw(t, "gradient")
		x := []float64{rapid.Float64Range(0, 1000).Draw(t, "first")}
		for _, s := range steps {
			x = append(x, x[len(x)-1]+s)
		}
		z := make([]float64, len(x))
		for i := range z {
			z[i] = start + gradient*(x[i]-x[0])
		}
		if low := min(z[0], z[len(z)-1]); low < MinElevation {
			return
		}
		p, err := Clean(x, z, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i, d := range p.Distance {
			if want := start + gradient*(d-x[0]); math.Abs(p.Elevation[i]-want) > 1e-5 {
				t.Fatalf("at %g m: %.7f, want %.7f", d, p.Elevation[i], want)
			}
		}
		if len(p.Changes) > 0 || len(p.Flags) > 0 {
			t.Fatalf("%v, %v", p.Changes, p.Flags)
		}
	})
}

// Straight ground under noise comes out straight: less than a tenth of the noise is left
// of 2000 heights.
func TestStraightUnderNoise(t *testing.T) {
	t.Parallel()
	m := waves("straight", 20_000)
	m.height = func(x float64) float64 { return 200 + 0.05*x }
	x, z := m.record(fault{noise: 2}, 3)
	p, err := Clean(x, z, Options{})
	if err != nil {
		t.Fatal(err)
	}
	off := 0.0
	for i, d := range p.Distance {
		off = max(off, math.Abs(p.Elevation[i]-m.height(d)))
	}
	if off > 1 || math.Abs(p.Ascent-1000) > 5 {
		t.Errorf("off by up to %.2f m, ascent %.1f m", off, p.Ascent)
	}
}

func recorded(t testing.TB, f fault, seed uint64) (made, []float64, []float64) {
	t.Helper()
	m := madeProfiles()[3]
	m.length = 20_000
	x, z := m.record(f, seed)
	return m, x, z
}

func clean(t testing.TB, x, z []float64, o Options) *Profile {
	t.Helper()
	p, err := Clean(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A height more everywhere changes nothing else, and neither do distances that begin
// elsewhere. 137 is a whole number of the step that the heights are rounded to.
func TestShiftChangesNothing(t *testing.T) {
	t.Parallel()
	_, x, z := recorded(t, fault{noise: 1, spikes: 0.5, rounding: 1}, 1)
	a := clean(t, x, z, Options{})
	for i := range z {
		x[i] += 5000
		z[i] += 137
	}
	b := clean(t, x, z, Options{})
	if math.Abs(a.Ascent-b.Ascent) > 1e-4 || math.Abs(a.AscentSD-b.AscentSD) > 1e-4 || len(a.Changes) != len(b.Changes) {
		t.Errorf("%.6f ± %.6f m, shifted %.6f ± %.6f m", a.Ascent, a.AscentSD, b.Ascent, b.AscentSD)
	}
	for i := range a.Elevation {
		if math.Abs(b.Elevation[i]-a.Elevation[i]-137) > 1e-6 {
			t.Fatalf("point %d: %.9f, shifted %.9f", i, a.Elevation[i], b.Elevation[i])
		}
	}
}

// The way back climbs what the way there falls.
func TestReversalSwaps(t *testing.T) {
	t.Parallel()
	_, x, z := recorded(t, fault{noise: 1.5, spikes: 0.5}, 2)
	there := clean(t, x, z, Options{})
	length := x[len(x)-1]
	slices.Reverse(x)
	slices.Reverse(z)
	for i := range x {
		x[i] = length - x[i]
	}
	back := clean(t, x, z, Options{})
	// Rounding of distances decides cells at half way, and steps of the estimate end at
	// 1e-3 of a logarithm: a centimetre in 500 m.
	if math.Abs(there.Ascent-back.Descent) > 0.01 || math.Abs(there.Descent-back.Ascent) > 0.01 {
		t.Errorf("up %.4f, down %.4f m; back up %.4f, down %.4f m", there.Ascent, there.Descent, back.Ascent, back.Descent)
	}
}

// Ascent less descent is the net rise, and the heights climb what is said.
func TestAscentIsThatOfTheHeights(t *testing.T) {
	t.Parallel()
	for _, f := range []fault{{noise: 2}, {noise: 2, apart: 4}, {noise: 1, apart: 37}, {noise: 1, apart: 150}} {
		_, x, z := recorded(t, f, 3)
		p := clean(t, x, z, Options{})
		up, down := climbOf(p.Elevation)
		net := p.Elevation[len(p.Elevation)-1] - p.Elevation[0]
		if math.Abs(up-p.Ascent) > 1e-6 || math.Abs(down-p.Descent) > 1e-6 || math.Abs(p.Ascent-p.Descent-net) > 1e-6 {
			t.Errorf("%+v: ascent %.3f, descent %.3f, heights climb %.3f and fall %.3f, net %.3f", f, p.Ascent, p.Descent, up, down, net)
		}
	}
}

// Denser heights of the same ground give the same ascent within what both claim.
func TestDenserSampling(t *testing.T) {
	t.Parallel()
	for seed := range uint64(3) {
		m, x, z := recorded(t, fault{noise: 1}, seed)
		coarse := clean(t, x, z, Options{})
		for _, apart := range []float64{2, 5, 20} {
			x, z = m.record(fault{noise: 1, apart: apart}, seed+10)
			fine := clean(t, x, z, Options{})
			if off := math.Abs(fine.Ascent - coarse.Ascent); off > 2*math.Hypot(fine.AscentSD, coarse.AscentSD) {
				t.Errorf("every 10 m %.1f ± %.1f m, every %g m %.1f ± %.1f m", coarse.Ascent, coarse.AscentSD, apart, fine.Ascent, fine.AscentSD)
			}
			if math.Abs(fine.Noise.SD-1) > 0.1 {
				t.Errorf("every %g m: noise of %.2f m, is 1", apart, fine.Noise.SD)
			}
		}
	}
}

// The true ascent is within one SD in 68 % and within two in 95 % of cases, or near: the
// error is not Gaussian, and half of it is our own guess. With 120 cases the share
// within one SD has an SD of 4 % by chance. With known heights the SD is on the safe side:
// a drift is taken to wander more than the smooth one here does.
func TestCoverage(t *testing.T) {
	t.Parallel()
	for _, drift := range []float64{0, 8} {
		var one, two, all float64
		for _, m := range madeProfiles() {
			truth := m.ascent()
			for _, noise := range []float64{0.5, 1, 2, 4} {
				for seed := uint64(1000); seed < 1006; seed++ {
					o := Options{}
					if drift > 0 {
						o.Known = m.known(seed)
					}
					x, z := m.record(fault{noise: noise, rounding: 1, drift: drift}, seed)
					p := clean(t, x, z, o)
					off := math.Abs(p.Ascent-truth) / p.AscentSD
					all++
					if off < 1 {
						one++
					}
					if off < 2 {
						two++
					}
				}
			}
		}
		t.Logf("drift of %g m: within 1 SD %.0f %%, within 2 SD %.0f %% of %g", drift, 100*one/all, 100*two/all, all)
		if one/all < 0.56 || drift == 0 && one/all > 0.80 || two/all < 0.90 {
			t.Errorf("drift of %g m: within 1 SD %.0f %%, within 2 SD %.0f %%", drift, 100*one/all, 100*two/all)
		}
	}
}

// One run with a barometer (little noise, rounded to 0.2 m, drifting by 8 m on top of a
// trend) and with heights corrected by a terrain model whose posts, 30 m apart, are out by
// 1 and by 2 m: the ascents differ by less than 10 %.
func TestBarometerAndTerrainModel(t *testing.T) {
	t.Parallel()
	table := newTable("barometer and terrain model")
	for _, m := range madeProfiles() {
		for _, posts := range []float64{1, 2} {
			for seed := range uint64(4) {
				x, z := m.record(fault{noise: 0.2, drift: 4, rounding: 0.2}, seed)
				barometer := clean(t, x, z, Options{})
				x, z = m.record(fault{posts: posts, rounding: 0.1}, seed+50)
				model := clean(t, x, z, Options{})
				ratio := model.Ascent / barometer.Ascent
				if seed == 0 {
					table.line("%-14s posts %g m: barometer %5.0f ± %2.0f (raw %5.0f), model %5.0f ± %2.0f (raw %5.0f), true %5.0f m",
						m.name, posts, barometer.Ascent, barometer.AscentSD, barometer.RawAscent, model.Ascent, model.AscentSD, model.RawAscent, m.ascent())
				}
				if math.Abs(ratio-1) > 0.10 {
					t.Errorf("%s, posts out by %g m, seed %d: barometer %.0f m, model %.0f m, true %.0f m", m.name, posts, seed, barometer.Ascent, model.Ascent, m.ascent())
				}
			}
		}
	}
	t.Log(table)
}

// Exact heights of smooth ground come out as they are, and so does ground of straight
// pieces but for its edges, which are rounded over some 50 m: 1 % of ridges of 50 m.
func TestExactHeights(t *testing.T) {
	t.Parallel()
	for _, m := range madeProfiles() {
		x, z := m.record(fault{}, 0)
		p := clean(t, x, z, Options{})
		if off := m.gradientError(p); off > 0.05 || math.Abs(p.Ascent/m.ascent()-1) > 0.002 {
			t.Errorf("%s: gradient off by %.3f points, ascent %.1f of %.1f m, noise %.3f m", m.name, off, p.Ascent, m.ascent(), p.Noise.SD)
		}
	}
	roof := waves("roof", 10_000)
	roof.height = func(x float64) float64 { return 500 - 0.0983*math.Abs(math.Mod(x, 1000)-500) }
	x, z := roof.record(fault{}, 0)
	p := clean(t, x, z, Options{})
	if math.Abs(p.Ascent-491.5) > 5 || roof.farthest(p) > 2 {
		t.Errorf("roof: ascent %.1f of 491.5 m, off by up to %.2f m, %v", p.Ascent, roof.farthest(p), p.Smoothing)
	}
}

// Noise on few heights and on short courses is not taken for ground.
func TestShortCourses(t *testing.T) {
	t.Parallel()
	for _, length := range []float64{400, 1000, 3000, 8000} {
		m := waves("short", length, wave{0.06, 4000, 0})
		truth := m.ascent()
		off, n := 0.0, 10.0
		for seed := range uint64(n) {
			x, z := m.record(fault{noise: 2}, seed)
			p := clean(t, x, z, Options{})
			off += (p.Ascent - truth) / n
		}
		// Seven metres is what noise of 2 m in six independent heights adds by itself.
		if math.Abs(off) > 7 {
			t.Errorf("%g m: mean ascent off by %+.1f of %.1f m", length, off, truth)
		}
	}
}

func BenchmarkSplit(b *testing.B) {
	_, x, z := recorded(b, fault{noise: 2}, 1)
	r, err := newRecording(x, z)
	if err != nil {
		b.Fatal(err)
	}
	g := gather(r, 10)
	g.level()
	periodogram := newPeriodogram(g.rises(nil))
	b.ReportAllocs()
	for b.Loop() {
		newSplit(periodogram, g.spacing, 0, 0)
	}
}
