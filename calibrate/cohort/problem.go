package cohort

import (
	"math"

	"isoeffort.example/effort"
)

// fixed is the number of fixed effects: of the three numbers' medians, of the distances
// that an athlete chooses on hour power, of the covariates, and of the years since an
// athlete's first result.
const fixed = numbers + 1 + covariates + 1

// An obs is a row made linear about what is known of its athlete:
//
//	y = s·a + x·β + u + v + …,  a the athlete's deviations of the numbers' logarithms
type obs struct {
	course, edition int
	day             float64
	s               [numbers]float64
	x               []float64
	y               float64
	size            float64 // ln(duration/4 h)
	row             int     // of the table
}

// A problem is one fit in progress. Its effects are those of x, then of courses, then of
// editions.
type problem struct {
	obs               []obs // athlete by athlete
	first             []int // of each athlete, and the end
	courseOf          []int // of each edition
	courses, editions int

	athleteIn, courseIn, editionIn []int // the table's numbers of them

	ridge   []float64 // precision of each fixed effect
	spreads spreads

	weight                      []float64 // of each obs
	courseWeight, editionWeight []float64 // of the effects

	effects []float64
	blocks  []block
	spread  []float64 // posterior variance: of each course's effect
	total   []float64 // of each edition's, its course's added
	alone   []float64 // of each edition's own
	moved   float64
}

// A block is one athlete's: the factor of the covariance of the results with the effects
// taken as known, its inverse, the posterior covariance of the effects' sums, and the
// residuals from them.
type block struct {
	l, inv, cov []float64
	resid       []float64
	bad         bool
}

// newProblem gathers rows of a table, those that use accepts. Athletes, courses and
// editions without one are not part of it, so that what is in the table beside these rows
// changes nothing.
func newProblem(t *table, use func(*row) bool, start spreads) *problem {
	p := &problem{spreads: start, first: []int{0}}
	by, order := map[int][]int{}, []int(nil)
	for i := range t.rows {
		if use(&t.rows[i]) {
			a := t.rows[i].athlete
			if by[a] == nil {
				order = append(order, a)
			}
			by[a] = append(by[a], i)
		}
	}
	courses, editions := map[int]int{}, map[int]int{}
	for _, a := range order {
		rows := by[a]
		rows = rows[max(0, len(rows)-mostResults):]
		for _, i := range rows {
			r := &t.rows[i]
			o := obs{course: renumber(courses, &p.courseIn, r.course), edition: renumber(editions, &p.editionIn, r.edition), day: r.day, row: i}
			if o.edition == len(p.courseOf) {
				p.courseOf = append(p.courseOf, o.course)
			}
			p.obs = append(p.obs, o)
		}
		p.athleteIn = append(p.athleteIn, a)
		p.first = append(p.first, len(p.obs))
	}
	p.courses, p.editions = len(p.courseIn), len(p.editionIn)
	p.prepare(fixed)
	return p
}

func renumber(index map[int]int, list *[]int, of int) int {
	i, ok := index[of]
	if !ok {
		i = len(*list)
		index[of] = i
		*list = append(*list, of)
	}
	return i
}

// mostResults of one athlete are used, the latest: the work grows with their cube.
const mostResults = 200

func (p *problem) prepare(nx int) {
	p.ridge = make([]float64, nx)
	p.effects = make([]float64, nx+p.courses+p.editions)
	p.weight, p.courseWeight, p.editionWeight = ones(len(p.obs)), ones(p.courses), ones(p.editions)
	p.blocks = make([]block, p.athletes())
	for a := range p.blocks {
		n := p.first[a+1] - p.first[a]
		p.blocks[a] = block{l: make([]float64, n*n), inv: make([]float64, n*n), cov: make([]float64, n*n), resid: make([]float64, n)}
	}
	p.spread, p.total, p.alone = make([]float64, p.courses), make([]float64, p.editions), make([]float64, p.editions)
}

func ones(n int) []float64 { return filled(n, 1) }

func (p *problem) athletes() int { return len(p.first) - 1 }
func (p *problem) nx() int       { return len(p.ridge) }
func (p *problem) size() int     { return len(p.effects) }
func (p *problem) of(a int) []obs {
	return p.obs[p.first[a]:p.first[a+1]]
}

// linearise makes an obs of a row about a logarithm of hour power, which is counted from
// 1 W/kg and the other numbers from the prior's medians. The slopes are those of an
// athlete at the prior's median: slopes at an athlete's own hour power would carry the
// result that they are to explain. Where the time itself is taken at the athlete's own,
// they still lead there, in a few rounds more.
func (o *obs) linearise(r *row, c closed, logPower, habit float64) {
	at, _ := c.at(r.work, logPower)
	usual, slope := c.at(r.work, c.logPower)
	o.s = slope
	o.y = r.log - at + slope[0]*logPower
	o.size = usual - logFourHours
	if len(o.x) != fixed {
		o.x = make([]float64, fixed)
	}
	copy(o.x, slope[:])
	o.x[numbers] = slope[0] * habit
	copy(o.x[numbers+1:], r.x[:])
	o.x[fixed-1] = r.seniority
}

var logFourHours = math.Log(4 * 3600)

// habit is the mean of the first covariate over an athlete's results: how long the races
// are that the athlete chooses.
func habit(t *table, o []obs) float64 {
	sum := 0.0
	for i := range o {
		sum += t.rows[o[i].row].x[0]
	}
	return sum / float64(max(1, len(o)))
}

// fixedRidge holds the fixed effects: hour power hardly, the medians of the other numbers
// within a share of the prior's spread over athletes, the rest within covariateSD. The
// medians of endurance and braking do what the kinds of courses do too, so that left to
// themselves they wander off together with those and change no forecast. [Our own.]
func (p *problem) fixedRidge(prior [effort.Numbers]float64) {
	for i := range p.ridge {
		p.ridge[i] = 1 / (covariateSD * covariateSD)
	}
	p.ridge[0] = 1e-4
	for i := 1; i < numbers; i++ {
		sd := medianShare * prior[varying[i]]
		p.ridge[i] = 1 / (sd * sd)
	}
}

const medianShare = 0.25

const covariateSD = 0.15
