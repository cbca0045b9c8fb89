package treadmill_test

import (
	"errors"
	"fmt"
	"strings"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

// A laboratory's morning with one runner: gradients, belt speeds and gross oxygen uptakes
// in steady state, and the uptake of standing. It becomes a curve with its errors, and the
// curve a runner's day over a hill. The measurements are invented.
func Example() {
	const standing = 4.6 // ml/(kg min)
	lab := []struct{ gradient, speed, uptake float64 }{
		{-0.30, 3.0, 24.8},
		{-0.20, 3.4, 22.7},
		{-0.10, 3.4, 26.5},
		{-0.05, 3.4, 30.7},
		{0.00, 3.4, 38.0},
		{0.05, 3.0, 43.6},
		{0.10, 2.6, 49.0},
		{0.15, 2.2, 52.0},
		{0.20, 1.9, 54.1},
		{0.30, 1.4, 55.7},
	}
	var points []treadmill.Point
	for _, m := range lab {
		cost := treadmill.NetCost(treadmill.OxygenPower(m.uptake), m.speed, treadmill.OxygenPower(standing))
		points = append(points, treadmill.Point{Gradient: m.gradient, Cost: cost, Speed: m.speed})
	}
	curve, err := treadmill.Fit(points, treadmill.Options{Degree: 4})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, i := range []float64{-0.20, 0, 0.20} {
		fmt.Printf("%+.2f %5.2f ± %.2f J/(kg m)\n", i, curve.PerMetre(i), curve.SE(i))
	}
	gradient, cost := curve.Minimum()
	fmt.Printf("least %.2f at %.3f; residual SD %.3f, %d degrees of freedom\n", cost, gradient, curve.ResidualSD(), curve.DegreesOfFreedom())
	left, err := curve.LeaveOneGradientOut()
	fmt.Printf("a gradient left out: off by %.2f inside, %v\n", left.InnerRMS, err)
	fmt.Println(curve.Faults(), curve.Warnings())

	hill, err := course.New([]float64{0, 5000, 10_000}, []float64{200, 700, 200}, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, run := range []effort.Curve{nil, curve} { // nil is the model's own
		g, err := effort.Curves{Run: run}.Ground(hill, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		in, err := effort.NewIntegrator(g, effort.Usual(14), effort.Surroundings{})
		if err != nil {
			fmt.Println(err)
			return
		}
		s, err := in.Solve(effort.State{}, effort.Demand{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(effort.Seconds(s.Finish().Moving).Round(10e9))
	}
	// Output:
	// -0.20  1.89 ± 0.06 J/(kg m)
	// +0.00  3.49 ± 0.04 J/(kg m)
	// +0.20  9.14 ± 0.05 J/(kg m)
	// least 1.87 at -0.180; residual SD 0.071, 5 degrees of freedom
	// a gradient left out: off by 0.10 inside, <nil>
	// [] []
	// 54m20s
	// 54m0s
}

// Every number of the fit: coefficients in rising powers of the gradient and their
// variances. The points lie on 3 + 20 i + 50 i², by turns 0.1 above and below. By hand, the
// second variance is 0.01524/0.28: that of the residuals, over the sum of squared gradients.
func ExampleCurve_Covariance() {
	points := []treadmill.Point{
		{Gradient: -0.3, Cost: 1.6},
		{Gradient: -0.2, Cost: 0.9},
		{Gradient: -0.1, Cost: 1.6},
		{Gradient: 0, Cost: 2.9},
		{Gradient: 0.1, Cost: 5.6},
		{Gradient: 0.2, Cost: 8.9},
		{Gradient: 0.3, Cost: 13.6},
	}
	curve, err := treadmill.Fit(points, treadmill.Options{Degree: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	covariance := curve.Covariance()
	for k, c := range curve.Coefficients() {
		fmt.Printf("%6.2f, variance %.4f\n", c, covariance.At(k, k))
	}
	fmt.Printf("condition number %.1f\n", curve.ConditionNumber())
	// Output:
	//   2.98, variance 0.0051
	//  20.00, variance 0.0544
	//  50.95, variance 1.8141
	// condition number 1.5
}

// A polynomial that bends where no cost does: the intervals, to be shown and thought about.
func ExampleCurve_Faults() {
	points := []treadmill.Point{
		{Gradient: -0.20, Cost: 2.0},
		{Gradient: -0.10, Cost: 2.3},
		{Gradient: 0, Cost: 3.4},
		{Gradient: 0.10, Cost: 7.0},
		{Gradient: 0.20, Cost: 7.2},
		{Gradient: 0.30, Cost: 13},
	}
	curve, err := treadmill.Fit(points, treadmill.Options{Degree: 5})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, fault := range curve.Faults() {
		fmt.Println(fault)
	}
	// Output:
	// cost falls away from its least between gradients of -0.1612 and -0.07044, by 1.04 J/(kg m)
	// cost falls away from its least between gradients of 0.1484 and 0.2183, by 0.469 J/(kg m)
}

// A file is refused with its line, a set of points with the reason.
func ExampleReadCSV() {
	text := "gradient,cost_j_per_kg_m\n0,3.4\n5,4.9\n"
	_, _, err := treadmill.ReadCSV(strings.NewReader(text), "lab.csv")
	fmt.Println(err)

	points, warnings, err := treadmill.ReadCSV(strings.NewReader("gradient,cost_j_per_kg_m,heart rate\n0,3.4,141\n0.05,4.6,150\n"), "lab.csv")
	fmt.Println(len(points), warnings, err)
	_, err = treadmill.Fit(points, treadmill.Options{})
	fmt.Println(err, errors.Is(err, treadmill.ErrTooFewGradients))
	// Output:
	// lab.csv:3: bad gradient: 5 is beyond ±1; 10 % is 0.10
	// 2 [lab.csv:1: column "heart rate" is not used] <nil>
	// treadmill: too few gradients: a degree of 5 needs 6 distinct ones, there are 2 true
}

// By hand: 40 ml/(kg min) are 40/60 · 20.9 = 13.9 W/kg; less 1.4 of standing, at 3.5 m/s,
// 3.58 J/(kg m).
func ExampleNetCost() {
	gross := treadmill.OxygenPower(40)
	fmt.Printf("%.1f %.2f\n", gross, treadmill.NetCost(gross, 3.5, 1.4))
	// Output: 13.9 3.58
}
