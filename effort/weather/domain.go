package weather

// The domain of temperature and humidity: the functions of both take a temperature, °C,
// within these bounds and a relative humidity of 0 to 100 %, and give NaN outside. The
// bounds are wider than any race's [Our own].
const (
	MinTemperature = -60.0
	MaxTemperature = 60.0
)

// The domain of altitude, m: the lowest layer of the standard atmosphere. Outside it the
// functions of altitude give NaN.
const (
	MinAltitude = -5000.0
	MaxAltitude = 11_000.0
)

// inside reports whether x is within the bounds. NaN is not.
func inside(x, low, top float64) bool { return x >= low && x <= top }

// airy reports whether air may have this temperature and humidity.
func airy(temperature, humidity float64) bool {
	return inside(temperature, MinTemperature, MaxTemperature) && inside(humidity, 0, 100)
}
