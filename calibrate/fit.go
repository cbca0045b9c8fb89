package calibrate

import (
	"context"
	"errors"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Options of Fit. The zero value is ready.
type Options struct {
	// Prior is what is believed before the results. The zero value means Recreational.
	Prior Prior

	// Noise is the SD of the logarithm of one race's time about the model, for the same
	// runner: weather, form, pacing. 0 means DefaultNoise. It is a guess worth
	// NoiseWeight results, into which the results' own scatter is weighed.
	Noise float64

	// NoiseWeight is how many results the guess of Noise is worth. 0 means 50, or 4
	// where the results contradict the guess at the level of 1 % (chi-square).
	NoiseWeight float64

	// Base gives the athlete's other numbers: economy, fastest walk, slowest run.
	Base effort.Athlete

	// Surroundings of all results.
	Surroundings effort.Surroundings

	// Step is the length in metres of the cells in which courses are run. 0 means 100.
	Step float64
}

// DefaultNoise is the scatter of one runner's races about the model, 3 %: of the order
// of what closely spaced races of one runner differ by. [Our own; common practice, no
// source.]
const DefaultNoise = 0.03

// The causes for which results cannot be fitted.
var (
	ErrNoResults = errors.New("no results to fit")
	ErrPrior     = errors.New("prior out of range")
	ErrOption    = errors.New("option out of range")
	ErrNoFit     = errors.New("no athlete of the model comes near the results")
)

// An Estimate is an athlete and how well the results tell of them.
type Estimate struct {
	Athlete effort.Athlete

	// Basis is what the numbers rest on: the covariance of their logarithms from the
	// inverse Hessian of the negative log posterior, the noise, the longest result.
	Basis effort.Basis

	Residuals []Residual
	Warnings  []string

	prior   Prior
	freedom float64 // of the noise
}

// A Residual is one result beside the fit.
type Residual struct {
	Result record.Result
	Fitted time.Duration // the model's fastest time

	// Log is ln(time/fitted): above 0 the race was slower than the fit.
	Log float64
}

// Fit returns the athlete whose fastest times come closest to the results with role fit
// or none, under the prior. One result is enough for an hour power; what the others
// rest on is said in Warnings. A result with Ground is run over that course, any other
// over a summary of its distance, ascent and descent.
//
// Errors: a result that fails its Check, ErrNoResults, ErrPrior, ErrOption, ErrNoFit, or
// the context's.
func Fit(ctx context.Context, results []record.Result, o Options) (*Estimate, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	p, err := newProblem(ctx, results, o)
	if err != nil {
		return nil, err
	}
	if err := p.solve(); err != nil {
		return nil, err
	}
	return p.report(), nil
}

func (o Options) filled() (Options, error) {
	if o.Prior == (Prior{}) {
		o.Prior = Recreational()
	}
	if o.Noise == 0 {
		o.Noise = DefaultNoise
	}
	if o.Step == 0 {
		o.Step = 100
	}
	if !(o.Noise > 0 && o.Noise <= 1) || !(o.NoiseWeight >= 0) {
		return o, fmt.Errorf("calibrate: %w: noise %g worth %g results", ErrOption, o.Noise, o.NoiseWeight)
	}
	if !(o.Step >= 1 && o.Step <= 10_000) {
		return o, fmt.Errorf("calibrate: %w: step %g m is not within 1 to 10000 m", ErrOption, o.Step)
	}
	return o, o.Prior.check()
}

// SE returns the standard error of the logarithm of a number: about the relative
// standard error of the number itself.
func (e *Estimate) SE(n effort.Number) float64 { return math.Sqrt(e.Basis.Cov[n][n]) }

// Interval returns the ends of the central interval that holds a share of the posterior
// of a number, 0 < share < 1: Student's t about the mode, on the logarithm.
func (e *Estimate) Interval(n effort.Number, share float64) (low, high float64) {
	q := distuv.StudentsT{Sigma: 1, Nu: e.freedom}.Quantile((1 + share) / 2)
	w := math.Exp(q * e.SE(n))
	return e.Athlete.Get(n) / w, e.Athlete.Get(n) * w
}

// Informed returns which part of the prior's variance of a number the results removed:
// 0 where they said nothing of it, near 1 where they settled it.
func (e *Estimate) Informed(n effort.Number) float64 {
	sd := e.prior[n].LogSD
	if sd == 0 {
		return 0
	}
	return 1 - e.Basis.Cov[n][n]/(sd*sd)
}

// covariance returns that of the logarithms, from that in prior SDs.
func (p *problem) covariance() (cov [effort.Numbers][effort.Numbers]float64) {
	for i := range effort.Numbers {
		for j := range effort.Numbers {
			cov[i][j] = p.cov.At(i, j) * p.scale[i] * p.scale[j]
		}
	}
	return cov
}

// freedom is how many numbers the results, rather than the prior, decide.
func freedom(cov *mat.SymDense) float64 { return effort.Numbers - mat.Trace(cov) }
