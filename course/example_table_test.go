package course_test

import "fmt"

// Equal distances, the last one what is left.
func ExampleCourse_Table() {
	rows, err := ridge().Table(3000)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rows {
		fmt.Printf("%.0f to %.0f m: %3.0f up, %3.0f down, at %.0f m", r.From, r.To, r.Ascent, r.Descent, r.Elevation)
		for _, l := range r.Landmarks {
			fmt.Printf(", %s", l.Name)
		}
		fmt.Println()
	}
	// Output:
	// 0 to 3000 m: 144 up,  15 down, at 329 m
	// 3000 to 6000 m:  91 up, 153 down, at 267 m, Harrow Crest
	// 6000 to 8000 m:  40 up,  27 down, at 280 m, Tin Well
}

func ExampleCourse_Sections() {
	for _, s := range ridge().Sections() {
		fmt.Printf("%s to %s: %.1f km, %.0f m up, %.0f m down\n", s.From.Name, s.To.Name, s.Length()/1000, s.Ascent, s.Descent)
	}
	// Output:
	// Start to Harrow Crest: 4.3 km, 235 m up, 15 m down
	// Harrow Crest to Tin Well: 2.0 km, 0 m up, 180 m down
	// Tin Well to Finish: 1.7 km, 40 m up, 0 m down
}

// Few points for a small drawing, the crest and the well among them.
func ExampleCourse_Sample() {
	laps, err := ridge().OutAndBack()
	if err != nil {
		fmt.Println(err)
		return
	}
	points := laps.Sample(6)
	fmt.Println(laps.Len(), "points become", len(points))
	for _, p := range points {
		fmt.Printf("%.1f km %.0f m\n", p.Distance/1000, p.Elevation)
	}
	// Output:
	// 13 points become 6
	// 0.0 km 200 m
	// 1.0 km 210 m
	// 4.3 km 420 m
	// 11.7 km 420 m
	// 15.0 km 210 m
	// 16.0 km 200 m
}
