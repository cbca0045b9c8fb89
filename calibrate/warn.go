package calibrate

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort"
)

// The bounds of the warnings.
const (
	littleInformed = 0.4 // part of the prior's variance removed
	noisy          = 2   // times the noise expected
	offFit         = 2   // times the noise found, and
	outlyingGuess  = 3   // times the noise expected
	longSpan       = 3 * 365 * 24 * time.Hour
)

func (e *Estimate) warn(p *problem) {
	say := func(format string, args ...any) { e.Warnings = append(e.Warnings, fmt.Sprintf(format, args...)) }
	e.warnFew(say)
	if scatter := p.scatter(); scatter > noisy*p.o.Noise {
		say("the results scatter by %.1f %% about the fit, more than the %.1f %% expected: check them", 100*scatter, 100*p.o.Noise)
	}
	for _, r := range e.Residuals {
		off := math.Abs(r.Log)
		if off > offFit*e.Basis.Noise && off > outlyingGuess*p.o.Noise && !(r.Result.DNF && r.Log > 0) {
			say("%s is %+.0f %% off the fit", describe(r), 100*math.Expm1(r.Log))
		}
	}
	e.warnSame(say)
	e.warnSpan(p, say)
	for _, u := range p.dropped {
		say("the splits of %s are not used: no pace takes that time", describe(Residual{Result: u.result}))
	}
	if p.rough > 0 {
		say("the fit is rough: its numbers may be off by %.1g of their standard errors", p.rough)
	}
	if p.strange() {
		say("the posterior is not near normal: intervals are rough, and a sample of it tells more")
	}
	if p.doubtful {
		say("the posterior is not curved downward in every direction: the standard errors are approximate")
	}
}

// warnFew says what little the results tell.
func (e *Estimate) warnFew(say func(string, ...any)) {
	finished := 0
	for _, r := range e.Residuals {
		if !r.Result.DNF {
			finished++
		}
	}
	switch finished {
	case 0:
		say("no result was finished: those there bound the hour power from below, everything else is what is usual for runners")
	case 1:
		say("only one result: it sets the hour power, everything else is what is usual for runners")
	case 2:
		say("only two results: the hour power rests on them, the fade on what is usual for runners")
	}
	if finished < 2 {
		return
	}
	for _, n := range []effort.Number{effort.Endurance, effort.Fade} {
		if e.p.o.Prior[n].LogSD > 0 && e.Informed(n) < littleInformed {
			say("the results say little about the %v: %.3g is mostly what is usual for runners", n, e.Athlete.Get(n))
		}
	}
}

// warnSame says which results look like one given twice, and whether all are.
func (e *Estimate) warnSame(say func(string, ...any)) {
	type race struct {
		day      string
		distance float64
		time     time.Duration
		runner   string
	}
	seen, all := map[race]int{}, map[race]bool{}
	for _, r := range e.Residuals {
		k := race{r.Result.Date.Format(time.DateOnly), r.Result.Length(), r.Result.Time, r.Result.Runner}
		if seen[k]++; seen[k] == 2 {
			say("%s is there more than once: it counts each time", describe(r))
		}
		k.day = ""
		all[k] = true
	}
	if len(all) == 1 && len(e.Residuals) > 2 {
		say("all results are alike: they tell one number of the runner and nothing of the scatter")
	}
}

// warnSpan says that a runner may have changed.
func (e *Estimate) warnSpan(p *problem, say func(string, ...any)) {
	first, last := e.Residuals[0].Result.Date, e.Residuals[0].Result.Date
	for _, r := range e.Residuals {
		if r.Result.Date.Before(first) {
			first = r.Result.Date
		}
		if r.Result.Date.After(last) {
			last = r.Result.Date
		}
	}
	if last.Sub(first) > longSpan && p.o.Drift == 0 && p.o.HalfLife == 0 {
		say("the results span %.0f years, but the fit takes the runner as unchanged", last.Sub(first).Hours()/24/365.25)
	}
}

// describe names a result for a warning.
func describe(r Residual) string {
	s := fmt.Sprintf("the result of %s over %.1f km", r.Result.Date.Format(time.DateOnly), r.Result.Length()/1000)
	if r.Result.Race != "" {
		s = fmt.Sprintf("the result %q of %s", r.Result.Race, r.Result.Date.Format(time.DateOnly))
	}
	return s
}
