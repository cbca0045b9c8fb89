package cohort

import (
	"context"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// The degrees of freedom of the Student's t are held within these.
const (
	leastFreedom, mostFreedom = 2.5, 60.0
)

// weigh sets the weights of results and effects to what Student's t makes of their squared
// deviations, expected over the posterior, (ν+1)/(ν + E[d²]/scale²), and then the degrees
// of freedom and the scales of the effects, which need no search.
func (p *problem) weigh(ctx context.Context, workers int, held bool) error {
	square := make([]float64, len(p.obs)) // in scales
	if err := each(ctx, workers, p.athletes(), func(a int) { p.squares(square, a) }); err != nil {
		return err
	}
	s := &p.spreads
	for i, d := range square {
		p.weight[i] = heaviness(s.nu, d)
	}
	courses, editions := p.effectSquares()
	weighEffects(p.courseWeight, courses, s.course, s.courseNu)
	weighEffects(p.editionWeight, editions, s.edition, s.editionNu)
	if held {
		return nil
	}
	s.nu = freedom(s.nu, square)
	s.course, s.courseNu = effectScale(courses, p.courseWeight, s.course, s.courseNu, usualSpreads().course, s.firmness)
	s.edition, s.editionNu = effectScale(editions, p.editionWeight, s.edition, s.editionNu, usualSpreads().edition, s.firmness)
	return nil
}

// heaviness is the weight of a squared deviation; without an end to ν all weigh 1.
func heaviness(nu, square float64) float64 {
	if math.IsInf(nu, 1) {
		return 1
	}
	return (nu + 1) / (nu + square)
}

// squares are E[ε²]/scale² of athlete a's results.
func (p *problem) squares(dst []float64, a int) {
	b, o := &p.blocks[a], p.of(a)
	n := len(o)
	kr, kc := make([]float64, n), make([]float64, n)
	times(kr, b.inv, n, b.resid)
	for i := range o {
		row := b.inv[i*n : i*n+n]
		clear(kc)
		times(kc, b.cov, n, row)
		scale2 := p.spreads.errorVariance(&o[i])
		v := scale2 / p.weight[p.first[a]+i]
		mean := v * kr[i]
		dst[p.first[a]+i] = (mean*mean + v - v*v*row[i] + v*v*dot(row, kc)) / scale2
	}
}

// effectSquares are E[u²] of the courses and editions with results; the others are NaN.
func (p *problem) effectSquares() (courses, editions []float64) {
	nx := p.nx()
	courses, editions = nans(p.courses), nans(p.editions)
	for i := range p.obs {
		o := &p.obs[i]
		u, v := p.effects[nx+o.course], p.effects[nx+p.courses+o.edition]
		courses[o.course] = u*u + p.spread[o.course]
		editions[o.edition] = v*v + p.alone[o.edition]
	}
	return courses, editions
}

func nans(n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = math.NaN()
	}
	return v
}

func weighEffects(weight, square []float64, scale, nu float64) {
	for i, d := range square {
		weight[i] = 1
		if !math.IsNaN(d) {
			weight[i] = heaviness(nu, d/(scale*scale))
		}
	}
}

// effectScale is the scale of effects and their degrees of freedom, a guess counting as
// effectGuess of them.
func effectScale(square, weight []float64, scale, nu, guess, firmness float64) (newScale, newNu float64) {
	sum, count := effectGuess*firmness*guess*guess, effectGuess*firmness
	var relative []float64
	for i, d := range square {
		if !math.IsNaN(d) {
			sum += weight[i] * d
			count++
			relative = append(relative, d/(scale*scale))
		}
	}
	return math.Sqrt(math.Max(sum/count, 1e-12)), freedom(nu, relative)
}

// freedom solves for the ν that the squares make most likely, given how it weighed them:
//
//	ln(ν/2) − ψ(ν/2) + 1 + mean(E[ln w] − E[w]) = 0,  E[ln w] = ψ((ν₀+1)/2) − ln((ν₀+d²)/2)
//
// (Liu & Rubin 1995, Statistica Sinica 5:19, from memory; the squares are expected ones.)
func freedom(nu float64, square []float64) float64 {
	if math.IsInf(nu, 1) || len(square) < 30 {
		return nu
	}
	mean := 0.0
	for _, d := range square {
		mean += mathext.Digamma((nu+1)/2) - math.Log((nu+d)/2) - heaviness(nu, d)
	}
	mean /= float64(len(square))
	excess := func(x float64) float64 { return math.Log(x/2) - mathext.Digamma(x/2) + 1 + mean }
	low, top := leastFreedom, mostFreedom
	for range 50 {
		middle := math.Sqrt(low * top)
		if excess(middle) > 0 {
			low = middle
		} else {
			top = middle
		}
	}
	// This ν is one step of a slow iteration: go further the same way.
	return math.Max(leastFreedom, math.Min(mostFreedom, nu*math.Pow(low/nu, 2.5)))
}
