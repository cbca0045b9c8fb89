package cohort

import (
	"context"
	"fmt"
	"math"

	"isoeffort.example/effort"
)

// An iteration is a fit in progress: the problem, and what its rows are made linear about.
type iteration struct {
	t        *table
	o        Options
	p        *problem
	closed   closed
	logPower []float64
	habits   []float64
}

// newIteration starts from an hour power for each athlete by the closed form.
func newIteration(t *table, o Options, use func(*row) bool, start spreads) *iteration {
	it := &iteration{t: t, o: o, p: newProblem(t, use, start), closed: closedOf(o.Prior)}
	var sd [effort.Numbers]float64
	for n := range sd {
		sd[n] = o.Prior[n].LogSD
	}
	it.p.fixedRidge(sd)
	it.logPower, it.habits = make([]float64, it.p.athletes()), make([]float64, it.p.athletes())
	sum, count := 0.0, 0.0
	for a := range it.logPower {
		obs := it.p.of(a)
		it.habits[a] = habit(t, obs)
		for i := range obs {
			it.logPower[a] += it.closed.power(&t.rows[obs[i].row]) / float64(len(obs))
		}
		if len(obs) > 0 {
			sum += it.logPower[a]
			count++
		}
	}
	if count > 0 {
		it.p.effects[0] = sum / count
	}
	return it
}

// power is the logarithm of the hour power that runs a row in its time, everything else
// being at the medians.
func (c closed) power(r *row) float64 {
	fresh := math.Pow(math.Exp(r.log)/3600, 1-c.endurance)
	h := fresh
	if c.fade > 0 {
		h = math.Log1p(c.fade*fresh) / c.fade
	}
	return math.Log((r.work.level + c.braking*r.work.braking) / 3600 / h)
}

// round makes the rows linear, solves and weighs; held keeps the spreads.
func (it *iteration) round(ctx context.Context, held bool) error {
	p := it.p
	if err := each(ctx, it.o.Workers, p.athletes(), func(a int) {
		obs := p.of(a)
		for i := range obs {
			obs[i].linearise(&it.t.rows[obs[i].row], it.closed, it.logPower[a], it.habits[a])
		}
	}); err != nil {
		return err
	}
	if err := p.solve(ctx, it.o.Workers, it.o.Seed); err != nil {
		return err
	}
	p.moved = 0
	for a := range it.logPower {
		next := it.centre(it.habits[a]) + p.deviation(a)[0]
		if math.IsNaN(next) {
			return ErrNoFit
		}
		p.moved = math.Max(p.moved, math.Abs(next-it.logPower[a]))
		it.logPower[a] = next
	}
	if err := p.weigh(ctx, it.o.Workers, held); err != nil || held {
		return err
	}
	return p.search(ctx, it.o.Workers, searchSteps)
}

// centre is the mean logarithm of hour power of athletes of a habit.
func (it *iteration) centre(habit float64) float64 {
	return it.p.effects[0] + it.p.effects[numbers]*habit
}

// settle goes on until the spreads hold still; tell is told of each round.
func (it *iteration) settle(ctx context.Context, tell func(round int)) (settled bool, err error) {
	for round := range it.o.Rounds {
		before := it.p.spreads
		if err := it.round(ctx, false); err != nil {
			return false, fmt.Errorf("cohort: %w", err)
		}
		if tell != nil {
			tell(round + 1)
		}
		if round > 2 && it.p.spreads.far(&before) < it.o.Tolerance && it.p.moved < 10*it.o.Tolerance {
			return true, nil
		}
	}
	return false, nil
}

// far is the greatest change of what the fit answers to.
func (s *spreads) far(before *spreads) float64 {
	most := 0.0
	a, b := s.vector(), before.vector()
	for _, i := range []int{0, 2, 5, 9} {
		most = math.Max(most, math.Abs(a[i]-b[i]))
	}
	for _, v := range [][2]float64{{s.course, before.course}, {s.edition, before.edition}} {
		most = math.Max(most, math.Abs(math.Log(v[0]/v[1])))
	}
	return most
}
