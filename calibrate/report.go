package calibrate

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
)

// report turns the solved problem into an Estimate.
func (p *problem) report() *Estimate {
	a, _, lean := p.athlete(p.z)
	e := &Estimate{Athlete: a, Tilt: p.o.Tilt, Drift: p.o.Drift, On: p.on, p: p}
	e.Basis = effort.Basis{
		Cov: p.covariance(), Noise: p.scale * p.o.widen, Results: len(p.runs),
		Quantile: distuv.StudentsT{Sigma: 1, Nu: p.freedom()}.Quantile(0.95),
	}
	if p.tilted {
		e.Tilt = TiltBelief{lean, p.o.Tilt.SD * math.Sqrt(p.cov.At(tilt, tilt))}
		e.SplitNoise = p.splitScale * p.o.widen
	}
	p.each(func(i int, k kind) {
		if k.split {
			last := &e.Residuals[len(e.Residuals)-1]
			last.Sections = append(last.Sections, p.resid[i])
			return
		}
		r, t := k.run.result, p.term(k, p.resid[i])
		if k.bound {
			t.weight = t.curve
		}
		e.Residuals = append(e.Residuals, Residual{
			Result: r, Fitted: r.Stopped + effort.Seconds(k.run.seconds/math.Exp(p.resid[i])), Log: p.resid[i], Weight: t.weight,
		})
		e.Basis.Longest = max(e.Basis.Longest, r.Time)
	})
	e.warn(p)
	e.Basis.Doubts = e.Warnings
	return e
}
