package weather

import (
	"math"
	"strings"
	"testing"
)

// A formula is a function of the package under its name, with arguments that it takes.
type formula struct {
	name string
	call func(x []float64) []float64
	good []float64
	bad  [][2]float64 // by argument, one value below and one above the domain; NaN if none
}

func one(y float64) []float64    { return []float64{y} }
func two(y, z float64) []float64 { return []float64{y, z} }

// formulas returns all of them.
func formulas() []formula {
	nan := math.NaN()
	cold, dry, deep := [2]float64{-60.01, 60.01}, [2]float64{-0.01, 100.01}, [2]float64{-5000.1, 11_000.1}
	air := [][2]float64{cold, dry}
	return []formula{
		{"VapourPressure", func(x []float64) []float64 { return one(VapourPressure(x[0], x[1])) }, []float64{20, 50}, air},
		{"WetBulb", func(x []float64) []float64 { return one(WetBulb(x[0], x[1])) }, []float64{20, 50}, air},
		{"WBGT", func(x []float64) []float64 { return one(WBGT(x[0], x[1])) }, []float64{20, 50}, air},
		{"WBGTSlopes", func(x []float64) []float64 { return two(WBGTSlopes(x[0], x[1])) }, []float64{20, 50}, air},
		{"ShadeWBGT", func(x []float64) []float64 { return one(ShadeWBGT(x[0], x[1])) }, []float64{20, 50}, air},
		{"ShadeWBGTSlopes", func(x []float64) []float64 { return two(ShadeWBGTSlopes(x[0], x[1])) }, []float64{20, 50}, air},
		{"ISO7243", func(x []float64) []float64 { return one(ISO7243(x[0], x[1], x[2])) }, []float64{20, 40, 25}, [][2]float64{cold, {-60.01, 100.01}, cold}},
		{"ISO7243Shade", func(x []float64) []float64 { return one(ISO7243Shade(x[0], x[1])) }, []float64{20, 40}, [][2]float64{cold, {-60.01, 100.01}}},
		{"StandardTemperature", func(x []float64) []float64 { return one(StandardTemperature(x[0])) }, []float64{1000}, [][2]float64{deep}},
		{"StandardPressure", func(x []float64) []float64 { return one(StandardPressure(x[0])) }, []float64{1000}, [][2]float64{deep}},
		{"Geopotential", func(x []float64) []float64 { return one(Geopotential(x[0])) }, []float64{1000}, [][2]float64{deep}},
		{"AirDensity", func(x []float64) []float64 { return one(AirDensity(x[0], x[1])) }, []float64{1000, 20}, [][2]float64{deep, cold}},
		{"HumidAirDensity", func(x []float64) []float64 { return one(HumidAirDensity(x[0], x[1], x[2])) }, []float64{1000, 20, 50}, [][2]float64{deep, cold, dry}},
		{"WehrlinHallen", func(x []float64) []float64 { return one(WehrlinHallen(x[0])) }, []float64{1000}, [][2]float64{deep}},
		{"WindComponents", func(x []float64) []float64 { return two(WindComponents(x[0], x[1], x[2])) }, []float64{5, 200, 30}, [][2]float64{{-0.01, 150.1}, {nan, nan}, {nan, nan}}},
		{"WindAtHeight", func(x []float64) []float64 { return one(WindAtHeight(x[0], x[1], x[2], x[3])) }, []float64{5, 1.5, 10, 0.03}, [][2]float64{{-150.1, 150.1}, {-0.01, 200.1}, {0.03, 200.1}, {0.99e-6, 10}}},
	}
}

// NaN, infinities and what is just outside the domain give NaN, in each argument.
func TestOutsideIsNaN(t *testing.T) {
	t.Parallel()
	for _, f := range formulas() {
		for _, y := range f.call(f.good) {
			if math.IsNaN(y) || math.IsInf(y, 0) {
				t.Errorf("%s%g is %g", f.name, f.good, y)
			}
		}
		for i := range f.good {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), f.bad[i][0], f.bad[i][1]} {
				x := append([]float64(nil), f.good...)
				x[i] = bad
				for _, y := range f.call(x) {
					if !math.IsNaN(y) {
						t.Errorf("%s%g is %g, not NaN", f.name, x, y)
					}
				}
			}
		}
	}
}

// The bounds themselves are inside.
func TestBoundsAreInside(t *testing.T) {
	t.Parallel()
	for _, temperature := range []float64{MinTemperature, MaxTemperature} {
		for _, humidity := range []float64{0, 100} {
			for _, altitude := range []float64{MinAltitude, MaxAltitude} {
				if !(HumidAirDensity(altitude, temperature, humidity) > 0) {
					t.Errorf("density at %g m, %g °C, %g %%", altitude, temperature, humidity)
				}
			}
			if math.IsNaN(WBGT(temperature, humidity)) || math.IsNaN(ShadeWBGT(temperature, humidity)) {
				t.Errorf("WBGT at %g °C, %g %%", temperature, humidity)
			}
		}
	}
}

// Whatever the arguments, the results are finite or NaN, and nothing panics.
func FuzzFormulas(f *testing.F) {
	f.Add(20.0, 50.0, 25.0, 0.03)
	f.Add(1e308, -1e308, 5e-324, math.Inf(1))
	f.Add(150.0, 200.0, 1e-9, 9.99e-10)
	f.Fuzz(func(t *testing.T, a, b, c, d float64) {
		for _, formula := range formulas() {
			for _, y := range formula.call([]float64{a, b, c, d}) {
				if math.IsInf(y, 0) {
					t.Errorf("%s(%g, %g, %g, %g) is %g", formula.name, a, b, c, d, y)
				}
			}
		}
	})
}

var sink float64

// Not parallel: AllocsPerRun counts for the whole program.
func TestNoAllocations(t *testing.T) {
	n := testing.AllocsPerRun(10, func() {
		a, b := WBGTSlopes(20, 50)
		c, d := ShadeWBGTSlopes(20, 50)
		e, f := WindComponents(5, 200, 30)
		sink = a + b + c + d + e + f + WBGT(20, 50) + ShadeWBGT(20, 50) + ISO7243(20, 40, 25) +
			ISO7243Shade(20, 40) + StandardTemperature(1000) + AirDensity(Geopotential(1000), 20) +
			HumidAirDensity(1000, 20, 50) + WehrlinHallen(1000) + WindAtHeight(5, 1.5, 10, 0.03)
	})
	if n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// What a caution about heat must not leave out.
func TestHeatCaution(t *testing.T) {
	t.Parallel()
	for _, word := range []string{"slow", "stop", "dizzy", "confused", "emergency", "medical team", "local rules", "doctor", "safe"} {
		if !strings.Contains(HeatCaution, word) {
			t.Errorf("no word of %q", word)
		}
	}
}
