package calibrate

import (
	"context"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/mat"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// problem is one fit in progress: the negative log posterior
//
//	F(z) = ½ Σ z² + Σ term(r/s)
//
// over the unknowns z, the athlete's numbers in prior SDs from their medians, then the
// tilt in its own, then the steps of the walk in theirs, and residuals r = ln(time/fitted)
// with their scales s.
type problem struct {
	ctx   context.Context
	o     Options
	runs  []*run
	on    time.Time
	in    *effort.Integrator
	trace *effort.Traverse // the last that was gone over

	tilted bool // whether there are splits
	walks  int  // steps of the walk
	frozen int  // an unknown that is held, or -1
	deaf   bool // whether the noise is held

	scale, splitScale float64 // of the errors
	loose             bool    // the results contradict the guess of the noise

	dropped []*run // whose splits no pace explains

	z     []float64
	resid []float64
	jac   []float64 // of each residual, d ln model/dz
	value float64

	bent     *mat.SymDense // see bend
	cov      *mat.SymDense // of z at the solution
	rough    float64       // how far the point may lie from the mode, in SDs, if that is much
	doubtful bool          // the Hessian was not positive definite
}

// tilt is the place of the tilt among the unknowns.
const tilt = effort.Numbers

// dims is how many unknowns there are.
func (p *problem) dims() int { return tilt + 1 + p.walks }

func newProblem(ctx context.Context, results []record.Result, o Options) (*problem, error) {
	p := &problem{ctx: ctx, o: o, frozen: -1}
	if err := p.prepare(results); err != nil {
		return nil, err
	}
	for _, u := range p.runs {
		p.tilted = p.tilted || len(u.took) > 0
	}
	in, err := effort.NewIntegrator(p.runs[0].ground, effort.Usual(10), p.runs[0].surroundings)
	p.in = in
	return p, err
}

// athlete is who stands at z, with their tilt.
func (p *problem) athlete(z []float64) (a effort.Athlete, scale [effort.Numbers]float64, lean float64) {
	a, scale = p.o.Prior.athlete(p.o.Base, z)
	if p.tilted {
		lean = math.Max(-0.5, math.Min(0.5, p.o.Tilt.Mean+p.o.Tilt.SD*z[tilt]))
	}
	return a, scale, lean
}

// day is the athlete on the day of a run.
func (u *run) day(a effort.Athlete, z []float64) effort.Athlete {
	sum := 0.0
	for i, f := range u.drift {
		sum += f * z[tilt+1+i]
	}
	a.HourPower = math.Max(1, math.Min(40, a.HourPower*math.Exp(sum)))
	return a
}

// residuals appends those at z, the gaits held. A panic in the model must not end the
// process of whoever fits.
func (p *problem) residuals(dst, z []float64) (out []float64, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("calibrate: %w: %v", ErrNoFit, r)
		}
	}()
	a, _, lean := p.athlete(z)
	for _, u := range p.runs {
		if dst, err = p.residualsOf(dst, u, u.day(a, z), lean); err != nil {
			return dst, err
		}
	}
	return dst, nil
}

// residualsOf appends those of one run.
func (p *problem) residualsOf(dst []float64, u *run, a effort.Athlete, lean float64) ([]float64, error) {
	moving, err := p.fastest(u, a, lean)
	if err != nil {
		return dst, err
	}
	dst = append(dst, math.Log(u.seconds)-moving-u.offset)
	if len(u.took) == 0 {
		return dst, nil
	}
	from := len(dst)
	if dst, err = p.sections(dst, u, a, lean); err != nil {
		return dst, err
	}
	for i, took := range u.took {
		dst[from+i] = math.Log(took) - dst[from+i]
	}
	return dst, nil
}

// kind is what a residual is held against.
type kind struct {
	run   *run
	scale float64
	bare  float64 // scale over that of a whole result of weight 1
	bound bool
	split bool
}

// each visits the residuals with what they are held against.
func (p *problem) each(visit func(i int, k kind)) {
	i := 0
	for _, u := range p.runs {
		bare := 1 / math.Sqrt(u.weight)
		visit(i, kind{u, p.scale * bare, bare, u.result.DNF, false})
		i++
		for _, took := range u.took {
			bare := 1 / math.Sqrt(u.weight*took/u.seconds)
			visit(i, kind{u, p.splitScale * bare, bare, false, true})
			i++
		}
	}
}

// term is what residual r adds.
func (p *problem) term(k kind, r float64) term {
	if k.bound {
		return bounded(r/k.scale, p.o.Tails)
	}
	return tailed(r/k.scale, p.o.Tails)
}

// f is the negative log posterior of residuals at z.
func (p *problem) f(z, resid []float64) float64 {
	sum := 0.0
	for _, v := range z {
		sum += v * v / 2
	}
	p.each(func(i int, k kind) { sum += p.term(k, resid[i]).value })
	return sum
}
