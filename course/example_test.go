package course_test

import (
	"fmt"

	"isoeffort.example/course"
)

// ridge is an invented course: up to a crest with a dip on the way, down to a well, and
// a low rise to the finish.
func ridge() *course.Course {
	c, err := course.New(
		[]float64{0, 1000, 2500, 2800, 4300, 6300, 8000},
		[]float64{200, 210, 330, 315, 420, 240, 280},
		course.Options{Name: "Lanternfell", Smoothing: course.AsGiven, Landmarks: []course.Landmark{
			{Name: "Harrow Crest", Distance: 4300, Kind: course.Top},
			{Name: "Tin Well", Distance: 6300, Kind: course.Station},
		}})
	if err != nil {
		panic(err)
	}
	return c
}

// The first gentle kilometre is no part of the climb, the dip of 15 m is. It takes the
// name of the landmark at its top; the low rise has none.
func ExampleCourse_Climbs() {
	for _, c := range ridge().Climbs(0) {
		fmt.Printf("%s: %.0f m up in %.1f km, mean %.1f %%, steepest 100 m %.1f %%\n",
			c.Label(), c.Rise, c.Length()/1000, 100*c.Gradient(), 100*c.Steepest)
	}
	// Output:
	// Harrow Crest: 210 m up in 3.3 km, mean 6.4 %, steepest 100 m 8.0 %
	// climb from 6.3 to 8.0 km: 40 m up in 1.7 km, mean 2.4 %, steepest 100 m 2.4 %
}

// The dip parts the climb in two where humps of 10 m count.
func ExampleCourse_Humps() {
	c := ridge()
	for _, h := range c.Humps(c.Climbs(0)[0], course.ClimbOptions{LeastRise: 10}) {
		fmt.Printf("%.1f to %.1f km, %.0f m up\n", h.Start/1000, h.Top/1000, h.Rise)
	}
	// Output:
	// 1.0 to 2.5 km, 120 m up
	// 2.8 to 4.3 km, 105 m up
}

// The least size can be anything that ground may cost, here the work of lifting a
// kilogram, 9.81 J a metre climbed. A dip parts a climb where regaining its height is worth
// as much: here 15 m or 147 J.
func ExampleCourse_ClimbsWith() {
	c := ridge()
	work := func(from, to float64) float64 { return 9.81 * c.ReliefBetween(from, to).Ascent }
	for _, least := range []float64{100, 300, 1000} {
		var labels []string
		for _, climb := range c.ClimbsWith(course.ClimbOptions{Measure: work, Least: least}) {
			labels = append(labels, climb.Label())
		}
		fmt.Printf("%.0f J/kg: %q\n", least, labels)
	}
	// Output:
	// 100 J/kg: ["climb from 1.0 to 2.5 km" "Harrow Crest" "climb from 6.3 to 8.0 km"]
	// 300 J/kg: ["Harrow Crest" "climb from 6.3 to 8.0 km"]
	// 1000 J/kg: ["Harrow Crest"]
}

// A descent is a climb of the course run the other way.
func ExampleCourse_Descents() {
	for _, d := range ridge().Descents(course.ClimbOptions{}) {
		fmt.Printf("%s: %.0f m down in %.1f km, mean %.1f %%\n", d.Label(), d.Drop, d.Length()/1000, 100*d.Gradient())
	}
	// Output:
	// Harrow Crest: 180 m down in 2.0 km, mean -9.0 %
}
