package course

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"
)

// Points at one distance are merged; a track that leaps there does not turn the legs on
// either side.
func TestDirectionWherePointsAreMerged(t *testing.T) {
	t.Parallel()
	track := []Position{
		NewPosition(0, 10), NewPosition(0.001, 10),
		NewPosition(0.5, 11), NewPosition(0.7, 9), NewPosition(0.7, 9.001), NewPosition(0.7, 9.001),
	}
	x := []float64{0, 100, 100, 100, 200, 300} // and stands still over the last 100 m
	for _, o := range []Options{{}, {Smoothing: AsGiven}} {
		c := tracked(t, x, track, o)
		checkDirection(t, c, 0, 100, 0, 1, 1e-7)
		checkDirection(t, c, 100, 200, 1, 0, 1e-7)
		checkDirection(t, c, 200, 300, 0, 0, 1e-12)
		checkDirection(t, c, 0, 300, 1.0/3, 1.0/3, 1e-7)
	}
}

func TestDirectionUnknown(t *testing.T) {
	t.Parallel()
	x, track := laid(50, 10, []layout{{20, 500}, {40, 500}})
	with, without := tracked(t, x, track, Options{}), tracked(t, x, nil, Options{})
	if !with.HasTrack() || without.HasTrack() {
		t.Errorf("HasTrack: %v with one, %v without", with.HasTrack(), without.HasTrack())
	}
	nan := math.NaN()
	for _, tt := range []struct {
		c        *Course
		from, to float64
	}{
		{without, 0, 1000},
		{with, 500, 500},
		{with, 600, 500},
		{with, nan, 500},
		{with, 0, nan},
		{with, 1000, 2000},
		{with, -100, 0},
		{with, math.Inf(1), math.Inf(1)},
	} {
		east, north, ok := tt.c.Direction(tt.from, tt.to)
		if h := tt.c.Heading(tt.from, tt.to); ok || east != 0 || north != 0 || !math.IsNaN(h) {
			t.Errorf("%g to %g m: %g, %g, %v, heading %g", tt.from, tt.to, east, north, ok, h)
		}
	}
}

func TestNewRefusesPositions(t *testing.T) {
	t.Parallel()
	here := NewPosition(50, 10)
	for _, bad := range []Position{
		{},
		NewPosition(math.NaN(), 10), NewPosition(50, math.NaN()), NewPosition(50, math.Inf(-1)),
		NewPosition(90.001, 10), NewPosition(-91, 10),
	} {
		_, err := New([]float64{0, 1, 2}, make([]float64, 3), Options{Track: []Position{here, here, bad}})
		var point *PointError
		if !errors.As(err, &point) || point.Index != 2 || !errors.Is(err, ErrNoPosition) {
			t.Errorf("%v: %v", bad, err)
		}
	}
	for _, track := range [][]Position{{}, {here}, {here, here, here}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("no panic at %d positions for 2 distances", len(track))
				}
			}()
			_, _ = New([]float64{0, 1}, make([]float64, 2), Options{Track: track})
		}()
	}
}

func TestDirectionChangesNothingElse(t *testing.T) {
	t.Parallel()
	x, track := laid(50, 10, slices.Repeat([]layout{{20, 30}, {300, 45}}, 20))
	with, without := tracked(t, x, slices.Clone(track), Options{Length: 1600}), tracked(t, x, nil, Options{Length: 1600})
	if with.Len() != without.Len() || with.Length() != without.Length() || !slices.Equal(with.Warnings(), without.Warnings()) {
		t.Errorf("%d points, %g m, %q", with.Len(), with.Length(), with.Warnings())
	}
	for i := range with.Len() {
		d, e := with.Point(i)
		if wantD, wantE := without.Point(i); d != wantD || e != wantE {
			t.Errorf("point %d: %g, %g, want %g, %g", i, d, e, wantD, wantE)
		}
	}
}

// Twice as far to the south as to the east: the mean direction points between the two,
// and is shorter than 1 since the course turns.
func ExampleCourse_Direction() {
	track := []Position{NewPosition(0, 20), NewPosition(-0.02, 20), NewPosition(-0.02, 20.01)}
	c, err := New([]float64{0, 2200, 3300}, []float64{0, 0, 0}, Options{Track: track})
	if err != nil {
		fmt.Println(err)
		return
	}
	east, north, _ := c.Direction(0, c.Length())
	fmt.Printf("%.2f east, %.2f north: %.1f°\n", east, north, c.Heading(0, c.Length()))
	fmt.Printf("first %.1f°, then %.1f°\n", c.Heading(0, 2200), c.Heading(2200, 3300))
	// Output:
	// 0.33 east, -0.67 north: 153.4°
	// first 180.0°, then 90.0°
}

// The part of BenchmarkReadGPX of package coursefile that the direction takes: 100 000
// points, with a track and without.
func BenchmarkNewWithTrack(b *testing.B) {
	x, track := laid(47, 8, slices.Repeat([]layout{{20, 5}, {50, 6}}, 50_000))
	z := make([]float64, len(x))
	for _, o := range []Options{{Track: track}, {}} {
		b.Run(fmt.Sprintf("track=%v", o.Track != nil), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := New(x, z, o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
