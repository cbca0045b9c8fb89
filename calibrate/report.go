package calibrate

import (
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
)

// report turns the solved problem into an Estimate.
func (p *problem) report() *Estimate {
	e := &Estimate{Athlete: p.athlete, prior: p.o.Prior}
	e.freedom = p.noiseWeight() + p.free()
	t := distuv.StudentsT{Sigma: 1, Nu: e.freedom}
	e.Basis = effort.Basis{
		Cov: p.covariance(), Noise: p.noise, Quantile: t.Quantile(0.95), Results: len(p.results),
	}
	for i, r := range p.results {
		e.Residuals = append(e.Residuals, Residual{
			Result: r, Fitted: effort.Seconds(r.Time.Seconds() / math.Exp(p.resid[i])), Log: p.resid[i],
		})
		e.Basis.Longest = max(e.Basis.Longest, r.Time)
	}
	e.warn(p)
	e.Basis.Doubts = e.Warnings
	return e
}

// The bounds of the warnings.
const (
	littleInformed = 0.4 // part of the prior's variance removed
	noisy          = 2   // times the noise expected
	outlying       = 2   // times the noise found, and
	outlyingGuess  = 3   // times the noise expected
	longSpan       = 3 * 365 * 24 * time.Hour
)

func (e *Estimate) warn(p *problem) {
	say := func(format string, args ...any) { e.Warnings = append(e.Warnings, fmt.Sprintf(format, args...)) }
	switch len(e.Residuals) {
	case 1:
		say("only one result: it sets the hour power, everything else is what is usual for runners")
	case 2:
		say("only two results: the hour power rests on them, the fade on what is usual for runners")
	}
	if len(e.Residuals) > 1 {
		for _, n := range []effort.Number{effort.Endurance, effort.Fade} {
			if e.prior[n].LogSD > 0 && e.Informed(n) < littleInformed {
				say("the results say little about the %v: %.3g is mostly what is usual for runners", n, e.Athlete.Get(n))
			}
		}
	}
	if scatter := p.scatter(); scatter > noisy*p.o.Noise {
		say("the results scatter by %.1f %% about the fit, more than the %.1f %% expected: check them", 100*scatter, 100*p.o.Noise)
	}
	first, last := e.Residuals[0].Result.Date, e.Residuals[0].Result.Date
	for _, r := range e.Residuals {
		if off := math.Abs(r.Log); off > outlying*p.noise && off > outlyingGuess*p.o.Noise {
			say("%s is %+.0f %% off the fit", describe(r), 100*math.Expm1(r.Log))
		}
		if r.Result.Date.Before(first) {
			first = r.Result.Date
		}
		if r.Result.Date.After(last) {
			last = r.Result.Date
		}
	}
	if last.Sub(first) > longSpan {
		say("the results span %.0f years, but the fit takes the runner as unchanged", last.Sub(first).Hours()/24/365.25)
	}
	if p.doubtful {
		say("the posterior is not curved downward in every direction: the standard errors are approximate")
	}
}

// describe names a result for a warning.
func describe(r Residual) string {
	s := fmt.Sprintf("the result of %s over %.1f km", r.Result.Date.Format(time.DateOnly), r.distance()/1000)
	if r.Result.Race != "" {
		s = fmt.Sprintf("the result %q of %s", r.Result.Race, r.Result.Date.Format(time.DateOnly))
	}
	return s
}

func (r Residual) distance() float64 {
	if r.Result.Ground != nil {
		return r.Result.Ground.Length()
	}
	return r.Result.Distance
}
