package cohort

import (
	"context"
	"fmt"
	"math"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Fit fits a cohort to results with role fit or none. Races not finished are left out, and
// of an athlete with more than 200 results the earlier ones.
//
// Errors: a result that fails its Check, ErrRunner, ErrNoResults, ErrOption, ErrNoFit, or
// the context's.
func Fit(ctx context.Context, results []record.Result, o Options) (*Model, error) {
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	t, warnings, err := newTable(results)
	if err != nil {
		return nil, err
	}
	it := newIteration(t, o, func(r *row) bool { return !r.predict }, usualSpreads())
	if len(it.p.obs) == 0 {
		return nil, fmt.Errorf("cohort: %w", ErrNoResults)
	}
	settled, err := it.settle(ctx, func(round int) {
		if o.Progress != nil {
			o.Progress(round, o.Rounds)
		}
	})
	if err != nil {
		return nil, err
	}
	m := &Model{t: t, view: it.view(), Warnings: warnings, own: make([][]int, len(t.runners))}
	for i := range t.rows {
		if r := &t.rows[i]; !r.predict {
			m.own[r.athlete] = append(m.own[r.athlete], i)
		}
	}
	m.Population = it.population()
	for a := range it.p.athletes() {
		m.Athletes = append(m.Athletes, it.athlete(a, results))
	}
	m.listCourses(it, results)
	m.warn(it, settled)
	return m, nil
}

// population gathers what the iteration found.
func (it *iteration) population() Population {
	s, e := it.p.spreads, it.p.effects
	p := Population{
		Prior: it.prior(), HabitPower: e[numbers] / distanceStep, Drift: s.drift,
		Memory: effort.Seconds(s.memory * 86400), Again: s.again, Noise: s.noise, Growth: s.growth, Freedom: s.nu,
		Course: s.course, Edition: s.edition, CourseFreedom: s.courseNu, EditionFreedom: s.editionNu,
		Seniority: e[fixed-1], Results: len(it.p.obs), Runners: it.p.athletes(),
		CourseCount: it.p.courses, EditionCount: it.p.editions,
	}
	copy(p.Kind[:], e[numbers+1:])
	c := s.covariance()
	for i := range numbers {
		for j := range numbers {
			p.Correlation[i][j] = c[i][j] / math.Sqrt(c[i][i]*c[j][j])
		}
	}
	return p
}

// listCourses gathers the courses of the iteration.
func (m *Model) listCourses(it *iteration, results []record.Result) {
	p := it.p
	at := make([]int, len(it.t.courses))
	for c, in := range p.courseIn {
		m.Courses = append(m.Courses, Course{Name: it.t.courses[in], Own: p.effects[p.nx()+c], SD: math.Sqrt(p.spread[c])})
		at[in] = c
	}
	for _, c := range p.courseOf {
		m.Courses[c].Editions++
	}
	for i := range it.t.rows { // in order of date, so the latest stays
		r := &it.t.rows[i]
		if r.predict || !m.view.known[r.course] {
			continue
		}
		c := &m.Courses[at[r.course]]
		c.Results++
		c.Distance, c.Ascent, c.Descent = extent(results[r.result])
		c.Effect = c.Own + dot(r.x[:], p.effects[numbers+1:])
	}
}

func (m *Model) warn(it *iteration, settled bool) {
	say := func(format string, args ...any) { m.Warnings = append(m.Warnings, fmt.Sprintf(format, args...)) }
	if !settled {
		say("the spreads still moved after %d rounds: more rounds may change them a little", it.o.Rounds)
	}
	if n := m.Population.Runners; n < 30 {
		say("only %d runners: how runners differ is mostly what is usual for them", n)
	}
	if n := m.Population.CourseCount; n < 20 {
		say("only %d courses: how courses differ is mostly what is usual for them", n)
	}
	left := 0
	for _, rows := range m.own {
		left += max(0, len(rows)-mostResults)
	}
	if left > 0 {
		say("%d results of athletes with more than %d are left out, the earliest", left, mostResults)
	}
	say("finish times do not part endurance from fade: the fade is the prior's, %g", it.o.Prior[effort.Fade].Median)
}
