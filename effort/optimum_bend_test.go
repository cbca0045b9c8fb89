package effort

import (
	"math"
	"testing"

	"isoeffort.example/course"
	"pgregory.net/rapid"
)

// stretches is how many pieces of one gradient and one effort the courses here have.
const stretches = 40

// hilly is ground of stretches of a length in metres each, from 600 m above the sea.
func hilly(t rapid.TB, each float64, gradient func(j int) float64) *Ground {
	t.Helper()
	x, z := []float64{0}, []float64{600}
	for j := range stretches {
		x, z = append(x, each*float64(j+1)), append(z, z[j]+each*gradient(j))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		t.Fatal(err)
	}
	return ground(t, c, each)
}

func rolling(j int) float64 {
	return 0.05*math.Sin(1.9*float64(j)) + 0.035*math.Sin(0.7*float64(j)+1)
}

// mountains has long climbs of 12 to 24 % and descents of 6 to 22 %.
func mountains(j int) float64 {
	return []float64{0.12, 0.16, 0.2, 0.24, 0.18, 0.02, -0.22, -0.17, -0.12, -0.19, -0.06, 0}[j%12]
}

func oneClimb(j int) float64 {
	switch {
	case j >= 15 && j < 21:
		return 0.1
	case j >= 21 && j < 27:
		return -0.1
	}
	return 0
}

var profiles = []struct {
	name     string
	each     float64 // m
	gradient func(j int) float64
}{{"rolling", 1500, rolling}, {"mountain", 1250, mountains}, {"one climb", 2000, oneClimb}}

// A bend is something that may bend even effort.
type bend struct {
	name         string
	descent      float64 // Athlete.FastestDescent
	surroundings func(t testing.TB, g *Ground) Surroundings
	search       bool // for gaits, too
}

func still(testing.TB, *Ground) Surroundings { return Surroundings{} }

func wind(w float64) func(testing.TB, *Ground) Surroundings {
	return func(testing.TB, *Ground) Surroundings { return Surroundings{Drag: DefaultDrag, HeadWind: w} }
}

// thereAndBack has the wind from ahead in the first half and from behind in the second.
func thereAndBack(_ testing.TB, g *Ground) Surroundings {
	for j := range g.cells {
		north := 1.0
		if j >= len(g.cells)/2 {
			north = -1
		}
		g.heading = append(g.heading, [2]float64{0, north})
	}
	return Surroundings{Drag: DefaultDrag, Wind: Wind{Speed: 5, From: 0}}
}

func high(testing.TB, *Ground) Surroundings {
	return Surroundings{Altitude: Altitude{Loss: AltitudeLoss}}
}

func warm(t testing.TB, _ *Ground) Surroundings {
	s := hot(t, Shift{}, 0.95)
	return Surroundings{Heat: s.Heat, Day: s.Day, Start: s.Start}
}

var bends = []bend{
	{"still air", 0, still, true},
	{"head wind 5 m/s", 0, wind(5), false},
	{"tail wind 5 m/s", 0, wind(-5), false},
	{"there and back", 0, thereAndBack, false},
	{"descents 3 m/s", 3, still, false},
	{"altitude", 0, high, false},
	{"heat and night", 0, warm, false},
}
