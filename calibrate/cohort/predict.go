package cohort

import (
	"fmt"
	"math"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Course returns what is known of a course by its name as results have it (its race where
// they name no course); ok is false for one without results.
func (m *Model) Course(name string) (c Course, ok bool) {
	for _, c := range m.Courses {
		if c.Name == name {
			return c, true
		}
	}
	return Course{}, false
}

// NewCourse returns what is to be expected of a course without results: the mean of its
// kind, and the SD of courses about it. The error wraps effort.ErrSummary.
func (m *Model) NewCourse(distance, ascent, descent float64) (Course, error) {
	if _, err := effort.NewSummaryGround(distance, ascent, descent); err != nil {
		return Course{}, fmt.Errorf("cohort: %w", err)
	}
	x := covariatesOf(distance, ascent, descent)
	return Course{
		Effect: dot(x[:], m.Population.Kind[:]), SD: math.Sqrt(m.view.newCourseVar),
		Distance: distance, Ascent: ascent, Descent: descent,
	}, nil
}

// Forecast foretells the time of a race to come: Runner, Race, Course, Date and the ground
// of r matter, its Time, Splits and Role do not. A runner or course without results is
// taken from the population. All results of the runner that were fitted are used, whatever
// their date.
//
// The error wraps what record.Result.Check or effort.NewSummaryGround say of the ground.
func (m *Model) Forecast(r record.Result) (Interval, error) {
	distance, ascent, descent := extent(r)
	w, err := groundWork(r, map[[3]float64]work{})
	if err != nil {
		return Interval{}, fmt.Errorf("cohort: %w", err)
	}
	target := row{
		day: float64(r.Date.Unix()) / 86400, work: w, x: covariatesOf(distance, ascent, descent),
		athlete: -1, course: -1, edition: -1,
	}
	course, edition := names(r, 0)
	v := m.view.with(&target, m.t, course, edition)
	var own []int
	if a, ok := m.t.runner[r.Runner]; ok {
		own = m.own[a]
	}
	if len(own) > 0 {
		target.seniority = seniority(target.day - m.t.rows[own[0]].day)
	}
	f := v.forecast(m.t, own, &target, false)
	return v.interval(&f, 1), nil
}

// with finds the course and edition of a target, or returns a view with new ones added.
func (v *view) with(target *row, t *table, course, edition string) *view {
	for i, name := range t.editions {
		if name == edition {
			target.edition = i
		}
	}
	w := *v
	if c, ok := t.course[course]; ok {
		target.course = c
	} else {
		target.course = len(v.course)
		w.course = append(v.course[:len(v.course):len(v.course)], 0)
		w.courseVar = append(v.courseVar[:len(v.courseVar):len(v.courseVar)], v.newCourseVar)
	}
	if target.edition < 0 {
		target.edition = len(v.edition)
		w.edition = append(v.edition[:len(v.edition):len(v.edition)], 0)
		w.extraVar = append(v.extraVar[:len(v.extraVar):len(v.extraVar)], v.newEditionVar)
	}
	return &w
}
