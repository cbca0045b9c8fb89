package field_test

import (
	"context"
	"fmt"
	"log"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/field"
)

// demoCourse is the invented course of the program evenplan.
func demoCourse() *course.Course {
	c, err := coursefile.Open("../../examples/evenplan/demo/course.gpx", coursefile.Options{Length: 86_400})
	if err != nil {
		log.Fatal(err)
	}
	return c
}

// A field from a file: each runner has a plan or an error with its line, in order.
func ExampleEach() {
	file, err := field.Read(strings.NewReader(`name,hour_power,braking,goal
Ilva Tarn,15.5,0.9,
Oddo Brask,twelve,1,
Fenna Marrow,11,1.4,13:30:00
Ilva tarn,12,1,
`), field.ReadOptions{File: "runners.csv"})
	if err != nil {
		log.Fatal(err)
	}
	race := plan.Race{StartDelay: 2 * time.Minute}
	o := field.Options{
		Quick:    true,
		File:     "runners.csv",
		Progress: func(done, total int) { fmt.Printf("%d of %d  ", done, total) },
	}
	for out, err := range field.Each(context.Background(), demoCourse(), race, file.Entries, o) {
		switch {
		case err != nil:
			log.Fatal(err)
		case out.Err != nil:
			fmt.Println(out.Err)
		default:
			fmt.Printf("%s: %v on %.0f %% of the budget\n", out.Runner.Name, out.Plan.Gun.Round(time.Minute), 100*out.Plan.Budget)
		}
	}
	// Output:
	// 1 of 4  Ilva Tarn: 8h4m0s on 100 % of the budget
	// 2 of 4  runners.csv:3: "Oddo Brask": bad number: hour_power "twelve" is not a finite number
	// 3 of 4  Fenna Marrow: 13h30m0s on 27 % of the budget
	// 4 of 4  runners.csv:5: name stands twice: "Ilva tarn" is that of line 2
}

// Pace groups for five runners. The one who brakes hard on descents does not fit the
// schedule of a group that they could just keep up with at their own even effort.
func ExampleGroups() {
	runner := func(name string, hourPower, braking float64) field.Runner {
		return field.Runner{Name: name, Athlete: effort.Usual(hourPower).Set(effort.Braking, braking)}
	}
	entries := field.Entries(
		runner("Ilva", 15, 1), runner("Oddo", 12.95, 1), runner("Fenna", 14.62, 3), runner("Zoë", 12.2, 1), runner("Hob", 8, 2))
	g, err := field.Groups(context.Background(), demoCourse(), plan.Race{}, entries, field.GroupOptions{
		Targets: []time.Duration{10 * time.Hour, 11 * time.Hour, 12 * time.Hour},
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, group := range g.Groups {
		fmt.Printf("%v, made for %s:", group.Target, entries[group.MadeFor].Runner.Name)
		for _, m := range group.Members {
			fmt.Printf(" %s (%.0f %%, evenly %.0f %%)", m.Runner.Name, 100*m.Budget, 100*m.Even)
		}
		fmt.Println()
	}
	for _, other := range g.Others {
		fmt.Println("in none:", other.Runner.Name)
	}
	// Output:
	// 10h0m0s, made for Oddo: Ilva (21 %, evenly 21 %) Oddo (99 %, evenly 99 %)
	// 11h0m0s, made for Zoë: Fenna (45 %, evenly 37 %) Zoë (73 %, evenly 73 %)
	// 12h0m0s, made for Zoë:
	// in none: Hob
}

// Until when the landmarks may be passed. The cutoff half way decides at first, and the
// finish after it.
func ExampleLatestPassages() {
	c := demoCourse()
	half, err := plan.Find(c, "Half-Lamp Stone")
	if err != nil {
		log.Fatal(err)
	}
	race := plan.Race{
		StartDelay: 2 * time.Minute,
		Cutoffs: []plan.Cutoff{
			{Name: "half way", Distance: half, Time: 7 * time.Hour},
			{Name: "the finish", Distance: c.Length(), Time: 15*time.Hour + 30*time.Minute},
		},
	}
	passages, err := field.LatestPassages(context.Background(), c, race, nil, field.PassageOptions{InHand: 10 * time.Minute})
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range passages {
		fmt.Printf("%4.1f km  %-16s  %v  for %s\n", p.Distance/1000, p.Name, p.Latest.Round(time.Minute), p.For.Name)
	}
	// Output:
	// 10.3 km  Tallowmast Brow   1h40m0s  for half way
	// 11.5 km  Pennyoar Green    1h49m0s  for half way
	// 19.1 km  Wickerlamp Height  3h3m0s  for half way
	// 21.6 km  Pintlehook        3h26m0s  for half way
	// 29.7 km  Glimmerstow Edge  4h46m0s  for half way
	// 32.5 km  Kelpwright's Yard  5h9m0s  for half way
	// 35.0 km  Snuffer's Knoll   5h31m0s  for half way
	// 38.1 km  Emberlatch        6h7m0s  for half way
	// 43.2 km  Half-Lamp Stone   6h50m0s  for half way
	// 44.0 km  Mossbell Barn     7h49m0s  for the finish
	// 55.2 km  Netmender's Gate  9h48m0s  for the finish
	// 66.2 km  Oarsmith's Bench  11h50m0s  for the finish
	// 75.7 km  Wherryfold        13h30m0s  for the finish
	// 77.9 km  Lampwright's Stair  13h59m0s  for the finish
	// 86.4 km  Finish            15h20m0s  for the finish
}

// What somebody else's schedule takes, section by section, of a runner who brakes hard on
// descents.
func ExampleFollow() {
	schedule, err := plan.Even(demoCourse(), effort.Usual(13), plan.Race{Step: field.QuickStep})
	if err != nil {
		log.Fatal(err)
	}
	f, err := field.Follow(schedule, effort.Usual(14).Set(effort.Braking, 2.5), plan.AtLandmarks)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f %% of the budget, evenly %.0f %%\n", 100*f.Budget, 100*f.Even)
	hardest := schedule.Splits(plan.AtLandmarks)[f.Hardest]
	fmt.Printf("hardest on the way to %s, at %.2f\n", hardest.Landmark.Name, f.Intensity)
	// Output:
	// 123 % of the budget, evenly 110 %
	// hardest on the way to Pennyoar Green, at 0.95
}
