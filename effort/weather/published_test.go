package weather

import (
	"math"
	"testing"
)

// near fails unless got is within tolerance of want. NaN is never near.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

// IAPWS steam tables, from memory, in hPa. The formula is 0.1 to 0.6 % below them, as its
// comment says.
func TestVapourPressureAgainstSteamTables(t *testing.T) {
	t.Parallel()
	for temperature, table := range map[float64]float64{0.01: 6.117, 10: 12.28, 20: 23.39, 30: 42.47, 40: 73.85} {
		short := 1 - VapourPressure(temperature, 100)/table
		if short < 0.001 || short > 0.006 {
			t.Errorf("%g °C: %.2f %% below the table", temperature, 100*short)
		}
	}
}

// ICAO Doc 7488, by geopotential altitude, from memory: half the last digit.
func TestStandardAtmosphere(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ altitude, kelvin, pressure, density float64 }{
		{-1000, 294.65, 1139.29, 1.34700},
		{0, 288.15, 1013.250, 1.22500},
		{1000, 281.65, 898.746, 1.11164},
		{2000, 275.15, 794.952, 1.00649},
		{3000, 268.65, 701.085, 0.90912},
		{5000, 255.65, 540.199, 0.73612},
		{11_000, 216.65, 226.32, 0.36392},
	} {
		celsius := StandardTemperature(row.altitude)
		near(t, "temperature", celsius+273.15, row.kelvin, 1e-9)
		pressureDigit := 0.0005
		if row.altitude < 0 || row.altitude > 5000 { // two decimals remembered
			pressureDigit = 0.005
		}
		near(t, "pressure", StandardPressure(row.altitude), row.pressure, pressureDigit)
		near(t, "density", AirDensity(row.altitude, celsius), row.density, 0.000005)
	}
	near(t, "at sea level", AirDensity(0, 15), StandardDensity, 1e-6)
}

// U.S. Standard Atmosphere 1976, which is the same up to here, by geometric altitude, from
// memory: half the last digit. Without Geopotential each pressure would miss it.
func TestGeopotential(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ geometric, pressure, density float64 }{
		{1000, 898.76, 1.1117},
		{2000, 795.01, 1.0066},
		{3000, 701.21, 0.90925},
		{5000, 540.48, 0.73643},
		{10_000, 265.00, 0.41351},
	} {
		h := Geopotential(row.geometric)
		digit := 0.00005
		if row.density < 1 {
			digit = 0.000005
		}
		near(t, "pressure", StandardPressure(h), row.pressure, 0.005)
		near(t, "density", AirDensity(h, StandardTemperature(h)), row.density, digit)
	}
	for geometric, difference := range map[float64]float64{2000: 0.6, 5000: 4, 11_000: 19} {
		near(t, "difference", geometric-Geopotential(geometric), difference, 0.1)
	}
}

// OIML R 111, approximation of the density of moist air, from memory, with a relative error
// of 0.0002 from 900 to 1100 hPa, 10 to 30 °C and up to 80 %. Its dry air is 0.0003 denser than
// an ideal gas of the standard atmosphere's constant (0.34848 against 0.34837).
func TestHumidAirDensityAgainstMetrology(t *testing.T) {
	t.Parallel()
	for altitude := 0.0; altitude <= 900; altitude += 300 {
		for temperature := 10.0; temperature <= 30; temperature += 5 {
			for humidity := 0.0; humidity <= 80; humidity += 20 {
				p := StandardPressure(altitude)
				want := (0.34848*p - 0.009*humidity*math.Exp(0.061*temperature)) / (273.15 + temperature)
				near(t, "ratio", HumidAirDensity(altitude, temperature, humidity)/want, 1, 0.0002+0.0003)
			}
		}
	}
	near(t, "lighter at 15 °C", 1-HumidAirDensity(0, 15, 100)/AirDensity(0, 15), 0.006, 0.0005)
	near(t, "lighter at 30 °C", 1-HumidAirDensity(0, 30, 100)/AirDensity(0, 30), 0.016, 0.0005)
}

// Wehrlin & Hallén 2006, from memory: the two means' rounding, 66 and 55 ml/(kg min), is
// wider than the line's distance from them.
func TestWehrlinHallen(t *testing.T) {
	t.Parallel()
	got := WehrlinHallen(2800)
	if got < 54.5/66.5 || got > 55.5/65.5 {
		t.Errorf("%g of the uptake left at 2800 m", got)
	}
	for altitude, left := range map[float64]float64{MinAltitude: 1, 0: 1, 300: 1, 1300: 0.937, 2300: 0.874, MaxAltitude: 0.326} {
		near(t, "left", WehrlinHallen(altitude), left, 0.0005)
	}
}

// ISO 7243, from memory: the weights add up to 1, the wet bulb counts most.
func TestISO7243(t *testing.T) {
	t.Parallel()
	near(t, "all alike", ISO7243(25, 25, 25), 25, 1e-12)
	near(t, "all alike in shade", ISO7243Shade(25, 25), 25, 1e-12)
	near(t, "globe as air", ISO7243(18, 25, 25), ISO7243Shade(18, 25), 1e-12)
}
