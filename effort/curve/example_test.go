package curve_test

import (
	"fmt"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/curve"
)

// ACSM's Guidelines, from memory: running at 180 m/min on the level takes
// 0.2 · 180 + 3.5 = 39.5 ml/(kg min).
func ExampleACSMRunningOxygen() {
	fmt.Printf("%.1f\n", curve.ACSMRunningOxygen(180.0/60, 0))
	// Output: 39.5
}

// ACSM's Guidelines, from memory: walking at 80 m/min up 10 % takes, by hand,
// 0.1 · 80 + 1.8 · 80 · 0.10 + 3.5 = 25.9 ml/(kg min).
func ExampleACSMWalkingOxygen() {
	fmt.Printf("%.1f\n", curve.ACSMWalkingOxygen(80.0/60, 0.10))
	// Output: 25.9
}

// Pandolf et al. 1977, from memory: 1.5 + 1.5 · 1.34² W/kg without load on the level, and
// 0.35 · 1.34 · 10 more on a gradient of 10 %. Looney et al. 2019, second-hand, have 4.41
// and 8.87 there.
func ExamplePandolf_Published() {
	walker := curve.Pandolf{}
	fmt.Printf("%.2f %.2f\n", walker.Published(1.34, 0), walker.Published(1.34, 0.10))
	// Output: 4.19 8.88
}

// A load of 20 kg on 70 kg of body mass, over light brush, at 1.2 m/s: W/kg above
// standing with it, on the level, up and down 5 %. No published number: by hand, the last
// is 1.2/70 · (90 · (1.5 · 1.2² − 0.35 · 1.2 · 5) + 90 · 1.2 · 5/3.5 + 90/70 − 25 + 1.2²).
func ExamplePandolfSantee() {
	walker := curve.PandolfSantee{Load: 20, Terrain: effort.LightBrush}
	if err := walker.Check(); err != nil {
		fmt.Println(err)
	}
	for _, i := range []float64{0, 0.05, -0.05} {
		fmt.Printf("%+.2f %.2f\n", i, walker.Power(1.2, i))
	}
	// Output:
	// +0.00 3.33
	// +0.05 6.57
	// -0.05 2.36
}

// What cannot be is an error, and its power no number.
func ExamplePandolf_Check() {
	walker := curve.Pandolf{Mass: 60, Load: -5}
	fmt.Println(walker.Check())
	fmt.Println(walker.Power(1.2, 0))
	// Output:
	// curve: parameter out of range: load -5 kg is not within 0 to 60 kg
	// NaN
}

// Naismith 1892, from memory: three miles and 2000 feet of climb take two hours.
func ExampleTime() {
	const mile, foot = 1609.344, 0.3048
	hill, err := course.New([]float64{0, 3 * mile}, []float64{0, 2000 * foot}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(curve.Time(hill, curve.Naismith{}))
	// Output: 2h0m0s <nil>
}

// Tobler 1993, from memory: 6 km/h down 5 %, 5.04 on the level.
func ExampleTobler() {
	for _, i := range []float64{-0.05, 0} {
		fmt.Printf("%.2f km/h\n", 3.6*curve.Tobler{}.Speed(i))
	}
	// Output:
	// 6.00 km/h
	// 5.04 km/h
}
