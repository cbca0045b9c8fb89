package cohort

import (
	"math"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// bounds keep the medians of a prior within what calibrate takes.
var bounds = map[effort.Number][2]float64{effort.HourPower: {1, 40}, effort.Endurance: {0.01, 0.4}, effort.Braking: {1e-3, 10}}

// prior is that of a new athlete of the usual habit.
func (it *iteration) prior() calibrate.Prior {
	prior := it.o.Prior
	c := it.p.spreads.covariance()
	mean := [numbers]float64{it.p.effects[0], it.p.effects[1], it.p.effects[2]}
	mean[0] = it.closed.ownPower(mean[0], mean[1])
	for k, n := range varying {
		v := math.Exp(mean[k])
		if k > 0 {
			v *= prior[n].Median
		}
		sd := math.Sqrt(c[k][k])
		if k == 0 {
			sd = math.Hypot(sd, it.p.spreads.drift)
		}
		prior[n] = calibrate.Belief{Median: math.Max(bounds[n][0], math.Min(bounds[n][1], v)), LogSD: math.Min(sd, 3)}
	}
	return prior
}

// ownPower turns the logarithm of hour power as the rows have it into the model's own. The
// rows take the slope by the endurance exponent where the prior's median athlete is, a
// slope of ln τ k/(1−k), so that a change of endurance turns about that athlete's hour.
func (c closed) ownPower(logPower, logEndurance float64) float64 {
	return logPower - logEndurance*c.endurance/(1-c.endurance)*(logPower-c.logPower)
}

// athlete is an athlete's posterior at the last result.
func (it *iteration) athlete(a int, results []record.Result) Athlete {
	p := it.p
	o, b, s := p.of(a), &p.blocks[a], &p.spreads
	last := &o[len(o)-1]
	out := Athlete{Runner: it.t.runners[p.athleteIn[a]], Results: len(o), Last: results[it.t.rows[last.row].result].Date}
	var mean, sd [numbers]float64
	c := s.covariance()
	n := len(o)
	k, solved := make([]float64, n), make([]float64, n)
	times(solved, b.inv, n, b.resid)
	for x := range numbers {
		// Fitness is on ln T: through the slope at the last result it is hour power.
		share := 0.0
		if x == 0 {
			share = 1 / last.s[0]
		}
		for i := range o {
			k[i] = dot(c[x][:], o[i].s[:]) + share*s.kept(last.day-o[i].day)
		}
		mean[x] = dot(k, solved)
		variance := c[x][x] + share*share*s.drift*s.drift
		for i := range o {
			variance -= k[i] * dot(b.inv[i*n:i*n+n], k)
		}
		sd[x] = math.Sqrt(math.Max(variance, 0))
	}
	logEndurance := p.effects[1] + mean[1]
	logs := [numbers]float64{it.closed.ownPower(it.centre(it.habits[a])+mean[0], logEndurance), logEndurance, p.effects[2] + mean[2]}
	for n := range effort.Number(effort.Numbers) {
		out.Athlete = out.Athlete.Set(n, it.o.Prior[n].Median)
	}
	out.Athlete.Habit = effort.RunOnly
	for x, n := range varying {
		v := math.Exp(logs[x])
		if x > 0 {
			v *= it.o.Prior[n].Median
		}
		out.Athlete = out.Athlete.Set(n, math.Max(bounds[n][0], math.Min(bounds[n][1], v)))
		out.LogSD[n] = sd[x]
	}
	return out
}
