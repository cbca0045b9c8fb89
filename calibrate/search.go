package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// settle searches over the closed forms, with the noise weighed until neither moves.
func (d *descent) settle(from []float64) {
	for range noiseRounds {
		before := d.scale
		d.search(from)
		d.weigh(d.near)
		if math.Abs(math.Log(d.scale/before)) < quiet || d.ctx.Err() != nil {
			return
		}
	}
}

// search moves z to the minimum over the closed forms, on the leash, by the Levenberg and
// Marquardt method on the curvature of the terms.
func (d *descent) search(from []float64) {
	damping := 1e-6
	leashed := func() float64 {
		sum := d.value
		for i, v := range d.z {
			sum += d.leash / 2 * (v - from[i]) * (v - from[i])
		}
		return sum
	}
	d.roughly()
	value := leashed()
	for range searchRounds {
		if d.ctx.Err() != nil {
			return
		}
		g, h := d.gradient(), d.curvature(true)
		for i := range g {
			g[i] += d.leash * (d.z[i] - from[i])
			h.SetSym(i, i, (h.At(i, i)+d.leash)*(1+damping))
		}
		delta, decrement := downhill(g, h)
		if !(decrement > resting) {
			return
		}
		before := append([]float64(nil), d.z...)
		for i := range delta {
			d.z[i] -= delta[i]
		}
		d.roughly()
		if next := leashed(); next <= value {
			value, damping = next, damping/10
			continue
		}
		d.z = before
		d.roughly()
		if damping = math.Max(1e-3, 10*damping); damping > 1e8 {
			return
		}
	}
}

// downhill returns H⁻¹g and gᵀH⁻¹g, which is NaN where H is not positive definite. H is
// small, and this in the innermost loop: Cholesky's decomposition by hand takes a fifth of
// the time of a library's, which looks after the condition too.
func downhill(g []float64, h *mat.SymDense) (delta []float64, decrement float64) {
	n := len(g)
	l := make([]float64, n*n)
	delta = append([]float64(nil), g...)
	for i := range n {
		for j := range i + 1 {
			sum := h.At(i, j)
			for k := range j {
				sum -= l[i*n+k] * l[j*n+k]
			}
			if i > j {
				l[i*n+j] = sum / l[j*n+j]
				continue
			}
			if !(sum > 0) {
				return delta, math.NaN()
			}
			l[i*n+i] = math.Sqrt(sum)
		}
		for k := range i {
			delta[i] -= l[i*n+k] * delta[k]
		}
		delta[i] /= l[i*n+i]
		decrement += delta[i] * delta[i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			delta[i] -= l[k*n+i] * delta[k]
		}
		delta[i] /= l[i*n+i]
	}
	return delta, decrement
}
