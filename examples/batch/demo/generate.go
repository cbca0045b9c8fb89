//go:build ignore

// Generate writes course.csv, the profile of the invented course: go run generate.go,
// in this folder.
package main

import (
	"bufio"
	"fmt"
	"math"
	"os"
)

func main() {
	f, err := os.Create("course.csv")
	if err != nil {
		panic(err)
	}
	w := bufio.NewWriter(f)
	fmt.Fprintln(w, "distance_m,elevation_m")
	const length = 42_600
	for x := 0.0; x <= length; x += 200 {
		s := x / length
		// One ridge of 420 m over the whole, and hills of 7 to 3 km that grow smaller.
		z := 120 + 420*math.Pow(math.Sin(math.Pi*s), 2) + 70*(1-0.6*s)*(1-math.Cos(2*math.Pi*(6*s+3*s*s)))
		fmt.Fprintf(w, "%.0f,%.1f\n", x, z)
	}
	if err := w.Flush(); err != nil {
		panic(err)
	}
	if err := f.Close(); err != nil {
		panic(err)
	}
}
