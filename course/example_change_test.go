package course_test

import (
	"errors"
	"fmt"

	"isoeffort.example/course"
)

// A recording reads 3 km too long up to the bridge, and true
// after that. With the race distance of the bridge known each part is scaled by itself; the
// length alone would have moved the bridge to 11.3 km.
func ExampleCourse_Scale() {
	c, err := course.New([]float64{0, 13_000, 23_500}, []float64{20, 20, 90}, course.Options{
		Smoothing: course.AsGiven,
		Landmarks: []course.Landmark{{Name: "Bridge", Distance: 13_000}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err = c.Scale(20_500, course.Mark{Name: "Bridge", Race: 10_000})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s at %.1f of %.1f km\n", c.Landmarks()[0].Name, c.Landmarks()[0].Distance/1000, c.Length()/1000)
	for _, w := range c.Warnings() {
		fmt.Println(w)
	}
	// Output:
	// Bridge at 10.0 of 20.5 km
	// the profile is 23.50 km long and was scaled by -12.8 % to the stated 20.50 km
	// the profile was scaled by -23.1 % from 0.00 to 10.00 km to meet stated distances
}

// Marks that do not ascend are refused, with the one at fault.
func ExampleMarkError() {
	_, err := ridge().Scale(0,
		course.Mark{Name: "Harrow Crest", Race: 4400},
		course.Mark{Name: "Tin Well", Race: 4300})
	var mark *course.MarkError
	fmt.Println(errors.As(err, &mark), mark.Index)
	fmt.Println(err)
	// Output:
	// true 1
	// course: mark 1: marks do not ascend: from 4300 m at 4400 m to 6300 m at 4300 m
}

// The way back begins at the turn: what was climbed is now lost.
func ExampleCourse_OutAndBack() {
	c, err := ridge().OutAndBack()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f km, %.0f m up, %.0f m down\n", c.Length()/1000, c.Relief().Ascent, c.Relief().Descent)
	for _, l := range c.Landmarks() {
		fmt.Printf("%4.1f km %s\n", l.Distance/1000, l.Name)
	}
	// Output:
	// 16 km, 470 m up, 470 m down
	//  4.3 km Harrow Crest
	//  6.3 km Tin Well
	//  9.7 km Tin Well
	// 11.7 km Harrow Crest
}

// Three laps of a loop, and the loop begun at its crest.
func ExampleCourse_Laps() {
	loop, err := course.New([]float64{0, 1500, 4000}, []float64{100, 160, 100}, course.Options{
		Smoothing: course.AsGiven, Landmarks: []course.Landmark{{Name: "Crest", Distance: 1500}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	laps, err := loop.Laps(3)
	if err != nil {
		fmt.Println(err)
		return
	}
	moved, err := loop.StartAt(1500)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f m long, %.0f m up\n", laps.Length(), laps.Relief().Ascent)
	fmt.Printf("from the crest: %.0f m, then %.0f m, then %.0f m high\n",
		moved.Elevation(0), moved.Elevation(2500), moved.Elevation(4000))
	// Output:
	// 12000 m long, 180 m up
	// from the crest: 160 m, then 100 m, then 160 m high
}

// The last leg of a relay, and the whole put together again.
func ExampleCourse_Part() {
	c := ridge()
	first, err := c.Part(0, 6300)
	if err != nil {
		fmt.Println(err)
		return
	}
	last, err := c.Part(6300, c.Length())
	if err != nil {
		fmt.Println(err)
		return
	}
	whole, err := course.Join(first, last)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the last leg: %.1f km from %s, %.0f m up\n", last.Length()/1000, last.Landmarks()[0].Name, last.Relief().Ascent)
	fmt.Printf("whole: %.1f km, %d landmarks, %.0f m up\n", whole.Length()/1000, len(whole.Landmarks()), whole.Relief().Ascent)
	// Output:
	// the last leg: 1.7 km from Tin Well, 40 m up
	// whole: 8.0 km, 2 landmarks, 275 m up
}

// The course comes by the well on the way out and back, and the hut only once. The list
// says that the well is meant at 16 km; the hut's place is known, and of the gate's two
// passes the one that follows the hut keeps the order of the list.
func ExampleChoosePasses() {
	chosen := course.ChoosePasses([]course.Sighting{
		{Passes: []float64{10_000}},                       // hut
		{Passes: []float64{7000, 13_000}},                 // gate
		{Passes: []float64{4000, 16_100}, Stated: 16_000}, // well
	})
	fmt.Println(chosen)
	// Output: [10000 13000 16100]
}
