package forecast_test

import (
	"context"
	"math"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/forecast"
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

func level(float64) float64 { return 100 }

// rolling has hills of 60 to 120 m with gradients up to 16 %.
func rolling(x float64) float64 {
	return 200 + 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
}

// marked has a landmark every so many metres.
func marked(length, every float64) (marks []course.Landmark) {
	for x := every; x < length-1; x += every {
		marks = append(marks, course.Landmark{Name: "post", Distance: x})
	}
	return marks
}

// prior is what is known of a runner without results but for an hour power known to 4 %.
func prior() effort.Basis {
	b := effort.Basis{Noise: 0.03}
	for n, sd := range []float64{0.04, 0.3, 0.5, 0.25, 0.4} {
		b.Cov[n][n] = sd * sd
	}
	return b
}

func drawer(t rapid.TB, a effort.Athlete, b effort.Basis, tilt forecast.Tilt) forecast.Drawer {
	t.Helper()
	d, err := forecast.FromBasis(a, b, tilt)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func of(t rapid.TB, c *course.Course, d forecast.Drawer, r plan.Race, o forecast.Options) *forecast.Forecast {
	t.Helper()
	f, err := forecast.Of(context.Background(), c, d, r, o)
	if err != nil {
		t.Fatal(err)
	}
	return f
}
