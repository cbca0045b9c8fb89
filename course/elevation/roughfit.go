package elevation

import "math"

// cost is minus the logarithm of Whittle's likelihood and of what is expected beforehand.
// It puts minus its gradient and its expected curvature into step and curvature.
func (r *roughness) cost() float64 {
	sum := r.before()
	for s, power := range r.power {
		a, b := math.Exp(r.log[ranges*s]), math.Exp(r.log[ranges*s+1])
		var step [ranges]float64
		var hh, hu, uu float64 // curvature: hills, both, undulations
		for j, p := range power {
			hills, undulations := a*r.ground[0][j], b*r.ground[1][j]
			total := hills + undulations + r.noise[j]
			h, u, off := hills/total, undulations/total, p/total-1
			sum += math.Log(total) + off
			step[0] += h * off
			step[1] += u * off
			hh, hu, uu = hh+h*h, hu+h*u, uu+u*u
		}
		r.step[ranges*s] += step[0]
		r.step[ranges*s+1] += step[1]
		row := r.curvature.row(ranges * s)
		row[0] += hh
		row[1] += hu
		r.curvature.row(ranges*s + 1)[0] += uu
	}
	return sum
}

// before is the part of the cost that is expected beforehand.
func (r *roughness) before() (sum float64) {
	clear(r.step)
	clear(r.curvature.at)
	for i, v := range r.log {
		off, weight := v, 1.0/(roughSD*roughSD)
		if i >= ranges {
			off, weight = v-r.log[i-ranges], 1/(r.wander*r.wander)
			r.step[i-ranges] += weight * off
			r.curvature.addSquare(i-ranges, []float64{-1, 0, 1}, weight)
		} else {
			r.curvature.row(i)[0] += weight
		}
		r.step[i] -= weight * off
		sum += weight * off * off / 2
	}
	return sum
}

// fit lowers the cost by Fisher's scoring from where it is, and returns minus the
// logarithm of the evidence, by Laplace's method.
func (r *roughness) fit() float64 {
	r.before()
	expected := r.curvature.logDeterminant()
	cost := r.cost()
	last, step := make([]float64, len(r.log)), make([]float64, len(r.log))
	for {
		evidence := cost + (r.curvature.logDeterminant()-expected)/2
		copy(step, r.step)
		copy(last, r.log)
		r.curvature.solve(step)
		longest := 0.0
		for _, v := range step {
			longest = max(longest, math.Abs(v))
		}
		now := cost
		for size := min(1, longestStep/longest); size > 1e-3 && !(now < cost-enough); size /= 2 {
			for i, v := range step {
				r.log[i] = last[i] + size*v
			}
			now = r.cost()
		}
		if !(now < cost-enough) {
			copy(r.log, last)
			return evidence
		}
		cost = now
	}
}

// enough is a decrease of the cost that is not worth a further step.
const enough = 0.05
