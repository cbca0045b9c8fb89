package effort_test

import (
	"fmt"
	"log"
	"math"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/curve"
	"isoeffort.example/effort/weather"
)

// Where a runner with an endurance exponent of 0.1 changes gait, by gradient: the power,
// the speeds on either side, and between which powers either gait is fine, the price of a
// metre being within 3 % of the same.
func ExampleSlope_Transition() {
	for _, gradient := range []float64{-0.15, 0, 0.05, 0.1, 0.2, 0.3} {
		s, err := effort.NewSlope(effort.Usual(12), gradient, effort.Surroundings{})
		if err != nil {
			log.Fatal(err)
		}
		t, _ := s.Transition()
		low, top, _ := s.Band(0.03)
		fmt.Printf("%+3.0f %%: %5.2f W/kg, walks %.2f, runs %.2f m/s; either from %.1f to %.1f W/kg\n",
			100*gradient, t.Power, t.Walk.Speed, t.Run.Speed, low, top)
	}
	// Output:
	// -15 %:  6.35 W/kg, walks 1.80, runs 1.93 m/s; either from 6.0 to 6.6 W/kg
	//  +0 %:  7.18 W/kg, walks 1.80, runs 1.99 m/s; either from 7.0 to 7.4 W/kg
	//  +5 %:  9.18 W/kg, walks 1.80, runs 1.96 m/s; either from 8.8 to 9.5 W/kg
	// +10 %: 10.25 W/kg, walks 1.72, runs 1.72 m/s; either from 9.3 to 11.4 W/kg
	// +20 %: 13.51 W/kg, walks 1.48, runs 1.50 m/s; either from 0.0 to 14.9 W/kg
	// +30 %: 19.22 W/kg, walks 1.53, runs 1.53 m/s; either from 0.0 to 23.2 W/kg
}

// What a power buys, gait by the rule.
func ExampleMove() {
	for _, gradient := range []float64{-0.1, 0, 0.1, 0.2} {
		gait, stride, err := effort.Move(effort.Usual(12), gradient, 10, effort.Surroundings{})
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%+3.0f %%: %v at %.2f m/s\n", 100*gradient, gait, stride.Speed)
	}
	_, _, err := effort.Move(effort.Usual(12), math.Inf(1), 10, effort.Surroundings{})
	fmt.Println(err)
	// Output:
	// -10 %: run at 3.20 m/s
	//  +0 %: run at 2.78 m/s
	// +10 %: walk at 1.69 m/s
	// +20 %: walk at 1.12 m/s
	// effort: gradient out of range: +Inf is not within ±3
}

// The same hilly hour by other curves: the model's, and walking by Pandolf and others with
// Santee's correction.
func ExampleCurves() {
	c := rolling()
	for _, k := range []struct {
		name   string
		curves effort.Curves
	}{
		{"the model's", effort.Curves{}},
		{"walking by Pandolf and Santee", effort.Curves{Walk: curve.PandolfSantee{}}},
		{"running by ACSM", effort.Curves{Run: curve.ACSMRunning{}}},
	} {
		g, err := k.curves.Ground(c, 0)
		if err != nil {
			log.Fatal(err)
		}
		in, err := effort.NewIntegrator(g, effort.Usual(9), effort.Surroundings{})
		if err != nil {
			log.Fatal(err)
		}
		f, err := in.Fastest(nil)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %v\n", k.name, effort.Seconds(f.Moving).Round(time.Second))
	}
	// Output:
	// the model's: 5h22m34s
	// walking by Pandolf and Santee: 5h14m29s
	// running by ACSM: 5h40m9s
}

// What if: a summer's day for someone who has 11 W/kg, on 30 km of hills.
func ExampleSensitivity() {
	day, err := effort.NewDay([]effort.Hour{
		{Clock: 6 * time.Hour, Temperature: 14, Humidity: 85},
		{Clock: 14 * time.Hour, Temperature: 28, Humidity: 45},
		{Clock: 20 * time.Hour, Temperature: 22, Humidity: 60},
	}, effort.Night{})
	if err != nil {
		log.Fatal(err)
	}
	a := effort.Usual(11)
	a.Mass, a.Load = 65, 3
	g, err := effort.NewGround(rolling(), 0)
	if err != nil {
		log.Fatal(err)
	}
	in, err := effort.NewIntegrator(g, a, effort.Surroundings{
		Drag:     effort.DefaultDrag,
		Altitude: effort.Altitude{Loss: effort.AltitudeLoss},
		Heat:     effort.Heat{Loss: effort.HeatLoss, Growth: 1, Expected: 5 * time.Hour},
		Day:      day, Start: 9 * time.Hour,
	})
	if err != nil {
		log.Fatal(err)
	}
	f, err := in.Fastest(nil)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("fastest:", effort.Seconds(f.Moving).Round(time.Second))
	for _, l := range []effort.Lever{effort.ByHourPower, effort.ByLoad, effort.ByHeadWind, effort.ByTemperature} {
		fmt.Printf("%v: %+.1f s for one more %s\n", l, f.ByLever[l], l.Unit())
	}
	fmt.Println(strings.SplitAfter(weather.HeatCaution, ". ")[0])
	// Output:
	// fastest: 5h4m25s
	// hour power: -1768.2 s for one more W/kg
	// load: +283.9 s for one more kg
	// head wind: +143.9 s for one more m/s
	// temperature: +150.0 s for one more °C
	// Heat can make you gravely ill, at any pace and however fit you are.
}

// rolling is 30 km of hills.
func rolling() *course.Course {
	var x, z []float64
	for d := 0.0; d <= 30_000; d += 10 {
		x, z = append(x, d), append(z, 700+150*math.Sin(d/900))
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		log.Fatal(err)
	}
	return c
}
