package course

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Marks at 400 and 1000 m of 2000 m that lie at 440 and 980 m: in New and afterwards.
func TestMarksScalePiecewise(t *testing.T) {
	t.Parallel()
	x, z := []float64{50, 250, 1250, 2050}, []float64{0, 20, 70, 10} // from 50 m on
	o := Options{
		Length: 2100, Smoothing: AsGiven,
		Marks:     []Mark{{Profile: 450, Race: 440}, {Name: "Mill", Race: 980}},
		Landmarks: []Landmark{{Name: "Mill", Distance: 1050}, {Name: "Inn", Distance: 750}, {Name: "Square", Distance: 2050.3}},
		Stretches: []Stretch{{From: 250, To: 1550, Surface: 2}},
	}
	c, err := New(x, z, o)
	if err != nil {
		t.Fatal(err)
	}
	later := must(t)(asGiven(t, x, z, o.Landmarks...).Scale(2100, Mark{Profile: 400, Race: 440}, Mark{Name: "Mill", Race: 980}))
	for i, c := range []*Course{c, later} {
		for _, tt := range []struct{ race, profile float64 }{
			{0, 0}, {220, 200}, {440, 400}, {710, 700}, {980, 1000}, {1540, 1500}, {2100, 2000},
		} {
			want := asGiven(t, x, z).Elevation(tt.profile)
			if got := c.Elevation(tt.race); !(math.Abs(got-want) < 1e-12) {
				t.Errorf("%d: %g m high at %g m, want %g", i, got, tt.race, want)
			}
		}
		if l := c.Landmarks(); len(l) != 3 || l[0].Distance != 710 || l[1].Distance != 980 || l[2].Distance != 2100 {
			t.Errorf("%d: %+v", i, l)
		}
		want := []string{
			"the profile is 2.00 km long and was scaled by +5.0 % to the stated 2.10 km",
			"the profile was scaled by +10.0 % from 0.00 to 0.44 km to meet stated distances",
			"the profile was scaled by -10.0 % from 0.44 to 0.98 km to meet stated distances",
			"the profile was scaled by +12.0 % from 0.98 to 2.10 km to meet stated distances",
		}
		if !slices.Equal(c.Warnings(), want) {
			t.Errorf("%d: %q", i, c.Warnings())
		}
	}
	if got := c.Edges(); len(got) != 2 || !(math.Hypot(got[0]-220, got[1]-1540) < 1e-9) {
		t.Errorf("edges %v", got)
	}
}

func TestScaleWarnsOverTwoPerCent(t *testing.T) {
	t.Parallel()
	c := asGiven(t, []float64{0, 1000}, []float64{0, 0})
	for _, tt := range []struct {
		length float64
		marks  []Mark
		want   int
	}{
		{1019, nil, 0},
		{981, nil, 0},
		{1021, nil, 1},
		{979, nil, 1},
		{1000, []Mark{{Profile: 500, Race: 509}}, 0}, // 1.8 % each
		{1000, []Mark{{Profile: 500, Race: 511}}, 2}, // 2.2 % each
		{0, []Mark{{Profile: 500, Race: 511}}, 2},
		{1000, []Mark{{}, {Profile: 999.8, Race: 1000}}, 0}, // say nothing new
	} {
		if got := must(t)(c.Scale(tt.length, tt.marks...)); len(got.Warnings()) != tt.want {
			t.Errorf("%g m, %v: %q", tt.length, tt.marks, got.Warnings())
		}
	}
	if got := must(t)(c.Scale(0, Mark{Profile: 500, Race: 511})); got.Length() != 1022 {
		t.Errorf("beyond the last mark: %g m", got.Length())
	}
}

