package chart

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"isoeffort.example/course"
)

// Spread values keep their order and gaps, and no small change of them, gaps kept, comes
// nearer to the values: the sum of squares is convex, so that is its minimum.
func TestSpread(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(r *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 8).Draw(r, "values")
		slices.Sort(values)
		const gap, low, high = 10.0, 0.0, 100.0
		out := spread(values, gap, low, high)
		squares := func(x []float64) (sum float64) {
			for i := range x {
				sum += (x[i] - values[i]) * (x[i] - values[i])
			}
			return sum
		}
		allowed := func(x []float64) bool {
			for i := range x {
				if x[i] < low-1e-9 || x[i] > high+1e-9 || i > 0 && x[i]-x[i-1] < gap-1e-9 {
					return false
				}
			}
			return true
		}
		if !allowed(out) {
			r.Fatalf("%v spread to %v", values, out)
		}
		for from := range out {
			for to := from + 1; to <= len(out); to++ {
				for _, d := range []float64{-0.01, 0.01} {
					x := slices.Clone(out)
					for i := from; i < to; i++ {
						x[i] += d
					}
					if allowed(x) && squares(x) < squares(out)-1e-9 {
						r.Fatalf("%v spread to %v, but %v is nearer", values, out, x)
					}
				}
			}
		}
	})
}

// Too many values for their bounds stand at equal distances.
func TestSpreadCrowd(t *testing.T) {
	t.Parallel()
	out := spread(make([]float64, 11), 50, 0, 100)
	for i, x := range out {
		if math.Abs(x-10*float64(i)) > 1e-9 {
			t.Fatalf("%v", out)
		}
	}
}

// Hatching stays under the line and above the foot.
func TestHatch(t *testing.T) {
	t.Parallel()
	top := []spot{{0, 10}, {20, 40}, {25, 5}, {60, 30}}
	p := page{Figure: &Figure{}}
	p.hatch(top, 2)
	if len(p.marks) != 1 || len(p.marks[0].paths) < 20 {
		t.Fatalf("%d marks", len(p.marks))
	}
	for _, line := range p.marks[0].paths {
		for _, s := range line {
			i := 0
			for i+2 < len(top) && top[i+1].x < s.x {
				i++
			}
			if s.x < 0 || s.x > 60 || s.y < 2-1e-9 || s.y > between(top[i], top[i+1], s.x)+1e-9 {
				t.Errorf("a hatch goes to %v", s)
			}
		}
	}
}

// Dashes and gaps of a bent line add up to its length.
func TestDashes(t *testing.T) {
	t.Parallel()
	line := []spot{{0, 0}, {30, 0}, {30, 40}} // 70 long: 10 on, 5 off, five times less 5
	drawn := 0.0
	for _, part := range dashes(line, []float64{10, 5}, 1) {
		for i := 1; i < len(part); i++ {
			drawn += math.Hypot(part[i].x-part[i-1].x, part[i].y-part[i-1].y)
		}
	}
	if math.Abs(drawn-50) > 1e-9 { // at 0, 15, 30, 45 and 60
		t.Errorf("%g drawn of 70, want 50", drawn)
	}
}

// A course of 3 m is drawn no taller than 9 pt at A5, whatever its length.
func TestFlatStaysFlat(t *testing.T) {
	t.Parallel()
	for _, length := range []float64{1000, 10_000, 42_195, 170_000} {
		c := courseOf(t, []float64{0, length / 2, length}, []float64{10, 13, 10})
		g := pane{left: 56, right: 577, bottom: 150, top: 380, to: length}
		g.heights(c, g.steepness(c))
		if tall := g.y(13) - g.y(10); tall > 9 {
			t.Errorf("3 m of %g m are drawn %g pt tall", length, tall)
		}
	}
}

func TestSteps(t *testing.T) {
	t.Parallel()
	for least, want := range map[float64]float64{0.3: 0.5, 1: 1, 1.2: 2, 3: 5, 7: 10, 21: 50, 0.02: 0.02} {
		if got := step(least); math.Abs(got-want) > 1e-12 {
			t.Errorf("step(%g) = %g, want %g", least, got, want)
		}
	}
	for least, want := range map[float64]float64{0.1: 0.5, 21: 30, 61: 120, 241: 300, 700: 1200} {
		if got := minuteStep(least); math.Abs(got-want) > 1e-9 {
			t.Errorf("minuteStep(%g) = %g, want %g", least, got, want)
		}
	}
}

func TestClip(t *testing.T) {
	t.Parallel()
	const name = "The Most Extraordinarily Long Name of an Aid Station in Wherryfold"
	for most := 10.0; most < 300; most += 7 {
		s := clip(name, true, textSize, most)
		if width(s, true, textSize) > most {
			t.Errorf("%q is wider than %g", s, most)
		}
	}
	if clip(name, true, textSize, 1000) != name {
		t.Error("what has room is clipped")
	}
}

func courseOf(t *testing.T, x, z []float64) *course.Course {
	t.Helper()
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return c
}
