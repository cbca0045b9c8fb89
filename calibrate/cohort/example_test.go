package cohort_test

import (
	"context"
	"fmt"
	"math/rand/v2"

	"isoeffort.example/calibrate/cohort"
	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort"
)

// A field's results give the prior for one more runner, and what a course does beside its
// profile.
func Example() {
	results, truth := invented.Field{Runners: 120, Courses: 30, Results: 1500}.Make(rand.New(rand.NewPCG(3, 1)))
	m, err := cohort.Fit(context.Background(), results, cohort.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	prior := m.Population.Prior[effort.HourPower]
	fmt.Printf("hour power %.0f W/kg, its logarithm's SD %.1f\n", prior.Median, prior.LogSD)
	slow, fast := "", ""
	for name, effect := range truth.Course {
		if c, ok := m.Course(name); !ok || c.Results < 20 {
			continue
		}
		if slow == "" || effect > truth.Course[slow] {
			slow = name
		}
		if fast == "" || effect < truth.Course[fast] {
			fast = name
		}
	}
	a, _ := m.Course(slow)
	b, _ := m.Course(fast)
	fmt.Println("the slowest course is found slower than the fastest:", a.Effect-a.SD > b.Effect+b.SD)
	// Output:
	// hour power 11 W/kg, its logarithm's SD 0.2
	// the slowest course is found slower than the fastest: true
}

// A course without results is foretold by its kind, a runner without by the population.
func ExampleModel_Forecast() {
	results, _ := invented.Field{Runners: 120, Courses: 30, Results: 1500}.Make(rand.New(rand.NewPCG(3, 1)))
	m, err := cohort.Fit(context.Background(), results, cohort.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	next := results[len(results)-1]
	next.Race, next.Course = "a new race", ""
	known, err := m.Forecast(next)
	if err != nil {
		fmt.Println(err)
		return
	}
	next.Runner = "a new runner"
	unknown, err := m.Forecast(next)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("surer of a runner with results:", known.High-known.Low < unknown.High-unknown.Low)
	// Output: surer of a runner with results: true
}
