package weather

import "testing"

// The derivatives against central differences, to 1e-6, away from where WetBulb meets the
// air temperature.
func TestSlopes(t *testing.T) {
	t.Parallel()
	const h = 1e-4
	kinked := func(temperature, humidity float64) bool {
		near := stull(temperature, humidity) - temperature
		return near > -0.001 && near < 0.001
	}
	each(func(temperature, humidity float64) {
		if temperature == MinTemperature || temperature == MaxTemperature || humidity == 0 || humidity == 100 {
			return
		}
		check := func(what string, f func(t, rh float64) float64, slopes func(t, rh float64) (float64, float64)) {
			byTemperature, byHumidity := slopes(temperature, humidity)
			near(t, what+" by temperature", byTemperature, (f(temperature+h, humidity)-f(temperature-h, humidity))/(2*h), 1e-6)
			near(t, what+" by humidity", byHumidity, (f(temperature, humidity+h)-f(temperature, humidity-h))/(2*h), 1e-6)
		}
		check("sun", WBGT, WBGTSlopes)
		if !kinked(temperature, humidity) {
			check("shade", ShadeWBGT, ShadeWBGTSlopes)
		}
	})
}

// At the edges of the domain, where no central difference is, the slopes are those next
// to them.
func TestSlopesAtEdges(t *testing.T) {
	t.Parallel()
	const step = 1e-9
	for _, slopes := range []func(t, rh float64) (float64, float64){WBGTSlopes, ShadeWBGTSlopes} {
		for _, c := range [][4]float64{
			{30, 0, 30, step},
			{10, 100, 10, 100 - step},
			{MaxTemperature, 50, MaxTemperature - step, 50},
			{MinTemperature, 50, MinTemperature + step, 50},
		} {
			edgeByT, edgeByRH := slopes(c[0], c[1])
			byT, byRH := slopes(c[2], c[3])
			near(t, "by temperature", edgeByT, byT, 1e-6)
			near(t, "by humidity", edgeByRH, byRH, 1e-6)
		}
	}
}

// In saturated warm air the wet bulb meets the air and moves as it does.
func TestShadeSlopesSaturated(t *testing.T) {
	t.Parallel()
	byTemperature, byHumidity := ShadeWBGTSlopes(30, 100)
	near(t, "by temperature", byTemperature, 1, 1e-12)
	near(t, "by humidity", byHumidity, 0, 0)
}
