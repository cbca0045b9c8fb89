package effort_test

import (
	"math"
	"testing"

	"isoeffort.example/course/coursefile"
	"isoeffort.example/effort"
)

// Known by its totals alone, a course takes about as long as by its whole profile: within
// 3 % on two mapped courses (testdata/README.md has their source) and on the invented
// one, for hour powers of 10 to 15.
func TestSummaryAgainstProfile(t *testing.T) {
	t.Parallel()
	for _, file := range []string{"../testdata/gpx/hilly-72km.gpx", "../testdata/gpx/long-route-166km.gpx", "../examples/evenplan/demo/course.gpx"} {
		c, err := coursefile.Open(file, coursefile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		whole, err := effort.NewGround(c, 25)
		if err != nil {
			t.Fatal(err)
		}
		r := c.Relief()
		totals, err := effort.NewSummaryGround(c.Length(), r.Ascent, r.Descent)
		if err != nil {
			t.Fatal(err)
		}
		for _, power := range []float64{10, 12, 15} {
			off := fastest(t, totals, power)/fastest(t, whole, power) - 1
			t.Logf("%s, hour power %g: %+.1f %%", file, power, 100*off)
			if math.Abs(off) > 0.03 {
				t.Errorf("%s, hour power %g: the totals give %+.1f %% of time", file, power, 100*off)
			}
		}
	}
}

func fastest(t *testing.T, g *effort.Ground, power float64) float64 {
	t.Helper()
	in, err := effort.NewIntegrator(g, effort.Usual(power), effort.Surroundings{})
	if err != nil {
		t.Fatal(err)
	}
	f, err := in.Fastest(nil)
	if err != nil {
		t.Fatal(err)
	}
	return f.Moving
}
