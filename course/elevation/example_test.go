package elevation_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"isoeffort.example/course/elevation"
)

// A recording of 12 km with a height every 10 m: a hill of 100 m, rounding to a metre, a
// spike, and some heights that are missing.
func ExampleClean() {
	var distance, height []float64
	chance := rand.New(rand.NewPCG(1, 2))
	for x := 0.0; x <= 12_000; x += 10 {
		distance = append(distance, x)
		height = append(height, math.Round(350-50*math.Cos(2*math.Pi*x/12_000)+chance.NormFloat64()))
	}
	height[420] += 75
	for i := 800; i < 805; i++ {
		height[i] = math.NaN()
	}
	p, err := elevation.Clean(distance, height, elevation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the sum of all rises is %.0f m, the ascent %.1f ± %.1f m\n", p.RawAscent, p.Ascent, p.AscentSD)
	fmt.Printf("noise of %.1f m\n", p.Noise.SD)
	for _, c := range p.Changes {
		fmt.Println(c.Kind, "at", c.From, "to", c.To, "m")
	}
	// Output:
	// the sum of all rises is 755 m, the ascent 100.2 ± 0.3 m
	// noise of 1.1 m
	// spike at 4200 to 4200 m
	// gap at 8000 to 8040 m
}

// A barometer that drifted by 12 m is held against three heights from a map.
func ExampleOptions_known() {
	var distance, height []float64
	for x := 0.0; x <= 10_000; x += 10 {
		distance = append(distance, x)
		height = append(height, 200+0.01*x+12*x/10_000)
	}
	p, err := elevation.Clean(distance, height, elevation.Options{Known: []elevation.Height{
		{Distance: 0, Elevation: 200},
		{Distance: 5000, Elevation: 250},
		{Distance: 10_000, Elevation: 300},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("from %.0f to %.0f m\n", p.RawAscent, p.Ascent)
	fmt.Println(p.Changes[0].Text)
	// Output:
	// from 112 to 100 m
	// 0.00 to 10.00 km: drift removed against known heights, -0.2 m at its start, 200.0 m is now 199.8 m
}

// A rolling road of 400 m ascent, recorded twice by satellite: each recording wanders by
// 2.5 m over some 60 m, which looks like hills.
func ExampleAgree() {
	record := func(seed uint64) *elevation.Profile {
		var distance, height []float64
		chance := rand.New(rand.NewPCG(seed, 7))
		off := 0.0
		for x := 0.0; x <= 20_000; x += 10 {
			distance = append(distance, x)
			height = append(height, 300-20*math.Cos(2*math.Pi*x/2000)+off)
			off = 0.85*off + 1.3*chance.NormFloat64()
		}
		p, err := elevation.Clean(distance, height, elevation.Options{})
		if err != nil {
			panic(err)
		}
		return p
	}
	first, second := record(1), record(2)
	both, err := elevation.Agree(first, second)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the first climbs %.0f m, the second %.0f m, both agree on %.0f ± %.0f m\n", first.Ascent, second.Ascent, both.Ascent, both.AscentSD)
	fmt.Printf("gradients over 100 m are off by %.1f points\n", 100*both.Gradient)
	// Output:
	// the first climbs 433 m, the second 462 m, both agree on 382 ± 36 m
	// gradients over 100 m are off by 2.5 points
}
