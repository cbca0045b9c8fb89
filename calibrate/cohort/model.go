package cohort

import (
	"time"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
)

// A Model is a cohort fitted. It does not change and may be shared between goroutines.
type Model struct {
	Population Population
	Athletes   []Athlete // in order of their first result
	Courses    []Course  // likewise
	Warnings   []string

	t    *table
	view *view
	own  [][]int // rows of each athlete
}

// Population is what athletes and races at large are like. Spreads are SDs of natural
// logarithms but where scales of Student's t are meant.
type Population struct {
	// Prior is what is believed of a new athlete: hour power, endurance exponent and
	// braking as found, fade and fade shape as given. It is for calibrate.Fit with the
	// athlete's Habit RunOnly, as the fit here runs all the way, and for times from which
	// course effects are taken out.
	Prior calibrate.Prior

	// Correlation is that of the logarithms of hour power, endurance exponent and braking
	// over athletes.
	Correlation [numbers][numbers]float64

	// HabitPower is by how much ln(hour power) is higher for athletes whose races are longer
	// by a factor of e.
	HabitPower float64

	Drift  float64       // SD of an athlete's fitness about the athlete's mean, on ln T
	Memory time.Duration // after which a correlation of 1/e is left of it

	Again   float64 // SD of what one athlete makes of one course
	Noise   float64 // scale of one race at four hours, Student's t
	Growth  float64 // of that scale with the power of duration
	Freedom float64 // of Student's t

	Course, Edition               float64 // scales of the effects
	CourseFreedom, EditionFreedom float64

	// Kind are the coefficients of the mean course effect by d, g, d², g² and dg, with
	// d = ln(distance/30 km)/0.7 and g = (mean of ascent and descent per metre − 0.045)/0.02,
	// both held within ±2.5.
	Kind [covariates]float64

	// Seniority is the change of ln T over the first six years after an athlete's first
	// result.
	Seniority float64

	Results, Runners, CourseCount, EditionCount int
}

// An Athlete is one of the cohort.
type Athlete struct {
	Runner  string
	Athlete effort.Athlete // at the last result, run all the way

	// LogSD are the posterior SDs of the logarithms of the numbers; 0 where the cohort takes
	// a number as known.
	LogSD [effort.Numbers]float64

	Results int
	Last    time.Time
}

// A Course is what a course does to ln T beside its distance and ascent: exp(Effect) times
// the time that its ground says.
type Course struct {
	Name     string
	Effect   float64 // that of its kind and its own
	SD       float64 // of the posterior; of the course, not of one edition
	Own      float64 // part that its kind does not explain
	Results  int
	Editions int
	Distance float64 // of its latest result, m
	Ascent   float64
	Descent  float64
}
