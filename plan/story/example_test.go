package story_test

import (
	"fmt"
	"log"

	"isoeffort.example/course"
	"isoeffort.example/plan/story"
)

// A course with a bump close before its one real climb, and a long way home.
func Example() {
	c, err := course.New(
		[]float64{0, 3000, 5000, 24000, 25500, 27000, 31500, 39000, 45000},
		[]float64{420, 420, 330, 330, 385, 340, 700, 430, 420},
		course.Options{Smoothing: course.AsGiven, Landmarks: []course.Landmark{{Name: "Thimble Bank", Distance: 31500, Kind: course.Top}}})
	if err != nil {
		log.Fatal(err)
	}
	s, err := story.Tell(c, story.Options{})
	if err != nil {
		log.Fatal(err)
	}
	for i, half := range s.Halves {
		fmt.Printf("half %d: %.0f m up, %.0f m down, %.0f %% of the effort\n", i+1, half.Ascent, half.Descent, 100*half.Effort)
	}
	for _, climb := range s.Climbs {
		fmt.Printf("%s: %.0f m up in %.1f km, rated %.0f\n", climb.Label(), climb.Rise, climb.Length()/1000, climb.Value)
	}
	for _, d := range s.Decoys {
		fmt.Printf("decoy: the %s is followed %.1f km later by %s\n", d.Climb.Label(), d.Gap/1000, d.Real.Label())
	}
	for _, m := range s.MakeUp {
		fmt.Printf("make up time from %.1f to %.1f km, at %.1f %%\n", m.From/1000, m.To/1000, 100*m.Gradient())
	}
	for _, o := range s.Overspend {
		fmt.Printf("%v from %.1f to %.1f km\n", o.Why, o.From/1000, o.To/1000)
	}
	fmt.Printf("after %s: %.1f km and %.0f %% of the effort\n", s.Last.Label(), (s.Last.After.To-s.Last.After.From)/1000, 100*s.Last.After.Effort)
	for _, t := range s.ToGo {
		fmt.Printf("%s to go at %.1f km\n", t.Name, t.Distance/1000)
	}
	// Output:
	// half 1: 0 m up, 90 m down, 48 % of the effort
	// half 2: 415 m up, 325 m down, 52 % of the effort
	// climb from 24.0 to 25.5 km: 55 m up in 1.5 km, rated 5
	// Thimble Bank: 360 m up in 4.5 km, rated 10
	// decoy: the climb from 24.0 to 25.5 km is followed 1.5 km later by Thimble Bank
	// make up time from 31.5 to 45.0 km, at -2.1 %
	// early flat from 0.0 to 2.9 km
	// early descent from 3.0 to 5.0 km
	// after Thimble Bank: 13.5 km and 28 % of the effort
	// half a marathon to go at 23.9 km
	// 10 km to go at 35.0 km
	// 5 km to go at 40.0 km
}
