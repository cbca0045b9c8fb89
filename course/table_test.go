package course

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestTableAddsUp(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		every := rapid.Float64Range(1, 3000).Draw(t, "every")
		if rapid.Bool().Draw(t, "divides") {
			every = max(1, c.Length()/float64(rapid.IntRange(1, 9).Draw(t, "rows")))
		}
		rows, err := c.Table(every)
		if err != nil {
			t.Fatal(err)
		}
		var ascent, descent, at float64
		var landmarks []Landmark
		for i, r := range rows {
			if r.From != at || i+1 < len(rows) && math.Abs(r.Length()-every) > slack || r.Length() > every+1e-6 || r.Length() < min(1e-6, c.Length()) {
				t.Fatalf("row %d of %g m: %+v", i, every, r)
			}
			if r.Elevation != c.Elevation(r.To) || !(math.Abs(r.Gradient()-c.Gradient(r.From, r.To))*r.Length() < slackAscent) {
				t.Fatalf("%+v", r)
			}
			if h := c.Heading(r.From, r.To); r.Heading != h && !(math.IsNaN(h) && math.IsNaN(r.Heading)) {
				t.Fatalf("heading %g, want %g", r.Heading, h)
			}
			for _, l := range r.Landmarks {
				if l.Distance > r.To || !(l.Distance > r.From) && i > 0 {
					t.Fatalf("%+v in %+v", l, r)
				}
			}
			ascent, descent, at = ascent+r.Ascent, descent+r.Descent, r.To
			landmarks = append(landmarks, r.Landmarks...)
		}
		if w := c.Relief(); math.Abs(ascent-w.Ascent) > slackAscent || math.Abs(descent-w.Descent) > slackAscent || at != c.Length() {
			t.Fatalf("%g up, %g down to %g m, want %+v", ascent, descent, at, w)
		}
		if !slices.Equal(landmarks, c.Landmarks()) {
			t.Fatalf("%+v, want %+v", landmarks, c.Landmarks())
		}
	})
}

func TestTableRefuses(t *testing.T) {
	t.Parallel()
	c := asGiven(t, []float64{0, 1000}, []float64{0, 0})
	for _, every := range []float64{0, 0.99, -5, math.NaN(), math.Inf(-1)} {
		if _, err := c.Table(every); !errors.Is(err, ErrOption) {
			t.Errorf("every %g m: %v", every, err)
		}
	}
	if rows, err := c.Table(math.Inf(1)); err != nil || len(rows) != 1 || rows[0].To != 1000 {
		t.Errorf("one row: %+v, %v", rows, err)
	}
	for _, spacing := range []float64{0, 0.5, -1, 1001, math.NaN()} {
		if _, err := c.Resample(spacing); !errors.Is(err, ErrOption) {
			t.Errorf("spacing %g m: %v", spacing, err)
		}
	}
}

// What the drawing leaves out lies between two heights that it shows in the same
// stretch, and it shows the highest and lowest ones.
func TestSampleKeepsExtremes(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(11, 12))
	for k := range 1000 {
		x, z := []float64{0}, []float64{500}
		for i := range 5 + random.IntN(500) {
			x = append(x, x[i]+0.1+math.Pow(random.Float64(), 8)*1000) // most points close together
			z = append(z, 500+500*random.Float64())
		}
		c := asGiven(t, x, z)
		n := random.IntN(80) - 5
		points := c.Sample(n)
		n = max(n, 4)
		if len(points) > n || len(points) < min(len(x), 3) || len(x) <= n && len(points) != len(x) {
			t.Fatalf("%d: %d of %d points asked for %d", k, len(points), len(x), n)
		}
		if first, last := points[0], points[len(points)-1]; first != (Point{0, 500}) || last != (Point{c.Length(), z[len(z)-1]}) {
			t.Fatalf("%d: from %v to %v", k, first, last)
		}
		var heights []float64
		for i, p := range points {
			if i > 0 && p.Distance <= points[i-1].Distance {
				t.Fatalf("%d: %v after %v", k, p, points[i-1])
			}
			if j, found := slices.BinarySearch(x, p.Distance); !found || z[j] != p.Elevation {
				t.Fatalf("%d: %v is no point of the profile", k, p)
			}
			heights = append(heights, p.Elevation)
		}
		if slices.Min(heights) != slices.Min(z) || slices.Max(heights) != slices.Max(z) {
			t.Fatalf("%d: drawn from %g to %g m, lies from %g to %g m", k, slices.Min(heights), slices.Max(heights), slices.Min(z), slices.Max(z))
		}
		stretches := float64((n - 2) / 2)
		for i := 1; i+1 < len(x) && len(x) > n; i++ {
			stretch := math.Floor(x[i] / c.Length() * stretches)
			low, high := false, false
			for _, p := range points[1 : len(points)-1] {
				if math.Floor(p.Distance/c.Length()*stretches) == stretch {
					low, high = low || p.Elevation <= z[i], high || p.Elevation >= z[i]
				}
			}
			if !low || !high {
				t.Fatalf("%d: %g m at %g m is cut", k, z[i], x[i])
			}
		}
	}
}

// Noise of SD s in independent samples of level ground: each rise is half the mean
// distance of two of them, E max(z₂ − z₁, 0) = s√2/√(2π) = s/√π = 0.5642 s. On a slope
// that rises by r from one sample to the next it adds
//
//	σ φ(r/σ) − r Φ(−r/σ), σ = s√2,
//
// and nothing where r is much greater. Against a simulation, to four of its standard
// errors (the variance of a sum of such rises is at most three times that of one, since
// only neighbours are correlated).
func TestAscentOfNoise(t *testing.T) {
	t.Parallel()
	if level := 1 / math.Sqrt(math.Pi); !(math.Abs(level-0.5642) < 5e-5) {
		t.Errorf("%g", level)
	}
	random := rand.New(rand.NewPCG(13, 14))
	const n, s = 200_000, 2.0
	for _, slope := range []float64{0, 1, 3, 12} { // m between samples
		x, z := make([]float64, n+1), make([]float64, n+1)
		level := 0.0
		for i := range x {
			x[i] = 4 * float64(i)
			level += slope
			if level > 4000 || level < 0 { // up and down by turns, to stay on the globe
				slope = -slope
				level += 2 * slope
			}
			z[i] = level
		}
		clean := asGiven(t, x, z).Relief()
		for i := range z {
			z[i] += s * random.NormFloat64()
		}
		got := (asGiven(t, x, z).Relief().Ascent - clean.Ascent) / n
		r, sigma := math.Abs(slope), s*math.Sqrt2
		want := sigma*math.Exp(-r*r/sigma/sigma/2)/math.Sqrt(2*math.Pi) - r*math.Erfc(r/sigma/math.Sqrt2)/2
		if tolerance := 4 * math.Sqrt(3*s*s*2/n); !(math.Abs(got-want) <= tolerance) {
			t.Errorf("slope %g m a sample: %.4f m, want %.4f ± %.4f", slope, got, want, tolerance)
		}
	}
}