func TestMarksAreRefused(t *testing.T) {
	t.Parallel()
	c := asGiven(t, []float64{0, 1000}, []float64{0, 0}, Landmark{Name: "A", Distance: 300}, Landmark{Name: "B", Distance: 600}, Landmark{Name: "B", Distance: 700})
	nan := math.NaN()
	for _, tt := range []struct {
		length float64
		marks  []Mark
		index  int
		cause  error
	}{
		{0, []Mark{{Name: "C", Race: 1}}, 0, ErrMark},
		{0, []Mark{{Name: "A", Race: 1}, {Name: "B", Race: 2}}, 1, ErrMark},
		{0, []Mark{{Profile: nan, Race: 2}}, 0, ErrNotFinite},
		{0, []Mark{{Profile: 2, Race: math.Inf(1)}}, 0, ErrNotFinite},
		{0, []Mark{{Profile: 1001, Race: 2}}, 0, ErrOffCourse},
		{900, []Mark{{Profile: 950, Race: 901}}, 0, ErrOffCourse},
		{0, []Mark{{Profile: 500, Race: 500}, {Name: "A", Race: 600}}, 1, ErrMarkOrder},
		{0, []Mark{{Profile: 500, Race: 500}, {Profile: 600, Race: 500}}, 1, ErrMarkOrder},
		{0, []Mark{{Profile: -5, Race: 5}}, 0, ErrMarkOrder},
		{0, []Mark{{Profile: 5, Race: -5}}, 0, ErrMarkOrder},
		{900, []Mark{{Profile: 1000, Race: 899}}, 0, ErrMarkOrder},
		{900, []Mark{{Profile: 990, Race: 900}}, 0, ErrMarkOrder},
	} {
		_, err := c.Scale(tt.length, tt.marks...)
		var mark *MarkError
		if !errors.As(err, &mark) || mark.Index != tt.index || !errors.Is(err, tt.cause) || !strings.HasPrefix(err.Error(), "course: mark ") {
			t.Errorf("%g m, %+v: %v, want mark %d: %v", tt.length, tt.marks, err, tt.index, tt.cause)
		}
	}
	for _, length := range []float64{nan, -1, MaxLength + 1, math.Inf(1)} {
		if _, err := c.Scale(length); !errors.Is(err, ErrOption) {
			t.Errorf("length %g: %v", length, err)
		}
	}
	if _, err := c.Scale(0, Mark{Profile: 0.01, Race: 11}); !errors.Is(err, ErrTooLong) {
		t.Errorf("scaled to 1100 km: %v", err)
	}
}

// Scaling keeps elevations, ascent and what stands where, and scaling back is the
// identity.
func TestScalingLaws(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawFull(t, "one")
		c.warnings = nil
		cuts := rapid.SliceOfN(rapid.Float64Range(0.01, 0.99), 0, 4).Draw(t, "cuts")
		slices.Sort(cuts)
		cuts = append(slices.CompactFunc(cuts, func(a, b float64) bool { return math.Abs(a-b) < 0.01 }), 1)
		var there, back []Mark
		race, last := 0.0, 0.0
		for _, cut := range cuts {
			if cut < 1 && min(cut, 1-cut)*c.Length() < 1 {
				continue // taken for the start or the finish
			}
			race += (cut - last) * c.Length() * rapid.Float64Range(0.8, 1.25).Draw(t, "factor")
			there = append(there, Mark{Profile: cut * c.Length(), Race: race})
			back = append(back, Mark{Profile: race, Race: cut * c.Length()})
			last = cut
		}
		s := must(t)(c.Scale(race, there...))
		if a, b := c.Relief(), s.Relief(); math.Abs(a.Ascent-b.Ascent) > slackAscent || math.Abs(a.Descent-b.Descent) > slackAscent || s.Length() != race || a.Smoothing != b.Smoothing {
			t.Fatalf("%+v, scaled %+v", a, b)
		}
		for i, m := range there {
			if want, got := c.Elevation(m.Profile), s.Elevation(m.Race); !(math.Abs(want-got) <= slack) {
				t.Fatalf("%g m high at mark %d, want %g", got, i, want)
			}
			from := 0.0
			mark := Mark{}
			if i > 0 {
				mark = there[i-1]
				from = mark.Profile
			}
			e, n, _ := c.Direction(from, m.Profile)
			if f, o, _ := s.Direction(mark.Race, m.Race); !(math.Hypot(e-f, n-o) <= 1e-6) {
				t.Fatalf("direction before mark %d: %g, %g, was %g, %g", i, f, o, e, n)
			}
		}
		again := must(t)(s.Scale(c.Length(), back...))
		again.warnings = nil
		if d := differs(c, again); d != "" {
			t.Fatal(d)
		}
	})
}

// A scale that puts points on top of each other leaves no piece without length.
func TestScalingToNextToNothing(t *testing.T) {
	t.Parallel()
	x := []float64{0, 1e-9, 2e-9, 500, 500 + 1e-10, 1000}
	for _, o := range []Options{{Smoothing: AsGiven}, {}} {
		o.Length, o.Marks = 1e-3, []Mark{{Profile: 400, Race: 0.9e-3}, {Profile: 999, Race: 0.99e-3}}
		c, err := New(x, []float64{0, 5, 2, 3, 4, 5}, o)
		if err != nil {
			t.Fatal(err)
		}
		for i := 1; i < c.Len(); i++ {
			a, y := c.Point(i - 1)
			b, z := c.Point(i)
			if !(b > a) || math.IsNaN(y+z) {
				t.Errorf("from %g m, %g to %g m, %g", a, y, b, z)
			}
		}
	}
}
