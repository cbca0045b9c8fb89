package cohort

import (
	"context"
	"math"

	"gonum.org/v1/gonum/optimize"
)

// searchSteps is how many steps a round gives to the athletes' spreads: each round starts
// from where the last ended, so they need not arrive.
const searchSteps = 6

// search moves the athletes' spreads uphill on the expected log posterior: less
//
//	½ Σ (ln|V| + rᵀV⁻¹r + tr V⁻¹C)
//
// over athletes, r the residuals from the effects and C the posterior covariance of those.
func (p *problem) search(ctx context.Context, workers, steps int) error {
	on := p.spreads.active()
	whole := p.spreads.vector()
	e := &expected{p: p, ctx: ctx, workers: workers, on: on, whole: whole, unit: p.units()}
	var start []float64
	for i, v := range whole {
		if on[i] {
			start = append(start, v/e.unit[i])
		}
	}
	problem := optimize.Problem{
		Func: func(x []float64) float64 { return e.at(x) },
		Grad: func(grad, x []float64) { e.at(x); copy(grad, e.slope) },
		Status: func() (optimize.Status, error) {
			if ctx.Err() != nil {
				return optimize.Failure, ctx.Err()
			}
			return optimize.NotTerminated, nil
		},
	}
	before := e.at(start)
	settings := &optimize.Settings{
		MajorIterations: steps, FuncEvaluations: 4 * steps, GradientThreshold: 1e-7,
		Converger: optimize.NeverTerminate{},
	}
	result, _ := optimize.Minimize(problem, start, settings, &optimize.BFGS{})
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if result != nil && result.F < before {
		p.spreads.set(e.merge(result.X))
	}
	return nil
}

// expected is the function that search goes down on, with its slope.
type expected struct {
	p       *problem
	ctx     context.Context
	workers int
	on      [spreadCount]bool
	unit    [spreadCount]float64 // of x, about what each is uncertain by
	whole   []float64
	last    []float64
	value   float64
	slope   []float64
}

func (e *expected) merge(x []float64) []float64 {
	v, k := append([]float64(nil), e.whole...), 0
	for i := range v {
		if e.on[i] {
			v[i] = x[k] * e.unit[i]
			k++
		}
	}
	return v
}

func (e *expected) at(x []float64) float64 {
	if e.last != nil && (same(e.last, x) || e.ctx.Err() != nil) {
		return e.value
	}
	e.last = append(e.last[:0], x...)
	v := e.merge(x)
	s := e.p.spreads
	s.set(v)
	slope := make([]float64, spreadCount)
	parts := make([]part, e.p.athletes())
	_ = each(e.ctx, e.workers, len(parts), func(a int) { parts[a] = e.p.expectedOf(a, &s) })
	e.value = s.belief(v, slope)
	for i := range parts {
		e.value += parts[i].value
		for k := range slope {
			slope[k] += parts[i].slope[k]
		}
	}
	e.slope = e.slope[:0]
	for k, g := range slope {
		if e.on[k] {
			e.slope = append(e.slope, g*e.unit[k])
		}
	}
	return e.value
}

// units are about the standard errors of the vector's parts, by the counts of athletes and
// results: the search starts from a round valley in them.
func (p *problem) units() (u [spreadCount]float64) {
	athletes, results := 1+float64(p.athletes()), 1+float64(len(p.obs))
	for i := range u {
		u[i] = 2 / math.Sqrt(athletes)
	}
	u[0] = 1 / math.Sqrt(2*athletes)
	u[9], u[10] = 1/math.Sqrt(2*results), 1/math.Sqrt(results)
	return u
}

func same(a, b []float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// A part is one athlete's.
type part struct {
	value float64
	slope [spreadCount]float64
}

func (p *problem) expectedOf(a int, s *spreads) (out part) {
	b, n := &p.blocks[a], p.first[a+1]-p.first[a]
	if n == 0 {
		return out
	}
	buffer := make([]float64, 4*n*n+n)
	l, k, m, g := buffer[:n*n], buffer[n*n:2*n*n], buffer[2*n*n:3*n*n], buffer[3*n*n:4*n*n]
	p.fill(l, a, s)
	if !factor(l, n) {
		out.value = math.Inf(1)
		return out
	}
	inverse(k, l, n, buffer[4*n*n:])
	out.value = logDet(l, n)
	for i := range n {
		for j := range n {
			m[i*n+j] = b.resid[i]*b.resid[j] + b.cov[i*n+j]
			out.value += k[i*n+j] * m[i*n+j]
		}
	}
	out.value /= 2
	// g = ½ (K − K M K), the slope by V.
	for i := range n {
		for j := range n {
			l[i*n+j] = dot(k[i*n:i*n+n], m[j*n:j*n+n])
		}
	}
	for i := range n {
		for j := range i + 1 {
			v := (k[i*n+j] - dot(l[i*n:i*n+n], k[j*n:j*n+n])) / 2
			g[i*n+j], g[j*n+i] = v, v
		}
	}
	p.chain(&out.slope, g, a, s)
	return out
}

// chain turns the slope by V into that by the vector of spreads.
func (p *problem) chain(slope *[spreadCount]float64, g []float64, a int, s *spreads) {
	o := p.of(a)
	n := len(o)
	var by [numbers][numbers]float64
	for i := range o {
		for j := range o {
			v := g[i*n+j]
			days := math.Abs(o[i].day - o[j].day)
			kept := v * s.kept(days)
			slope[6] += 2 * kept
			slope[7] += kept * days / s.memory
			if o[i].course == o[j].course {
				slope[8] += 2 * v * s.again * s.again
			}
			if i == j {
				e := 2 * v * s.errorVariance(&o[i]) / p.weight[p.first[a]+i]
				slope[9] += e
				slope[10] += e * o[i].size
			}
			for x := range numbers {
				for y := range numbers {
					by[x][y] += v * o[i].s[x] * o[j].s[y]
				}
			}
		}
	}
	l := [numbers][numbers]float64{{s.root[0]}, {s.root[1], s.root[2]}, {s.root[3], s.root[4], s.root[5]}}
	at := 0
	for x := range numbers {
		for y := range x + 1 {
			d := 0.0
			for z := range numbers {
				d += 2 * by[x][z] * l[z][y]
			}
			if x == y {
				slope[at] = d * l[x][y]
			} else {
				slope[at] = d * crossUnits[at]
			}
			at++
		}
	}
}
