package cohort

import "math"

// fill computes the covariance of athlete a's results, effects taken as known, into dst.
func (p *problem) fill(dst []float64, a int, s *spreads) {
	o := p.of(a)
	n := len(o)
	c := s.covariance()
	for i := range o {
		for j := range i + 1 {
			v := quadratic(&c, &o[i].s, &o[j].s) + s.kept(o[i].day-o[j].day)
			if o[i].course == o[j].course {
				v += s.again * s.again
			}
			if i == j {
				v += s.errorVariance(&o[i]) / p.weight[p.first[a]+i]
			}
			dst[i*n+j], dst[j*n+i] = v, v
		}
	}
}

// kept is the covariance of the fitness over so many days.
func (s *spreads) kept(days float64) float64 {
	return s.drift * s.drift * math.Exp(-math.Abs(days)/s.memory)
}

func (s *spreads) errorVariance(o *obs) float64 {
	e := s.scale(o.size)
	return e * e
}

func quadratic(c *[numbers][numbers]float64, x, y *[numbers]float64) float64 {
	sum := 0.0
	for i := range numbers {
		for j := range numbers {
			sum += float64(x[i] * float64(c[i][j]*y[j]))
		}
	}
	return sum
}

// factorBlock makes athlete a's factor and inverse anew.
func (p *problem) factorBlock(a int) {
	b, n := &p.blocks[a], p.first[a+1]-p.first[a]
	p.fill(b.l, a, &p.spreads)
	if b.bad = !factor(b.l, n); b.bad {
		return
	}
	inverse(b.inv, b.l, n, make([]float64, n))
}

// sums returns the sum of the effects on each of athlete a's results.
func (p *problem) sums(dst []float64, a int, effects []float64) {
	nx := p.nx()
	for i, o := range p.of(a) {
		dst[i] = dot(o.x, effects) + effects[nx+o.course] + effects[nx+p.courses+o.edition]
	}
}

// spreadBack adds to dst the transpose of sums.
func (p *problem) spreadBack(dst []float64, a int, v []float64) {
	nx := p.nx()
	for i, o := range p.of(a) {
		for k, x := range o.x {
			dst[k] += float64(x * v[i])
		}
		dst[nx+o.course] += v[i]
		dst[nx+p.courses+o.edition] += v[i]
	}
}

// residuals leaves in each block what the effects leave of its results.
func (p *problem) residuals(a int) {
	b := &p.blocks[a]
	p.sums(b.resid, a, p.effects)
	for i, o := range p.of(a) {
		b.resid[i] = o.y - b.resid[i]
	}
}

// deviation is the posterior mean of athlete a's deviations: Σ Sᵀ V⁻¹ r.
func (p *problem) deviation(a int) (d [numbers]float64) {
	b, o := &p.blocks[a], p.of(a)
	v := make([]float64, len(o))
	times(v, b.inv, len(o), b.resid)
	var g [numbers]float64
	for i := range o {
		for k := range numbers {
			g[k] += float64(o[i].s[k] * v[i])
		}
	}
	c := p.spreads.covariance()
	for i := range numbers {
		d[i] = dot(c[i][:], g[:])
	}
	return d
}
