package effort_test

import (
	"fmt"
	"math"

	"isoeffort.example/course"
	"isoeffort.example/effort"
)

// Minetti et al. 2002, abstract: the mean and SD of ten runners, in J/(kg m). The curve
// is within 1 SD.
func ExampleRunningCost() {
	for _, i := range []float64{0, 0.45, -0.20, -0.45} {
		fmt.Printf("%+.2f %5.2f\n", i, effort.RunningCost(i))
	}
	// Output:
	// +0.00  3.60
	// +0.45 19.43
	// -0.20  1.80
	// -0.45  4.03
}

// Looney et al. 2019, second-hand: the gross power of walking at 1.34 m/s on the level, up
// and down 10 %, in W/kg. The digits are computed from the published equation.
func ExampleWalkingPower() {
	for _, i := range []float64{0, 0.10, -0.10} {
		fmt.Printf("%.3f\n", effort.WalkingPower(1.34, i)+effort.StandingPower)
	}
	// Output:
	// 4.414
	// 8.874
	// 2.804
}

// Kay 2012, second-hand: how much faster than on the level the fastest times in hill races
// are on descents; beside it what effort power with braking makes of them. They differ by
// 2 % down to −10 %, 3 % at −20 % and 6 % at −30 %.
func ExampleBrakingCost() {
	records := map[float64]float64{-0.05: 1.134, -0.10: 1.167, -0.15: 1.086, -0.20: 0.938, -0.30: 0.646}
	for _, i := range []float64{-0.05, -0.10, -0.15, -0.20, -0.30} {
		ratio := effort.RunningCost(0) / (effort.RunningCost(i) + effort.BrakingCost(i))
		fmt.Printf("%.2f %.3f %.3f\n", i, ratio, records[i])
	}
	// Output:
	// -0.05 1.113 1.134
	// -0.10 1.151 1.167
	// -0.15 1.094 1.086
	// -0.20 0.967 0.938
	// -0.30 0.682 0.646
}

// di Prampero 1986, from memory: the power against the air at 4 m/s, in W/kg.
func ExampleAirPower() {
	fmt.Printf("%.2f\n", effort.AirPower(effort.DefaultDrag, 4, 0))
	// Output: 0.64
}

// Riegel 1981, second-hand: T2 = T1 (D2/D1)^1.06, here as an endurance exponent and back.
func ExampleRiegel() {
	k := effort.RiegelEndurance(1.06)
	fmt.Printf("%.4f %.2f %.2f\n", k, effort.Riegel(k), effort.Riegel(0.1))
	// Output: 0.0566 1.06 1.11
}

// An hour power of 14.5 W/kg is 40:00 for 10 km. Without an integrator, the same runner's
// marathon.
func ExampleAthlete_UniformTime() {
	a := effort.Usual(14.5)
	perMetre := effort.RunningCost(0)
	fmt.Println(a.UniformTime(10_000 * perMetre).Round(1e9))
	fmt.Println(a.UniformTime(42_195 * perMetre).Round(1e9))
	// Output:
	// 40m1s
	// 3h23m6s
}

// The best even effort over a ridge, and the same race as a plan for three hours.
func ExampleIntegrator_Solve() {
	ridge, err := course.New([]float64{0, 9000, 15_000, 24_000}, []float64{200, 900, 950, 200}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := effort.NewGround(ridge, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	in, err := effort.NewIntegrator(g, effort.Usual(13), effort.Surroundings{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, goal := range []float64{0, 3 * 3600} {
		s, err := in.Solve(effort.State{}, effort.Demand{Moving: goal})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("intensity %.3f, budget %.2f\n", s.Intensity, s.Finish().Spent)
		for _, x := range []float64{9000, 15_000, 24_000} {
			fmt.Printf("  %2.0f km %v\n", x/1000, effort.Seconds(math.Round(s.At(x).Moving)))
		}
	}
	// Output:
	// intensity 0.918, budget 1.00
	//    9 km 1h8m31s
	//   15 km 1h40m54s
	//   24 km 2h21m55s
	// intensity 0.713, budget 0.10
	//    9 km 1h25m39s
	//   15 km 2h7m17s
	//   24 km 3h0m0s
}

// A race known only by its totals.
func ExampleNewSummaryGround() {
	g, err := effort.NewSummaryGround(50_000, 2000, 2000)
	if err != nil {
		fmt.Println(err)
		return
	}
	in, err := effort.NewIntegrator(g, effort.Usual(12), effort.Surroundings{})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := in.Fastest(nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(effort.Seconds(f.Moving).Round(60e9))
	fmt.Printf("1 %% more hour power, %.2f %% of time\n", f.Slope[effort.HourPower])
	// Output:
	// 6h33m0s
	// 1 % more hour power, -1.06 % of time
}
