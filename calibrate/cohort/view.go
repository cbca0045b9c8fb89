package cohort

import "math"

// A view is what a fit knows of athletes at large, courses and editions, apart from the
// table that it was made of: enough to forecast any row from an athlete's own.
type view struct {
	closed                      closed
	spreads                     spreads
	fixed                       []float64
	course, courseVar           []float64
	edition, extraVar           []float64 // of the edition beside its course
	known                       []bool    // courses with results
	newCourseVar, newEditionVar float64
	mixture                     mixture
}

func (it *iteration) view() *view {
	p := it.p
	nx, s := p.nx(), p.spreads
	v := &view{
		closed: it.closed, spreads: s, fixed: append([]float64(nil), p.effects[:nx]...),
		known:        make([]bool, len(it.t.courses)),
		newCourseVar: s.course * s.course * inflation(s.courseNu), newEditionVar: s.edition * s.edition * inflation(s.editionNu),
		mixture: newMixture(s.nu),
	}
	v.course, v.courseVar = make([]float64, len(v.known)), filled(len(v.known), v.newCourseVar)
	v.edition, v.extraVar = make([]float64, len(it.t.editions)), filled(len(it.t.editions), v.newEditionVar)
	for c, in := range p.courseIn {
		v.known[in], v.course[in], v.courseVar[in] = true, p.effects[nx+c], p.spread[c]
	}
	for e, in := range p.editionIn {
		v.edition[in] = p.effects[nx+p.courses+e]
		v.extraVar[in] = math.Max(0, p.total[e]-p.spread[p.courseOf[e]])
	}
	return v
}

func filled(n int, with float64) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = with
	}
	return v
}

// inflation is the variance of Student's t over its scale squared.
func inflation(nu float64) float64 {
	if math.IsInf(nu, 1) {
		return 1
	}
	return nu / (nu - 2)
}

// effect is what a view, or nobody, knows of the course and edition of an obs.
func (v *view) effect(o *obs, blind bool) (mean, courseVar, extraVar float64) {
	if blind {
		return 0, v.newCourseVar, v.newEditionVar
	}
	return v.course[o.course] + v.edition[o.edition], v.courseVar[o.course], v.extraVar[o.edition]
}

// A foretold is ln T of a row before it is run: a normal part, and the race's own
// Student's t.
type foretold struct {
	mean, variance, scale float64
	effect, effectVar     float64 // the part of course and edition
	own                   int     // results of the athlete used
	logPower              float64
}

// forecastRounds are those of making an athlete's rows linear about the athlete.
const forecastRounds = 6

// forecast foretells a row from the athlete's own earlier rows: blind to courses, from
// nobody else's results but through the population; otherwise with the effects of the
// view.
func (v *view) forecast(t *table, own []int, target *row, blind bool) foretold {
	if len(own) > mostResults {
		own = own[len(own)-mostResults:]
	}
	f := &forecaster{v: v, t: t, blind: blind, obs: make([]obs, len(own)), weight: ones(len(own))}
	f.target = obs{course: target.course, edition: target.edition, day: target.day}
	habit := target.x[0]
	for i, j := range own {
		r := &t.rows[j]
		f.obs[i] = obs{course: r.course, edition: r.edition, day: r.day, row: j}
	}
	if len(own) > 0 {
		habit = 0
		for i := range f.obs {
			habit += t.rows[f.obs[i].row].x[0] / float64(len(own))
		}
	}
	f.logPower = v.fixed[0] + v.fixed[numbers]*habit
	for range forecastRounds {
		if !f.round(habit) {
			break
		}
	}
	return f.foretell(target, habit)
}

type forecaster struct {
	v        *view
	t        *table
	blind    bool
	obs      []obs
	weight   []float64
	target   obs
	logPower float64
	l        []float64
	solved   []float64 // V⁻¹ r
}

// covariance is that of two rows of one athlete without the error of the race.
func (f *forecaster) covariance(a, b *obs) float64 {
	c := f.v.spreads.covariance()
	sum := quadratic(&c, &a.s, &b.s) + f.v.spreads.kept(a.day-b.day)
	if a.course == b.course {
		_, courseVar, _ := f.v.effect(a, f.blind)
		sum += f.v.spreads.again*f.v.spreads.again + courseVar
	}
	return sum
}

