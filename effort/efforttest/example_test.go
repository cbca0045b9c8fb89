package efforttest_test

import (
	"fmt"

	"isoeffort.example/effort/efforttest"
)

// Own is a curve of one's own: a Power method is all it takes. This runner pays 3.8 J/kg
// for a metre on the level, 4 % more for each per cent up and 2 % less for each per cent
// down to −20 %, beyond which the cost is held.
type Own struct{}

func (Own) Power(speed, gradient float64) float64 {
	switch {
	case gradient >= 0.5:
		gradient = 0.5
	case gradient >= 0:
	case gradient < -0.2:
		gradient = -0.1
	default: // NaN comes here too and goes through
		gradient /= 2
	}
	return speed * 3.8 * (1 + 4*gradient)
}

// A curve of one's own that obeys the laws from −20 to 50 %.
func Example() {
	d := efforttest.Domain{Gradient: [2]float64{-0.2, 0.5}, Speed: [2]float64{0.5, 6}}
	fmt.Println(len(efforttest.Violations(Own{}, d)), "violations")
	// Output: 0 violations
}

// Forgetful is a curve whose author forgot the descents.
type Forgetful struct{}

func (Forgetful) Power(speed, gradient float64) float64 { return speed * (3.75 + 20*gradient) }

// A curve that breaks laws, and where.
func ExampleViolations() {
	d := efforttest.Domain{Gradient: [2]float64{-0.25, 0.25}, Speed: [2]float64{1, 5}}
	for _, v := range efforttest.Violations(Forgetful{}, d) {
		fmt.Println(v)
	}
	// Output:
	// efforttest: positive: at 1 m/s on a gradient of -0.25: -1.25 W/kg
	// efforttest: increasing in speed: at 1.0625 m/s on a gradient of -0.25: -1.328125 W/kg, and -1.25 at 1 m/s
	// efforttest: finite or NaN outside: at 1 m/s on a gradient of -1.7976931348623157e+308: -Inf W/kg
}
