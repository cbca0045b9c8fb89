package weather

import (
	"math"
	"testing"
)

// magnus is the saturation vapour pressure over water, hPa, of WMO-No. 8, from memory: not
// the one that the package uses.
func magnus(t float64) float64 { return 6.112 * math.Exp(17.62*t/(243.12+t)) }

// mixing is the mass of vapour to dry air at a vapour and an air pressure, hPa.
func mixing(e, pressure float64) float64 { return 0.622 * e / (pressure - e) }

// adiabatic is the temperature of adiabatic saturation over water, °C: heat that the air
// gives off evaporates the water that it takes up. ASHRAE Handbook Fundamentals, chapter on
// psychrometrics, from memory.
func adiabatic(t, rh, pressure float64) float64 {
	w := mixing(rh/100*magnus(t), pressure)
	low, top := t-70, t
	for range 60 {
		mid := (low + top) / 2
		full := mixing(magnus(mid), pressure)
		if ((2501-2.326*mid)*full-1.006*(t-mid))/(2501+1.86*t-4.186*mid) > w {
			top = mid
		} else {
			low = mid
		}
	}
	return (low + top) / 2
}

// sprung is the reading of a ventilated psychrometer, °C, by Sprung's equation, textbook,
// from memory.
func sprung(t, rh float64) float64 {
	low, top := t-70, t
	for range 60 {
		mid := (low + top) / 2
		if magnus(mid)-6.62e-4*1013.25*(t-mid) > rh/100*magnus(t) {
			top = mid
		} else {
			low = mid
		}
	}
	return (low + top) / 2
}

// The references agree with each other, and one with a psychrometric chart at 1013.25 hPa,
// from memory: 13.8 °C at 20 °C and 50 %.
func TestWetBulbReferences(t *testing.T) {
	t.Parallel()
	near(t, "adiabatic, 20 °C 50 %", adiabatic(20, 50, 1013.25), 13.8, 0.05)
	near(t, "saturated", adiabatic(25, 100, 1013.25), 25, 1e-6)
	for temperature := 0.0; temperature <= 35; temperature += 5 {
		for humidity := 10.0; humidity <= 100; humidity += 10 {
			near(t, "sprung", sprung(temperature, humidity), adiabatic(temperature, humidity, 1013.25), 0.2)
		}
	}
}

// errors returns the least and the greatest error of WetBulb over a region of °C and %.
func errors(inRegion func(temperature, humidity float64) bool) (low, top float64) {
	for temperature := MinTemperature; temperature <= MaxTemperature; temperature += 0.5 {
		for humidity := 0.0; humidity <= 100; humidity++ {
			if inRegion(temperature, humidity) {
				e := WetBulb(temperature, humidity) - adiabatic(temperature, humidity, 1013.25)
				low, top = math.Min(low, e), math.Max(top, e)
			}
		}
	}
	return low, top
}

// The errors that the comment of WetBulb states, to their last digit. The source states
// −1 to +0.65 °C where we find −1.17 to +1.12; why is not known to us, and its formula is
// taken as it stands.
func TestWetBulbErrors(t *testing.T) {
	t.Parallel()
	low, top := errors(fitted)
	near(t, "fitted, too cold", low, -1.2, 0.05)
	near(t, "fitted, too warm", top, 1.15, 0.05)
	low, top = errors(func(t, rh float64) bool { return t >= 0 && t <= 35 && rh >= 20 })
	near(t, "running weather, too cold", low, -0.7, 0.05)
	near(t, "running weather, too warm", top, 0.65, 0.05)
	low, top = errors(func(float64, float64) bool { return true })
	near(t, "all, too cold", low, -1.3, 0.05)
	near(t, "all, too warm", top, 3.65, 0.05)
}

// fitted reports whether WetBulb was fitted at a temperature and humidity.
func fitted(temperature, humidity float64) bool {
	return inside(temperature, -20, 50) && inside(humidity, 5, 99) && humidity >= 27.7-2.27*temperature
}

// At 2000 m the wet bulb is colder than at sea level, by as much as the comment says.
func TestWetBulbInThinAir(t *testing.T) {
	t.Parallel()
	for temperature := 0.0; temperature <= 35; temperature += 5 {
		for humidity := 20.0; humidity <= 100; humidity += 20 {
			colder := adiabatic(temperature, humidity, 1013.25) - adiabatic(temperature, humidity, StandardPressure(2000))
			if colder < -1e-9 || colder > 1.3 {
				t.Errorf("%g °C, %g %%: %g °C colder", temperature, humidity, colder)
			}
		}
	}
}
