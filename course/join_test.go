package course

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestJoinRefuses(t *testing.T) {
	t.Parallel()
	flat := func(z float64) *Course { return asGiven(t, []float64{0, 1000}, []float64{z, z}) }
	up := asGiven(t, []float64{0, 1000}, []float64{0, 30})
	high := asGiven(t, []float64{0, 1000, 2000}, []float64{40, 9000, 40})
	tiny := asGiven(t, []float64{0, 1e-3, 2e-3}, []float64{0, 0, 0})
	for _, tt := range []struct {
		name  string
		join  func() (*Course, error)
		cause error
	}{
		{"none", func() (*Course, error) { return Join() }, ErrTooFewPoints},
		{"51 m apart", func() (*Course, error) { return Join(flat(0), flat(51)) }, ErrNotMeeting},
		{"26 m and again", func() (*Course, error) { return Join(flat(0), flat(26), flat(52)) }, ErrNotMeeting},
		{"three laps of 30 m up", func() (*Course, error) { return up.Laps(3) }, ErrNotMeeting},
		{"moved too high", func() (*Course, error) { return Join(flat(50), high) }, ErrElevationRange},
		{"1001 km", func() (*Course, error) { return flat(0).Laps(1001) }, ErrTooLong},
		{"too many points", func() (*Course, error) { return tiny.Laps(maxPoints) }, ErrTooLong},
		{"more than an int", func() (*Course, error) { return tiny.Laps(math.MaxInt) }, ErrTooLong},
		{"no lap", func() (*Course, error) { return up.Laps(0) }, ErrOption},
		{"less than no lap", func() (*Course, error) { return up.Laps(-1) }, ErrOption},
		{"part back", func() (*Course, error) { return up.Part(500, 400) }, ErrOffCourse},
		{"empty part", func() (*Course, error) { return up.Part(500, 500) }, ErrOffCourse},
		{"part from NaN", func() (*Course, error) { return up.Part(math.NaN(), 500) }, ErrOffCourse},
		{"part to NaN", func() (*Course, error) { return up.Part(0, math.NaN()) }, ErrOffCourse},
		{"part beyond", func() (*Course, error) { return up.Part(0, 1001) }, ErrOffCourse},
		{"start beyond", func() (*Course, error) { return up.StartAt(1001) }, ErrOffCourse},
		{"start before", func() (*Course, error) { return up.StartAt(-1) }, ErrOffCourse},
		{"start at NaN", func() (*Course, error) { return up.StartAt(math.NaN()) }, ErrOffCourse},
		{"landmark beyond", func() (*Course, error) { return up.WithLandmarks(Landmark{Distance: 1001}) }, ErrOffCourse},
	} {
		c, err := tt.join()
		if !errors.Is(err, tt.cause) || c != nil || err != nil && !strings.HasPrefix(err.Error(), "course: ") {
			t.Errorf("%s: %v, %v, want %v", tt.name, c, err, tt.cause)
		}
	}
}

// The second course is moved up by 4 m, and the third by as much as it then needs.
func TestJoinMovesElevations(t *testing.T) {
	t.Parallel()
	a := asGiven(t, []float64{0, 1000}, []float64{100, 140})
	b := asGiven(t, []float64{0, 500}, []float64{136, 100}).Named("Back")
	c := must(t)(Join(a, b, a))
	for _, tt := range []struct{ at, want float64 }{{0, 100}, {1000, 140}, {1500, 104}, {2500, 144}} {
		if got := c.Elevation(tt.at); got != tt.want {
			t.Errorf("%g m high at %g m, want %g", got, tt.at, tt.want)
		}
	}
	want := []string{"elevations were moved so that 3 joined courses meet, by up to +4.0 m in number 2"}
	if !slices.Equal(c.Warnings(), want) || c.Name() != "Back" {
		t.Errorf("%q, %q", c.Name(), c.Warnings())
	}
	near := must(t)(Join(a, asGiven(t, []float64{0, 500}, []float64{140.04, 100})))
	if len(near.Warnings()) != 0 || near.Elevation(1000) != 140 {
		t.Errorf("4 cm: %q", near.Warnings())
	}
}

func TestJoinWarnsOfDifferences(t *testing.T) {
	t.Parallel()
	x, z, track := []float64{0, 1000}, []float64{100, 100}, []Position{NewPosition(50, 10), NewPosition(50.009, 10)}
	a := tracked(t, x, track, Options{Warnings: []string{"gap"}})
	b, err := New(x, []float64{0, 0}, Options{Smoothing: 60, Warnings: []string{"gap", "hole"}})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"gap", "hole",
		"joined courses were smoothed over 60 to 150 m: their ascents cannot be compared",
		"the direction is not known: 1 of 2 joined courses have no track",
	}
	c := must(t)(Join(a, b))
	if !slices.Equal(c.Warnings(), want) || c.HasTrack() || c.Smoothing() != 150 {
		t.Errorf("%q, track %v, %g m; elevations %v", c.Warnings(), c.HasTrack(), c.Smoothing(), z)
	}
}

