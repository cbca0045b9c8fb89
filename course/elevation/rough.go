package elevation

import (
	"math"
	"slices"
)

// A rough ground is one whose rises follow an autoregression that changes from place to
// place: its autocovariances are the sums of those of the ranges of waves, each times
// the roughness of its range there.
type rough struct {
	part [ranges][]float64 // autocovariances at the mean roughness
	log  [ranges][]float64 // logarithm of roughness by rise; nil: even ground

	// slope is the variance of slopes that go on for longer than waves are told apart. It
	// matters at the ends, which would else be drawn towards the course's mean slope.
	slope float64
}

// roughSteps is to what part of a logarithm a roughness is told.
const roughSteps = 4

// evenGround is ground that is as rough as the mean everywhere.
func evenGround(spectrum func(omega float64) float64, spacing float64) rough {
	var r rough
	for b, part := range inRanges(spectrum, spacing) {
		r.part[b] = autocovariance(part, groundOrder)
	}
	return r
}

// longSlope is the length in metres of the stretches whose slopes make up rough.slope.
// [Our own]
const longSlope = 2000

// longSlopes is the mean square of rises averaged over stretches of longSlope.
func longSlopes(rise []float64, spacing float64) float64 {
	n := min(max(int(longSlope/spacing), 1), len(rise))
	sum, count := 0.0, 0.0
	for from := 0; from+n <= len(rise); from += n {
		m := mean(rise[from : from+n])
		sum += m * m
		count++
	}
	return sum / count
}

func (r rough) even() bool { return r.log[0] == nil }

func (r rough) order() int { return len(r.part[0]) - 1 }

// at is the autoregression where the roughness is exp(level/roughSteps).
func (r rough) at(level [ranges]int) autoregression {
	sum := make([]float64, len(r.part[0]))
	for k := range sum {
		sum[k] = r.slope
	}
	for b, part := range r.part {
		a := math.Exp(float64(level[b]) / roughSteps)
		for k, v := range part {
			sum[k] += a * v
		}
	}
	return autoregress(sum)
}

// forms is that of the autoregression of each place.
func (r rough) forms(n int, add func(first int, c []float64, weight float64)) {
	if r.even() {
		r.at([ranges]int{}).forms(n, add)
		return
	}
	type law struct {
		rows     [][]float64
		variance []float64
	}
	laws := map[[ranges]int]law{}
	var here law
	var last [ranges]int
	for i := range n {
		var level [ranges]int
		for b := range level {
			level[b] = int(math.Round(r.log[b][i] * roughSteps))
		}
		if i == 0 || level != last {
			known, ok := laws[level]
			if !ok {
				a := r.at(level)
				known = law{a.rows(), a.variance}
				laws[level] = known
			}
			here, last = known, level
		}
		p := min(i, len(here.rows)-1)
		add(i-p, here.rows[p], 1/here.variance[p])
	}
}

// spreadOut interpolates a range's values at the middles of stretches for every rise.
func spreadOut(v []float64, starts []int, length, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		k, _ := slices.BinarySearch(starts, i-length/2)
		if k == 0 || k == len(starts) {
			out[i] = v[ranges*min(k, len(starts)-1)]
			continue
		}
		share := float64(i-length/2-starts[k-1]) / float64(starts[k]-starts[k-1])
		out[i] = v[ranges*(k-1)] + share*(v[ranges*k]-v[ranges*(k-1)])
	}
	return out
}
