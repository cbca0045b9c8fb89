package elevation

import "math"

// A shape is the form of the spectrum of noise, of level 1 at long waves.
type shape struct {
	kind   shapeKind
	length float64 // m
}

type shapeKind int

const (
	// independent noise is that of single readings: its spectrum is level.
	independent shapeKind = iota
	// fading noise is correlated by exp(−d/length) over a distance d, as a reading that
	// follows slowly: 1/(1 + k² length²) at the wave number k.
	fading
	// interpolated noise is that of heights read off straight lines between posts, whose
	// errors are independent, length apart: (sin y / y)⁴ with y = k length/2, here
	// without its zeros, which a path that crosses posts at all angles does not have,
	// exp(−k² length²/6).
	interpolated
)

// shapes are the ones that are tried. [Our own choice of lengths: posts of usual models
// of elevation are 10 to 90 m apart; noise that is longer is taken for ground by any]
var shapes = [...]shape{
	{independent, 0},
	{fading, 10},
	{fading, 20},
	{fading, 40},
	{interpolated, 15},
	{interpolated, 30},
	{interpolated, 50},
	{interpolated, 90},
}

// shapePrice is what correlated noise must gain in the logarithm of the evidence over
// independent noise before it is believed. [Our own]
const shapePrice = 3

func (s shape) price() float64 {
	if s.kind == independent {
		return 0
	}
	return shapePrice
}

// shapeFloor is the least that is left of interpolated noise at short waves, for the sake
// of the arithmetic: precise heights have some noise of their own.
const shapeFloor = 1e-3

// log returns the logarithm of the shape at a wave number in radians per metre.
func (s shape) log(k float64) float64 {
	y := k * s.length
	if s.kind == interpolated {
		return math.Log(math.Exp(-y*y/6) + shapeFloor)
	}
	return -math.Log1p(y * y)
}

// stiffness is how far the estimated spectrum may leave the shape from band to band at a
// wavelength: the SD of its logarithm per √e-fold of frequency. Interpolated noise has
// all manner of forms at its short waves; at long ones, where the ground covers it, it
// is level. [Our own]
func (s shape) stiffness(wavelength float64) float64 {
	if s.kind == interpolated && wavelength < noiseSeen {
		return 0.7
	}
	return 0.02
}

// noiseSeen is the wavelength in metres below which all but noise has faded. [Our own]
const noiseSeen = 100
