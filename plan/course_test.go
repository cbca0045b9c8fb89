package plan_test

import (
	"math"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// profile makes a course of a height function, a point every 10 m.
func profile(t rapid.TB, length float64, height func(x float64) float64, marks ...course.Landmark) *course.Course {
	t.Helper()
	n := int(math.Round(length / 10))
	x, z := make([]float64, n+1), make([]float64, n+1)
	for i := range x {
		x[i] = length * float64(i) / float64(n)
		z[i] = height(x[i])
	}
	c, err := course.New(x, z, course.Options{Name: "test", Smoothing: course.AsGiven, Landmarks: marks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func flat(float64) float64 { return 100 }

// rolling has 85 km of hills of 60 to 120 m with gradients up to 8 %.
func rolling(x float64) float64 {
	return 200 + 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
}

func even(t rapid.TB, c *course.Course, a effort.Athlete, r plan.Race) *plan.Plan {
	t.Helper()
	p, err := plan.Even(c, a, r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
