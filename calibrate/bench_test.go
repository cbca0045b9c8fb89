package calibrate

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort/record"
)

// eight are an invented runner's results.
func eight() (results []record.Result) {
	for i, r := range []struct {
		km, up float64
		took   time.Duration
	}{
		{10, 60, 46*time.Minute + 12*time.Second},
		{21.1, 180, 104 * time.Minute},
		{15, 400, 84 * time.Minute},
		{42.2, 300, 3*time.Hour + 46*time.Minute},
		{30, 900, 3*time.Hour + 4*time.Minute},
		{50, 1500, 5*time.Hour + 50*time.Minute},
		{10, 40, 45 * time.Minute},
		{80, 2500, 10*time.Hour + 40*time.Minute},
	} {
		results = append(results, record.Result{
			Distance: 1000 * r.km, Ascent: r.up, Descent: r.up, Time: r.took, Date: time.Date(2025, time.Month(i+1), 1, 0, 0, 0, 0, time.UTC),
		})
	}
	return results
}

func BenchmarkFitSummaries(b *testing.B) {
	results := eight()
	for b.Loop() {
		if _, err := Fit(b.Context(), results, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// hilly is a course of 25 m pieces with hills of several sizes.
func hilly(b *testing.B, length, height float64) *course.Course {
	var x, z []float64
	for d := 0.0; d <= length; d += 25 {
		x = append(x, d)
		z = append(z, 500+height*math.Sin(d/1500)+height/8*math.Sin(d/130))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		b.Fatal(err)
	}
	return c
}

func BenchmarkFitCourses(b *testing.B) {
	var results []record.Result
	for i := range 8 {
		results = append(results, record.Result{
			Ground: hilly(b, 42_000, float64(40+20*i)), Time: time.Duration(210+12*i) * time.Minute,
			Date: time.Date(2025, time.Month(i+1), 1, 0, 0, 0, 0, time.UTC),
		})
	}
	for b.Loop() {
		if _, err := Fit(b.Context(), results, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
