package cohort

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// covariates of the mean course effect: log distance, ascent per metre, their squares and
// product.
const covariates = 5

// The covariates are counted from fixed points in fixed steps and held within ±edge of
// them, so that squares do not run away and no later result moves them. [Our own.]
const (
	usualDistance, distanceStep = 30_000.0, 0.7 // m, and of the logarithm
	usualSteep, steepStep       = 0.045, 0.02   // m climbed, mean of up and down, to a metre
	edge                        = 2.5
	longYears                   = 6.0
)

// A row is one result made ready.
type row struct {
	result                   int // of the input
	athlete, course, edition int
	day                      float64 // since 1970
	log                      float64 // ln of the time in s
	work                     work
	x                        [covariates]float64
	seniority                float64 // years since the athlete's first result, in steps
	predict                  bool
}

// A table is the results of a cohort in an order of its own, so that the order of the
// input changes nothing.
type table struct {
	rows                       []row
	runners, courses, editions []string
	runner, course             map[string]int
	courseOf                   []int // of each edition
}

// newTable makes the results ready that were finished.
func newTable(results []record.Result) (*table, []string, error) {
	order, unfinished, err := ordered(results)
	if err != nil {
		return nil, nil, err
	}
	t := &table{runner: map[string]int{}, course: map[string]int{}}
	var first []float64 // day of each athlete
	editions, grounds := map[string]int{}, map[[3]float64]work{}
	for _, i := range order {
		r := results[i]
		w, err := groundWork(r, grounds)
		if err != nil {
			return nil, nil, fmt.Errorf("cohort: result %d: %w", i+1, err)
		}
		course, edition := names(r, i)
		v := row{
			result: i, day: float64(r.Date.Unix()) / 86400, log: math.Log(r.Time.Seconds()),
			work: w, x: covariatesOf(extent(r)), predict: r.Role == record.Predict,
			athlete: number(t.runner, &t.runners, r.Runner), course: number(t.course, &t.courses, course),
		}
		if v.athlete == len(first) {
			first = append(first, v.day)
		}
		v.seniority = seniority(v.day - first[v.athlete])
		v.edition = number(editions, &t.editions, edition)
		if v.edition == len(t.courseOf) {
			t.courseOf = append(t.courseOf, v.course)
		}
		t.rows = append(t.rows, v)
	}
	var warnings []string
	if unfinished > 0 {
		warnings = append(warnings, fmt.Sprintf("%d races not finished are left out", unfinished))
	}
	return t, warnings, nil
}

// ordered returns the finished results in order of date, then of everything else that
// tells them apart.
func ordered(results []record.Result) (order []int, unfinished int, err error) {
	for i, r := range results {
		if err := r.Check(); err != nil {
			return nil, 0, fmt.Errorf("cohort: result %d: %w", i+1, err)
		}
		if r.Runner == "" {
			return nil, 0, fmt.Errorf("cohort: result %d: %w", i+1, ErrRunner)
		}
		if r.DNF {
			unfinished++
			continue
		}
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := results[i], results[j]
		return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Race, b.Race),
			cmp.Compare(a.Course, b.Course), cmp.Compare(a.Time, b.Time), cmp.Compare(a.Distance, b.Distance),
			cmp.Compare(a.Ascent, b.Ascent), cmp.Compare(a.Descent, b.Descent), cmp.Compare(a.Role, b.Role))
	})
	return order, unfinished, nil
}

// names are the keys of a result's course and edition: the course stands for itself over
// all its editions, a race without a course for its own, and a result without either for
// a course of its own.
func names(r record.Result, i int) (course, edition string) {
	course, edition = r.Course, r.Race
	if course == "" {
		course = r.Race
	}
	if course == "" {
		course = fmt.Sprintf("result %d", i+1)
	}
	if edition == "" {
		edition = course + " " + r.Date.UTC().Format(time.DateOnly)
	}
	return course, edition + "\x00" + course
}

func number(index map[string]int, list *[]string, name string) int {
	i, ok := index[name]
	if !ok {
		i = len(*list)
		index[name] = i
		*list = append(*list, name)
	}
	return i
}

func extent(r record.Result) (distance, ascent, descent float64) {
	if r.Ground != nil {
		relief := r.Ground.ReliefBetween(0, r.Ground.Length())
		return r.Ground.Length(), relief.Ascent, relief.Descent
	}
	return r.Distance, r.Ascent, r.Descent
}

// groundWork is the running work of a result's ground; done keeps those of summaries.
func groundWork(r record.Result, done map[[3]float64]work) (work, error) {
	if r.Ground != nil {
		g, err := effort.NewGround(r.Ground, 100)
		if err != nil {
			return work{}, err
		}
		return workOf(g), nil
	}
	key := [3]float64{r.Distance, r.Ascent, r.Descent}
	if w, ok := done[key]; ok {
		return w, nil
	}
	g, err := effort.NewSummaryGround(r.Distance, r.Ascent, r.Descent)
	if err != nil {
		return work{}, err
	}
	done[key] = workOf(g)
	return done[key], nil
}

// seniority is the time since an athlete's first result in steps of six years, one at most.
func seniority(days float64) float64 { return math.Max(0, math.Min(days/365.25/longYears, 1)) }

func covariatesOf(distance, ascent, descent float64) [covariates]float64 {
	held := func(v float64) float64 { return math.Max(-edge, math.Min(edge, v)) }
	d := held(math.Log(distance/usualDistance) / distanceStep)
	g := held(((ascent+descent)/2/distance - usualSteep) / steepStep)
	return [covariates]float64{d, g, d * d, g * g, d * g}
}
