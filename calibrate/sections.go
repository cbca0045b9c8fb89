package calibrate

import (
	"math"

	"isoeffort.example/course"
)

// sectionHills is how many hills a race known by its sections has, at least one to a
// section. As in a summary ground, steepness is spread as a Weibull distribution of shape
// 1.25.
const sectionHills = 24

// sectioned makes a course of a race whose ascent and descent are known section by
// section, and nil where they are not.
func (u *run) sectioned() *course.Course {
	if len(u.ends) == 0 {
		return nil
	}
	r := &u.result
	x, z := []float64{0}, []float64{0}
	before := [3]float64{}
	for i, end := range u.ends {
		now := [3]float64{end, r.Ascent, r.Descent}
		if i < len(r.Splits) {
			now = [3]float64{end, r.Splits[i].Ascent, r.Splits[i].Descent}
		}
		length, up, down := now[0]-before[0], now[1]-before[1], now[2]-before[2]
		if !(up >= 0 && down >= 0 && up+down <= length) { // nor where they are NaN
			return nil
		}
		n := int(math.Max(1, math.Round(sectionHills*length/r.Distance)))
		x, z = hills(x, z, n, length, up, down)
		before = now
	}
	c, err := course.New(x, z, course.Options{Smoothing: course.AsGiven})
	if err != nil {
		return nil
	}
	return c
}

// hills appends n hills of one length, steep and gentle in turn.
func hills(x, z []float64, n int, length, up, down float64) (xs, zs []float64) {
	steepness, sum := make([]float64, n), 0.0
	for j := range steepness {
		rank := (float64(j*stride(n)%n) + 0.5) / float64(n)
		steepness[j] = math.Pow(-math.Log1p(-rank), 1/1.25)
		sum += steepness[j]
	}
	share := 0.5
	if up+down > 0 {
		share = up / (up + down)
	}
	for _, s := range steepness {
		last, height := len(x)-1, s/sum
		start, base := x[last], z[last]
		end := start + length/float64(n)
		if share > 0 && share < 1 {
			x, z = append(x, start+(end-start)*share), append(z, base+up*height)
		}
		x, z = append(x, end), append(z, base+(up-down)*height)
	}
	return x, z
}

// stride visits n ranks in an order that mixes them.
func stride(n int) int {
	for s := max(1, int(0.382*float64(n))); ; s++ {
		if a, b := s, n; true {
			for b != 0 {
				a, b = b, a%b
			}
			if a == 1 {
				return s
			}
		}
	}
}
