package elevation

import (
	"math"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Ground does not undulate alike everywhere: a trail follows a road along a valley.
// Roughness is how much more than in the mean it does in a stretch. It is told in half
// overlapping stretches of about roughStretch from waves down to roughLeast, where
// seenEnough of a stretch's rises were seen, on courses of fewStretches and more. [Our
// own]
const (
	roughStretch = 2560 // m
	roughLeast   = 150  // m
	fewStretches = 6
	seenEnough   = 0.8
)

// Hills and undulations have each a roughness of their own. From longUndulation to
// shortUndulation waves pass from one range to the other. [Our own]
const (
	ranges          = 2
	longUndulation  = 900 // m
	shortUndulation = 500 // m
)

// inRanges divides a spectrum between the ranges.
func inRanges(spectrum func(omega float64) float64, spacing float64) [ranges]func(omega float64) float64 {
	share := func(omega float64) float64 {
		wavelength := 2 * math.Pi / omega * spacing
		return min(max(math.Log(longUndulation/wavelength)/math.Log(longUndulation/shortUndulation), 0), 1)
	}
	return [ranges]func(omega float64) float64{
		func(omega float64) float64 { return (1 - share(omega)) * spectrum(omega) },
		func(omega float64) float64 { return share(omega) * spectrum(omega) },
	}
}

// Roughness is a random walk from stretch to stretch, its logarithm by an SD of
// roughWanders, and of roughSD at the first. Uneven ground must gain roughPrice in the
// logarithm of the evidence over even ground before it is believed. [Our own]
var roughWanders = [...]float64{0.5, 1, 2}

const (
	roughSD    = 3
	evenWander = 0.02
	roughPrice = 5
)

// A roughness is the logarithm of the ground's spectrum over its mean, by stretches and
// ranges, and the periodograms of the stretches that tell of it.
type roughness struct {
	power  [][]float64       // of each stretch by frequency; nil where too little was seen
	ground [ranges][]float64 // what the ranges at the mean roughness make these expect
	noise  []float64         // and what noise does
	log    []float64         // by stretch and range
	wander float64

	step      []float64
	curvature band
}

// uneven makes a ground as rough as the rises in its stretches tell, or leaves it even
// where they do not tell of another.
func (r rough) uneven(rise []float64, seen []bool, spacing float64, ground, noise func(float64) float64) rough {
	length := leastSegment
	for float64(2*length)*spacing <= roughStretch*1.5 {
		length *= 2
	}
	if len(rise) < length {
		return r
	}
	starts := segmentStarts(len(rise), length)
	if len(starts) < fewStretches {
		return r
	}
	best := newRoughness(rise, seen, starts, length, spacing, ground, noise).best()
	for b := range min(len(best), ranges) {
		r.log[b] = spreadOut(best[b:], starts, length, len(rise))
	}
	return r
}

func newRoughness(rise []float64, seen []bool, starts []int, length int, spacing float64, ground, noise func(float64) float64) *roughness {
	r := &roughness{}
	for b, part := range inRanges(ground, spacing) {
		r.ground[b] = throughHann(part, length, spacing)
	}
	r.noise = throughHann(func(omega float64) float64 { return u(omega) * noise(omega) }, length, spacing)
	r.look(rise, seen, starts, length)
	n := ranges * len(starts)
	r.log, r.step, r.curvature = make([]float64, n), make([]float64, n), newBand(n, ranges)
	return r
}

// best returns the logarithms of the roughness that has the most evidence, nil for even
// ground.
func (r *roughness) best() (best []float64) {
	r.wander = evenWander
	least := r.fit() - roughPrice
	for _, r.wander = range roughWanders {
		if cost := r.fit(); cost < least {
			least, best = cost, append(best[:0], r.log...)
		}
	}
	for b := range min(len(best), ranges) {
		sum := 0.0
		for i := b; i < len(best); i += ranges {
			sum += math.Exp(best[i])
		}
		level := math.Log(sum / float64(len(best)/ranges))
		for i := b; i < len(best); i += ranges {
			best[i] -= level
		}
	}
	return best
}

// throughHann is what Hann's window makes of a spectrum, at the frequencies of a stretch
// from the second on down to waves of roughLeast: the lowest holds what is left of the
// mean.
func throughHann(spectrum func(omega float64) float64, length int, spacing float64) (out []float64) {
	weight, seen := hann(length), autocovariance(spectrum, length-1)
	for k := range seen {
		overlap := 0.0
		for i := k; i < length; i++ {
			overlap += weight[i] * weight[i-k]
		}
		if k > 0 {
			overlap *= 2
		}
		seen[k] *= overlap
	}
	for j := 2; j < length/2 && (j < 4 || float64(length)*spacing/float64(j) >= roughLeast); j++ {
		omega := 2 * math.Pi * float64(j) / float64(length)
		sum := 0.0
		for k, c := range seen {
			sum += c * math.Cos(omega*float64(k))
		}
		out = append(out, max(sum, tiny))
	}
	return out
}

// look takes the periodograms of the stretches.
func (r *roughness) look(rise []float64, seen []bool, starts []int, length int) {
	weight, fft := hann(length), fourier.NewFFT(length)
	x, coefficients := make([]float64, length), make([]complex128, length/2+1)
	r.power = make([][]float64, len(starts))
	for s, start := range starts {
		stretch, count := rise[start:start+length], 0
		for _, ok := range seen[start : start+length] {
			if ok {
				count++
			}
		}
		if float64(count) < seenEnough*float64(length) {
			continue
		}
		mean := mean(stretch)
		for i, v := range stretch {
			x[i] = (v - mean) * weight[i]
		}
		fft.Coefficients(coefficients, x)
		r.power[s] = make([]float64, len(r.noise))
		for j := range r.power[s] {
			c := coefficients[j+2]
			r.power[s][j] = real(c)*real(c) + imag(c)*imag(c)
		}
	}
}
