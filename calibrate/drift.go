package calibrate

import (
	"math"
	"slices"
)

// mostWalks is about how many steps a walk has, which are unknowns: results on more days are
// put on as many evenly spaced ones.
const mostWalks = 60

// wander prepares the random walk of ln(hour power): its steps from the day that the
// answer is for, back and forth through the days of the results, in units of their SD
// given Drift, are unknowns with a standard normal prior.
func (p *problem) wander() {
	p.walks = 0
	for _, u := range p.runs {
		u.drift = nil
	}
	if p.o.Drift == 0 {
		return
	}
	away := p.away()
	var before, after []float64 // distinct days from On, years away
	for _, t := range away {
		switch {
		case t < 0:
			before = append(before, -t)
		case t > 0:
			after = append(after, t)
		}
	}
	slices.Sort(before)
	slices.Sort(after)
	before, after = slices.Compact(before), slices.Compact(after)
	p.walks = len(before) + len(after)
	for i, u := range p.runs {
		u.drift = make([]float64, p.walks)
		t := away[i]
		days, at := before, 0
		if t > 0 {
			days, at = after, len(before)
		}
		from := 0.0
		for i, day := range days {
			if day > math.Abs(t) {
				break
			}
			u.drift[at+i] = p.o.Drift * math.Sqrt(day-from)
			from = day
		}
	}
}

// away is how many years each run is from On, on at most so many different days.
func (p *problem) away() []float64 {
	away := make([]float64, len(p.runs))
	for i, u := range p.runs {
		away[i] = float64(u.result.Date.Sub(p.on)) / year
	}
	days := slices.Clone(away)
	slices.Sort(days)
	if days = slices.Compact(days); len(days) <= mostWalks {
		return away
	}
	step := (days[len(days)-1] - days[0]) / mostWalks
	for i := range away {
		away[i] = math.Round(away[i]/step) * step
	}
	return away
}

// drifts are what EstimateDrift chooses from.
var drifts = [...]float64{0, 0.01, 0.02, 0.03, 0.05, 0.08, 0.12, 0.2, 0.3}

// fewestToDrift is how many results it takes to say anything of change.
const fewestToDrift = 4

// estimateDrift solves with each drift and keeps the most credible: the highest evidence
// by Laplace's approximation, with the prior of the drift.
func (p *problem) estimateDrift() error {
	if len(p.runs) < fewestToDrift {
		p.o.Drift = unknownDrift
		return p.again()
	}
	best, chosen := math.Inf(-1), 0.0
	for _, d := range drifts {
		p.o.Drift = d
		if err := p.again(); err != nil {
			return err
		}
		if c := p.evidence() - d*d/(2*unknownDrift*unknownDrift); c > best {
			best, chosen = c, d
		}
	}
	p.o.Drift = chosen
	return p.again()
}

// again solves anew from the start.
func (p *problem) again() error {
	p.wander()
	return p.solve()
}
