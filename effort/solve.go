package effort

import (
	"errors"
	"fmt"
	"math"
)

// A Demand is what a Solve has to meet.
type Demand struct {
	// Moving is the moving time in seconds at the finish, counted like State.Moving.
	// 0 asks for the fastest finish that Budget allows.
	Moving float64

	// Budget is the effort budget spent at the finish, counted like State.Spent.
	// 0 means 1. It is not looked at where Moving is given.
	Budget float64

	// Tilt is as in Pace.
	Tilt float64

	// ShortestBout is the least time in seconds that a bout of one gait lasts. 0 leaves
	// the gait to the rule, cell by cell.
	ShortestBout float64
}

// A Solution is the pace that meets a demand. Its Traverse belongs to the integrator.
type Solution struct {
	*Traverse
	Intensity float64

	// BoutCost is what joining bouts costs, in seconds of moving time at equal budget
	// where the fastest finish was asked for, and at equal intensity where a time was.
	BoutCost float64
}

// The causes for which a demand cannot be met.
var (
	ErrDemand = errors.New("demand out of range")
	ErrSpent  = errors.New("the effort budget is spent before the finish")
)

// Accuracy of Solve, relative.
const (
	ruleTolerance  = 3e-4 // of intensity, while gaits still change
	solveTolerance = 1e-9 // of time or budget
	noJump         = 1e-6 // of intensity: a bracket as narrow as this holds a jump
	largeShift     = 0.02 // of intensity, between the gaits chosen and the demand met with them
)

// Solve finds the relative intensity at which the athlete, from a state, meets a demand.
// Time and budget are met to 1e-9; the gaits are those of the rule within 0.03 % of
// intensity. Where so much ground is alike that no single intensity meets the demand,
// because running asks too much of it and walking too little, that ground is run and
// walked by turns.
//
// A usual solve takes 4 to 8 sweeps over the ground. The error wraps ErrDemand, for a
// moving time not after the state's or a shortest bout that is negative, or ErrSpent.
func (in *Integrator) Solve(from State, d Demand) (Solution, error) {
	if err := d.check(from); err != nil {
		return Solution{}, err
	}
	s := solver{in: in, from: from, demand: d}
	if !s.byRule() {
		s.mix()
	} else {
		s.settle()
		start := s.last
		if d.ShortestBout > 0 {
			start = s.miss(s.x, in.gaits)
		}
		if x, ok := s.exact(start); ok && math.Abs(x-s.x) < largeShift {
			s.x = x
		} else {
			s.bracketAround()
			s.mix()
		}
	}
	return Solution{Traverse: &in.out, Intensity: math.Exp(s.x), BoutCost: s.boutCost()}, nil
}

func (d Demand) check(from State) error {
	switch {
	case !(d.Moving >= 0 && d.Moving < 1e9):
		return fmt.Errorf("effort: %w: moving time %g s", ErrDemand, d.Moving)
	case d.Moving > 0 && d.Moving <= from.Moving:
		return fmt.Errorf("effort: %w: moving time %g s is over at %g s", ErrDemand, d.Moving, from.Moving)
	case !(d.Budget >= 0 && d.Budget < 1e6):
		return fmt.Errorf("effort: %w: budget %g", ErrDemand, d.Budget)
	case d.Moving == 0 && d.budget() <= from.Spent:
		return fmt.Errorf("effort: %w: %.3g of %.3g", ErrSpent, from.Spent, d.budget())
	case !(d.ShortestBout >= 0 && d.ShortestBout < 1e6):
		return fmt.Errorf("effort: %w: shortest bout %g s", ErrDemand, d.ShortestBout)
	case !(math.Abs(d.Tilt) <= 0.5):
		return fmt.Errorf("effort: %w: tilt %g is not within -0.5 to 0.5", ErrDemand, d.Tilt)
	}
	return nil
}

func (d Demand) budget() float64 {
	if d.Budget == 0 {
		return 1
	}
	return d.Budget
}

