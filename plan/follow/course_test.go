package follow_test

import (
	"math"
	"time"

	"pgregory.net/rapid"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// profile makes a course of a height function, a point every 20 m.
func profile(t rapid.TB, length float64, height func(x float64) float64, marks ...course.Landmark) *course.Course {
	t.Helper()
	n := int(math.Round(length / 20))
	x, z := make([]float64, n+1), make([]float64, n+1)
	for i := range x {
		x[i] = length * float64(i) / float64(n)
		z[i] = height(x[i])
	}
	c, err := course.New(x, z, course.Options{Name: "Larch round", Smoothing: course.AsGiven, Landmarks: marks})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func flat(float64) float64 { return 100 }

// rolling has hills of 60 to 120 m with gradients up to 8 %.
func rolling(x float64) float64 {
	return 400 + 30*math.Sin(2*math.Pi*x/2600) + 60*math.Sin(2*math.Pi*x/9000+1) + 12*math.Sin(2*math.Pi*x/1100)
}

// steep has hills of 300 m with gradients up to 31 %.
func steep(x float64) float64 {
	return 900 + 150*math.Sin(2*math.Pi*x/6000) + 60*math.Sin(2*math.Pi*x/2500)
}

func even(t rapid.TB, c *course.Course, a effort.Athlete, r plan.Race) *plan.Plan {
	t.Helper()
	p, err := plan.Even(c, a, r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawRace draws a plan with anything on: bouts, holding back, stops, a delay, limits,
// planned walks, a day, a crowd.
func drawRace(t *rapid.T) (rapid.TB, *course.Course, effort.Athlete, plan.Race) {
	length := rapid.Float64Range(8_000, 35_000).Draw(t, "length")
	ground := rapid.SampledFrom([]func(float64) float64{flat, rolling, steep}).Draw(t, "ground")
	marks := []course.Landmark{
		{Name: "Ford", Distance: math.Round(length * 0.31), Kind: course.Station},
		{Name: "Saddle", Distance: math.Round(length * 0.64)},
	}
	a := effort.Usual(rapid.Float64Range(8, 17).Draw(t, "hour power"))
	a.Fade = rapid.SampledFrom([]float64{0, 0.02, 0.04}).Draw(t, "fade")
	a.FadeShape = rapid.SampledFrom([]float64{0.6, 1, 1.2}).Draw(t, "fade shape")
	a.Eagerness = rapid.SampledFrom([]float64{0, 0, 1.5}).Draw(t, "eagerness")
	r := plan.Race{
		Step: 25, HoldBack: rapid.SampledFrom([]float64{0, plan.Off, 0.03}).Draw(t, "hold back"),
		ShortestBout: rapid.SampledFrom([]time.Duration{0, plan.Off, 5 * time.Minute}).Draw(t, "bout"),
		StartDelay:   time.Duration(rapid.IntRange(0, 9).Draw(t, "delay")) * time.Minute,
		Ease:         rapid.Bool().Draw(t, "ease"),
	}
	if rapid.Bool().Draw(t, "stops") {
		r.Stops = []plan.Stop{{Distance: math.Round(length * 0.5), Duration: 4 * time.Minute}}
		r.Stations = plan.Stations{Each: 2 * time.Minute}
	}
	if rapid.Bool().Draw(t, "limits") {
		r.Surroundings.Limits = []effort.Limit{{From: length * 0.2, To: length * 0.25, Intensity: 0.6}, {From: length * 0.4, To: length * 0.42, Speed: 1.5}, {From: length * 0.7, To: length * 0.72, Walk: true}}
	}
	if rapid.Bool().Draw(t, "walks") {
		r.Walks = plan.Walks{Every: 25 * time.Minute}
	}
	if rapid.Bool().Draw(t, "crowd") {
		r.Surroundings.Crowd = effort.Crowd{Speed: 2, Over: 1500}
	}
	if rapid.Bool().Draw(t, "day") {
		day, err := effort.NewDay([]effort.Hour{{Clock: 5 * time.Hour, Temperature: 8, Humidity: 80}, {Clock: 14 * time.Hour, Temperature: 29, Humidity: 40}}, effort.Night{From: 21 * time.Hour, To: 5 * time.Hour, Factor: 0.95})
		if err != nil {
			t.Fatal(err)
		}
		r.Surroundings.Day, r.Surroundings.Heat = day, effort.Heat{Loss: 0.004, Above: 13}
		r.Start = time.Date(2026, 6, 14, 6, 0, 0, 0, time.UTC)
	}
	switch rapid.IntRange(0, 3).Draw(t, "aim") {
	case 1:
		r.Share = rapid.Float64Range(0.2, 1).Draw(t, "share")
	case 2:
		r.Goal = even(t, profile(t, length, ground, marks...), a, r).Best.Gun + time.Duration(rapid.IntRange(1, 40).Draw(t, "minutes over the best"))*time.Minute
	}
	return t, profile(t, length, ground, marks...), a, r
}
