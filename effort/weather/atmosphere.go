package weather

import "math"

// The standard atmosphere's constants. Source: ICAO Doc 7488 and ISO 2533, from memory.
const (
	seaLevelTemperature = 15.0       // °C
	seaLevelPressure    = 1013.25    // hPa
	lapse               = 0.0065     // °C per m of geopotential altitude
	freezing            = 273.15     // K at 0 °C
	dryGas              = 287.05287  // J/(kg K), specific gas constant of dry air
	gravity             = 9.80665    // m/s²
	earthRadius         = 6_356_766. // m, nominal
	pascals             = 100        // in an hPa
)

// StandardDensity is the density of the standard atmosphere at sea level, kg/m³. Source:
// ICAO Doc 7488, from memory; it follows from the pressure and temperature there.
const StandardDensity = 1.225

// StandardTemperature returns the temperature of the standard atmosphere, °C:
// 15 − 0.0065 H at the geopotential altitude H, m, within MinAltitude and MaxAltitude, else
// NaN. See Geopotential. The weather of a day is often 15 °C off.
//
// Source: ICAO Doc 7488 and ISO 2533, from memory.
func StandardTemperature(altitude float64) float64 {
	if !inside(altitude, MinAltitude, MaxAltitude) {
		return math.NaN()
	}
	return seaLevelTemperature - lapse*altitude
}

// StandardPressure returns the pressure of the standard atmosphere, hPa, at the
// geopotential altitude H, m:
//
//	1013.25 (1 − 0.0065 H/288.15)^5.25588
//
// where the exponent is g/(R · 0.0065). Domain and source as for StandardTemperature. At
// one place the weather moves it by about 3 % either way.
func StandardPressure(altitude float64) float64 {
	if !inside(altitude, MinAltitude, MaxAltitude) {
		return math.NaN()
	}
	const kelvin = seaLevelTemperature + freezing
	return seaLevelPressure * math.Pow(1-lapse*altitude/kelvin, gravity/(dryGas*lapse))
}

// Geopotential returns the geopotential altitude, m, of a geometric altitude h above sea
// level, m: r h/(r + h) with r = 6 356 766 m. The standard atmosphere is a function of the
// former, maps and courses give the latter. The two differ by 0.6 m at 2000 m, 4 m at
// 5000 m and 19 m at 11 000 m, so for a race either will do. A geometric altitude outside
// MinAltitude to MaxAltitude gives NaN.
//
// Source: ICAO Doc 7488, from memory.
func Geopotential(geometric float64) float64 {
	if !inside(geometric, MinAltitude, MaxAltitude) {
		return math.NaN()
	}
	return earthRadius * geometric / (earthRadius + geometric)
}

// AirDensity returns the density of dry air, kg/m³, at the pressure of the standard
// atmosphere at an altitude, m, and an actual temperature, °C: p/(R T). It is NaN outside
// MinAltitude to MaxAltitude and MinTemperature to MaxTemperature. Air resistance grows in
// proportion to it, so a plan may scale a drag coefficient by AirDensity/StandardDensity.
//
// Source: the ideal gas, with the constants of ICAO Doc 7488, from memory.
func AirDensity(altitude, temperature float64) float64 {
	if !inside(temperature, MinTemperature, MaxTemperature) {
		return math.NaN()
	}
	return pascals * StandardPressure(altitude) / (dryGas * (temperature + freezing))
}

// HumidAirDensity is AirDensity for air of a relative humidity, %: (p − 0.378 e)/(R T) with e
// from VapourPressure. Vapour is lighter than air: at sea level saturated air is 0.6 %
// lighter than dry air at 15 °C and 1.6 % at 30 °C. NaN outside 0 to 100 % too.
//
// Source: any textbook of meteorology (virtual temperature); 0.378 is 1 less the ratio
// of the molar masses of water and air, 0.622.
func HumidAirDensity(altitude, temperature, humidity float64) float64 {
	e := VapourPressure(temperature, humidity)
	return pascals * (StandardPressure(altitude) - 0.378*e) / (dryGas * (temperature + freezing))
}
