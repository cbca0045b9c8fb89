package elevation

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestErrors(t *testing.T) {
	t.Parallel()
	nan, inf := math.NaN(), math.Inf(1)
	for _, tt := range []struct {
		name  string
		x, z  []float64
		o     Options
		err   error
		point int // −1: none
	}{
		{"none", nil, nil, Options{}, ErrTooFewPoints, -1},
		{"one", []float64{1}, []float64{2}, Options{}, ErrTooFewPoints, -1},
		{"one place", []float64{1, 1}, []float64{2, 3}, Options{}, ErrTooFewPoints, -1},
		{"no height", []float64{0, 1}, []float64{nan, nan}, Options{}, ErrNoElevation, -1},
		{"only codes", []float64{0, 1}, []float64{-9999, 1e6}, Options{}, ErrNoElevation, -1},
		{"distance NaN", []float64{0, nan}, []float64{1, 1}, Options{}, ErrNotFinite, 1},
		{"distance infinite", []float64{0, inf}, []float64{1, 1}, Options{}, ErrNotFinite, 1},
		{"height infinite", []float64{0, 1, 2}, []float64{1, 1, -inf}, Options{}, ErrNotFinite, 2},
		{"back", []float64{0, 2, 1}, []float64{1, 1, 1}, Options{}, ErrDistanceBack, 2},
		{"too long", []float64{0, 2e6}, []float64{1, 1}, Options{}, ErrTooLong, -1},
		{"grid", []float64{0, 1}, []float64{1, 1}, Options{Grid: 0.5}, ErrOption, -1},
		{"grid NaN", []float64{0, 1}, []float64{1, 1}, Options{Grid: nan}, ErrOption, -1},
		{"noise", []float64{0, 1}, []float64{1, 1}, Options{Noise: -1}, ErrOption, -1},
		{"smoothing", []float64{0, 1}, []float64{1, 1}, Options{Smoothing: -2}, ErrOption, -1},
		{"bound", []float64{0, 1}, []float64{1, 1}, Options{MaxGradient: inf}, ErrOption, -1},
		{"known NaN", []float64{0, 1}, []float64{1, 1}, Options{Known: []Height{{nan, 1, 0}}}, ErrOption, -1},
		{"known SD", []float64{0, 1}, []float64{1, 1}, Options{Known: []Height{{0, 1, -1}}}, ErrOption, -1},
	} {
		_, err := Clean(tt.x, tt.z, tt.o)
		if !errors.Is(err, tt.err) {
			t.Errorf("%s: %v, want %v", tt.name, err, tt.err)
		}
		var at *PointError
		if found := errors.As(err, &at); found != (tt.point >= 0) || found && at.Index != tt.point {
			t.Errorf("%s: %v, want point %d", tt.name, err, tt.point)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("different lengths do not panic")
		}
	}()
	_, _ = Clean([]float64{0, 1}, []float64{1}, Options{})
}

func TestOptions(t *testing.T) {
	t.Parallel()
	m, x, z := recorded(t, fault{noise: 2}, 6)
	t.Run("as given", func(t *testing.T) {
		p := clean(t, x, z, Options{Smoothing: AsGiven})
		if math.Abs(p.Ascent-p.RawAscent) > 1e-6 || !math.IsNaN(p.AscentSD) || p.Smoothing.Wavelength != 0 {
			t.Errorf("ascent %.1f ± %g m, raw %.1f m, %v", p.Ascent, p.AscentSD, p.RawAscent, p.Smoothing)
		}
	})
	t.Run("wavelength", func(t *testing.T) {
		for _, want := range []float64{150, 400, 1000} {
			p := clean(t, x, z, Options{Smoothing: want})
			if math.Abs(p.Smoothing.Wavelength/want-1) > 0.02 {
				t.Errorf("%g m asked for, %g m taken", want, p.Smoothing.Wavelength)
			}
		}
	})
	t.Run("noise", func(t *testing.T) {
		a, b := clean(t, x, z, Options{}), clean(t, x, z, Options{Noise: 2})
		if b.Noise.SD != 2 || math.Abs(a.Ascent-b.Ascent) > 2*a.AscentSD {
			t.Errorf("estimated %v: %.1f ± %.1f m; given %v: %.1f m, true %.1f m", a.Noise, a.Ascent, a.AscentSD, b.Noise, b.Ascent, m.ascent())
		}
		if !strings.Contains(b.Smoothing.String(), "given") {
			t.Error(b.Smoothing)
		}
	})
	t.Run("grid", func(t *testing.T) {
		p := clean(t, x, z, Options{Grid: 25})
		if n := len(p.Distance); n != 801 || p.Distance[n-1] != 20_000 || len(p.Elevation) != n {
			t.Errorf("%d points to %g m", n, p.Distance[n-1])
		}
	})
	t.Run("far apart", func(t *testing.T) {
		x, z := m.record(fault{apart: 1000}, 1)
		p := clean(t, x, z, Options{})
		if len(p.Warnings) != 1 || len(p.Distance) != 2001 || p.Elevation[100] != z[1] {
			t.Errorf("%q, %d points, %g m for %g m", p.Warnings, len(p.Distance), p.Elevation[100], z[1])
		}
	})
}

// An undulation of the wavelength of the smoothing loses half of its height.
func TestSmoothingHalves(t *testing.T) {
	t.Parallel()
	m := waves("one wave", 40_000, wave{0.05, 400, 0})
	x, z := m.record(fault{}, 1)
	p := clean(t, x, z, Options{Smoothing: 400, Noise: 1})
	top := 0.0
	for i := len(p.Elevation) / 4; i < 3*len(p.Elevation)/4; i++ {
		top = max(top, p.Elevation[i])
	}
	size := 0.05 * 400 / (2 * math.Pi)
	// The curve follows up to twice as closely, which keeps three quarters.
	if share := top / size; share < 0.45 || share > 0.8 {
		t.Errorf("%.2f of the height is left", share)
	}
}
