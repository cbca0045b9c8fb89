package weather

import "math"

// VapourPressure returns the pressure of the water vapour in air, hPa:
//
//	e = RH/100 · 6.105 exp(17.27 Ta/(237.7 + Ta))
//
// with Ta in °C and RH in %, for Ta within MinTemperature and MaxTemperature and RH within
// 0 and 100, else NaN. Humidity is relative to liquid water below 0 °C too, as stations
// report it. Between 0 and 40 °C the result is 0.1 to 0.6 % below steam tables.
//
// Source: the form, of Magnus's type, in the Australian Bureau of Meteorology's
// approximation of WBGT, from memory.
func VapourPressure(temperature, humidity float64) float64 {
	if !airy(temperature, humidity) {
		return math.NaN()
	}
	return humidity / 100 * saturation(temperature)
}

// saturation is VapourPressure at a humidity of 100.
func saturation(temperature float64) float64 {
	return 6.105 * math.Exp(17.27*temperature/(237.7+temperature))
}

// saturationGrowth is the derivative of saturation's logarithm by temperature.
func saturationGrowth(temperature float64) float64 {
	return 17.27 * 237.7 / ((237.7 + temperature) * (237.7 + temperature))
}
