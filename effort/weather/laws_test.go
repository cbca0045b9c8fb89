package weather

import (
	"math"
	"testing"
)

// each calls visit for temperatures and humidities over the whole domain.
func each(visit func(temperature, humidity float64)) {
	for temperature := MinTemperature; temperature <= MaxTemperature; temperature += 2.5 {
		for humidity := 0.0; humidity <= 100; humidity += 2.5 {
			visit(temperature, humidity)
		}
	}
}

// Warmer air gives no lower wet bulb, WBGT or vapour pressure.
func TestWarmerIsHotter(t *testing.T) {
	t.Parallel()
	each(func(temperature, humidity float64) {
		if temperature == MaxTemperature {
			return
		}
		for name, f := range map[string]func(t, rh float64) float64{
			"wet bulb": WetBulb, "sun": WBGT, "shade": ShadeWBGT,
		} {
			if f(temperature+1, humidity) <= f(temperature, humidity) {
				t.Errorf("%s at %g °C, %g %%", name, temperature, humidity)
			}
		}
		if humidity > 0 && VapourPressure(temperature+1, humidity) <= VapourPressure(temperature, humidity) {
			t.Errorf("vapour at %g °C, %g %%", temperature, humidity)
		}
	})
}

// Moister air gives a higher WBGT everywhere, and a higher wet bulb where that was fitted.
func TestMoisterIsHotter(t *testing.T) {
	t.Parallel()
	each(func(temperature, humidity float64) {
		if humidity == 100 {
			return
		}
		if WBGT(temperature, humidity+1) <= WBGT(temperature, humidity) {
			t.Errorf("sun at %g °C, %g %%", temperature, humidity)
		}
		if fitted(temperature, humidity) && fitted(temperature, humidity+1) &&
			WetBulb(temperature, humidity+1) <= WetBulb(temperature, humidity) {
			t.Errorf("wet bulb at %g °C, %g %%", temperature, humidity)
		}
	})
}

// The wet bulb is no warmer than the air, and the sun adds to WBGT.
func TestOrder(t *testing.T) {
	t.Parallel()
	each(func(temperature, humidity float64) {
		if WetBulb(temperature, humidity) > temperature {
			t.Errorf("wet bulb above the air at %g °C, %g %%", temperature, humidity)
		}
		if ShadeWBGT(temperature, humidity) > temperature+1e-9 {
			t.Errorf("shade above the air at %g °C, %g %%", temperature, humidity)
		}
		if ShadeWBGT(temperature, humidity) >= WBGT(temperature, humidity) {
			t.Errorf("shade above sun at %g °C, %g %%", temperature, humidity)
		}
	})
}

// Warm air, moist air and air higher up are lighter; less oxygen is left higher up.
func TestThinAir(t *testing.T) {
	t.Parallel()
	for altitude := MinAltitude; altitude < MaxAltitude; altitude += 250 {
		if StandardPressure(altitude+250) >= StandardPressure(altitude) ||
			AirDensity(altitude+250, 10) >= AirDensity(altitude, 10) ||
			AirDensity(altitude, 11) >= AirDensity(altitude, 10) ||
			HumidAirDensity(altitude, 10, 50) >= AirDensity(altitude, 10) {
			t.Errorf("density at %g m", altitude)
		}
		if HumidAirDensity(altitude, 10, 0) != AirDensity(altitude, 10) {
			t.Errorf("dry air at %g m", altitude)
		}
		higher, here := WehrlinHallen(altitude+250), WehrlinHallen(altitude)
		if higher > here || altitude >= 300 && higher == here || here > 1 || here < 0.326 {
			t.Errorf("uptake at %g m", altitude)
		}
	}
}

// The pressure falls by the weight of the air passed: dp/dH = −ρ g, in Pa.
func TestPressureCarriesAir(t *testing.T) {
	t.Parallel()
	for altitude := MinAltitude + 1; altitude < MaxAltitude; altitude += 500 {
		fall := 100 * (StandardPressure(altitude-1) - StandardPressure(altitude+1)) / 2
		near(t, "fall", fall, 9.80665*AirDensity(altitude, StandardTemperature(altitude)), 1e-6)
	}
}

// The parts of a wind make up the whole, turn with the runner, and do not mind whole turns.
func TestWindComponents(t *testing.T) {
	t.Parallel()
	for from := 0.0; from < 360; from += 15 {
		for heading := 0.0; heading < 360; heading += 15 {
			head, cross := WindComponents(7, from, heading)
			near(t, "whole", math.Hypot(head, cross), 7, 1e-12)
			back, right := WindComponents(7, from, heading+180)
			near(t, "turned", back+head, 0, 1e-12)
			near(t, "turned", right+cross, 0, 1e-12)
			again, _ := WindComponents(7, from-3600, heading+360e6)
			near(t, "whole turns", again, head, 1e-12)
		}
	}
	head, cross := WindComponents(7, 90, 0)
	near(t, "east wind, going north", head, 0, 1e-12)
	near(t, "from the right", cross, 7, 1e-12)
}

// The profile keeps its reference, composes, and dies at the ground.
func TestWindAtHeight(t *testing.T) {
	t.Parallel()
	const z0 = GrassRoughness
	near(t, "itself", WindAtHeight(-6, ForecastHeight, ForecastHeight, z0), -6, 1e-12)
	step := WindAtHeight(WindAtHeight(6, 4, ForecastHeight, z0), RunnerHeight, 4, z0)
	near(t, "in steps", step, WindAtHeight(6, RunnerHeight, ForecastHeight, z0), 1e-12)
	near(t, "share over grass", WindAtHeight(1, RunnerHeight, ForecastHeight, z0), 0.67, 0.005)
	for _, height := range []float64{0, z0 / 2, z0} {
		if got := WindAtHeight(6, height, ForecastHeight, z0); got != 0 {
			t.Errorf("%g at %g m", got, height)
		}
	}
	if !(WindAtHeight(6, 1, ForecastHeight, 0.25) < WindAtHeight(6, 1, ForecastHeight, z0)) {
		t.Error("crops slow the wind no more than grass")
	}
}
