package elevation

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// A first-order autoregression has the autocovariances v φ^k/(1−φ²) and the spectrum
// v/(1 + φ² − 2φ cos ω).
func TestAutoregression(t *testing.T) {
	t.Parallel()
	const phi, v = 0.8, 0.3
	spectrum := func(omega float64) float64 { return v / (1 + phi*phi - 2*phi*math.Cos(omega)) }
	r := autocovariance(spectrum, 4)
	for k, got := range r {
		if want := v * math.Pow(phi, float64(k)) / (1 - phi*phi); math.Abs(got-want) > 1e-9 {
			t.Errorf("autocovariance %d is %g, want %g", k, got, want)
		}
	}
	a := autoregress(r)
	for k, want := range []float64{phi, 0, 0, 0} {
		if got := a.order[4][k]; math.Abs(got-want) > 1e-7 {
			t.Errorf("coefficient %d is %g, want %g", k+1, got, want)
		}
	}
	if got := a.variance[4]; math.Abs(got/v-1) > 1e-7 {
		t.Errorf("variance %g, want %g", got, v)
	}
}

// The forms of an autoregression sum to the inverse of its covariance matrix.
func TestFormsAreThePrecision(t *testing.T) {
	t.Parallel()
	const n = 8
	r := autocovariance(func(omega float64) float64 { return 1/(0.1+u(omega)) + 0.2 }, 3)
	a := autoregress(r)
	precision := newBand(n, 3)
	a.forms(n, precision.addSquare)
	// Beyond the order the covariances follow from the regression itself.
	for k := 4; k < n; k++ {
		next := 0.0
		for i, c := range a.order[3] {
			next += c * r[k-1-i]
		}
		r = append(r, next)
	}
	covariance := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			covariance.SetSym(i, j, r[j-i])
		}
	}
	var inverse mat.Dense
	if err := inverse.Inverse(covariance); err != nil {
		t.Fatal(err)
	}
	for i := range n {
		for k := range min(3, n-1-i) + 1 {
			if got, want := precision.row(i)[k], inverse.At(i, i+k); math.Abs(got-want) > 1e-6 {
				t.Errorf("(%d, %d) is %g, want %g", i, i+k, got, want)
			}
		}
	}
}

// The precision of a long row is that of a short one, stretched.
func TestPrecisionIsStretched(t *testing.T) {
	t.Parallel()
	rises := evenGround(func(omega float64) float64 { return 1 / (0.05 + u(omega)) }, 10)
	a := rises.at([ranges]int{})
	const n = 200
	got, want := newBand(n, groundOrder+1), newBand(n, groundOrder+1)
	precisionOf(rises, got)
	form := make([]float64, groundOrder+2)
	a.forms(n-1, func(first int, c []float64, weight float64) {
		form := form[:len(c)+1]
		clear(form)
		for k, v := range c {
			form[k] -= v
			form[k+1] += v
		}
		want.addSquare(first, form, weight)
	})
	for i, v := range want.at {
		if math.Abs(got.at[i]-v) > 1e-9 {
			t.Fatalf("entry %d is %g, want %g", i, got.at[i], v)
		}
	}
}

// Independent heights of SD s rise by variance 2 s², spread over the frequencies as u.
func TestPeriodogramOfNoise(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 2))
	const n, sd = 60_000, 3
	rise := make([]float64, n)
	last := r.NormFloat64()
	for i := range rise {
		next := r.NormFloat64()
		rise[i] = sd * (next - last)
		last = next
	}
	g := newPeriodogram(rise)
	total := 0.0
	for j, omega := range g.omega {
		total += g.count[j]
		if g.count[j] < 400 {
			continue
		}
		// An SD of 5 % by chance; four of them.
		if got := g.power[j] / (sd * sd * u(omega)); math.Abs(got-1) > 4/math.Sqrt(g.count[j]) {
			t.Errorf("at %.3f: %.3f of what is expected", omega, got)
		}
	}
	if math.Abs(total/(n/2)-1) > 0.01 {
		t.Errorf("%g independent frequencies of %d", total, n/2)
	}
}

