package calibrate

import (
	"context"
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// problem is one fit in progress: the negative log posterior
//
//	F(z) = ½ Σ z² + ½ Σ (r/σ)²
//
// over the numbers z in prior SDs from their medians, r = ln(time/fitted).
type problem struct {
	ctx     context.Context
	o       Options
	results []record.Result
	grounds []*effort.Ground
	gaits   [][]effort.Gait // of each ground, held while F is minimised
	in      *effort.Integrator

	noise  float64 // σ
	z      []float64
	failed error // of the model, inside an evaluation

	// At the last point evaluated:
	at      []float64
	value   float64
	grad    []float64
	resid   []float64
	slopes  [][effort.Numbers]float64 // of each residual by z, negated
	athlete effort.Athlete
	scale   [effort.Numbers]float64 // d ln θ/dz

	cov      *mat.SymDense // of z at the solution
	doubtful bool          // the Hessian was not positive definite
}

func newProblem(ctx context.Context, results []record.Result, o Options) (*problem, error) {
	p := &problem{ctx: ctx, o: o, noise: o.Noise, z: make([]float64, effort.Numbers), grad: make([]float64, effort.Numbers)}
	for i, r := range results {
		if r.Role == record.Predict {
			continue
		}
		if err := r.Check(); err != nil {
			return nil, fmt.Errorf("calibrate: result %d: %w", i+1, err)
		}
		g, err := ground(r, o.Step)
		if err != nil {
			return nil, fmt.Errorf("calibrate: result %d: %w", i+1, err)
		}
		p.results, p.grounds = append(p.results, r), append(p.grounds, g)
	}
	if len(p.results) == 0 {
		return nil, fmt.Errorf("calibrate: %w", ErrNoResults)
	}
	p.gaits = make([][]effort.Gait, len(p.grounds))
	in, err := effort.NewIntegrator(p.grounds[0], effort.Usual(10), o.Surroundings)
	p.in = in
	return p, err
}

// ground is what a result was run over.
func ground(r record.Result, step float64) (*effort.Ground, error) {
	if r.Ground != nil {
		return effort.NewGround(r.Ground, step)
	}
	return effort.NewSummaryGround(r.Distance, r.Ascent, r.Descent)
}

// evaluate computes F and its gradient at z, unless it just did.
func (p *problem) evaluate(z []float64) {
	if p.at != nil && equal(p.at, z) {
		return
	}
	p.at = append(p.at[:0], z...)
	a, scale := p.o.Prior.athlete(p.o.Base, z)
	p.scale = scale
	p.athlete, p.resid, p.slopes, p.value = a, p.resid[:0], p.slopes[:0], 0
	for n, v := range z {
		p.value += v * v / 2
		p.grad[n] = v
	}
	for i, r := range p.results {
		fastest, err := p.time(i, a, p.gaits[i])
		if err != nil {
			p.failed, p.value = err, math.NaN()
			return
		}
		e := math.Log(r.Time.Seconds() / fastest.Moving)
		p.value += e * e / (2 * p.noise * p.noise)
		slope := fastest.Slope
		for n := range z {
			slope[n] *= scale[n]
			p.grad[n] -= e / (p.noise * p.noise) * slope[n]
		}
		p.resid, p.slopes = append(p.resid, e), append(p.slopes, slope)
	}
}

// time is the fastest time over result i's ground. A panic in there must not end the
// process, which gonum's optimizer would let it do.
func (p *problem) time(i int, a effort.Athlete, gaits []effort.Gait) (f effort.Fastest, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("calibrate: result %d: %v", i+1, r)
		}
	}()
	if err := p.ctx.Err(); err != nil {
		return f, err
	}
	if err := p.in.Reset(p.grounds[i], a, p.o.Surroundings); err != nil {
		return f, err
	}
	f, err = p.in.Fastest(gaits)
	if errors.Is(err, effort.ErrDemand) && gaits != nil {
		err = nil // an athlete far from any answer, on the way to one
	}
	return f, err
}

const (
	rounds     = 30   // at most, of what follows
	gaitRounds = 8    // in which gaits are chosen anew; then they hold, should they go to and fro
	settled    = 1e-5 // the change of z and of ln σ at which it ends
)

// solve finds the mode and its covariance. F with the gaits held is smooth, which the
// minimiser needs; between its runs the gaits are chosen anew by the rule, and the
// results' own scatter is weighed into the noise, until neither matters.
func (p *problem) solve() error {
	p.start()
	for round := range rounds {
		before := append([]float64(nil), p.z...)
		if round < gaitRounds {
			if err := p.chooseGaits(); err != nil {
				return err
			}
		}
		if err := p.descend(); errors.Is(err, ErrNoFit) && round < gaitRounds {
			continue // the gaits held may be those of quite another runner
		} else if err != nil {
			return err
		}
		p.cov, p.doubtful = invert(p.gaussNewton())
		change := math.Abs(math.Log(p.weighNoise() / p.noise))
		for n, z := range p.z {
			change = math.Max(change, math.Abs(z-before[n]))
		}
		if change < settled {
			break
		}
		p.noise, p.at = p.weighNoise(), nil
	}
	return p.invertHessian()
}

// start puts the hour power where the closed form for the work of each result would, by
// the geometric mean, everything else being the prior's.
func (p *problem) start() {
	prior := p.o.Prior[effort.HourPower]
	if prior.LogSD == 0 {
		return
	}
	a, _ := p.o.Prior.athlete(p.o.Base, p.z)
	sum := 0.0
	for i, r := range p.results {
		sum += math.Log(p.grounds[i].RunningWork(a) / a.UniformWork(r.Time) * a.HourPower / prior.Median)
	}
	p.z[effort.HourPower] = math.Max(-3, math.Min(3, sum/float64(len(p.results))/prior.LogSD))
}

// chooseGaits runs the athlete at z over every ground with the gaits left to the rule.
func (p *problem) chooseGaits() error {
	a, _ := p.o.Prior.athlete(p.o.Base, p.z)
	for i := range p.grounds {
		if _, err := p.time(i, a, nil); err != nil {
			return err
		}
		p.gaits[i] = append(p.gaits[i][:0], p.in.Gaits()...)
	}
	p.at = nil
	return nil
}
