package calibrate

import (
	"context"
	"errors"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// The causes for which results cannot be fitted.
var (
	ErrNoResults = errors.New("no results to fit")
	ErrPrior     = errors.New("prior out of range")
	ErrOption    = errors.New("option out of range")
	ErrNoFit     = errors.New("no athlete of the model comes near the results")
)

// An Estimate is an athlete and how well the results tell of them.
//
// Its methods that run the model anew (Sample, Profile, Predict) may not be used at once by
// several goroutines.
type Estimate struct {
	Athlete effort.Athlete

	// Tilt is the pacing tilt: the belief in it, or what splits made of that. Athlete and
	// plans do without; it is for forecasts.
	Tilt TiltBelief

	// Basis is what the numbers rest on: the covariance of their logarithms from the
	// inverse Hessian of the negative log posterior, the noise, the longest result.
	Basis effort.Basis

	// SplitNoise is Options.SplitNoise weighed with the splits, 0 without any.
	SplitNoise float64

	// Drift is Options.Drift, given or estimated, and On the day that the hour power is for.
	Drift float64
	On    time.Time

	Residuals []Residual
	Warnings  []string

	p *problem
}

// A Residual is one result beside the fit.
type Residual struct {
	Result record.Result
	Fitted time.Duration // the model's fastest time, stops included

	// Log is ln(time/fitted), both without stops: above 0 the race was slower than the fit.
	Log float64

	// Weight is what the error's distance left of the result's weight: 1 + 1/ν for one on
	// the fit, near 0 for one far off. 0 for a race not finished that bounds nothing.
	Weight float64

	// Sections are ln(time/fitted) between the splits, given the finish time.
	Sections []float64
}

// Fit returns the athlete whose fastest times come closest to the results with role fit
// or none, under the prior. One result is enough for an hour power; what the others
// rest on is said in Warnings. A result with Ground is run over that course, any other
// over a summary of its distance, ascent and descent, section by section where its splits
// know those.
//
// Splits are held against the pace that takes the finish time that was run, and so tell
// of fade and of pacing tilt. A tilt fitted holds for all results. A race not finished
// bounds: the runner could do at least that.
//
// Errors: a result that fails its Check, ErrNoResults, ErrPrior, ErrOption, ErrNoFit, or
// the context's.
func Fit(ctx context.Context, results []record.Result, o Options) (*Estimate, error) {
	o, err := o.filled(len(results))
	if err != nil {
		return nil, err
	}
	p, err := newProblem(ctx, results, o)
	if err != nil {
		return nil, err
	}
	if o.EstimateDrift {
		err = p.estimateDrift()
	} else {
		err = p.solve()
	}
	if err != nil {
		return nil, err
	}
	return p.report(), nil
}
