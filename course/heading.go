package course

import "math"

// Heading returns the azimuth at p of the shortest line on the WGS84 ellipsoid to
// another position: degrees clockwise from true north, 0 <= h < 360. It is NaN where the
// two are the same and where either is no position or not finite. At a pole it counts
// from the meridian of p's longitude.
//
// The azimuth is that of the chord in the level plane at p. It differs from the
// geodesic's by up to e² L²/12a² radians at a length L: 1e-7 degrees at 10 km, at
// latitudes of −80 to 80 and across the date line too. Rounding moves a position by up
// to 5 nm, which adds up to 5e-7 degrees at 1 m and less in proportion farther away. It
// is not meant for legs of over 100 km.
func (p Position) Heading(to Position) float64 {
	if p == (Position{}) || to == (Position{}) {
		return math.NaN()
	}
	return compass(p.level(to.x-p.x, to.y-p.y, to.z-p.z))
}

// direction returns the unit vector of the heading at the middle of a leg, and zeros
// where there is none: between equal positions, or evenly across a pole. From to back to
// p it is exactly the opposite. It is as accurate as Heading.
//
// It is that of the chord at its middle, where it is level: both ends hold
// x² + y² + z²/(1−e²) = a², and the difference of the two equations says that to − p is
// at right angles to (x, y, z/(1−e²)) of p + to, which is along the normal there.
func (p Position) direction(to Position) (east, north float64) {
	middle := Position{x: p.x + to.x, y: p.y + to.y, z: p.z + to.z}
	east, north = middle.level(to.x-p.x, to.y-p.y, to.z-p.z)
	length := math.Sqrt(east*east + north*north)
	if !(length > 0) {
		return 0, 0
	}
	return east / length, north / length
}

// level returns the parts towards east and towards north of an Earth-centred vector, in
// the plane at right angles to the ellipsoid's normal at p. They are NaN where p lies on
// the Earth's axis, to the last bit.
func (p Position) level(dx, dy, dz float64) (east, north float64) {
	r2 := p.x*p.x + p.y*p.y
	w := p.z / (1 - wgs84E) // (x, y, w) is along the normal
	r := math.Sqrt(r2)
	return (p.x*dy - p.y*dx) / r, (r2*dz - w*(p.x*dx+p.y*dy)) / (r * math.Sqrt(r2+w*w))
}

// compass returns the heading of a vector in degrees, 0 <= h < 360, or NaN if it has
// none.
func compass(east, north float64) float64 {
	if east == 0 && north == 0 {
		return math.NaN()
	}
	h := math.Atan2(east, north) * 180 / math.Pi
	if h < 0 {
		h += 360
	}
	if h >= 360 { // a hair west of north
		return 0
	}
	return h
}

// check refuses what is no place on the globe.
func (p Position) check() error {
	sum := p.x + p.y + p.z // NaN or infinite if a part is
	if p == (Position{}) || math.IsNaN(sum-sum) || !(math.Abs(p.lat) <= 90) {
		return ErrNoPosition
	}
	return nil
}
