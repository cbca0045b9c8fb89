package curve_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort/curve"
)

// Scarf 2007, J Sports Sci 25:719, second-hand: in the records of fell races a metre of
// climb takes as long as 8 m of level for men and 10 m for women, on treadmills 3.3 and in
// a mountain road relay 4.4. Naismith 1892 has 7.92.
func TestEquivalence(t *testing.T) {
	t.Parallel()
	const rise, run = 100, 1000
	for _, e := range []struct{ given, want float64 }{{0, 7.92}, {8, 8}, {10, 10}, {3.3, 3.3}, {4.4, 4.4}} {
		n := curve.Naismith{Equivalence: e.given}
		extra := run/n.Speed(float64(rise)/run) - run/n.Speed(0) // s, for the climb
		near(t, "m of level for one of climb", extra*n.Speed(0)/rise, e.want, 1e-9)
	}
}

func TestNaismith(t *testing.T) {
	t.Parallel()
	n := curve.Naismith{}
	if n.Speed(-0.3) != n.Speed(0) || n.Speed(math.Inf(1)) != 0 || !math.IsNaN(n.Speed(math.NaN())) {
		t.Error("downhill, a wall or NaN")
	}
	for _, bad := range []curve.Naismith{
		{Level: -1}, {Level: math.NaN()}, {Level: 11}, {Equivalence: -8}, {Equivalence: math.NaN()}, {Equivalence: 51},
	} {
		if err := bad.Check(); !errors.Is(err, curve.ErrParameter) || !math.IsNaN(bad.Speed(0)) {
			t.Errorf("%+v: %v, %g m/s", bad, err, bad.Speed(0))
		}
	}
}

// Tobler 1993, from memory: no gradient is faster than −5 %, and those as far above as
// below it are alike.
func TestTobler(t *testing.T) {
	t.Parallel()
	tobler := curve.Tobler{}
	for d := 0.01; d < 1; d += 0.01 {
		near(t, "as far above as below", tobler.Speed(-0.05+d), tobler.Speed(-0.05-d), 1e-12)
		if tobler.Speed(-0.05+d) >= tobler.Speed(-0.05) {
			t.Errorf("%g is faster than −5 %%", -0.05+d)
		}
	}
	if tobler.Speed(math.Inf(-1)) != 0 || !math.IsNaN(tobler.Speed(math.NaN())) {
		t.Error("a cliff or NaN")
	}
}

// profile makes a course that is left as given.
func profile(t *testing.T, distance, elevation []float64) *course.Course {
	t.Helper()
	c, err := course.New(distance, elevation, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Parts of a course add up to the whole, each at its own speed: 1 km of level, 1 km up
// and 1 km down by 5 % at Tobler's 5.04, 4.23 and 6 km/h.
func TestTimeAddsUp(t *testing.T) {
	t.Parallel()
	c := profile(t, []float64{0, 1000, 2000, 3000}, []float64{10, 10, 60, 10})
	got, err := curve.Time(c, curve.Tobler{})
	if err != nil {
		t.Fatal(err)
	}
	want := (1/5.037 + 1/4.228 + 1/6.0) * 3600
	near(t, "seconds", got.Seconds(), want, 0.2) // the speeds are rounded to 0.5 in 4000
}

// level is a rule that knows only one speed.
type level float64

func (l level) Speed(float64) float64 { return float64(l) }

func TestNoTime(t *testing.T) {
	t.Parallel()
	c := profile(t, []float64{0, 1000, 1001}, []float64{0, 0, 900})
	for _, r := range []curve.Rule{
		curve.Tobler{}, // a cliff of 900 m
		curve.Naismith{Level: -1}, level(0), level(-1), level(math.NaN()), level(math.Inf(1)), level(1e-300),
	} {
		if got, err := curve.Time(c, r); !errors.Is(err, curve.ErrSpeed) || got != 0 {
			t.Errorf("%#v: %v, %v", r, got, err)
		}
	}
	if got, err := curve.Time(c, level(1.001)); err != nil || got != 1000*time.Second {
		t.Errorf("1001 m at 1.001 m/s: %v, %v", got, err)
	}
}
