package elevation

import (
	"math"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/dsp/window"
)

// A periodogram is the mean power of the rises from node to node, m² per radian per
// node in the sense that their variance is 1/π ∫ P dω, in bands of frequency that are
// equally wide on a logarithmic scale where there are frequencies enough.
type periodogram struct {
	omega []float64 // mean frequency of the band, radians per node
	power []float64
	count []float64 // independent frequencies in the band
}

const (
	longestSegment = 2048 // nodes
	leastSegment   = 32
	bandRatio      = 1.12 // from one band's first frequency to the next one's
)

// newPeriodogram averages the periodograms of overlapping stretches, each weighted by
// Hann's window (Welch 1967, IEEE Trans Audio Electroacoust 15:70). There must be at
// least leastSegment rises.
func newPeriodogram(rise []float64) periodogram {
	length := leastSegment
	for 2*length <= len(rise) && length < longestSegment {
		length *= 2
	}
	weight := hann(length)
	power := make([]float64, length/2+1)
	fft := fourier.NewFFT(length)
	x, coefficients := make([]float64, length), make([]complex128, length/2+1)
	starts := segmentStarts(len(rise), length)
	for _, start := range starts {
		segment := rise[start : start+length]
		mean := mean(segment)
		for i, v := range segment {
			x[i] = (v - mean) * weight[i]
		}
		fft.Coefficients(coefficients, x)
		for j, c := range coefficients {
			power[j] += (real(c)*real(c) + imag(c)*imag(c)) / float64(len(starts))
		}
	}
	return inBands(power, float64(len(rise))/float64(length))
}

// hann is Hann's window with a sum of squares of 1.
func hann(length int) []float64 {
	weight := make([]float64, length)
	for i := range weight {
		weight[i] = 1
	}
	window.Hann(weight)
	norm := 0.0
	for _, w := range weight {
		norm += w * w
	}
	for i := range weight {
		weight[i] /= math.Sqrt(norm)
	}
	return weight
}

// segmentStarts spreads segments evenly, half overlapping or a little more, the same
// from either end to one place.
func segmentStarts(n, length int) []int {
	count := 1 + (n-length+length/2-1)/(length/2)
	starts := make([]int, count)
	for i := range (count + 1) / 2 {
		start := 0
		if count > 1 {
			start = i * (n - length) / (count - 1)
		}
		starts[i], starts[count-1-i] = start, n-length-start
	}
	return starts
}

// inBands gathers a periodogram. The lowest two frequencies are left out: the mean that
// was taken away and the window reach into them.
func inBands(power []float64, repeats float64) periodogram {
	var g periodogram
	step := math.Pi / float64(len(power)-1)
	for j := 2; j < len(power); {
		end := min(max(j+1, int(float64(j)*bandRatio)), len(power))
		count := float64(end - j)
		g.omega = append(g.omega, step*float64(j+end-1)/2)
		g.power = append(g.power, mean(power[j:end]))
		g.count = append(g.count, count*repeats)
		j = end
	}
	return g
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
