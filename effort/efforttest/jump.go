package efforttest

import "math"

const (
	// halvings is how often a step of the grid is halved in the search for a jump: to
	// some 1e-14, where neighbouring numbers are not far.
	halvings = 40

	// earlier is the halving that the last is compared with, 2^20 times as long.
	earlier = 20

	// leastJump is the smallest jump that counts, relative to the power on either side.
	leastJump = 1e-6
)

// jumps looks at Continuous, along both axes of the grid.
func (k *checker) jumps() {
	for _, i := range k.gradients {
		along := func(v float64) float64 { return k.power(v, i) }
		k.jumpsAlong(along, k.speeds, func(v, size float64) { k.report(Continuous, v, i, "a jump of %.3g W/kg with speed", size) })
	}
	for _, v := range k.speeds {
		along := func(i float64) float64 { return k.power(v, i) }
		k.jumpsAlong(along, k.gradients, func(i, size float64) { k.report(Continuous, v, i, "a jump of %.3g W/kg with gradient", size) })
	}
}

// jumpsAlong calls found for each jump of f between neighbours of points.
func (k *checker) jumpsAlong(f func(float64) float64, points []float64, found func(at, size float64)) {
	for j := 1; j < len(points) && !k.broken(Continuous) && !k.broken(NoPanic); j++ {
		if at, size := jump(f, points[j-1], points[j]); size > 0 {
			found(at, size)
		}
	}
}

// jump returns where f jumps between a and b and by how much, 0 if it does not. Values
// that are not finite are left to Finite.
func jump(f func(float64) float64, a, b float64) (at, size float64) {
	fa, fb := f(a), f(b)
	before := 0.0
	for n := range halvings {
		if n == earlier {
			before = math.Abs(fb - fa)
		}
		middle := a + (b-a)/2
		fm := f(middle)
		if math.Abs(fm-fa) >= math.Abs(fb-fm) {
			b, fb = middle, fm
		} else {
			a, fa = middle, fm
		}
	}
	size = math.Abs(fb - fa)
	if finite(size) && size > before/2 && size > leastJump*max(math.Abs(fa), math.Abs(fb)) {
		return b, size
	}
	return b, 0
}
