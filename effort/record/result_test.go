package record_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort/record"
)

// good is a result that passes, for tests to spoil.
func good() record.Result {
	return record.Result{Date: day(2024, 5, 31), Distance: 10_000, Ascent: 100, Descent: 100, Time: time.Hour, Line: 7}
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*record.Result)
		cause error
	}{
		{"good", func(*record.Result) {}, nil},
		{"zero", func(r *record.Result) { *r = record.Result{Line: 7} }, record.ErrDistance},
		{"distance NaN", func(r *record.Result) { r.Distance = math.NaN() }, record.ErrDistance},
		{"distance Inf", func(r *record.Result) { r.Distance = math.Inf(1) }, record.ErrDistance},
		{"distance negative", func(r *record.Result) { r.Distance = -1 }, record.ErrDistance},
		{"distance negative beside GPX", func(r *record.Result) { r.Distance, r.GPX = -1, "a.gpx" }, record.ErrDistance},
		{"distance from GPX", func(r *record.Result) { r.Distance, r.GPX = 0, "a.gpx" }, nil},
		{"distance from no GPX", func(r *record.Result) { r.Distance, r.GPX = 0, " " }, record.ErrDistance},
		{"longest", func(r *record.Result) { r.Distance, r.Time = record.MaxDistance, record.MaxTime }, nil},
		{"too long", func(r *record.Result) { r.Distance, r.Time = record.MaxDistance+1, record.MaxTime }, record.ErrDistance},
		{"ascent NaN", func(r *record.Result) { r.Ascent = math.NaN() }, record.ErrAscent},
		{"ascent beside GPX", func(r *record.Result) { r.Distance, r.GPX, r.Ascent = 0, "a.gpx", -1 }, record.ErrAscent},
		{"descent Inf", func(r *record.Result) { r.Descent = math.Inf(1) }, record.ErrAscent},
		{"steepest", func(r *record.Result) { r.Ascent, r.Descent = 5000, 5000 }, nil},
		{"too steep", func(r *record.Result) { r.Ascent, r.Descent = 5000, 5001 }, record.ErrAscent},
		{"time zero", func(r *record.Result) { r.Time = 0 }, record.ErrTime},
		{"time negative", func(r *record.Result) { r.Time = math.MinInt64 }, record.ErrTime},
		{"time too long", func(r *record.Result) { r.Time = record.MaxTime + 1 }, record.ErrTime},
		{"no date", func(r *record.Result) { r.Date = time.Time{} }, record.ErrDate},
		{"role", func(r *record.Result) { r.Role = 3 }, record.ErrRole},
		{"negative role", func(r *record.Result) { r.Role = -1 }, record.ErrRole},
		{"NUL", func(r *record.Result) { r.Note = "a\x00" }, record.ErrText},
		{"not UTF-8", func(r *record.Result) { r.Runner = "\xff" }, record.ErrText},
		{"too fast", func(r *record.Result) { r.Time = 20 * time.Minute }, record.ErrTooFast},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := good()
			c.spoil(&r)
			err := r.Check()
			if !errors.Is(err, c.cause) {
				t.Fatalf("got %v, want %v", err, c.cause)
			}
			var located *record.Error
			if err != nil && (!errors.As(err, &located) || located.Line != 7) {
				t.Errorf("no line 7 in %v", err)
			}
		})
	}
}

// Where the distance is the ground's, so is the bound on the time.
func TestCheckAgainstGround(t *testing.T) {
	ground, err := course.New([]float64{0, 10_000}, []float64{300, 200}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	r := good()
	r.Distance, r.Ascent, r.Descent, r.Ground = 0, 0, 0, ground
	r.Time = 21 * time.Minute // possible only because the ground drops
	if err := r.Check(); err != nil {
		t.Error(err)
	}
	r.Time = 18 * time.Minute
	if err := r.Check(); !errors.Is(err, record.ErrTooFast) {
		t.Errorf("got %v", err)
	}
}

func TestRoleString(t *testing.T) {
	for role, want := range map[record.Role]string{
		record.AnyRole: "", record.Fit: "fit", record.Predict: "predict", 9: "Role(9)", -1: "Role(-1)",
	} {
		if got := role.String(); got != want {
			t.Errorf("Role %d: %q, want %q", int(role), got, want)
		}
	}
}
