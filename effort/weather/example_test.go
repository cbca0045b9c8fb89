package weather_test

import (
	"fmt"

	"isoeffort.example/effort/weather"
)

// Stull 2011, the worked example of the abstract, from memory: at 20 °C and 50 % the wet bulb
// is at 13.7 °C.
func ExampleWetBulb() {
	fmt.Printf("%.1f\n", weather.WetBulb(20, 50))
	// Output: 13.7
}

// Australian Bureau of Meteorology, the formula from memory. The digits are computed from
// it by hand: e is 11.66 hPa, so 11.34 + 4.58 + 3.94, and 25.37, so 17.01 + 9.97 + 3.94.
func ExampleWBGT() {
	fmt.Printf("%.2f\n", weather.WBGT(20, 50))
	fmt.Printf("%.2f\n", weather.WBGT(30, 60))
	// Output:
	// 19.86
	// 30.92
}

// The same air at night, by the wet bulb of Stull 2011: 0.7 · 13.7 + 0.3 · 20.
func ExampleShadeWBGT() {
	fmt.Printf("%.1f\n", weather.ShadeWBGT(20, 50))
	// Output: 15.6
}

// ISO 7243, the weights from memory: 15.4 + 8 + 3, and 15.4 + 12.
func ExampleISO7243() {
	fmt.Printf("%.1f\n", weather.ISO7243(22, 40, 30))
	fmt.Printf("%.1f\n", weather.ISO7243Shade(22, 40))
	// Output:
	// 26.4
	// 27.4
}

// ICAO Doc 7488, table by geopotential altitude, from memory: °C, hPa and kg/m³.
func ExampleStandardPressure() {
	for _, h := range []float64{0, 1000, 2000, 3000, 5000} {
		t := weather.StandardTemperature(h)
		fmt.Printf("%4.0f m %5.1f %8.3f %.4f\n", h, t, weather.StandardPressure(h), weather.AirDensity(h, t))
	}
	// Output:
	//    0 m  15.0 1013.250 1.2250
	// 1000 m   8.5  898.746 1.1116
	// 2000 m   2.0  794.952 1.0065
	// 3000 m  -4.5  701.085 0.9091
	// 5000 m -17.5  540.199 0.7361
}

// Wehrlin & Hallén 2006, from memory: 66 ml/(kg min) at 300 m were 55 at 2800 m. The line
// through all their altitudes gives 55.6 from 66.
func ExampleWehrlinHallen() {
	fmt.Printf("%.1f\n", 66*weather.WehrlinHallen(2800))
	// Output: 55.6
}

// FAO Irrigation and Drainage Paper 56, Annex 2, from memory: clipped grass of 0.12 m
// moves the zero of height up by 0.08 m and has a roughness length of 0.0148 m, and the
// wind at 2 m is 0.748 of that at 10 m.
func ExampleWindAtHeight() {
	const zero = 0.08
	fmt.Printf("%.3f\n", weather.WindAtHeight(1, 2-zero, 10-zero, 0.123*0.12))
	// Output: 0.748
}

// Any textbook: a west wind of 5 m/s is behind a runner who goes east, and against, from
// the left, one who goes north-west.
func ExampleWindComponents() {
	head, cross := weather.WindComponents(5, 270, 90)
	fmt.Printf("%.2f %.2f\n", head, cross)
	head, cross = weather.WindComponents(5, 270, 315)
	fmt.Printf("%.2f %.2f\n", head, cross)
	// Output:
	// -5.00 0.00
	// 3.54 -3.54
}
