package fuel_test

import (
	"fmt"
	"log"
	"os"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/fuel"
)

// A sheet for a hilly 30 km with one aid station, for a runner who has rehearsed nothing.
func ExampleFor() {
	c, err := course.New([]float64{0, 10_000, 20_000, 30_000}, []float64{100, 300, 150, 100}, course.Options{
		Name:      "Copper Hill Round",
		Landmarks: []course.Landmark{{Name: "Quarry Gate", Distance: 16_000, Kind: course.Station}},
	})
	if err != nil {
		log.Fatal(err)
	}
	p, err := plan.Even(c, effort.Usual(13), plan.Race{Start: time.Date(2026, 6, 14, 9, 30, 0, 0, time.UTC)})
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
	// Copper Hill Round, 30.0 km. Planned finish: 12:10 (2:40 after the gun).
	//
	// Eat 30 to 60 g of carbohydrate an hour. This plan comes to 80 g in all, about
	// 30 g an hour.
	// 20 g of carbohydrate is about what a small gel or a small banana has. Read the
	// label.
	// The race uses about 2000 kcal at 70 kg. You need not eat that back on the way.
	// Drink to thirst. The ranges below are only a guide to what to have with you.
	//
	// Start (0.0 km, 09:30) to Quarry Gate (16.0 km, 10:57), 1:27
	//   Take with you: 40 g. Range for this part: 40 to 85 g.
	//   Drink: about 250 to 850 ml, by thirst. Less is fine if you are not thirsty.
	//
	// Quarry Gate (16.0 km, 10:57) to Finish (30.0 km, 12:10), 1:12
	//   Take with you: 40 g. Range for this part: 35 to 70 g.
	//   Drink: about 200 to 700 ml, by thirst. Less is fine if you are not thirsty.
	//
	// When to eat (time since the gun, clock)
	//   0:30  10:00   5.3 km  20 g
	//   1:00  10:30  10.6 km  20 g
	//   1:30  11:00  16.6 km  20 g
	//   2:00  11:30  22.4 km  20 g
	//
	// Take care
	// - Never drink to reach a figure: drinking too much can kill. If your weight goes
	//   up during the race, or you feel bloated, or your head aches and you feel sick,
	//   stop drinking and see the medical team.
	// - This plan is arithmetic about effort. The race's medical team, local rules and
	//   your doctor come before it.
	// - Stop and seek help for chest pain, collapse, confusion, dark urine or repeated
	//   vomiting.
	// - Do not start with a fever or a recent illness.
	// - With heart disease, with diabetes, in pregnancy, or as a minor: ask a doctor
	//   first.
	// - Drink to thirst, never a fixed large amount. Gaining weight on the way is a
	//   warning sign.
	// - Take carbohydrate only as you have rehearsed it.
	// - Take no anti-inflammatory painkillers before or in the race.
	// - In heat or cold follow the race's orders, kit rules and medical team. The plan
	//   knows nothing of what is safe.
	// - With any other illness, or if you take medicines, ask a doctor about eating
	//   and drinking in the race too.
	// - If your stomach turns, slow down, and take small sips and bites until it
	//   settles.
	// - These figures are not tested in heat or cold.
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
