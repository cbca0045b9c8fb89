package course_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"isoeffort.example/course"
)

// Options.Clean is given the scaled profile and gives the course's.
func TestClean(t *testing.T) {
	t.Parallel()
	var seen []float64
	c, err := course.New([]float64{0, 500, 1000}, []float64{10, 40, 20}, course.Options{
		Length: 2000,
		Clean: func(x, z []float64) (course.Cleaned, error) {
			seen = slices.Clone(x)
			return course.Cleaned{
				Distance: []float64{0, 1000, 2000}, Elevation: []float64{10, 35, 20}, Smoothing: 80,
				AscentSD: 3, DescentSD: 4, Warnings: []string{"a spike at 1.00 km"},
			}, nil
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(seen, []float64{0, 1000, 2000}) {
		t.Errorf("given %v", seen)
	}
	ascent, descent, ok := c.ReliefSD()
	if c.Relief().Ascent != 25 || c.Smoothing() != 80 || !ok || ascent != 3 || descent != 4 || !slices.Contains(c.Warnings(), "a spike at 1.00 km") {
		t.Errorf("%+v, SDs %g, %g, %v, warnings %q", c.Relief(), ascent, descent, ok, c.Warnings())
	}
	if _, _, ok := c.Reverse().ReliefSD(); ok {
		t.Error("a reversed course knows its SD")
	}
}

func TestCleanRefused(t *testing.T) {
	t.Parallel()
	mine := errors.New("mine")
	for name, clean := range map[string]func(x, z []float64) (course.Cleaned, error){
		"empty": func(x, z []float64) (course.Cleaned, error) { return course.Cleaned{}, nil },
		"short": func(x, z []float64) (course.Cleaned, error) {
			return course.Cleaned{Distance: []float64{0, 9}, Elevation: z[:2]}, nil
		},
		"uneven": func(x, z []float64) (course.Cleaned, error) {
			return course.Cleaned{Distance: x, Elevation: z[:2]}, nil
		},
		"back": func(x, z []float64) (course.Cleaned, error) {
			return course.Cleaned{Distance: []float64{0, 700, 600, 1000}, Elevation: []float64{0, 0, 0, 0}}, nil
		},
		"NaN": func(x, z []float64) (course.Cleaned, error) {
			return course.Cleaned{Distance: x, Elevation: []float64{0, math.NaN(), 0}}, nil
		},
		"error": func(x, z []float64) (course.Cleaned, error) { return course.Cleaned{}, mine },
	} {
		_, err := course.New([]float64{0, 500, 1000}, []float64{10, 40, 20}, course.Options{Clean: clean})
		if want := course.ErrCleaned; err == nil || name != "error" && !errors.Is(err, want) || name == "error" && !errors.Is(err, mine) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
