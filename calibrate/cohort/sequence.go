package cohort

import (
	"context"
	"math"
	"sort"
)

// modes are own, without, with and day.
const modes = 4

// A sequence goes through the dates.
type sequence struct {
	ctx     context.Context
	t       *table
	o       ForecastOptions
	spreads spreads
	fixed   []float64
	effects [2]map[int]float64 // of courses and editions, by the table's numbers
	year    int                // of the last refit
	byRow   [][]int            // rows of each athlete

	misses  [modes][]float64 // |miss| over half the interval, of earlier dates
	stretch [modes]float64
	out     map[int]Forecast // by input
}

func date(r *row) float64 { return math.Floor(r.day) }

// windowDays is the length of the stretches of the calendar before each of which courses
// and editions are solved for anew. They lie fixed in the calendar, so that what comes
// later moves none of them. The spreads are fitted anew once a year.
const windowDays = 365.25 / 4

func window(r *row) int { return int(math.Floor(date(r) / windowDays)) }

// run goes through the windows with a result to be foretold.
func (q *sequence) run() error {
	q.byRow = make([][]int, len(q.t.runners))
	byWindow := map[int][]int{}
	wanted := map[int]bool{}
	for i := range q.t.rows {
		r := &q.t.rows[i]
		if !(q.o.FitOnly && r.predict) {
			q.byRow[r.athlete] = append(q.byRow[r.athlete], i)
		}
		byWindow[window(r)] = append(byWindow[window(r)], i)
		wanted[window(r)] = wanted[window(r)] || r.predict
	}
	var order []int
	for w, ok := range wanted {
		if ok {
			order = append(order, w)
		}
	}
	sort.Ints(order)
	for k, w := range order {
		if err := q.window(w, byWindow[w]); err != nil {
			return err
		}
		if q.o.Progress != nil {
			q.o.Progress(k+1, len(order))
		}
	}
	return nil
}

const (
	heldRounds  = 3 // of a view without new spreads
	refitRounds = 6 // of one with, after the first
)

// view fits what was run before a window.
func (q *sequence) view(w int) (*view, error) {
	use := func(r *row) bool { return window(r) < w && !(q.o.FitOnly && r.predict) }
	it := newIteration(q.t, q.o.Options, use, q.spreads)
	if len(it.p.obs) == 0 {
		it.p.effects[0] = it.closed.logPower
		return it.view(), nil
	}
	q.resume(it.p)
	year := int(float64(w) * windowDays / 365.25)
	if q.fixed == nil || year != q.year {
		if q.fixed != nil {
			it.o.Rounds = min(it.o.Rounds, refitRounds)
		}
		if _, err := it.settle(q.ctx, nil); err != nil {
			return nil, err
		}
		q.spreads, q.year = it.p.spreads, year
	} else {
		for range heldRounds {
			if err := it.round(q.ctx, true); err != nil {
				return nil, err
			}
		}
	}
	q.keep(it.p)
	return it.view(), nil
}

// keep notes the effects for the next view to start from, and resume starts from them.
func (q *sequence) keep(p *problem) {
	nx := p.nx()
	q.fixed = append(q.fixed[:0], p.effects[:nx]...)
	q.effects = [2]map[int]float64{{}, {}}
	for c, in := range p.courseIn {
		q.effects[0][in] = p.effects[nx+c]
	}
	for e, in := range p.editionIn {
		q.effects[1][in] = p.effects[nx+p.courses+e]
	}
}

func (q *sequence) resume(p *problem) {
	if q.fixed == nil {
		return
	}
	nx := p.nx()
	copy(p.effects, q.fixed)
	for c, in := range p.courseIn {
		p.effects[nx+c] = q.effects[0][in]
	}
	for e, in := range p.editionIn {
		p.effects[nx+p.courses+e] = q.effects[1][in]
	}
}

// window foretells the rows of a window.
func (q *sequence) window(w int, rows []int) error {
	v, err := q.view(w)
	if err != nil {
		return err
	}
	blind, seeing := make([]foretold, len(rows)), make([]foretold, len(rows))
	if err := each(q.ctx, q.o.Workers, len(rows), func(k int) {
		r := &q.t.rows[rows[k]]
		own := q.before(r)
		blind[k], seeing[k] = v.forecast(q.t, own, r, true), v.forecast(q.t, own, r, false)
	}); err != nil {
		return err
	}
	field := q.fields(rows)
	var fresh [modes][]float64
	for k, i := range rows {
		r := &q.t.rows[i]
		told := [modes]foretold{blind[k], v.unseen(seeing[k]), seeing[k]}
		var others []witness
		if q.o.SameDay {
			for _, j := range field[raceDay{r.edition, date(r)}] {
				if other := &q.t.rows[rows[j]]; other.athlete != r.athlete {
					others = append(others, v.witness(other, &seeing[j]))
				}
			}
			told[3] = v.sameDay(seeing[k], others)
		}
		q.tell(v, r, told, len(others), &fresh)
	}
	for m := range fresh {
		q.misses[m] = append(q.misses[m], fresh[m]...)
		q.stretch[m] = stretch(q.misses[m])
	}
	return nil
}

// before are an athlete's rows of earlier dates than a row's.
func (q *sequence) before(r *row) []int {
	rows := q.byRow[r.athlete]
	n := sort.Search(len(rows), func(k int) bool { return date(&q.t.rows[rows[k]]) >= date(r) })
	return rows[:n]
}
