package course

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func asGiven(t rapid.TB, x, z []float64, landmarks ...Landmark) *Course {
	t.Helper()
	c, err := New(x, z, Options{Smoothing: AsGiven, Landmarks: landmarks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestClimbs(t *testing.T) {
	// 1 % up, 10 % up, a dip of 20 m, up again, down, a hump of 25 m, down.
	x := []float64{0, 1000, 2000, 2200, 3200, 4200, 4500, 5000}
	z := []float64{90, 100, 200, 180, 300, 100, 125, 50}
	for _, tt := range []struct {
		name  string
		least float64
		want  []Climb
	}{
		{"default", 0, []Climb{{Start: 1000, Top: 3200, Rise: 200, Relief: Relief{Ascent: 220, Descent: 20}}}},
		{"the dip parts two climbs", 20, []Climb{
			{Start: 1000, Top: 2000, Rise: 100, Relief: Relief{Ascent: 100}},
			{Start: 2200, Top: 3200, Rise: 120, Relief: Relief{Ascent: 120}},
			{Start: 4200, Top: 4500, Rise: 25, Relief: Relief{Ascent: 25}},
		}},
		{"the hump is one too", 25, []Climb{
			{Start: 1000, Top: 3200, Rise: 200, Relief: Relief{Ascent: 220, Descent: 20}},
			{Start: 4200, Top: 4500, Rise: 25, Relief: Relief{Ascent: 25}},
		}},
		{"none is as high", 300, nil},
	} {
		got := asGiven(t, x, z).Climbs(tt.least)
		if len(got) != len(tt.want) {
			t.Errorf("%s: %d climbs, want %d: %v", tt.name, len(got), len(tt.want), got)
			continue
		}
		for i, c := range got {
			if c.Steepest = 0; c != tt.want[i] { // TestSteepest is for that
				t.Errorf("%s: climb %d is %+v, want %+v", tt.name, i, c, tt.want[i])
			}
		}
	}
}

func TestClimbToTheFinish(t *testing.T) {
	got := asGiven(t, []float64{0, 500, 1500}, []float64{50, 0, 100}).Climbs(0)
	if len(got) != 1 || got[0].Start != 500 || got[0].Top != 1500 || got[0].Gradient() != 0.1 || got[0].Length() != 1000 {
		t.Errorf("got %+v", got)
	}
}

func TestNoClimbOnGentleGround(t *testing.T) {
	if got := asGiven(t, []float64{0, 10_000}, []float64{0, 140}).Climbs(0); got != nil {
		t.Errorf("1.4 %% over 10 km is no climb, got %+v", got)
	}
}

func TestClimbNames(t *testing.T) {
	x, z := []float64{0, 1000, 3000, 4000, 6000}, []float64{0, 0, 200, 100, 0}
	for _, tt := range []struct {
		name      string
		landmarks []Landmark
		want      string
	}{
		{"none", nil, ""},
		{"a place within 200 m of the top", []Landmark{{Name: "Hut", Distance: 3190}}, "Hut"},
		{"a place farther off", []Landmark{{Name: "Hut", Distance: 3210}}, ""},
		{"a top before a nearer place", []Landmark{{Name: "Crest", Distance: 2900, Kind: Top}, {Name: "Hut", Distance: 3000}}, "Crest"},
		{"the nearer of two places", []Landmark{{Name: "Gate", Distance: 2900}, {Name: "Hut", Distance: 3050}}, "Hut"},
		{"a top on the way", []Landmark{{Name: "Shoulder", Distance: 2000, Kind: Top}}, "Shoulder"},
		{"a top beyond a nearer place", []Landmark{{Name: "Hut", Distance: 2950}, {Name: "Crest", Distance: 3150, Kind: Top}}, "Crest"},
		{"the last of two tops on the way", []Landmark{{Name: "Knee", Distance: 1500, Kind: Top}, {Name: "Shoulder", Distance: 2000, Kind: Top}}, "Shoulder"},
		{"a place near the top before one on the way", []Landmark{{Name: "Shoulder", Distance: 2000, Kind: Top}, {Name: "Hut", Distance: 3100}}, "Hut"},
		{"a top before the climb", []Landmark{{Name: "Knoll", Distance: 900, Kind: Top}}, ""},
	} {
		climbs := asGiven(t, x, z, tt.landmarks...).Climbs(0)
		if len(climbs) != 1 || climbs[0].Name != tt.want {
			t.Errorf("%s: %+v, want the name %q", tt.name, climbs, tt.want)
		}
	}
}

func TestClimbLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCourse(t)
		least := rapid.Float64Range(1, 500).Draw(t, "least")
		end := 0.0
		for _, climb := range c.Climbs(least) {
			if climb.Start < end || climb.Top <= climb.Start || climb.Top > c.Length() {
				t.Fatalf("climb %g to %g m after one that ends at %g", climb.Start, climb.Top, end)
			}
			end = climb.Top
			if climb.Rise < least || climb.Gradient() < gentle {
				t.Fatalf("climb rises %g m at %g", climb.Rise, climb.Gradient())
			}
			if net := c.Elevation(climb.Top) - c.Elevation(climb.Start); math.Abs(net-climb.Rise) > 1e-9 {
				t.Fatalf("rise %g, net %g", climb.Rise, net)
			}
			if math.Abs(climb.Ascent-climb.Descent-climb.Rise) > 1e-6 {
				t.Fatalf("ascent %g, descent %g, rise %g", climb.Ascent, climb.Descent, climb.Rise)
			}
		}
	})
}

// Two climbs with level ground between them are two, though no dip parts them; and on
// random benches none is lost.
func TestBenches(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		x, z := []float64{0}, []float64{0}
		var tops []float64
		for range rapid.IntRange(1, 8).Draw(t, "climbs") {
			n := len(x) - 1
			length := rapid.Float64Range(500, 5000).Draw(t, "length")
			rise := length * rapid.Float64Range(0.04, 0.15).Draw(t, "gradient")
			bench := rapid.Float64Range(500, 20_000).Draw(t, "bench")
			x, z = append(x, x[n]+length, x[n]+length+bench), append(z, z[n]+rise, z[n]+rise)
			if rise >= 40 {
				tops = append(tops, x[n]+length)
			}
		}
		climbs := asGiven(t, x, z).Climbs(0)
		for _, top := range tops {
			if !slices.ContainsFunc(climbs, func(c Climb) bool { return c.Start < top && c.Top >= top-1 }) {
				t.Fatalf("no climb reaches the top at %.0f m: %+v", top, climbs)
			}
		}
	})
}
