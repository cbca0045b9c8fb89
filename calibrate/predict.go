package calibrate

import (
	"context"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// A Prediction is the distribution of the time of a race not run yet: the logarithm of the
// moving time is that of the fit, plus a normal part for what is not known of the runner and
// a Student's t part for the day.
type Prediction struct {
	Median time.Duration
	Slope  [effort.Numbers]float64 // ∂ ln T/∂ ln θ, see effort.Fastest

	Unsure float64 // SD of the logarithm for want of knowing the runner
	Noise  float64 // scatter of the day, as Options.Noise

	scale, tails float64
	stopped      time.Duration
}

// Predict returns the time of a race over a result's course, or over a summary of its
// distance, ascent and descent; its own Time is not looked at, its Date only where there is
// a drift (the zero time is On), and Stopped is added. The error is what Fit would say of the ground.
func (e *Estimate) Predict(ctx context.Context, r record.Result) (Prediction, error) {
	r.Splits, r.DNF = nil, false
	if r.Time <= r.Stopped {
		r.Time = unknownTime
	}
	if r.Date.IsZero() {
		r.Date = e.On
	}
	p := e.p.clone(ctx)
	u, err := p.o.prepare(r)
	if err != nil {
		return Prediction{}, fmt.Errorf("calibrate: %w", err)
	}
	if u.whole != nil {
		u.ground, u.whole = u.whole, nil
	}
	p.runs = []*run{u}
	p.resid, p.jac = p.resid[:0], p.jac[:0]
	a, scale, lean := p.athlete(p.z)
	moving, slope, _, err := p.rule(u, a, lean)
	if err != nil {
		return Prediction{}, err
	}
	if p.tilted {
		if _, slope, err = p.held(u, a); err != nil { // the tilt changes slopes little
			return Prediction{}, err
		}
	}
	byZ := make([]float64, p.dims())
	u.slopes(byZ, slope, scale, 1)
	v := quadratic(p.cov, byZ)
	if on := r.Date; p.o.Drift > 0 && on.After(p.on) {
		change := p.o.Drift * slope[effort.HourPower]
		v += change * change * float64(on.Sub(p.on)) / year
	}
	out := Prediction{Slope: slope, Noise: e.Basis.Noise, Unsure: math.Sqrt(v), scale: p.scale, tails: p.o.Tails, stopped: r.Stopped}
	out.Median = effort.Seconds(math.Exp(moving)) + r.Stopped
	return out, nil
}

// unknownTime stands for a time that is not known yet.
const unknownTime = 999 * time.Hour

// below is the probability of an error of less than x in ln(time).
func (p *Prediction) below(x float64) (sum float64) {
	for _, q := range hermite {
		e := (x - q[0]*p.Unsure) / p.scale
		if math.IsInf(p.tails, 1) {
			sum += q[1] * distuv.UnitNormal.CDF(e)
		} else {
			sum += q[1] * distuv.StudentsT{Sigma: 1, Nu: p.tails}.CDF(e)
		}
	}
	return sum
}

// Quantile returns the time that a share of all days undercut, 0 < share < 1.
func (p *Prediction) Quantile(share float64) time.Duration {
	low, top := -5.0, 5.0
	for range 60 {
		if middle := (low + top) / 2; p.below(middle) < share {
			low = middle
		} else {
			top = middle
		}
	}
	return effort.Seconds((p.Median-p.stopped).Seconds()*math.Exp((low+top)/2)) + p.stopped
}

// Share is the inverse of Quantile: the share of all days that are faster than a time.
func (p *Prediction) Share(t time.Duration) float64 { return p.below(p.miss(t)) }

// miss is ln of a time over the median, both without stops.
func (p *Prediction) miss(t time.Duration) float64 {
	return math.Log((t - p.stopped).Seconds() / (p.Median - p.stopped).Seconds())
}

// LogScore returns the logarithm of the density of ln(moving time) at a time: the higher,
// the better it was predicted, in centre and in width.
func (p *Prediction) LogScore(t time.Duration) float64 {
	x, sum := p.miss(t), 0.0
	for _, q := range hermite {
		e := (x - q[0]*p.Unsure) / p.scale
		if math.IsInf(p.tails, 1) {
			sum += q[1] * distuv.UnitNormal.Prob(e) / p.scale
		} else {
			sum += q[1] * distuv.StudentsT{Sigma: 1, Nu: p.tails}.Prob(e) / p.scale
		}
	}
	return math.Log(sum)
}
