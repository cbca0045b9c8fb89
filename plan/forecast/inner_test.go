package forecast

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// The shortcuts of a forecast leave 0.2 % of each draw's time at every place, 1 % of times
// beyond a day, against full solves over cells of 10 m.
func TestShortcuts(t *testing.T) {
	t.Parallel()
	grounds := map[string]func(x float64) float64{
		"rolling": func(x float64) float64 {
			return 200 + 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
		},
		"level":  func(float64) float64 { return 0 },
		"alpine": func(x float64) float64 { return 1500 + 700*math.Sin(2*math.Pi*x/14000) + 40*math.Sin(2*math.Pi*x/900) },
	}
	b := effort.Basis{Noise: 0.03}
	for n, sd := range []float64{0.15, 0.3, 0.5, 0.25, 0.4} {
		b.Cov[n][n] = sd * sd
	}
	for name, height := range grounds {
		for _, hour := range []float64{8, 12, 16} {
			source, err := FromBasis(effort.Usual(hour), b, FieldTilt())
			if err != nil {
				t.Fatal(err)
			}
			t.Run(fmt.Sprint(name, hour), func(t *testing.T) {
				t.Parallel()
				compare(t, waves(t, height), source)
			})
		}
	}
}

// waves is a course of 60 km.
func waves(t *testing.T, height func(x float64) float64) *course.Course {
	t.Helper()
	var x, z []float64
	for v := 0.0; v <= 60_000; v += 10 {
		x, z = append(x, v), append(z, height(v))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven, Landmarks: []course.Landmark{{Name: "a", Distance: 20_000}}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func compare(t *testing.T, c *course.Course, source Drawer) {
	t.Helper()
	draws, err := source.all(50, 7)
	if err != nil {
		t.Fatal(err)
	}
	d, err := newDay(c, central(draws), plan.Race{}, DefaultStep)
	if err != nil {
		t.Fatal(err)
	}
	quick, err := d.run(context.Background(), draws, 1)
	if err != nil {
		t.Fatal(err)
	}
	fine, err := effort.NewGround(c, 10)
	if err != nil {
		t.Fatal(err)
	}
	exact := *d
	exact.ground = fine
	in := &effort.Integrator{}
	out := make([]float64, len(d.at))
	worst, sum := 0.0, 0.0
	for i, draw := range draws {
		if err := in.Reset(fine, draw.Athlete, d.surroundings); err != nil {
			t.Fatal(err)
		}
		if err := exact.solved(in, draw, math.Exp(draw.Noise), out); err != nil {
			t.Fatal(err)
		}
		for j := range out {
			off := quick.moving(i, j)/out[j] - 1
			worst = math.Max(worst, math.Abs(off))
			if j == d.finish {
				sum += off
			}
			most := 0.002
			if out[j] > 24*3600 {
				most = 0.01 // runners who have faded to a crawl
			}
			if math.Abs(off) > most {
				t.Errorf("draw %d %+v at %.0f m: off by %.3f %%", i, draw, d.at[j], 100*off)
			}
		}
	}
	t.Logf("worst %.3f %%, mean at the finish %.3f %%", 100*worst, 100*sum/float64(len(draws)))
}

// A generator is seeded for each draw.
func TestDrawsStandAlone(t *testing.T) {
	t.Parallel()
	source := Drawer(func(i int, rng *rand.Rand) Draw {
		if i == 0 {
			rng.Uint64() // one more must not shift the others
		}
		return Draw{Athlete: effort.Usual(12), Noise: 0.01 * rng.NormFloat64()}
	})
	plain := Drawer(func(_ int, rng *rand.Rand) Draw {
		return Draw{Athlete: effort.Usual(12), Noise: 0.01 * rng.NormFloat64()}
	})
	a, _ := source.all(3, 1)
	b, _ := plain.all(3, 1)
	if a[0] == b[0] || a[1] != b[1] || a[2] != b[2] {
		t.Errorf("draws %v and %v", a, b)
	}
}
