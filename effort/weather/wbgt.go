package weather

import "math"

// WBGT returns the wet bulb globe temperature outdoors by day, °C, from air temperature
// and humidity alone:
//
//	0.567 Ta + 0.393 e + 3.94
//
// where e is VapourPressure. Moderate sun and light wind are assumed: it is too high at
// night, under cloud, in shade and in wind, and may be too low in strong sun without wind.
// For the night and shade use ShadeWBGT, where a globe was measured ISO7243. It takes what
// VapourPressure takes and gives NaN outside; in frost it means little, the natural wet
// bulb being iced.
//
// Source: Australian Bureau of Meteorology, "Thermal comfort observations", from memory; the
// Bureau traces it to the American College of Sports Medicine 1984, from memory too.
func WBGT(temperature, humidity float64) float64 {
	return 0.567*temperature + 0.393*VapourPressure(temperature, humidity) + 3.94
}

// WBGTSlopes returns the derivatives of WBGT by temperature, °C per °C, and by humidity,
// °C per %. They are exact, and NaN where WBGT is.
func WBGTSlopes(temperature, humidity float64) (byTemperature, byHumidity float64) {
	if !airy(temperature, humidity) {
		return math.NaN(), math.NaN()
	}
	full := saturation(temperature)
	byTemperature = 0.567 + 0.393*humidity/100*full*saturationGrowth(temperature)
	return byTemperature, 0.393 / 100 * full
}

// ShadeWBGT returns the wet bulb globe temperature at night or in shade, °C:
//
//	0.7 Tw + 0.3 Ta
//
// with Tw from WetBulb. It is ISO7243Shade with two approximations: the globe is as warm
// as the air, and the psychrometric wet bulb of a ventilated thermometer stands for the
// natural one, which is the warmer of the two in still air. So it is too low near walls and
// ground that still give off the day's heat and where no air moves, and never to be used
// for a course in the sun. It takes what WetBulb takes, has 0.7 times its error, and gives
// NaN outside.
func ShadeWBGT(temperature, humidity float64) float64 {
	return 0.7*WetBulb(temperature, humidity) + 0.3*temperature
}

// ShadeWBGTSlopes returns the derivatives of ShadeWBGT by temperature, °C per °C, and by
// humidity, °C per %. They are exact, see WetBulb for where they jump, and NaN where
// ShadeWBGT is.
func ShadeWBGTSlopes(temperature, humidity float64) (byTemperature, byHumidity float64) {
	byTemperature, byHumidity = wetBulbSlopes(temperature, humidity)
	return 0.7*byTemperature + 0.3, 0.7 * byHumidity
}

// ISO7243 returns the wet bulb globe temperature outdoors in the sun, °C, from measured
// temperatures of the natural wet bulb, the black globe and the air:
//
//	0.7 Tnw + 0.2 Tg + 0.1 Ta
//
// The wet bulb and the air must be within MinTemperature and MaxTemperature, the globe
// within MinTemperature and 100 °C, else the result is NaN.
//
// Source: ISO 7243, from memory.
func ISO7243(naturalWetBulb, globe, air float64) float64 {
	if !inside(air, MinTemperature, MaxTemperature) || !measured(naturalWetBulb, globe) {
		return math.NaN()
	}
	return 0.7*naturalWetBulb + 0.2*globe + 0.1*air
}

// ISO7243Shade returns the wet bulb globe temperature indoors and outdoors without sun, °C:
//
//	0.7 Tnw + 0.3 Tg
//
// Domain and source as for ISO7243.
func ISO7243Shade(naturalWetBulb, globe float64) float64 {
	if !measured(naturalWetBulb, globe) {
		return math.NaN()
	}
	return 0.7*naturalWetBulb + 0.3*globe
}

// measured reports whether the two thermometers of ISO 7243 may show these temperatures.
func measured(naturalWetBulb, globe float64) bool {
	return inside(naturalWetBulb, MinTemperature, MaxTemperature) && inside(globe, MinTemperature, 100)
}
