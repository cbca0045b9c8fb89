package calibrate

import "math"

// solve finds the mode and its covariance. F with the gaits held is smooth; the gaits are
// chosen anew by the rule, and the results' own scatter is weighed into the noise, until
// neither matters. Where results lie far off there may be several minima: it then starts
// from further places and keeps the lowest.
func (p *problem) solve() error {
	starts := p.starts()
	err := p.descend(starts[0])
	if err == nil && !p.outlying() {
		return p.spread()
	}
	best := p.keep(err)
	for _, z := range starts[1:] {
		if e := p.descend(z); e == nil {
			best = p.better(best)
		} else if p.ctx.Err() != nil {
			return e
		}
	}
	if best.z == nil {
		return best.err
	}
	if err := p.descend(best.z); err != nil {
		return err
	}
	return p.spread()
}

// found is a minimum found before.
type found struct {
	z     []float64
	value float64
	err   error
}

func (p *problem) keep(err error) found {
	if err != nil {
		return found{err: err}
	}
	return found{z: append([]float64(nil), p.z...), value: p.credit()}
}

func (p *problem) better(than found) found {
	if now := p.keep(nil); than.z == nil || now.value < than.value {
		return now
	}
	return than
}

// credit is F with what its scales cost, so that minima of different noise compare.
func (p *problem) credit() float64 {
	sum := p.value
	p.each(func(_ int, k kind) {
		if !k.bound {
			sum += math.Log(k.scale)
		}
	})
	return sum
}

// point is where a descent stands.
type point struct {
	z, resid, jac []float64
	value         float64
}

func (p *problem) point() point {
	return point{append([]float64(nil), p.z...), append([]float64(nil), p.resid...), append([]float64(nil), p.jac...), p.value}
}

func (p *problem) restore(q point) {
	p.z, p.resid, p.jac, p.value = append(p.z[:0], q.z...), append(p.resid[:0], q.resid...), append(p.jac[:0], q.jac...), q.value
}
