package elevation

import "math"

// What is expected of the ground's spectrum before the data speak: its logarithm wanders
// with the logarithm of the frequency. Where noise hides it, it carries on what is seen
// beside. Ground that undulates more over 50 m than over 150 m is not expected: below the
// runnable wavelength the spectrum falls steeply and hardly wanders, so that what rises
// there is noise. [Our own; of 150 and 180 m the latter erred less on the made profiles of
// the tests, and undulations of 200 m must be kept]
const (
	runnable    = 180 // m
	groundFall  = -1  // powers of frequency by which the spectrum falls
	shortFall   = -4  // the same below the runnable wavelength
	shortWander = 0.5 // SD of the logarithm per √e-fold of frequency, the same
)

// wanders are the SDs tried above the runnable wavelength, the usual one first: small for
// ground of all wavelengths, large for a few that stand out.
var wanders = [...]float64{2, 1, 4, 8}

// An expectation is that v of the band after j less v of band j is rise, with a weight.
type expectation struct {
	ground       bool
	j            int
	rise, weight float64
}

// expect lists what is expected of the two spectra.
func (s *split) expect() {
	s.expected = s.expected[:0]
	for j := range len(s.omega) - 1 {
		wide := math.Log(s.omega[j+1] / s.omega[j])
		fall, wander := float64(groundFall), s.wander
		if s.wavelength(j+1) < runnable {
			fall, wander = shortFall, shortWander
		}
		bend := s.shape.log(s.omega[j+1]/s.spacing) - s.shape.log(s.omega[j]/s.spacing)
		stiff := s.shape.stiffness(s.wavelength(j + 1))
		s.expected = append(s.expected,
			expectation{true, j, fall * wide, 1 / (wander * wander * wide)},
			expectation{false, j, bend, 1 / (stiff * stiff * wide)})
	}
}

// off is by how much an expectation is missed, and where it stands in the curvature.
func (s *split) off(e expectation) (off float64, at int) {
	if e.ground {
		return s.ground[e.j+1] - s.ground[e.j] - e.rise, 2 * e.j
	}
	return s.noise[e.j+1] - s.noise[e.j] - e.rise, 2*e.j + 1
}

// longest is the logarithm of what the longest waves show, which is expected to be
// ground: without it, no ground at all would explain as much as noise everywhere.
func (s *split) longest() float64 { return math.Log(max(s.power[0], tiny)) }

// longestWeight is that of an SD of 2 of the logarithm. [Our own]
const longestWeight = 0.25
