package course

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

func TestNewRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, tt := range []struct {
		name  string
		x, z  []float64
		o     Options
		cause error
		index int // -1: no point is to blame
	}{
		{"no points", nil, nil, Options{}, ErrTooFewPoints, -1},
		{"one point", []float64{0}, []float64{0}, Options{}, ErrTooFewPoints, -1},
		{"all at one place", []float64{5, 5, 5}, []float64{0, 1, 2}, Options{}, ErrTooFewPoints, -1},
		{"distance NaN", []float64{0, nan}, []float64{0, 0}, Options{}, ErrNotFinite, 1},
		{"distance Inf", []float64{0, inf}, []float64{0, 0}, Options{}, ErrNotFinite, 1},
		{"elevation NaN", []float64{0, 1}, []float64{nan, 0}, Options{}, ErrNotFinite, 0},
		{"too high", []float64{0, 1, 2}, []float64{0, 0, 9001}, Options{}, ErrElevationRange, 2},
		{"too low", []float64{0, 1, 2}, []float64{0, -501, 0}, Options{}, ErrElevationRange, 1},
		{"back", []float64{0, 2, 1}, []float64{0, 0, 0}, Options{}, ErrDistanceBack, 2},
		{"too long", []float64{0, 1_000_001}, []float64{0, 0}, Options{}, ErrTooLong, -1},
		{"negative length", []float64{0, 1}, []float64{0, 0}, Options{Length: -1}, ErrOption, -1},
		{"length NaN", []float64{0, 1}, []float64{0, 0}, Options{Length: nan}, ErrOption, -1},
		{"negative smoothing", []float64{0, 1}, []float64{0, 0}, Options{Smoothing: -2}, ErrOption, -1},
		{"smoothing NaN", []float64{0, 1}, []float64{0, 0}, Options{Smoothing: nan}, ErrOption, -1},
		{"fine grid", []float64{0, 1}, []float64{0, 0}, Options{Grid: 0.5}, ErrOption, -1},
		{"landmark off", []float64{0, 1}, []float64{0, 0}, Options{Landmarks: []Landmark{{Distance: 2}}}, ErrOffCourse, -1},
		{"landmark NaN", []float64{0, 1}, []float64{0, 0}, Options{Landmarks: []Landmark{{Distance: nan}}}, ErrOffCourse, -1},
		{"stretch off", []float64{0, 1}, []float64{0, 0}, Options{Stretches: []Stretch{{From: 0, To: 2}}}, ErrOffCourse, -1},
		{"stretch empty", []float64{0, 1}, []float64{0, 0}, Options{Stretches: []Stretch{{From: 1, To: 1}}}, ErrOption, -1},
		{"stretch factor", []float64{0, 1}, []float64{0, 0}, Options{Stretches: []Stretch{{To: 1, Surface: -1}}}, ErrOption, -1},
	} {
		_, err := New(tt.x, tt.z, tt.o)
		if !errors.Is(err, tt.cause) {
			t.Errorf("%s: %v, want %v", tt.name, err, tt.cause)
			continue
		}
		index := -1
		if point := (*PointError)(nil); errors.As(err, &point) {
			index = point.Index
		}
		if index != tt.index || !strings.HasPrefix(err.Error(), "course: ") {
			t.Errorf("%s: point %d, want %d, in %q", tt.name, index, tt.index, err)
		}
	}
}

func TestNewPanicsOnUnequalLengths(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	_, _ = New([]float64{0, 1}, []float64{0}, Options{})
}

func TestNewKeepsItsArguments(t *testing.T) {
	x, z := []float64{10, 20, 20, 30}, []float64{1, 2, 4, 3}
	c, err := New(x, z, Options{Smoothing: AsGiven, Length: 40, Warnings: []string{"mended"}})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(x, []float64{10, 20, 20, 30}) || !slices.Equal(z, []float64{1, 2, 4, 3}) {
		t.Errorf("changed to %v, %v", x, z)
	}
	c.Warnings()[0] = "changed"
	if got := c.Warnings()[0]; got != "mended" {
		t.Errorf("a caller changed the course: %q", got)
	}
	want := [][2]float64{{0, 1}, {20, 3}, {40, 3}} // merged to the mean, from 0, doubled
	for i, w := range want {
		if d, e := c.Point(i); d != w[0] || e != w[1] || c.Len() != len(want) {
			t.Errorf("point %d of %d: %g, %g, want %v", i, c.Len(), d, e, w)
		}
	}
}

func TestScalingMovesLandmarksAndStretches(t *testing.T) {
	c, err := New([]float64{100, 1100}, []float64{0, 50}, Options{
		Name: "Two Bridges", Length: 1500, Smoothing: AsGiven,
		Landmarks: []Landmark{{Name: "Half", Distance: 600}},
		Stretches: []Stretch{{From: 300, To: 500, Surface: 1.2}},
	})
	if err != nil {
		t.Fatal(err)
	}
	if c.Length() != 1500 || c.Landmarks()[0].Distance != 750 || c.Name() != "Two Bridges" {
		t.Errorf("length %g, landmarks %v", c.Length(), c.Landmarks())
	}
	if got := c.Edges(); !slices.Equal(got, []float64{300, 600}) {
		t.Errorf("edges %v", got)
	}
	if len(c.Warnings()) != 1 || !strings.Contains(c.Warnings()[0], "scaled by +50.0 %") {
		t.Errorf("warnings %q", c.Warnings())
	}
}

func TestElevationAndGradient(t *testing.T) {
	c := asGiven(t, []float64{0, 100, 300}, []float64{10, 20, 0})
	for _, tt := range []struct{ at, want float64 }{{-5, 10}, {0, 10}, {50, 15}, {100, 20}, {200, 10}, {300, 0}, {301, 0}} {
		if got := c.Elevation(tt.at); got != tt.want {
			t.Errorf("Elevation(%g) = %g, want %g", tt.at, got, tt.want)
		}
	}
	if got := c.Gradient(0, 50); got != 0.1 {
		t.Errorf("Gradient = %g", got)
	}
	if !math.IsNaN(c.Elevation(math.NaN())) || !math.IsNaN(c.Gradient(50, 50)) {
		t.Error("NaN and an empty stretch should give NaN")
	}
}

func TestSteepGroundIsDoubted(t *testing.T) {
	c := asGiven(t, []float64{0, 1000, 1010, 2000}, []float64{0, 0, -7, 0})
	if w := c.Warnings(); len(w) != 1 || w[0] != "gradient of -70 % at 1.01 km: check the elevations there" {
		t.Errorf("warnings %q", w)
	}
}