// solver looks for x = ln intensity.
type solver struct {
	in     *Integrator
	from   State
	demand Demand

	x, low, top    float64 // the best so far, and where the demand is missed on either side
	rule, ruleTime float64 // x and moving time by the rule alone, where that meets the demand
	ruleSlope      float64
	last           point
}

// point is how far the demand is missed at x: as a logarithm that grows with x, and its
// derivative while no gait changes.
type point struct{ x, value, slope float64 }

// miss sweeps at x.
func (s *solver) miss(x float64, gaits []Gait) point {
	t := s.in.Traverse(s.from, Pace{Intensity: math.Exp(x), Tilt: s.demand.Tilt, Gaits: gaits})
	if s.demand.Moving > 0 {
		moving := t.Finish().Moving - s.from.Moving
		return point{x, -math.Log(moving / (s.demand.Moving - s.from.Moving)), -t.timeSlope / moving}
	}
	spent := t.Finish().Spent - s.from.Spent
	return point{x, math.Log(spent / (s.demand.budget() - s.from.Spent)), t.spentSlope / spent}
}

// byRule looks for x with the gait rule in force. It reports whether the demand is met;
// if not, low and top hold a jump.
func (s *solver) byRule() bool {
	s.low, s.top = math.Inf(-1), math.Inf(1)
	s.x = s.guess()
	var before point
	for i := range 100 {
		now := s.miss(s.x, nil)
		// The derivative does not see that gaits change; the last two points do.
		if steeper := (now.value - before.value) / (now.x - before.x); i > 0 && steeper > now.slope {
			now.slope = steeper
		}
		dx := -now.value / now.slope
		if math.Abs(dx) < ruleTolerance {
			s.keepRule(now, dx)
			return true
		}
		s.narrow(s.x, now.value)
		if s.top-s.low < noJump {
			return false
		}
		before, s.x = now, s.next(dx)
	}
	return false
}

// keepRule notes where the rule alone meets the demand, dx from the point swept last.
func (s *solver) keepRule(now point, dx float64) {
	s.last = now
	s.rule = s.x + dx
	s.ruleTime = s.in.out.Finish().Moving + s.in.out.timeSlope*dx
	s.ruleSlope = s.in.out.timeSlope
}

func (s *solver) narrow(x, value float64) {
	if value < 0 {
		s.low = x
	} else {
		s.top = x
	}
}

// next is a Newton step of at most 0.7, or the middle of the bracket.
func (s *solver) next(dx float64) float64 {
	x := s.x + math.Max(-0.7, math.Min(0.7, dx))
	if math.IsNaN(dx) || x <= s.low || x >= s.top {
		switch {
		case math.IsInf(s.low, 0):
			return s.top - 0.7
		case math.IsInf(s.top, 0):
			return s.low + 0.7
		}
		return (s.low + s.top) / 2
	}
	return x
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
	if s.demand.ShortestBout > 0 {
		s.in.joinBouts(s.demand.ShortestBout)
		return
	}
	copy(s.in.gaits, s.in.out.Gait)
}

// exact looks for x with the settled gaits, from a point swept with them.
func (s *solver) exact(now point) (float64, bool) {
	low, top := math.Inf(-1), math.Inf(1)
	for range 60 {
		if math.Abs(now.value) < solveTolerance {
			return now.x, true
		}
		if now.value < 0 {
			low = now.x
		} else {
			top = now.x
		}
		next := now.x - now.value/now.slope
		switch {
		case !(now.slope > 1e-9) || math.Abs(next-now.x) > 2:
			return now.x, false // all walking as fast as it can: no intensity changes the time
		case next <= low || next >= top:
			next = (low + top) / 2
		}
		if math.Abs(next-now.x) < 1e-15 {
			return now.x, true
		}
		now = s.miss(next, s.in.gaits)
	}
	return now.x, false
}

// boutCost compares the traverse just made with the rule alone.
func (s *solver) boutCost() float64 {
	if s.demand.ShortestBout == 0 || s.ruleSlope == 0 {
		return 0
	}
	if s.demand.Moving > 0 {
		return (s.x - s.rule) * -s.ruleSlope
	}
	return s.in.out.Finish().Moving - s.ruleTime
}