// round makes the rows linear, solves, and weighs; it is false where there is nothing to do.
func (f *forecaster) round(habit float64) bool {
	n := len(f.obs)
	if n == 0 {
		return false
	}
	v, s := f.v, &f.v.spreads
	f.l = make([]float64, n*n)
	r := make([]float64, n)
	for i := range f.obs {
		o := &f.obs[i]
		o.linearise(&f.t.rows[o.row], v.closed, f.logPower, habit)
		mean, _, extra := v.effect(o, f.blind)
		r[i] = o.y - dot(o.x, v.fixed) - mean
		for j := range i + 1 {
			f.l[i*n+j] = f.covariance(o, &f.obs[j])
		}
		f.l[i*n+i] += extra + s.errorVariance(o)/f.weight[i]
	}
	if !factor(f.l, n) {
		return false
	}
	inv := make([]float64, n*n)
	inverse(inv, f.l, n, make([]float64, n))
	f.solved = make([]float64, n)
	times(f.solved, inv, n, r)
	c := s.covariance()
	f.logPower = v.fixed[0] + v.fixed[numbers]*habit
	for i := range f.obs {
		o := &f.obs[i]
		f.logPower += dot(c[0][:], o.s[:]) * f.solved[i]
		scale2 := s.errorVariance(o)
		e := scale2 / f.weight[i]
		mean := e * f.solved[i]
		f.weight[i] = heaviness(s.nu, (mean*mean+e-e*e*inv[i*n+i])/scale2)
	}
	return true
}

func (f *forecaster) foretell(target *row, habit float64) (out foretold) {
	v, o := f.v, &f.target
	unrun := *target
	unrun.log = 0
	o.linearise(&unrun, v.closed, f.logPower, habit)
	mean, courseVar, extra := v.effect(o, f.blind)
	out.mean = -o.y + dot(o.x, v.fixed) + mean
	out.variance = f.covariance(o, o) + extra
	n := len(f.obs)
	k := make([]float64, n)
	for i := range f.obs {
		k[i] = f.covariance(o, &f.obs[i])
		out.mean += k[i] * f.solved[i]
	}
	if n > 0 {
		forward(f.l, n, k)
		out.variance -= dot(k, k)
	}
	out.variance = math.Max(out.variance, 1e-8)
	out.scale = v.spreads.scale(o.size)
	out.effect, out.effectVar = mean, courseVar+extra
	out.own, out.logPower = n, f.logPower
	return out
}

// A witness is another athlete's result of the same race and day.
type witness struct{ excess, variance, scale float64 }

// witness is what a row that was run says of its day: by how much it was slower than
// foretold without the effect of course and edition.
func (v *view) witness(r *row, f *foretold) witness {
	return witness{r.log - f.mean + f.effect, math.Max(f.variance-f.effectVar, 1e-6), f.scale}
}

// unseen is a foretold row as it would be if nothing were known of its course and edition
// but their kind; the athlete's own results stay cleared of the effects of theirs.
func (v *view) unseen(f foretold) foretold {
	f.mean -= f.effect
	f.variance = math.Max(f.variance-f.effectVar, 1e-6) + v.newCourseVar + v.newEditionVar
	f.effect, f.effectVar = 0, v.newCourseVar+v.newEditionVar
	return f
}

// sameDay moves a foretold row to what others' results of the day say.
func (v *view) sameDay(f foretold, others []witness) foretold {
	effect, variance := f.effect, f.effectVar
	for range 8 {
		sum, weight := f.effect/f.effectVar, 1/f.effectVar
		for _, w := range others {
			d := w.excess - effect
			precision := 1 / (w.variance + w.scale*w.scale/heaviness(v.spreads.nu, d*d/(w.scale*w.scale+w.variance+variance)))
			sum += precision * w.excess
			weight += precision
		}
		effect, variance = sum/weight, 1/weight
	}
	f.mean += effect - f.effect
	f.variance = math.Max(f.variance-f.effectVar, 1e-6) + variance
	f.effect, f.effectVar = effect, variance
	return f
}
