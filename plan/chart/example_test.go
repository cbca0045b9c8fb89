package chart_test

import (
	"bytes"
	"fmt"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/chart"
)

func hill() (*plan.Plan, error) {
	c, err := course.New([]float64{0, 4000, 8000, 12_000}, []float64{50, 50, 290, 50}, course.Options{
		Name:      "Lanternfell Round",
		Landmarks: []course.Landmark{{Name: "Lanternfell", Distance: 8000, Kind: course.Top}},
	})
	if err != nil {
		return nil, err
	}
	return plan.Even(c, effort.Usual(13), plan.Race{Goal: 75 * time.Minute})
}

// A profile at A4, for the printer.
func ExampleProfile() {
	p, err := hill()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := chart.Profile(p, chart.Options{Width: 297, Height: 210})
	if err != nil {
		fmt.Println(err)
		return
	}
	var svg, png bytes.Buffer
	if err := f.SVG(&svg); err != nil {
		fmt.Println(err)
	}
	if err := f.PNG(&png, 300); err != nil {
		fmt.Println(err)
	}
	fmt.Println(bytes.Contains(svg.Bytes(), []byte("Lanternfell Round: profile and target times")))
	fmt.Printf("%q\n", png.Bytes()[1:4])
	// Output:
	// true
	// "PNG"
}

// In another language, with a comma in numbers.
func ExampleWords() {
	w := chart.Words{Decimal: ",", Run: "Lauf", Walk: "Gehen", Top: "Gipfel", ProfileTitle: "{course}: Profil und Zielzeiten"}
	p, err := hill()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := chart.Profile(p, chart.Options{Words: w})
	if err != nil {
		fmt.Println(err)
		return
	}
	var svg bytes.Buffer
	if err := f.SVG(&svg); err != nil {
		fmt.Println(err)
	}
	fmt.Println(bytes.Contains(svg.Bytes(), []byte("Lanternfell Round: Profil und Zielzeiten")))
	fmt.Println(bytes.Contains(svg.Bytes(), []byte("8,0 km")))
	// Output:
	// true
	// true
}