// Segments lie the same from either end, to one place, and leave nothing out.
func TestSegmentStarts(t *testing.T) {
	t.Parallel()
	for n := 64; n < 1000; n += 7 {
		starts := segmentStarts(n, 64)
		for i, s := range starts {
			if off := s - (n - 64 - starts[len(starts)-1-i]); off < -1 || off > 1 {
				t.Fatalf("%d: %v", n, starts)
			}
			if i > 0 && s-starts[i-1] > 33 {
				t.Fatalf("%d: %v", n, starts)
			}
		}
		if starts[0] != 0 {
			t.Fatalf("%d: %v", n, starts)
		}
	}
}

// The split of a periodogram that is just what it expects finds what went in: noise to
// 3 %, ground where it stands above the noise to 25 %, but for the lowest bands, which
// have little to go by but what is expected.
func TestSplitFindsWhatWentIn(t *testing.T) {
	t.Parallel()
	for _, shape := range []shape{{independent, 0}, {fading, 20}, {interpolated, 30}} {
		var g periodogram
		ground := func(omega float64) float64 { return 1e-4 * math.Pow(omega, -3) }
		noise := func(omega float64) float64 { return 2 * math.Exp(shape.log(omega/10)) }
		for j := 2; j < 1024; {
			end := min(max(j+1, int(float64(j)*bandRatio)), 1024)
			omega := math.Pi * float64(j+end-1) / 2 / 1024
			g.omega = append(g.omega, omega)
			g.power = append(g.power, ground(omega)+u(omega)*noise(omega))
			g.count = append(g.count, 4*float64(end-j))
			j = end
		}
		s := newSplit(g, 10, 0, 0)
		if s.shape != shape {
			t.Errorf("shape %v, want %v", s.shape, shape)
		}
		foundGround, foundNoise := s.spectra()
		for _, omega := range g.omega {
			if got := foundNoise(omega) / noise(omega); omega > 0.6 && math.Abs(got-1) > 0.03 {
				t.Errorf("%v: noise at %.2f is %.3f of what it is", shape, omega, got)
			}
			if got := foundGround(omega) / ground(omega); omega > 0.02 && ground(omega) > 2*u(omega)*noise(omega) && math.Abs(got-1) > 0.25 {
				t.Errorf("%v: ground at %.3f is %.3f of what it is", shape, omega, got)
			}
		}
	}
}

// The mean ascent and its variance are those of draws from the posterior.
func TestClimbAgainstDraws(t *testing.T) {
	t.Parallel()
	m := waves("waves", 3000, wave{0.04, 1500, 0}, wave{0.03, 300, 0})
	_, z := m.record(fault{noise: 1.5}, 1)
	rises := evenGround(func(omega float64) float64 { return 1e-4 / (1e-4 + math.Pow(u(omega), 1.5)) }, 10)
	g, ok := newGround(z, rises, autoregress([]float64{1.5 * 1.5}))
	if !ok {
		t.Fatal("no posterior")
	}
	want := g.climb(0, make([]bool, len(z)))
	// With precision L D Lᵀ, L⁻ᵀ D^−½ ε has its inverse for covariance.
	r := rand.New(rand.NewPCG(3, 3))
	const draws = 4000
	var sum, square float64
	draw := make([]float64, len(z))
	for range draws {
		for i := len(z) - 1; i >= 0; i-- {
			row := g.precision.row(i)
			draw[i] = r.NormFloat64() / math.Sqrt(row[0])
			for k := 1; k <= min(g.precision.width, len(z)-1-i); k++ {
				draw[i] -= row[k] * draw[i+k]
			}
		}
		up := 0.0
		for i := 1; i < len(z); i++ {
			up += max(0, g.height[i]+draw[i]-g.height[i-1]-draw[i-1])
		}
		sum += up / draws
		square += up * up / draws
	}
	sd := math.Sqrt(square - sum*sum)
	if off := math.Abs(sum - want.mean); off > 4*sd/math.Sqrt(draws) {
		t.Errorf("mean ascent %.3f m, by draws %.3f m", want.mean, sum)
	}
	// 1 % by chance, and what the expansion leaves out.
	if got := math.Sqrt(want.variance); math.Abs(got/sd-1) > 0.08 {
		t.Errorf("SD %.3f m, by draws %.3f m", got, sd)
	}
}
