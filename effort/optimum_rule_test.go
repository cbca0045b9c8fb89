package effort

import (
	"math"
	"slices"
)

// A rule chooses gaits and intensities cell by cell. It is the gait rule with two more
// pieces, to see what they are worth.
//
// The first is the price of work. One hour-equivalent more before a place costs, at equal
// budget,
//
//	Λ = φ n/(n−1) ∫ F'(h) σ dt  seconds over what is left of the race,
//
// F being the work as the fade counts it and σ = (ε_g/ε)^n. So a gait's metre costs
// (1 + (ε_g/ε)^n/(n−1) + ω)/v, ω = Λ P_g/(3600 P60).
//
// The second is ease: the least of that over intensities is where
//
//	(ε_g/ε)^n = (n−1) (1 + (e−1)(1+ω))/(n−e),
//
// e being the elasticity of speed to power. It is ε itself for running without air, e = 1;
// a walk, e from 0.6 fast to 1.2 slow, takes 5 % less to 2 % more. [Our own: the local
// form of the optimum; checked against the direct optimiser.]
type rule struct {
	in     *Integrator
	work   bool
	ease   bool
	byWork []float64 // Λ after each cell, s
	gaits  []Gait
	used   []float64 // intensity
	states []State
}

func newRule(in *Integrator, work, ease bool) *rule {
	n := len(in.ground.cells)
	return &rule{
		in: in, work: work, ease: ease, byWork: make([]float64, n), gaits: make([]Gait, n),
		used: make([]float64, n), states: make([]State, n+1),
	}
}

// price is what a metre costs at ε standing for p, in seconds.
func (r *rule) price(s Stride, p, byPower float64) float64 {
	n := r.in.mover.order
	return (1 + math.Pow(s.Power/p, n)/(n-1) + byPower*s.Power) / s.Speed
}

// eased is the power of the cheapest metre of a way, from a stride at p.
func (r *rule) eased(w *way, s Stride, p, byPower float64) float64 {
	m, v, eased := &r.in.mover, s.Speed, p
	n := m.order
	for range 8 {
		power, slope := m.powerAt(w, v)
		e, before := power/(v*slope), v
		eased = p * math.Pow((n-1)*(1+(e-1)*(1+byPower*power))/(n-e), 1/n)
		v, _ = m.speed(w, eased, v, fastestRun)
		if math.Abs(v-before) < 1e-7*v {
			break
		}
	}
	return eased
}

// strides are those of running and walking where p stands for ε.
func (r *rule) strides(c *cell, p, byPower float64) (run, walk Stride) {
	m := &r.in.mover
	run, walk = m.run(c, p), m.walk(c, p)
	if r.ease {
		ways := [2]way{m.runWay(c), m.walkWay(c)}
		run, walk = m.run(c, r.eased(&ways[Run], run, p, byPower)), m.walk(c, r.eased(&ways[Walk], walk, p, byPower))
	}
	return run, walk
}

func (r *rule) step(j int, from State, intensity float64, hold bool) State {
	in := r.in
	c := &in.ground.cells[j]
	p := in.offerAt(j, from, c.length, intensity)
	byPower := r.byWork[j] / (3600 * in.athlete.HourPower)
	stride, walk := r.strides(c, p, byPower)
	if !hold {
		r.gaits[j] = Run
		if stride.Speed < in.mover.slowestRun || r.price(walk, p, byPower) <= r.price(stride, p, byPower) {
			r.gaits[j] = Walk
		}
	}
	if r.gaits[j] == Walk {
		stride = walk
	}
	r.used[j] = intensity * stride.Power / p
	return in.moved(c, from, stride, r.used[j])
}

func (r *rule) sweep(intensity float64, hold bool) State {
	still := r.in.mover.air
	r.in.faded = fadeExp{}
	for j := range r.gaits {
		r.states[j+1] = r.step(j, r.states[j], intensity, hold)
	}
	r.in.mover.air = still
	return r.states[len(r.gaits)]
}

// around is how far from even effort's the intensity is looked for, as a factor.
const around = 1.15

// bracket brackets the intensity that spends the budget, gaits free, about one.
func (r *rule) bracket(even float64) (low, top float64) {
	low, top = even/around, even*around
	for range 20 {
		if middle := (low + top) / 2; r.sweep(middle, false).Spent > 1 {
			top = middle
		} else {
			low = middle
		}
	}
	return low, top
}

// balance goes over the ground with the gaits held, at the intensity near one given that
// spends the budget, and returns that too.
func (r *rule) balance(x float64) (intensity float64, finish State) {
	slope, before, missed := r.in.mover.order-1, 0.0, 0.0
	x = math.Log(x)
	for i := range 20 {
		finish = r.sweep(math.Exp(x), true)
		miss := math.Log(finish.Spent)
		if secant := (miss - missed) / (x - before); i > 0 && secant > 0.1 {
			slope = secant
		}
		if math.Abs(miss) < balanced || math.Abs(x) > 1 {
			break
		}
		before, missed = x, miss
		x -= miss / slope
	}
	return math.Exp(x), finish
}

// rounds is how often work is priced anew.
const rounds = 4

// solve returns the fastest finish that it finds, and leaves the gaits and intensities of
// it. Where gaits change all at once at the budget, the better side of that is taken.
func (r *rule) solve(even float64) State {
	best, gaits, used := State{Moving: math.Inf(1)}, slices.Clone(r.gaits), slices.Clone(r.used)
	for range rounds {
		low, top := r.bracket(even)
		for _, side := range []float64{low, top} {
			r.sweep(side, false)
			intensity, finish := r.balance(side)
			if r.work {
				r.priceWork(intensity)
			}
			if spendsAll(finish) && finish.Moving < best.Moving {
				best = finish
				copy(gaits, r.gaits)
				copy(used, r.used)
			}
		}
		if !r.work {
			break
		}
	}
	copy(r.gaits, gaits)
	copy(r.used, used)
	return best
}

// priceWork takes Λ from the last sweep, half of it anew so that it settles.
func (r *rule) priceWork(intensity float64) {
	a, n, sum := r.in.athlete, r.in.mover.order, 0.0
	for j := len(r.gaits) - 1; j >= 0; j-- {
		before, after := r.states[j], r.states[j+1]
		r.byWork[j] = (r.byWork[j] + a.Fade*n/(n-1)*sum) / 2
		_, byWork, _ := fadeTimeSlopes((before.Worn+after.Worn)/2, a.FadeShape)
		sum += byWork * (after.Moving - before.Moving) * math.Pow(r.used[j]/intensity, n)
	}
}