// Steep ground is doubted where it lies on the new course.
func TestSteepGroundMovesAlong(t *testing.T) {
	t.Parallel()
	c := asGiven(t, []float64{0, 1000, 1010, 3000}, []float64{0, 0, -7, 0})
	for _, tt := range []struct {
		name string
		c    *Course
		want string
	}{
		{"reversed", c.Reverse(), "gradient of +70 % at 2.00 km: check the elevations there"},
		{"its part", must(t)(c.Part(500, 2000)), "gradient of -70 % at 0.51 km: check the elevations there"},
		{"scaled", must(t)(c.Scale(2950)), "gradient of -71 % at 0.99 km: check the elevations there"},
	} {
		if w := tt.c.Warnings(); len(w) != 1 || w[0] != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, w, tt.want)
		}
	}
	if w := must(t)(c.Part(1500, 3000)).Warnings(); len(w) != 0 {
		t.Errorf("a part that is not steep: %q", w)
	}
}

// No argument makes them panic, and no course changes.
func TestChangesNeitherPanicNorChange(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		x := []float64{0}
		for range rapid.IntRange(1, 6).Draw(t, "points") {
			x = append(x, x[len(x)-1]+rapid.SampledFrom([]float64{1e-12, 1e-9, 1e-6, 1, 1e4}).Draw(t, "step"))
		}
		c, err := New(x, make([]float64, len(x)), Options{
			Smoothing: rapid.SampledFrom([]float64{0, AsGiven}).Draw(t, "smoothing"),
			Landmarks: []Landmark{{Name: "A"}, {Name: "B", Distance: x[len(x)-1]}},
		})
		if err != nil {
			return // points that rounding makes one
		}
		before := slices.Concat(c.distance, c.elevation, c.ascent)
		odd := rapid.OneOf(rapid.Float64(), rapid.SampledFrom(x), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), -1e-9, c.Length() / 3}))
		a, b := odd.Draw(t, "a"), odd.Draw(t, "b")
		var made []*Course
		for _, change := range []func() (*Course, error){
			func() (*Course, error) { return c.Reverse(), nil },
			func() (*Course, error) { return c.Part(a, b) },
			func() (*Course, error) { return c.StartAt(a) },
			func() (*Course, error) { return c.Laps(3) },
			func() (*Course, error) { return c.OutAndBack() },
			func() (*Course, error) { return c.Scale(a, Mark{Profile: b, Race: a / 2}) },
			func() (*Course, error) { return c.Scale(a) },
			func() (*Course, error) { return c.Resample(a) },
			func() (*Course, error) { return c.WithLandmarks(Landmark{Distance: a}) },
		} {
			if d, err := change(); err == nil {
				made = append(made, d)
			} else if d != nil {
				t.Fatalf("a course beside %v", err)
			}
		}
		c.ClimbsWith(ClimbOptions{LeastRise: a, Gentle: b, Measure: func(from, to float64) float64 { return to - from }, Least: a})
		c.Descents(ClimbOptions{LeastRise: a, Gentle: b})
		c.Humps(Climb{Start: a, Top: b}, ClimbOptions{})
		if !slices.Equal(before, slices.Concat(c.distance, c.elevation, c.ascent)) {
			t.Fatal("the course has changed")
		}
		for i, d := range made {
			for k := 1; k < d.Len(); k++ {
				if !(d.distance[k] > d.distance[k-1]) {
					t.Fatalf("course %d: %g m after %g m", i, d.distance[k], d.distance[k-1])
				}
			}
			if d.Len() < 2 || d.distance[0] != 0 || len(d.landmarks) > 0 && d.landmarks[len(d.landmarks)-1].Distance > d.Length() {
				t.Fatalf("course %d: %v, %+v", i, d.distance, d.landmarks)
			}
		}
	})
}

// A stretch that is cut by a part does not reach over to what the part is joined with.
func TestStretchesAreCut(t *testing.T) {
	t.Parallel()
	x, z := []float64{0, 1000}, []float64{0, 0}
	c, err := New(x, z, Options{Smoothing: AsGiven, Stretches: []Stretch{{From: 200, To: 800, Surface: 1.5}}})
	if err != nil {
		t.Fatal(err)
	}
	part := must(t)(c.Part(400, 600))
	if got := part.Stretches(); len(got) != 1 || got[0] != (Stretch{From: 0, To: 200, Surface: 1.5}) {
		t.Errorf("%+v", got)
	}
	road := asGiven(t, x, z)
	whole := must(t)(Join(road, part, road))
	for _, tt := range []struct{ at, want float64 }{{900, 1}, {1100, 1.5}, {1300, 1}} {
		if got, _ := whole.Ground(tt.at); got != tt.want {
			t.Errorf("surface %g at %g m, want %g", got, tt.at, tt.want)
		}
	}
	if len(must(t)(c.Part(0, 200)).Stretches()) != 0 {
		t.Error("a stretch that begins where the part ends is none of it")
	}
}
