package elevation

import (
	"math"
	"math/rand/v2"
	"testing"
)

// terrain reads a terrain model along a straight path that crosses its posts askew: heights
// of the ground at posts some metres apart, with errors of an SD that are independent on a
// lattice, and bilinear between posts. The ground is the profile's, level across the path.
func (m made) terrain(posts, sd, lattice float64, seed uint64) (x, z []float64) {
	r := rand.New(rand.NewPCG(seed, 80))
	errors := map[[2]int]float64{}
	off := func(i, j int) float64 {
		v, ok := errors[[2]int{i, j}]
		if !ok {
			v = sd * r.NormFloat64()
			errors[[2]int{i, j}] = v
		}
		return v
	}
	sin, cos := math.Sincos(0.45)
	post := func(i, j int) float64 {
		east, north := posts*float64(i), posts*float64(j)
		return m.height(east*cos+north*sin) + bilinear(east/lattice, north/lattice, off)
	}
	for d := 0.0; d <= m.length; d += 10 {
		x, z = append(x, d), append(z, bilinear(d*cos/posts, d*sin/posts, post))
	}
	return x, z
}

func bilinear(east, north float64, at func(i, j int) float64) float64 {
	a, b := math.Floor(east), math.Floor(north)
	s, t := east-a, north-b
	i, j := int(a), int(b)
	return (1-s)*(1-t)*at(i, j) + s*(1-t)*at(i+1, j) + (1-s)*t*at(i, j+1) + s*t*at(i+1, j+1)
}

// TestTerrainModel compares one run with a barometer with heights from a terrain model of
// posts 30 and 90 m apart: the ascents differ by less than 10 %, whether the model's errors
// are 2 m and independent from post to post, or up to 5 m and hang together over 300 m and
// more. The model's own claim is no use: what it is out by looks like ground. Errors of 5 m
// that are independent from post to post are beyond telling: with posts 90 m apart they are
// hills of 180 m, and the ascent is up to 64 % too high.
func TestTerrainModel(t *testing.T) {
	t.Parallel()
	table := newTable("terrain model, largest difference of ascent from a barometer's, in per cent")
	var barometer []float64
	for _, m := range madeProfiles() {
		x, z := m.record(fault{noise: 0.2, drift: 4, rounding: 0.2}, 1)
		barometer = append(barometer, clean(t, x, z, Options{}).Ascent)
	}
	for _, posts := range []float64{30, 90} {
		for _, c := range []struct{ sd, lattice float64 }{{0, posts}, {2, posts}, {2, 300}, {2, 1000}, {5, 300}, {5, 1000}, {5, posts}} {
			worst := 0.0
			for i, m := range madeProfiles() {
				x, z := m.terrain(posts, c.sd, c.lattice, 1)
				if off := 100 * (clean(t, x, z, Options{}).Ascent/barometer[i] - 1); math.Abs(off) > math.Abs(worst) {
					worst = off
				}
			}
			table.line("posts %2.0f m, off by %g m, together over %4.0f m: %+5.1f", posts, c.sd, c.lattice, worst)
			if math.Abs(worst) > 10 && !(c.sd == 5 && c.lattice == posts) {
				t.Errorf("posts %2.0f m, off by %g m, together over %.0f m: ascent %+.1f %% from the barometer's", posts, c.sd, c.lattice, worst)
			}
		}
	}
	t.Log(table)
}
