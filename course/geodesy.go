package course

import "math"

// The WGS84 ellipsoid. Source: NIMA TR8350.2, third edition, 2000, table 3.1.
const (
	wgs84A = 6378137.0             // semi-major axis, m
	wgs84F = 1 / 298.257223563     // flattening
	wgs84E = wgs84F * (2 - wgs84F) // first eccentricity squared
)

// A Position is a place on the WGS84 ellipsoid. Its zero value is no position; NewPosition
// makes one.
type Position struct {
	x, y, z  float64 // Earth-centred, m
	lat, lon float64 // degrees
}

// NewPosition returns the position of a latitude (−90 to 90) and a longitude, in degrees.
func NewPosition(lat, lon float64) Position {
	sinLat, cosLat := math.Sincos(lat * math.Pi / 180)
	sinLon, cosLon := math.Sincos(lon * math.Pi / 180)
	normal := wgs84A / math.Sqrt(1-wgs84E*sinLat*sinLat)
	return Position{
		x: normal * cosLat * cosLon, y: normal * cosLat * sinLon, z: normal * (1 - wgs84E) * sinLat,
		lat: lat, lon: lon,
	}
}

// Lat and Lon return the latitude and longitude in degrees.
func (p Position) Lat() float64 { return p.lat }

// Lon returns the longitude in degrees.
func (p Position) Lon() float64 { return p.lon }

// Distance returns the length in metres of the shortest line on the WGS84 ellipsoid
// between two positions. It is the straight chord, lengthened to an arc of the
// ellipsoid's mean radius of curvature at the first position: within 0.1 µm of the
// geodesic up to 1 km, within 0.01 mm up to 10 km and within 1 cm up to 100 km, at any
// latitude, across poles and the date line. It is not meant for legs longer than that:
// the error grows with the third power of the length.
func (p Position) Distance(to Position) float64 {
	dx, dy, dz := to.x-p.x, to.y-p.y, to.z-p.z
	chord := math.Sqrt(dx*dx + dy*dy + dz*dz)
	half := chord / 2 / p.radius()
	if half >= 1 {
		return math.Pi * p.radius()
	}
	return 2 * p.radius() * math.Asin(half)
}

// radius is the Gaussian (mean) radius of curvature, a √(1−e²)/(1−e² sin²φ).
func (p Position) radius() float64 {
	r2 := p.x*p.x + p.y*p.y
	sin2 := 0.0
	if w := p.z / (1 - wgs84E); w != 0 {
		sin2 = w * w / (r2 + w*w)
	}
	return wgs84A * math.Sqrt(1-wgs84E) / (1 - wgs84E*sin2)
}
