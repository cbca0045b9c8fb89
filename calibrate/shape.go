package calibrate

import "math"

// The bounds of what is near normal: along each axis of the covariance, two SDs from the
// mode, F should lie 2 above it, of which a factor of two and a half is let pass.
const (
	shapeReach  = 2.0
	shapeLeast  = 2 / 2.5
	shapeMost   = 2 * 2.5
	shapeUnsure = 0.3 // SDs of the prior, below which an axis is too short to matter
)

// strange reports whether the posterior is far from normal, by F over the closed forms held
// to the model.
func (p *problem) strange() bool {
	from := p.point()
	defer p.restore(from)
	p.z = append([]float64(nil), p.z...)
	p.roughly()
	base := p.value
	root := p.root()
	for axis := range tilt + 1 {
		if p.known(axis) {
			continue
		}
		long := 0.0
		for i := range from.z {
			if i >= axis {
				long = math.Max(long, math.Abs(root.At(i, axis)))
			}
		}
		if long < shapeUnsure {
			continue
		}
		for _, side := range [2]float64{-shapeReach, shapeReach} {
			copy(p.z, from.z)
			for i := axis; i < len(p.z); i++ {
				p.z[i] += side * root.At(i, axis)
			}
			p.roughly()
			if rise := p.value - base; !(rise > shapeLeast && rise < shapeMost) {
				return true
			}
		}
	}
	return false
}
