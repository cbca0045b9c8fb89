package effort

import (
	"fmt"
	"math"
	"slices"
)

// Accuracy of Solve, relative.
const (
	ruleTolerance  = 3e-4  // of intensity, while gaits still change
	solveTolerance = 1e-9  // of time or budget
	metTolerance   = 1e-6  // of time or budget, for a demand to be called met
	roughTolerance = 1e-5  // of time or budget, where bouts are still to be joined
	noJump         = 1e-6  // of intensity: a bracket as narrow as this holds a jump
	ruleShift      = 0.003 // of intensity, between where the rule chose the gaits and the answer
	joinShift      = 0.02  // the same for joined bouts
	farthest       = 25.0  // of ln intensity
)

// Solve finds the relative intensity at which the athlete, from a state, meets a demand.
// Time and budget are met to 1e-9; the gaits are those of the rule within 0.3 % of
// intensity, mostly within 0.03 %. Where so much ground is alike that no single
// intensity meets the demand, because running asks too much of it and walking too
// little, that ground is run and walked by turns.
//
// A usual solve takes 3 to 9 sweeps over the ground, up to 20 with bouts, and one by
// turns up to 100. The error
// wraps ErrDemand, for a state that is not finite or not before the finish, a moving
// time not after the state's, a shortest bout that is negative, or a demand that no pace
// meets (a gale from behind and a goal too slow for it); or it wraps ErrSpent.
func (in *Integrator) Solve(from State, d Demand) (Solution, error) {
	if err := in.checkState(from); err != nil {
		return Solution{}, err
	}
	if err := d.check(from); err != nil {
		return Solution{}, err
	}
	if in.athlete.Habit != RunAndWalk {
		d.ShortestBout = 0 // one bout, however long
	}
	s := solver{in: in, from: from, demand: d}
	cost, err := s.solve()
	if err == nil && !s.topped && !(math.Abs(s.missed().value) < metTolerance) {
		err = s.unmet()
	}
	if err != nil {
		return Solution{}, err
	}
	return Solution{Traverse: &in.out, Intensity: math.Exp(s.x), BoutCost: cost}, nil
}

// solve meets the demand and returns what bouts cost.
func (s *solver) solve() (boutCost float64, err error) {
	if s.demand.Gaits != nil {
		return 0, s.held()
	}
	if err := s.byRule(); err != nil || s.demand.ShortestBout == 0 || s.topped {
		return 0, err
	}
	return s.byBouts()
}

// held solves with the gaits given.
func (s *solver) held() error {
	if len(s.demand.Gaits) != len(s.in.gaits) {
		return fmt.Errorf("effort: %w: %d gaits for %d cells", ErrDemand, len(s.demand.Gaits), len(s.in.gaits))
	}
	copy(s.in.gaits, s.demand.Gaits)
	return s.settled()
}

// settled solves with the gaits that the integrator holds, from the closed form.
func (s *solver) settled() error {
	x, ok := s.exact(s.miss(s.guess(), s.in.gaits), solveTolerance, farthest)
	if s.x = x; ok || s.atTop(s.in.gaits) {
		return nil
	}
	s.x = x
	s.miss(x, s.in.gaits) // as near as it came
	return s.unmet()
}

// atTop reports whether the budget is more than can be spent: whether all is at its
// greatest speed, however much is on offer. That is then the fastest finish that the
// budget allows, and x the least at which it is so.
func (s *solver) atTop(gaits []Gait) bool {
	if s.demand.Moving > 0 || s.miss(farthest, gaits).value >= 0 || s.in.out.timeSlope != 0 {
		return false
	}
	low, top, fastest := -farthest, farthest, s.in.out.Finish().Moving
	for top-low > noJump {
		middle := (low + top) / 2
		if s.miss(middle, gaits); s.in.out.timeSlope == 0 && s.in.out.Finish().Moving <= fastest {
			top = middle
		} else {
			low = middle
		}
	}
	s.x, s.topped = top, true
	s.miss(top, gaits)
	copy(s.in.gaits, s.in.out.Gait)
	return true
}

func (s *solver) unmet() error {
	if s.demand.Moving > 0 {
		return fmt.Errorf("effort: %w: no pace takes %.0f s for the course", ErrDemand, s.demand.Moving-s.from.Moving)
	}
	return fmt.Errorf("effort: %w: no pace spends the budget of this athlete on the course", ErrDemand)
}

