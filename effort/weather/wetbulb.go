package weather

import "math"

// WetBulb returns the psychrometric wet bulb temperature at 1013.25 hPa, °C, from the air
// temperature T in °C and the relative humidity RH in %:
//
//	T atan(0.151977 (RH + 8.313659)^½) + atan(T + RH) − atan(RH − 1.676331)
//	  + 0.00391838 RH^(3/2) atan(0.023101 RH) − 4.686035
//
// and T where that is more, since no wet bulb is warmer than the air [Our own].
//
// It was fitted for T in [−20, 50] and RH in [5, 99], except where it is both dry and
// cold, about RH < 27.7 − 2.27 T. The source states errors of −1 to +0.65 °C. Against the
// temperature of adiabatic saturation over water we find −1.2 to +1.15 °C there, the
// most at 50 °C and 26 %, and −0.7 to +0.65 °C for T in [0, 35] and RH in [20, 100].
//
// Outside the fitted range it goes on for T within MinTemperature and MaxTemperature and
// RH within 0 and 100, at up to 3.7 °C too warm and 1.3 °C too cold; there it may fall
// as humidity grows. Beyond that it is NaN. In thinner air the wet bulb is colder: at
// 2000 m by up to 1.3 °C if RH is 20 or more, most in dry air. The derivatives jump where it
// meets T: in dry cold, and close to saturation above 18 °C.
//
// Source: Stull 2011, J Appl Meteor Climatol 50:2267, doi:10.1175/JAMC-D-11-0143.1, from
// memory; it gives the 13.7 °C of the source's own example.
func WetBulb(temperature, humidity float64) float64 {
	if !airy(temperature, humidity) {
		return math.NaN()
	}
	return math.Min(stull(temperature, humidity), temperature)
}

// stull is the formula of WetBulb without the bound.
func stull(t, rh float64) float64 {
	return t*math.Atan(0.151977*math.Sqrt(rh+8.313659)) +
		math.Atan(t+rh) - math.Atan(rh-1.676331) +
		0.00391838*rh*math.Sqrt(rh)*math.Atan(0.023101*rh) - 4.686035
}

// wetBulbSlopes returns the derivatives of WetBulb by temperature and by humidity.
func wetBulbSlopes(t, rh float64) (byTemperature, byHumidity float64) {
	if !airy(t, rh) {
		return math.NaN(), math.NaN()
	}
	if stull(t, rh) >= t {
		return 1, 0
	}
	root := math.Sqrt(rh + 8.313659)
	byTemperature = math.Atan(0.151977*root) + bell(t+rh)
	byHumidity = t*0.151977/(2*root)*bell(0.151977*root) +
		bell(t+rh) - bell(rh-1.676331) +
		0.00391838*math.Sqrt(rh)*(1.5*math.Atan(0.023101*rh)+0.023101*rh*bell(0.023101*rh))
	return byTemperature, byHumidity
}

// bell is the derivative of the arc tangent.
func bell(x float64) float64 { return 1 / (1 + x*x) }
