package field_test

import (
	"math"
	"testing"

	"isoeffort.example/course"
)

// ground is a profile in metres, one point every 100 m, its heights as given.
func ground(t testing.TB, length float64, height func(x float64) float64, landmarks ...course.Landmark) *course.Course {
	t.Helper()
	var x, z []float64
	for d := 0.0; d <= length; d += 100 {
		x, z = append(x, d), append(z, height(d))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven, Landmarks: landmarks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// level is a level course.
func level(t testing.TB, length float64, landmarks ...course.Landmark) *course.Course {
	t.Helper()
	return ground(t, length, func(float64) float64 { return 100 }, landmarks...)
}

// rolling is a course of hills of 120 m with a landmark every 3 km.
func rolling(t testing.TB, length float64) *course.Course {
	t.Helper()
	var marks []course.Landmark
	for d := 3000.0; d < length; d += 3000 {
		marks = append(marks, course.Landmark{Name: "Post " + string(rune('A'+len(marks))), Distance: d, Kind: course.Station})
	}
	return ground(t, length, func(x float64) float64 { return 300 - 60*math.Cos(2*math.Pi*x/2500) }, marks...)
}
