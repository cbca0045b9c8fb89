package weather

import "math"

// WindComponents splits a wind of a speed, m/s, that blows from a direction, for a runner who
// moves towards a heading, both in degrees clockwise from north:
//
//	head  = speed cos(from − heading)   positive against the runner
//	cross = speed sin(from − heading)   positive from the runner's right
//
// Angles may be any finite number, whole turns do not matter. A speed below 0 or above 150 m/s
// gives NaN.
func WindComponents(speed, from, heading float64) (head, cross float64) {
	if !inside(speed, 0, mostWind) {
		return math.NaN(), math.NaN()
	}
	// Reduced first: their difference could overflow, and loses digits when large.
	angle := math.Mod(from, 360) - math.Mod(heading, 360)
	sin, cos := math.Sincos(angle * math.Pi / 180)
	return speed * cos, speed * sin
}

const (
	// ForecastHeight is the height above ground, m, that forecasts and stations give wind
	// for. Source: WMO Guide to Instruments and Methods of Observation (WMO-No. 8).
	ForecastHeight = 10.0

	// RunnerHeight is a height, m, to take a runner's wind at [Our own].
	RunnerHeight = 1.5

	// GrassRoughness is the roughness length of open grassland, m, as textbooks give it.
	// From memory, others are 0.005 for bare smooth ground, 0.1 for low crops, 0.25 for high
	// crops and 0.5 for scattered bushes.
	GrassRoughness = 0.03

	// mostWind bounds winds, m/s: the strongest gusts measured are below 115 m/s [Our own].
	mostWind = 150

	// topOfProfile bounds the heights, m, that the logarithmic profile is used for.
	topOfProfile = 200
)

// WindAtHeight returns the wind at a height above ground, m, from a wind, m/s, given for a
// reference height, m, over ground of a roughness length z₀, m:
//
//	wind · ln(height/z₀) / ln(reference/z₀)
//
// and 0 from the ground up to z₀. The wind's sign is kept, so it may be a component. It is the logarithmic profile of neutral air over level, open and uniform ground,
// about right above 20 z₀ and on windy days; in clear nights the wind below is weaker.
// Inside woods and towns, on ridges and in gaps it does not hold. A reference not above
// z₀, a z₀ below 1e-6 m (ice has 1e-5), heights outside 0 to 200 m and winds beyond 150 m/s
// either way give NaN.
//
// Source: any textbook of meteorology, from memory; FAO Irrigation and Drainage Paper 56,
// equation 47, is this law for clipped grass.
func WindAtHeight(wind, height, reference, roughness float64) float64 {
	if !inside(height, 0, topOfProfile) || !inside(reference, 0, topOfProfile) ||
		!inside(wind, -mostWind, mostWind) || !(roughness >= 1e-6 && roughness < reference) {
		return math.NaN()
	}
	if height <= roughness {
		return 0
	}
	return wind * (math.Log(height/roughness) / math.Log(reference/roughness))
}
