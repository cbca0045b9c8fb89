// Package invented makes up results of runners who do not exist on courses that do not
// exist, for demonstrations and for tests of what package cohort finds again.
package invented

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// Field says what is made up. The zero value of a field means the number in its comment;
// spreads are SDs of logarithms. [Our own, of the order of what fields of mountain races
// show.]
type Field struct {
	Runners int // 200
	Courses int // 140
	Results int // about 11 for each runner

	Course, Edition float64 // effects on ln T: 0.08, 0.03
	Noise           float64 // scale of one race at four hours, Student's t with 5 degrees: 0.055
	Drift           float64 // of fitness over a year or so: 0.04
	Power           float64 // of hour power: 0.2
	Endurance       float64 // of the endurance exponent: 0.25
	Braking         float64 // of braking: 0.3
	Wrong           float64 // share of editions with a wrong distance or ascent: 0.03; below 0: none

	SplitCourses int // of the first courses, splits at each fifth of the distance; 0: none
}

// Truth is what a field was made of.
type Truth struct {
	Athlete map[string]effort.Athlete
	Course  map[string]float64 // effects on ln T
	Edition map[string]float64
}

func (f Field) filled() Field {
	set := func(v *float64, usual float64) {
		if *v == 0 {
			*v = usual
		}
	}
	if f.Runners == 0 {
		f.Runners = 200
	}
	if f.Courses == 0 {
		f.Courses = 140
	}
	if f.Results == 0 {
		f.Results = 11 * f.Runners
	}
	set(&f.Course, 0.08)
	set(&f.Edition, 0.03)
	set(&f.Noise, 0.055)
	set(&f.Drift, 0.04)
	set(&f.Power, 0.2)
	set(&f.Endurance, 0.25)
	set(&f.Braking, 0.3)
	set(&f.Wrong, 0.03)
	return f
}

// A course is a made-up one: as it is, and as it is listed.
type course struct {
	name                           string
	distance, ascent, listedAscent float64
	effect, popularity             float64
	day, since                     int // of the year; first year
	splits                         bool
}

const (
	firstYear = 2015
	years     = 8
)

// Make makes up a field. The last race of each runner has the role predict, the others
// none; the rows come in order of date. The same source gives the same field.
func (f Field) Make(rng *rand.Rand) ([]record.Result, Truth) {
	f = f.filled()
	truth := Truth{map[string]effort.Athlete{}, map[string]float64{}, map[string]float64{}}
	courses := f.courses(rng, truth)
	wrong := map[string][2]float64{}
	var results []record.Result
	left := f.Results
	for i := range f.Runners {
		r := f.runner(rng, i)
		truth.Athlete[r.name] = r.athlete
		n := left
		if rest := f.Runners - i; rest > 1 {
			mean := float64(left) / float64(rest)
			n = min(left, max(3, int(math.Round(mean*(0.3+0.7*rng.ExpFloat64())))))
		}
		left -= n
		results = append(results, f.races(rng, r, courses, n, truth, wrong)...)
	}
	sort.SliceStable(results, func(i, j int) bool { return results[i].Date.Before(results[j].Date) })
	last := map[string]int{}
	for i, r := range results {
		last[r.Runner] = i
	}
	for _, i := range last {
		results[i].Role = record.Predict
	}
	return results, truth
}

func (f Field) courses(rng *rand.Rand, truth Truth) []course {
	courses := make([]course, f.Courses)
	for j := range courses {
		c := &courses[j]
		c.name = fmt.Sprintf("course %04d", j+1)
		c.distance = 1000 * math.Round(math.Exp(math.Log(30)+0.65*rng.NormFloat64()))
		c.distance = math.Max(6000, math.Min(170_000, c.distance))
		c.ascent = c.distance * math.Max(0.008, math.Min(0.09, 0.045+0.018*rng.NormFloat64()))
		c.listedAscent = math.Round(c.ascent*math.Exp(0.08*rng.NormFloat64())/10) * 10
		c.effect = f.Course * (0.85*rng.NormFloat64() + 0.5*(c.ascent/c.distance-0.045)/0.018)
		c.popularity = rng.ExpFloat64() * rng.ExpFloat64()
		c.day, c.since = rng.IntN(330), rng.IntN(years-1)
		c.splits = j < f.SplitCourses
		truth.Course[c.name] = c.effect
	}
	return courses
}

type runner struct {
	name    string
	athlete effort.Athlete
	habit   float64 // ln of the distance liked
	since   float64 // years from firstYear
	span    float64
}

func (f Field) runner(rng *rand.Rand, i int) runner {
	r := runner{name: fmt.Sprintf("runner %04d", i+1)}
	level := rng.NormFloat64()
	r.athlete = effort.Athlete{
		HourPower: 11 * math.Exp(f.Power*level),
		Endurance: 0.105 * math.Exp(f.Endurance*(0.9*rng.NormFloat64()-0.3*level)),
		Fade:      0.02 * math.Exp(0.4*rng.NormFloat64()), FadeShape: 1,
		Braking: 2 * math.Exp(f.Braking*rng.NormFloat64()),
	}
	r.habit = math.Log(28_000) + 0.4*rng.NormFloat64() + 0.15*level
	r.since = rng.Float64() * (years - 2)
	r.span = 1 + rng.Float64()*(years-1-r.since)
	return r
}
