package plan

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/course"
)

// check returns an error that wraps one of the sentinels if the race makes no sense on
// the course.
func (r Race) check(c *course.Course) error {
	for _, part := range []func(*course.Course) error{r.checkGoal, r.checkOptions, r.checkStops, r.checkCutoffs, r.checkPlaces} {
		if err := part(c); err != nil {
			return err
		}
	}
	return nil
}

// checkGoal looks at what is aimed for, of which there is one at most.
func (r Race) checkGoal(*course.Course) error {
	aims := 0
	for _, set := range []bool{r.Goal != 0, r.Share != 0, len(r.Standards) > 0, r.MakeCutoffs} {
		if set {
			aims++
		}
	}
	switch {
	case aims > 1:
		return fmt.Errorf("plan: %w: a time, a share of the budget, standards and cutoffs are four aims: give one", ErrGoal)
	case r.Goal < 0 || r.Goal > longest:
		return fmt.Errorf("plan: %w: %v is not within 0 to %v", ErrGoal, r.Goal, longest)
	case r.Share != 0 && !(r.Share >= 0.001 && r.Share <= 1):
		return fmt.Errorf("plan: %w: share %g of the budget is not within 0.001 to 1", ErrGoal, r.Share)
	case r.InHand < 0 || r.InHand > longest:
		return fmt.Errorf("plan: %w: %v in hand is not within 0 to %v", ErrGoal, r.InHand, longest)
	case r.MakeCutoffs && len(r.Cutoffs) == 0:
		return fmt.Errorf("plan: %w: there are no cutoffs to make", ErrGoal)
	}
	return checkStandards(r.Standards)
}

func (r Race) checkOptions(*course.Course) error {
	if r.StartDelay < 0 || r.StartDelay > 24*time.Hour {
		return fmt.Errorf("plan: %w: start delay %v is not within 0 to 24 h", ErrOption, r.StartDelay)
	}
	if r.Wave < 0 || r.Wave > 24*time.Hour {
		return fmt.Errorf("plan: %w: a wave %v after the first gun is not within 0 to 24 h", ErrOption, r.Wave)
	}
	if r.HoldBack != Off && !(r.HoldBack >= 0 && r.HoldBack <= 0.2) {
		return fmt.Errorf("plan: %w: hold back %g is not within 0 to 0.2", ErrOption, r.HoldBack)
	}
	if r.ShortestBout != Off && (r.ShortestBout < 0 || r.ShortestBout > time.Hour) {
		return fmt.Errorf("plan: %w: shortest bout %v is not within 0 to 1 h", ErrOption, r.ShortestBout)
	}
	return r.Walks.check()
}

// checkStops looks at the halts, and at whether they leave time to move.
func (r Race) checkStops(c *course.Course) error {
	sum := time.Duration(0)
	for _, s := range r.Stops {
		if !(s.Distance >= 0 && s.Distance < c.Length()) || s.Duration <= 0 || s.Duration > longest {
			return fmt.Errorf("plan: %w: %v at %.2f km", ErrStop, s.Duration, s.Distance/1000)
		}
		sum += s.Duration
	}
	if err := r.Stations.check(); err != nil {
		return err
	}
	if sum > longest {
		return fmt.Errorf("plan: %w: %v of stops", ErrStop, sum)
	}
	if left := r.goalMoving(sum); r.Goal > 0 && left <= 0 {
		return fmt.Errorf("plan: %w: %v leaves no time to move after %v of delay and stops", ErrGoal, r.Goal, r.Goal-left)
	}
	return nil
}

// checkPlaces looks at what names or marks ground of the course.
func (r Race) checkPlaces(c *course.Course) error {
	for _, l := range r.Surroundings.Limits {
		if l.From >= c.Length() || math.IsNaN(l.From) {
			return fmt.Errorf("plan: %w: a limit from %.2f km, beyond the finish at %.2f km", ErrOption, l.From/1000, c.Length()/1000)
		}
	}
	for _, name := range r.WalkClimbs {
		if _, err := climbCalled(c, name); err != nil {
			return err
		}
	}
	return nil
}
