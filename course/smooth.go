package course

import "math"

// Grid puts a profile on a uniform grid whose spacing divides the length and is as near
// to step as that allows. Each inner point gets the mean elevation of the straight-line
// profile over one spacing around it, so that dense points count for the ground they
// cover; the two ends keep their elevations.
//
// The distances must increase, the first being 0; there must be at least two.
func Grid(distance, elevation []float64, step float64) (x, z []float64) {
	length := distance[len(distance)-1]
	n := int(math.Max(1, math.Round(length/step)))
	step = length / float64(n)
	x, z = make([]float64, n+1), make([]float64, n+1)
	area := integrator{distance: distance, elevation: elevation}
	before := area.to(step / 2)
	for i := 1; i < n; i++ {
		x[i] = float64(i) * step
		after := area.to(x[i] + step/2)
		z[i] = (after - before) / step
		before = after
	}
	x[n] = length
	z[0], z[n] = elevation[0], elevation[len(elevation)-1]
	return x, z
}

// integrator sums the area under a straight-line profile from its start to places
// asked for in ascending order.
type integrator struct {
	distance, elevation []float64
	next                int     // the piece from point next to next+1 is not summed yet
	area                float64 // up to point next
}

func (a *integrator) to(x float64) float64 {
	for a.next+2 < len(a.distance) && a.distance[a.next+1] <= x {
		i := a.next
		a.area += (a.distance[i+1] - a.distance[i]) * (a.elevation[i] + a.elevation[i+1]) / 2
		a.next++
	}
	i := a.next
	run := x - a.distance[i]
	slope := (a.elevation[i+1] - a.elevation[i]) / (a.distance[i+1] - a.distance[i])
	return a.area + run*(a.elevation[i]+slope*run/2)
}

// Smooth returns the elevations of a uniform grid smoothed by local linear regression:
// at each point a straight line is fitted to the points within half a width on either
// side, weighted by the tricube (1 − |u|³)³ of their distance in half widths, and its
// value there is taken. Straight ground is returned unchanged, at the ends too. A
// width of two spacings or less changes nothing.
//
// Source: Cleveland 1979, J Am Stat Assoc 74:829 (the weights, from memory).
func Smooth(elevation []float64, spacing, width float64) []float64 {
	out := make([]float64, len(elevation))
	half := width / 2 / spacing
	// Limited before the conversion: a course of a micrometre has 10⁸ spacings to a width.
	reach := int(min(math.Ceil(half)-1, float64(len(elevation)-1)))
	if reach < 1 {
		copy(out, elevation)
		return out
	}
	weight := make([]float64, reach+1)
	for k := range weight {
		u := float64(k) / half
		weight[k] = math.Pow(1-u*u*u, 3)
	}
	for i := range elevation {
		low, top := max(i-reach, 0), min(i+reach, len(elevation)-1)
		out[i] = localLine(elevation, weight, i, low, top)
	}
	return out
}

// localLine is the value at i of the weighted straight line through points low to top.
func localLine(z, weight []float64, i, low, top int) float64 {
	var s0, s1, s2, t0, t1 float64
	for j := low; j <= top; j++ {
		k := j - i
		w := weight[max(k, -k)]
		u := float64(k)
		dz := z[j] - z[i] // differences keep straight ground exact
		s0 += w
		s1 += w * u
		s2 += w * u * u
		t0 += w * dz
		t1 += w * u * dz
	}
	return z[i] + (s2*t0-s1*t1)/(s2*s0-s1*s1)
}
