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

	// Tilt and Ease are as in Pace.
	Tilt float64
	Ease bool

	// ShortestBout is the least time in seconds that a bout of one gait lasts. 0 leaves
	// the gait to the rule, cell by cell.
	ShortestBout float64

	// ChangeSaving is the time in seconds that a change of gait must save to be worth
	// asking of a runner, where ShortestBout is not 0. 0 means DefaultChangeSaving.
	ChangeSaving float64

	// Gaits, if not nil, is the gait of every cell, and ShortestBout is not looked at.
	Gaits []Gait
}

// DefaultChangeSaving is what Demand.ChangeSaving stands for at 0, in seconds. [Our own.]
const DefaultChangeSaving = 15

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

// checkState refuses a state from which there is nothing to solve.
func (in *Integrator) checkState(from State) error {
	for _, v := range []float64{from.Distance, from.Moving, from.Work, from.Spent, from.Worn} {
		if !(v >= 0 && v < 1e9) {
			return fmt.Errorf("effort: %w: state %+v", ErrDemand, from)
		}
	}
	if from.Distance >= in.ground.length {
		return fmt.Errorf("effort: %w: the state is at %g m, the finish at %g m", ErrDemand, from.Distance, in.ground.length)
	}
	return nil
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
	case !(d.ChangeSaving >= 0 && d.ChangeSaving < 1e6):
		return fmt.Errorf("effort: %w: change saving %g s", ErrDemand, d.ChangeSaving)
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
