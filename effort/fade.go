package effort

import "math"

// fadeScale is h₀ of Capability, in hour-equivalents.
const fadeScale = 1.5

// fadeTime is the work as the fade counts it, h₀ ((1 + h/h₀)^q − 1)/q.
func fadeTime(work, shape float64) float64 {
	if shape == 1 {
		return work
	}
	return fadeScale * (math.Pow(1+work/fadeScale, shape) - 1) / shape
}

// fadeTimeSlopes returns fadeTime and its derivatives by work and by shape.
func fadeTimeSlopes(work, shape float64) (value, byWork, byShape float64) {
	u := 1 + work/fadeScale
	power, ln := math.Pow(u, shape), math.Log(u)
	value = fadeScale * (power - 1) / shape
	return value, power / u, fadeScale*power*ln/shape - value/shape
}

// A fadeClock tells fadeTime for one shape. On grounds of many cells it does so from a
// table, because the power in it costs more than all the rest of a step: fadeNodes an
// hour-equivalent, joined by cubics that meet value and derivative, within 6e-8.
type fadeClock struct {
	shape float64
	table []node
}

const (
	fadeNodes = 16
	fadeCells = 500 // from which a table pays
)

// set prepares the clock for work of up to most hour-equivalents over so many cells.
func (f *fadeClock) set(shape, most float64, cells int) {
	if shape == 1 || cells < fadeCells {
		f.shape, f.table = shape, f.table[:0]
		return
	}
	need := int(math.Min(most*fadeNodes, 4096)) + 2
	if f.shape != shape {
		f.shape, f.table = shape, f.table[:0]
	}
	for i := len(f.table); i < need; i++ {
		value, slope, _ := fadeTimeSlopes(float64(i)/fadeNodes, shape)
		f.table = append(f.table, node{value, slope})
	}
}

// time is fadeTime.
func (f *fadeClock) time(work float64) float64 {
	if f.shape == 1 {
		return work
	}
	place := work * fadeNodes
	if !(place >= 0 && place < float64(len(f.table)-1)) {
		return fadeTime(work, f.shape)
	}
	i := int(place)
	value, _ := hermite(f.table[i], f.table[i+1], place-float64(i), 1.0/fadeNodes)
	return value
}

// A fadeExp tells exp(−x) for x that mostly grow by little: from the one before by the
// first terms of the series, which is exact to rounding and takes a fraction of the time.
// Each thousand steps it starts afresh, so that rounding does not add up.
type fadeExp struct {
	x, value float64
	steps    int
}

// seriesReach is the step up to which the series is taken: what it leaves out is less
// than 4e-19.
const seriesReach = 1e-3

func (f *fadeExp) after(x float64) float64 {
	d := f.x - x
	f.x = x
	if f.steps--; math.Abs(d) > seriesReach || f.steps <= 0 || f.value == 0 {
		f.value, f.steps = math.Exp(-x), 1000
		return f.value
	}
	f.value *= 1 + d*(1+d*(1.0/2+d*(1.0/6+d*(1.0/24+d*(1.0/120)))))
	return f.value
}
