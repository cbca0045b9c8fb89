package coursefile_test

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/course/elevation"
)

// A noisy recording of known hills comes out with their ascent when it is cleaned, and says
// how far it may be out and what was repaired; as it is read by default it climbs more.
func TestClean(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	var b bytes.Buffer
	b.WriteString("distance_m,elevation_m\n")
	for x := 0.0; x <= 20_000; x += 10 {
		z := 600 + 50*math.Sin(2*math.Pi*x/4000) + 1.5*r.NormFloat64()
		if x == 7000 {
			z += 60
		}
		fmt.Fprintf(&b, "%.0f,%.1f\n", x, z)
	}
	const ascent = 10 * 50 // five waves, each twice 50 m
	read := func(o coursefile.Options) *course.Course {
		c, err := coursefile.ReadCSV(strings.NewReader(b.String()), o)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	raw := read(coursefile.Options{Smoothing: course.AsGiven}).Relief().Ascent
	c := read(coursefile.Options{Clean: &elevation.Options{}, Length: 20_200})
	sd, _, ok := c.ReliefSD()
	t.Logf("ascent %.0f ± %.0f m of %d m, raw %.0f m; %q", c.Relief().Ascent, sd, ascent, raw, c.Warnings())
	if e := math.Abs(c.Relief().Ascent - ascent); e > 0.03*ascent || raw < 2*ascent {
		t.Errorf("ascent %g m of %d m, raw %g m", c.Relief().Ascent, ascent, raw)
	}
	if !ok || sd <= 0 || sd > 0.05*ascent || c.Length() != 20_200 {
		t.Errorf("SD %g m, %v; %g m long", sd, ok, c.Length())
	}
	if !strings.Contains(strings.Join(c.Warnings(), "\n"), "7.0") {
		t.Errorf("the spike is not told of: %q", c.Warnings())
	}
}
