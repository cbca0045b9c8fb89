package effort

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"pgregory.net/rapid"
)

// prices are derivatives of a number of the finish by the state before.
type prices struct{ moving, worn, spent float64 }

func (p prices) of(a, b State) float64 {
	return p.moving*(b.Moving-a.Moving) + p.worn*(b.Worn-a.Worn) + p.spent*(b.Spent-a.Spent)
}

// slopesOf goes back over the last sweep and returns the derivatives by each z of time and
// of budget at the finish. Those of a step are by central differences; their chain is
// exact.
func (s *spread) slopesOf(z []float64) (time, spent []float64) {
	const byZ, byWorn, byMoving = 1e-4, 1e-2, 20.0
	defer s.begin()()
	time, spent = make([]float64, len(z)), make([]float64, len(z))
	ofTime, ofSpent := prices{moving: 1}, prices{spent: 1}
	for j := len(z) - 1; j >= 0; j-- {
		moved := func(from State, z float64) State { return s.step(j, from, s.intensity(j, from, z)) }
		low, top := moved(s.states[j], z[j]-byZ), moved(s.states[j], z[j]+byZ)
		time[j], spent[j] = ofTime.of(low, top)/(2*byZ), ofSpent.of(low, top)/(2*byZ)
		less, more := s.states[j], s.states[j]
		less.Worn, more.Worn = less.Worn-byWorn, more.Worn+byWorn
		low, top = moved(less, z[j]), moved(more, z[j])
		before, beforeSpent := ofTime, ofSpent
		ofTime.worn, ofSpent.worn = before.of(low, top)/(2*byWorn), beforeSpent.of(low, top)/(2*byWorn)
		if s.in.surroundings.Day == nil {
			continue // no hour matters
		}
		less, more = s.states[j], s.states[j]
		less.Moving, more.Moving = less.Moving-byMoving, more.Moving+byMoving
		low, top = moved(less, z[j]), moved(more, z[j])
		ofTime.moving, ofSpent.moving = before.of(low, top)/(2*byMoving), beforeSpent.of(low, top)/(2*byMoving)
	}
	return time, spent
}

// reduced are the derivatives of time by z at equal budget, in seconds, at the last sweep.
func (s *spread) reduced(z []float64) []float64 {
	time, spent := s.slopesOf(z)
	sumTime, sumSpent := 0.0, 0.0
	for j := range z {
		sumTime, sumSpent = sumTime+time[j], sumSpent+spent[j]
	}
	for j := range z {
		time[j] -= sumTime / sumSpent * spent[j]
	}
	return time
}

const (
	wildest = 40.0 // of z, for a trial of the optimiser
	refused = 10.0 // the time of a trial that is none
)

// objective is the time that the optimiser sees: at z shifted to spend the budget, 1 at
// the start. It keeps the best, because a run of the optimiser ends on a line search that
// finds nothing better, and that may have gone astray.
type objective struct {
	s             *spread
	unit          float64 // s
	asked, at     []float64
	best          []float64
	answer, least float64
}

// time answers at once where it was asked before.
func (o *objective) time(z []float64) float64 {
	if !slices.Equal(z, o.asked) {
		copy(o.asked, z)
		o.answer = o.newTime(z)
	}
	return o.answer
}

func (o *objective) newTime(z []float64) float64 {
	copy(o.at, z)
	for _, v := range z {
		if !(math.Abs(v) < wildest) {
			return refused
		}
	}
	finish := o.s.balance(o.at)
	if !spendsAll(finish) {
		return refused
	}
	time := finish.Moving / o.unit
	if time < o.least {
		o.least = time
		copy(o.best, o.at)
	}
	return time
}

func (o *objective) slopes(slopes, z []float64) {
	if o.time(z) == refused {
		clear(slopes)
		return
	}
	for j, v := range o.s.reduced(o.at) {
		slopes[j] = v / o.unit
	}
}

// raise tries all that is near its greatest speed at that speed.
func (o *objective) raise() {
	z := slices.Clone(o.best)
	for j := range z {
		if z[j] > nearTop/2 && z[j] < 2*farShift && o.s.topPower(j) > 0 {
			z[j] += 8
		}
	}
	o.time(z)
}

// enough is the gain, in parts of the time, below which the optimiser stops.
const enough = 1e-8

// optimise moves z to the fastest finish that spends the budget, and returns it. It
// begins anew from the best until that gains nothing.
func (s *spread) optimise(t rapid.TB, z []float64) State {
	t.Helper()
	start := s.balance(z)
	if !spendsAll(start) {
		return start
	}
	o := &objective{
		s: s, unit: start.Moving, least: 1, answer: refused,
		asked: make([]float64, len(z)), at: slices.Clone(z), best: slices.Clone(z),
	}
	settings := optimize.Settings{
		GradientThreshold: 1e-7, MajorIterations: 300,
		Converger: &optimize.FunctionConverge{Absolute: enough / 10, Iterations: 10},
	}
	for range 8 {
		before := o.least
		result, err := optimize.Minimize(optimize.Problem{Func: o.time, Grad: o.slopes},
			slices.Clone(o.best), &settings, &optimize.BFGS{})
		if result == nil {
			t.Fatal(err)
		}
		o.raise()
		if before-o.least < enough {
			break
		}
	}
	copy(z, o.best)
	return s.balance(z)
}

// A flip gives some cells in a row the other gait.
type flip struct {
	from, to int
	time     float64 // s, at about even effort on those cells
}

// tries is how many flips are optimised before a search for gaits ends.
const tries = 6

// search looks for better gaits than those of an optimised z, by flips of up to longest
// cells of one gait in a row: all are tried with intensities held, the best of them
// optimised.
func (s *spread) search(t rapid.TB, z []float64, longest int) State {
	t.Helper()
	best := s.balance(z)
	for range 20 {
		better := false
		for _, f := range s.flips(z, best, longest) {
			trial, gaits := slices.Clone(z), slices.Clone(s.gaits)
			s.turn(trial, f)
			finish := s.optimise(t, trial)
			if better = spendsAll(finish) && !s.tooSlow() && finish.Moving < best.Moving-0.01; better {
				best = finish
				copy(z, trial)
				break
			}
			copy(s.gaits, gaits)
			s.balance(z)
		}
		if !better {
			break
		}
	}
	return s.balance(z)
}

// turn makes a flip, from what the last sweep says of the states.
func (s *spread) turn(z []float64, f flip) {
	defer s.begin()()
	for j := f.from; j < f.to; j++ {
		s.gaits[j] = 1 - s.gaits[j]
		z[j] = s.evenOn(j, s.even)
	}
}

// flips returns the most promising ones.
func (s *spread) flips(z []float64, best State, longest int) (all []flip) {
	gaits := slices.Clone(s.gaits)
	trial := slices.Clone(z)
	for from := range z {
		for to := from + 1; to <= min(from+longest, len(z)) && gaits[to-1] == gaits[from]; to++ {
			copy(trial, z)
			s.turn(trial, flip{from: from, to: to})
			if f := s.balance(trial); spendsAll(f) && f.Moving < best.Moving+30 && !s.tooSlow() {
				all = append(all, flip{from, to, f.Moving})
			}
			copy(s.gaits, gaits)
			s.sweep(z)
		}
	}
	slices.SortFunc(all, func(a, b flip) int { return cmp.Compare(a.time, b.time) })
	return all[:min(tries, len(all))]
}