// solver looks for x = ln intensity.
type solver struct {
	in     *Integrator
	from   State
	demand Demand

	x, low, top float64 // the best so far, and where the demand is missed on either side
	joining     bool    // whether gaits are joined to bouts
	turning     bool    // whether some ground is run and walked by turns
	topped      bool    // whether all is at its greatest speed and budget is left
}

// point is how far the demand is missed at x: as a logarithm that grows with x, and its
// derivative while no gait changes.
type point struct{ x, value, slope float64 }

// miss sweeps at x.
func (s *solver) miss(x float64, gaits []Gait) point {
	s.in.Traverse(s.from, Pace{Intensity: math.Exp(x), Tilt: s.demand.Tilt, Ease: s.demand.Ease, Gaits: gaits})
	p := s.missed()
	p.x = x
	return p
}

// missed looks at the traverse that the integrator holds.
func (s *solver) missed() point {
	t := &s.in.out
	if s.demand.Moving > 0 {
		moving := t.Finish().Moving - s.from.Moving
		return point{s.x, -math.Log(moving / (s.demand.Moving - s.from.Moving)), -t.timeSlope / moving}
	}
	spent := t.Finish().Spent - s.from.Spent
	return point{s.x, math.Log(spent / (s.demand.budget() - s.from.Spent)), t.spentSlope / spent}
}

// byRule solves with the gaits that the rule chooses.
func (s *solver) byRule() error {
	last, met := s.approach(s.scouted())
	if math.Abs(s.x) > farthest {
		if s.atTop(nil) {
			return nil
		}
		return s.unmet()
	}
	if met {
		s.settle()
		tolerance := solveTolerance
		if s.demand.ShortestBout > 0 {
			tolerance = roughTolerance // bouts change it again
		}
		if x, ok := s.exact(last, tolerance, ruleShift); ok && math.Abs(x-last.x) < ruleShift {
			s.x = x
			return nil
		}
		s.bracketAround()
	}
	return s.mix()
}

// byBouts joins the bouts of what byRule found, solves again and returns what that costs
// in seconds.
func (s *solver) byBouts() (cost float64, err error) {
	x, slope, moving := s.x, s.in.out.timeSlope, s.in.out.Finish().Moving
	if s.turning && s.in.shortestBout() >= s.demand.ShortestBout {
		return 0, nil
	}
	s.joining = true
	if !s.join() {
		s.bracketAround()
		if err := s.mix(); err != nil {
			return 0, err
		}
	}
	if s.demand.Moving > 0 {
		return (s.x - x) * -slope, nil
	}
	return s.in.out.Finish().Moving - moving, nil
}

// joinRounds is how often bouts are joined anew at the intensity that those before led to.
const joinRounds = 5

// join joins bouts and solves with them, by turns, until they stay as they are, and keeps
// the best: the fastest for a budget, the least budget for a time. It reports whether
// the demand could be met with them at about the rule's intensity.
func (s *solver) join() bool {
	best, rule := math.Inf(1), s.x
	for range joinRounds {
		s.settle()
		if slices.Equal(s.in.gaits, s.in.best) && !math.IsInf(best, 1) {
			break
		}
		x, ok := s.exact(s.miss(s.x, s.in.gaits), solveTolerance, joinShift)
		if !ok || math.Abs(x-rule) > joinShift {
			break
		}
		s.x = x
		if price := s.price(); price < best {
			best = price
			s.in.best = append(s.in.best[:0], s.in.gaits...)
		}
	}
	if math.IsInf(best, 1) {
		return false
	}
	copy(s.in.gaits, s.in.best)
	x, ok := s.exact(s.miss(s.x, s.in.gaits), solveTolerance, farthest)
	s.x = x
	return ok
}

// price is what the traverse just made takes of what the demand leaves open.
func (s *solver) price() float64 {
	if s.demand.Moving > 0 {
		return s.in.out.Finish().Spent
	}
	return s.in.out.Finish().Moving
}

// guess starts from the closed form for running all the way.
func (s *solver) guess() float64 {
	a := s.in.athlete
	fresh := a.freshHours(s.in.ground.RunningWork(a))
	if s.demand.Moving > 0 {
		return math.Log(3600 * fresh / s.demand.Moving)
	}
	hours := math.Pow(fresh, 1/(1-a.Endurance))
	return a.Endurance * math.Log(s.demand.budget()/hours)
}

// settle fixes the gaits that hold from now on, from the traverse just made.
func (s *solver) settle() {
	if s.joining {
		change := s.demand.ChangeSaving
		if change == 0 {
			change = DefaultChangeSaving
		}
		s.in.joinBouts(s.demand.ShortestBout, change)
		return
	}
	copy(s.in.gaits, s.in.out.Gait)
}
