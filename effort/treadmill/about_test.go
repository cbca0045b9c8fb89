package treadmill_test

import (
	"fmt"
	"slices"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/treadmill"
)

// What a curve rests on, for a report.
func ExampleCurve_About() {
	points := on(gradients2002, effort.RunningCost)
	points[0].Speed, points[1].Speed, points[5].Speed = 2.5, 3.5, 2.2
	curve, err := treadmill.Fit(points, treadmill.Options{Name: "session 3", Population: "one runner"})
	if err != nil {
		fmt.Println(err)
		return
	}
	a := curve.About()
	fmt.Println(a.Name+",", a.Population, a.Gradient, a.Speed)
	fmt.Println(a.Source)
	// Output:
	// session 3, one runner [-0.45 0.45] [2.2 3.5]
	// polynomial of degree 5 by weighted least squares, 13 points on 13 gradients
}

// A ramp with a gradient of its own for each sample is fitted without leaving each out.
func TestManyGradients(t *testing.T) {
	t.Parallel()
	var ramp []float64
	for k := range 3000 {
		ramp = append(ramp, float64(k-1000)*0.0002)
	}
	c := mustFit(t, on(ramp, effort.RunningCost), treadmill.Options{})
	near(t, "cost", c.PerMetre(0.2), effort.RunningCost(0.2), 1e-12)
	if !slices.ContainsFunc(c.Warnings(), contains("more than 1000 gradients")) {
		t.Error(c.Warnings())
	}
}
