package fuel_test

import (
	"fmt"
	"log"
	"os"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

// A sheet for a hilly 30 km with one aid station, for a runner who has not rehearsed much.
func ExampleFor() {
	c, err := course.New([]float64{0, 10_000, 20_000, 30_000}, []float64{100, 300, 150, 100}, course.Options{
		Landmarks: []course.Landmark{{Name: "Quarry Gate", Distance: 16_000, Kind: course.Station}},
	})
	if err != nil {
		log.Fatal(err)
	}
	p, err := plan.Even(c, effort.Usual(13), plan.Race{})
	if err != nil {
		log.Fatal(err)
	}
	t, err := fuel.For(p, fuel.Options{Mass: 70, Air: &fuel.Air{Temperature: 12}})
	if err != nil {
		log.Fatal(err)
	}
	if err := t.WriteText(os.Stdout, fuel.Metric); err != nil {
		log.Fatal(err)
	}
	// Output:
	// FOOD AND DRINK
	//
	// You are out for 2:40. Eat 30 to 60 g of carbohydrate an hour. This plan is made
	// with about 45 g an hour: 100 g in all.
	// The race uses about 2000 kcal (8500 kJ) at 70 kg. You need not eat that back on
	// the way.
	// Drink to thirst. The ranges below are only a guide to what to have with you.
	//
	// Start (0.0 km) to Quarry Gate (16.0 km), 1:27
	//   Take with you: 40 g. Range for this part: 43 to 87 g.
	//   Drink: about 250 to 850 ml, by thirst. Less is fine if you are not thirsty.
	//
	// Quarry Gate (16.0 km) to Finish (30.0 km), 1:12
	//   Take with you: 60 g. Range for this part: 36 to 72 g.
	//   Drink: about 200 to 700 ml, by thirst. Less is fine if you are not thirsty.
	//
	// When to eat (time since the gun)
	//     0:30    5.3 km   20 g
	//     1:00   10.6 km   20 g
	//     1:30   16.6 km   20 g
	//     2:00   22.4 km   40 g
	//
	// Take care
	// - Drink to thirst. Less is fine if you are not thirsty. Never drink to reach a
	//   figure: drinking too much can kill. If your weight goes up during the race, or
	//   you feel bloated, or your head aches and you feel sick, stop drinking and see
	//   the medical team.
	// - Eat only what you have rehearsed in training, at the amounts you have
	//   rehearsed.
	// - If you have diabetes or another illness, take medicines, are pregnant or under
	//   18, ask a doctor first.
	// - In heat and cold follow the race's orders, its kit list and its medical team.
	//   These figures are not tested there.
}

func ExampleRate() {
	fmt.Println(fuel.Rate(4*3600e9, 0, 150))  // a novice
	fmt.Println(fuel.Rate(4*3600e9, 80, 150)) // one who has rehearsed 80 g/h
	fmt.Println(fuel.Rate(4*3600e9, 80, 42))  // and goes easily
	// Output:
	// {30 60}
	// {30 80}
	// {20 40}
}
