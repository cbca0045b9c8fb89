package elevation

import (
	"cmp"
	"math"
	"slices"
)

// driftRate is how fast a barometer's zero wanders, m²/m: 8 m in 10 km, as by 1 hPa in an
// hour's running. [Our own; 1 hPa is 8.3 m of air at sea level by the hydrostatic
// equation]
const driftRate = 8 * 8 / 10e3

// driftSlope is the slope of a correction above which the known heights are doubted.
const driftSlope = 0.005

// removeDrift subtracts a drift that takes the recording to the known heights. The drift
// is a random walk along the distance, seen at each known height with an error; its
// posterior mean is straight between the known heights and constant beyond them.
func (r *recording) removeDrift(known []Height) {
	x, offset, variance := r.offsets(known)
	r.held = held{x, variance}
	if len(x) == 0 {
		return
	}
	drift := walk(x, offset, variance)
	at := r.known()
	from, to := r.distance[at[0]], r.distance[at[len(at)-1]]
	first := r.elevation[at[0]]
	k := 0
	for i, d := range r.distance {
		for k+1 < len(x) && x[k+1] <= d {
			k++
		}
		r.elevation[i] -= along(x, drift, k, d)
	}
	r.change(from, to, Drift, first, -drift[0])
	for k := 1; k < len(x); k++ {
		if slope := (drift[k] - drift[k-1]) / (x[k] - x[k-1]); math.Abs(slope) > driftSlope {
			r.warn("known heights at %.2f and %.2f km differ from the recording by %+.1f and %+.1f m: "+
				"more than a barometer drifts on such a way", x[k-1]/1000, x[k]/1000, -drift[k-1], -drift[k])
		}
	}
}

// held are the places at which a drift was held against known heights, with the variances
// of what is left there.
type held struct {
	place, variance []float64
}

// driftKnots is how far apart in metres a drift may bend: the weather takes a quarter of
// an hour and more. [Our own]
const driftKnots = 2000

// left is the variance that what is left of the drift adds to a linear form of the heights
// at the nodes: the drift is straight between knots, a random walk from knot to knot, and
// seen at the places where it was held. Without any it is not known, and 0.
func (h held) left(form []float64, start, spacing float64) float64 {
	if len(h.place) == 0 {
		return 0
	}
	length := spacing * float64(len(form)-1)
	apart := length / max(1, math.Round(length/driftKnots))
	knots := int(math.Round(length/apart)) + 1
	walk, at := newBand(knots, 1), make([]float64, knots)
	between := func(x float64) (knot int, share float64) {
		knot = min(max(int(x/apart), 0), knots-2)
		return knot, min(max(x/apart-float64(knot), 0), 1)
	}
	for i := 1; i < knots; i++ {
		walk.addSquare(i-1, []float64{-1, 1}, 1/(driftRate*apart))
	}
	for k, x := range h.place {
		i, share := between(x - start)
		walk.addSquare(i, []float64{1 - share, share}, 1/h.variance[k])
	}
	for k, f := range form {
		i, share := between(float64(k) * spacing)
		at[i] += (1 - share) * f
		at[i+1] += share * f
	}
	if !walk.factorise() {
		return math.NaN()
	}
	return walk.variance(at)
}

// along is the drift at d, the last place before it being x[k].
func along(x, drift []float64, k int, d float64) float64 {
	if d <= x[k] || k+1 == len(x) {
		return drift[k]
	}
	return drift[k] + (d-x[k])/(x[k+1]-x[k])*(drift[k+1]-drift[k])
}

// Around a known height the recording is taken over this reach to either side.
const knownReach = 30 // m

// offsets compares the recording with the known heights: the places, by how much it is
// too high there, and the variance of that. Places beyond its ends and those without a
// height near are passed over with a warning.
func (r *recording) offsets(known []Height) (x, offset, variance []float64) {
	known = slices.Clone(known)
	slices.SortStableFunc(known, func(a, b Height) int { return cmp.Compare(a.Distance, b.Distance) })
	at := r.known()
	for _, h := range known {
		var near []int
		low, _ := slices.BinarySearchFunc(at, h.Distance-knownReach, func(i int, x float64) int { return cmp.Compare(r.distance[i], x) })
		for _, i := range at[low:] {
			if r.distance[i] > h.Distance+knownReach {
				break
			}
			near = append(near, i)
		}
		if len(near) == 0 || h.Distance < r.distance[0]-knownReach || h.Distance > r.distance[len(r.distance)-1]+knownReach {
			r.warn("known height at %.2f km: no recorded height is near, not used", h.Distance/1000)
			continue
		}
		seen, scatter := r.around(near, h.Distance)
		sd := h.SD
		if sd == 0 {
			sd = DefaultHeightSD
		}
		if n := len(x); n > 0 && h.Distance-x[n-1] < 1 { // two heights for one place: the mean
			weight := variance[n-1] / (variance[n-1] + sd*sd + scatter)
			offset[n-1] += weight * (seen - h.Elevation - offset[n-1])
			variance[n-1] *= 1 - weight
			continue
		}
		x, offset = append(x, h.Distance), append(offset, seen-h.Elevation)
		variance = append(variance, sd*sd+scatter)
	}
	return x, offset, variance
}

// around is the recorded height at a place by the line through the points near it, and
// the variance of that. Of fewer than four it is the mean, as if without error.
func (r *recording) around(near []int, x float64) (height, variance float64) {
	l := r.line(near)
	if len(near) < 4 {
		return l.mean, 0
	}
	for _, i := range near {
		off := r.elevation[i] - l.at(r.distance[i])
		variance += off * off
	}
	n := float64(len(near))
	return l.at(x), variance / (n - 2) / n
}

// walk is the posterior mean of a random walk at places where it was seen with errors.
func walk(x, seen, variance []float64) []float64 {
	a, out := newBand(len(x), 1), make([]float64, len(x))
	for k := range x {
		a.addSquare(k, []float64{1}, 1/variance[k])
		out[k] = seen[k] / variance[k]
		if k > 0 {
			a.addSquare(k-1, []float64{-1, 1}, 1/(driftRate*(x[k]-x[k-1])))
		}
	}
	a.factorise()
	a.solve(out)
	return out
}
