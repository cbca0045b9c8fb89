package calibrate

import (
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// A Check is one thing that results may have and results made by the fit may have not.
type Check struct {
	Name           string
	Observed, Made float64 // medians over the draws

	// P is the share of draws in which results made by the fit have more of it: near 0 or
	// near 1 the model misses something of the data.
	P float64
}

// Checks is a posterior predictive check with n draws: it compares the errors that results
// had, by a runner drawn from the posterior, with errors drawn anew, in their spread, in the
// largest, and in how they lean on distance, on climb and on the date (Pearson's
// correlation). The model is taken as straight about the mode. It needs 3 finished results,
// and returns nil for fewer. The same seed gives the same checks.
func (e *Estimate) Checks(seed uint64, n int) []Check {
	var rows []int
	var by [3][]float64
	e.p.each(func(i int, k kind) {
		if k.split || k.bound {
			return
		}
		r := &k.run.result
		rows = append(rows, i)
		by[0] = append(by[0], math.Log(r.Length()))
		by[1] = append(by[1], climb(k.run))
		by[2] = append(by[2], float64(r.Date.Unix()))
	})
	if len(rows) < 3 || n < 1 {
		return nil
	}
	names := []string{"SD of residuals", "largest residual", "residuals by distance", "residuals by climb", "residuals by date"}
	look := func(resid []float64) []float64 {
		largest := 0.0
		for _, r := range resid {
			largest = math.Max(largest, math.Abs(r))
		}
		seen := []float64{stat.StdDev(resid, nil), largest}
		for _, x := range by {
			c := stat.Correlation(x, resid, nil)
			if math.IsNaN(c) {
				c = 0
			}
			seen = append(seen, c)
		}
		return seen
	}
	had, made := make([][]float64, len(names)), make([][]float64, len(names))
	more := make([]float64, len(names))
	for d := range n {
		errs, anew := e.p.replica(rows, seed, d)
		a, b := look(errs), look(anew)
		for i := range names {
			had[i], made[i] = append(had[i], a[i]), append(made[i], b[i])
			if b[i] > a[i] {
				more[i] += 1 / float64(n)
			}
		}
	}
	var out []Check
	for i, name := range names {
		slices.Sort(had[i])
		slices.Sort(made[i])
		out = append(out, Check{
			Name: name, P: more[i],
			Observed: stat.Quantile(0.5, stat.Empirical, had[i], nil), Made: stat.Quantile(0.5, stat.Empirical, made[i], nil),
		})
	}
	return out
}

func climb(u *run) float64 {
	d, up := u.result.Length(), u.result.Ascent
	if u.result.Ground != nil {
		up = u.result.Ground.Relief().Ascent
	}
	return up / d
}

// replica is the errors that results had by a runner drawn, and errors made anew.
func (p *problem) replica(rows []int, seed uint64, draw int) (had, anew []float64) {
	rng := rand.New(rand.NewPCG(seed, uint64(draw)))
	z := p.scattered(p.root(), 1, rng)
	n := p.dims()
	bare := make([]float64, len(p.resid))
	p.each(func(i int, k kind) { bare[i] = k.bare })
	for _, i := range rows {
		off := p.resid[i]
		for j, v := range p.jac[i*n : (i+1)*n] {
			off -= v * (z[j] - p.z[j])
		}
		had = append(had, off/bare[i])
		anew = append(anew, p.draw(z, p.scale, rng).Error)
	}
	return had, anew
}
