package course_test

import (
	"math"
	"testing"

	"github.com/pymaxion/geographiclib-go/geodesic"
	"pgregory.net/rapid"

	"isoeffort.example/course"
)

// drawTrack draws a course that wanders anywhere on the globe, with its positions.
func drawTrack(t *rapid.T) (*course.Course, []float64, []course.Position) {
	lat := rapid.Float64Range(-85, 85).Draw(t, "lat")
	lon := rapid.Float64Range(-180, 180).Draw(t, "lon")
	x, z, track := []float64{0}, []float64{100}, []course.Position{course.NewPosition(lat, lon)}
	for i := range rapid.IntRange(1, 30).Draw(t, "legs") {
		azimuth, length := rapid.Float64Range(0, 360).Draw(t, "azimuth"), rapid.Float64Range(2, 150).Draw(t, "leg")
		r := geodesic.WGS84.Direct(lat, lon, azimuth, length)
		lat, lon = r.Lat2, r.Lon2
		x, z = append(x, x[i]+length), append(z, 100+20*math.Sin(x[i]/200))
		track = append(track, course.NewPosition(lat, lon))
	}
	o := course.Options{Track: track}
	if rapid.Bool().Draw(t, "as given") {
		o.Smoothing = course.AsGiven
	}
	c, err := course.New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	return c, x, track
}

func apart(t *rapid.T, c *course.Course, distance float64, want course.Position) float64 {
	p, ok := c.Position(distance)
	if !ok {
		t.Fatal("no position")
	}
	return geodesic.WGS84.Inverse(p.Lat(), p.Lon(), want.Lat(), want.Lon()).S12
}

// A course is at the points of its track at their distances, and between them on the
// geodesic, by GeographicLib.
func TestPosition(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c, x, track := drawTrack(t)
		for i := range x {
			if off := apart(t, c, x[i], track[i]); off > 1e-6 {
				t.Fatalf("%g m off at point %d", off, i)
			}
		}
		i := rapid.IntRange(1, len(x)-1).Draw(t, "between")
		a, b := track[i-1], track[i]
		g := geodesic.WGS84.Inverse(a.Lat(), a.Lon(), b.Lat(), b.Lon())
		r := geodesic.WGS84.Direct(a.Lat(), a.Lon(), g.Azi1, g.S12/2)
		if off := apart(t, c, (x[i-1]+x[i])/2, course.NewPosition(r.Lat2, r.Lon2)); off > 1e-4 {
			t.Fatalf("%g m off the geodesic", off)
		}
	})
}

// Every operation keeps each place where it was.
func TestPositionMovesAlong(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c, _, _ := drawTrack(t)
		length := c.Length()
		at := func(x float64) course.Position {
			p, _ := c.Position(x)
			return p
		}
		x := length * rapid.Float64Range(0, 1).Draw(t, "x")
		near := func(what string, c *course.Course, distance float64, want course.Position) {
			if off := apart(t, c, distance, want); off > 1e-5 {
				t.Fatalf("%s: %g m off", what, off)
			}
		}
		near("reversed", c.Reverse(), length-x, at(x))
		from := length * rapid.Float64Range(0, 0.5).Draw(t, "from")
		to := from + (length-from)*rapid.Float64Range(0.01, 1).Draw(t, "to")
		part, err := c.Part(from, to)
		if err != nil {
			t.Fatal(err)
		}
		if x >= from && x <= to {
			near("part", part, x-from, at(x))
		}
		near("part's start", part, 0, at(from))
		near("part's end", part, part.Length(), at(to))
		laps, err := c.OutAndBack()
		if err != nil {
			t.Fatal(err)
		}
		near("out", laps, x, at(x))
		near("back", laps, 2*length-x, at(x))
		scaled, err := c.Scale(1.1 * length)
		if err != nil {
			t.Fatal(err)
		}
		near("scaled", scaled, 1.1*x, at(x))
		coarse, err := c.Resample(50)
		if err != nil {
			t.Fatal(err)
		}
		near("resampled", coarse, x, at(x))
	})
}

func TestNoPosition(t *testing.T) {
	t.Parallel()
	c, err := course.New([]float64{0, 100}, []float64{0, 0}, course.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if p, ok := c.Position(50); ok {
		t.Errorf("a course without a track is at %v", p)
	}
	track := []course.Position{course.NewPosition(10, 20), course.NewPosition(10, 20.001)}
	if c, err = course.New([]float64{0, 110}, []float64{0, 0}, course.Options{Track: track}); err != nil {
		t.Fatal(err)
	}
	if _, ok := c.Position(math.NaN()); ok {
		t.Error("a position at NaN")
	}
	for _, x := range []float64{-5, 0} {
		if p, _ := c.Position(x); math.Abs(p.Lon()-20) > 1e-12 {
			t.Errorf("at %g m: %v", x, p.Lon())
		}
	}
}

// A track with points far apart is cut where its scale changes, as the profile is.
func TestPositionBetweenMarks(t *testing.T) {
	t.Parallel()
	var track []course.Position
	lat, lon := 45.0, 10.0
	for range 3 {
		track = append(track, course.NewPosition(lat, lon))
		r := geodesic.WGS84.Direct(lat, lon, 90, 2000)
		lat, lon = r.Lat2, r.Lon2
	}
	c, err := course.New([]float64{0, 2000, 4000}, []float64{0, 0, 0}, course.Options{
		Track: track, Length: 4000, Marks: []course.Mark{{Profile: 1000, Race: 1200}},
	})
	if err != nil {
		t.Fatal(err)
	}
	p, _ := c.Position(1200)
	if off := geodesic.WGS84.Inverse(45, 10, p.Lat(), p.Lon()).S12; math.Abs(off-1000) > 0.1 {
		t.Errorf("the mark lies %.1f m from the start", off)
	}
}
