package effort

import (
	"errors"
	"fmt"
	"math"
)

// A Slope is ground of one gradient prepared for one athlete: what speed a power buys
// there, and in which gait. It does not change and may be shared between goroutines; no
// method allocates.
//
// Of Surroundings only Drag and HeadWind matter here: the rest bears on capability, or
// needs a place and an hour.
type Slope struct {
	mover    mover
	cell     cell
	gradient float64
}

// SteepestSlope is the gradient, up and down, beyond which there is no path: about the
// slope of 72 degrees.
const SteepestSlope = 3

// ErrGradient is wrapped by the error for a gradient that nobody moves on.
var ErrGradient = errors.New("gradient out of range")

// NewSlope prepares a gradient within ±SteepestSlope. The curves hold their cost constant
// outside the range that they were fitted in. The error wraps ErrAthlete,
// ErrSurroundings or ErrGradient, or for other curves ErrCurve.
func NewSlope(a Athlete, gradient float64, s Surroundings) (*Slope, error) {
	return Curves{}.Slope(a, gradient, s)
}

// Slope is NewSlope for other curves.
func (k Curves) Slope(a Athlete, gradient float64, s Surroundings) (*Slope, error) {
	slope := &Slope{}
	g := modelGround
	if k.Run != nil || k.Walk != nil {
		g = k.empty(0, 0)
	}
	return slope, slope.prepare(g, &a, gradient, &s)
}

func (s *Slope) prepare(g *Ground, a *Athlete, gradient float64, sur *Surroundings) error {
	if err := a.check(); err != nil {
		return err
	}
	if err := sur.check(); err != nil {
		return err
	}
	if !(math.Abs(gradient) <= SteepestSlope) {
		return fmt.Errorf("effort: %w: %g is not within ±%d", ErrGradient, gradient, SteepestSlope)
	}
	s.gradient, s.mover, s.cell = gradient, g.mover(*a, *sur), g.uniform(gradient)
	if g == modelGround {
		return nil
	}
	return g.checkCell(&s.cell)
}

// Move returns the gait and the stride that an effort power in W/kg buys on a gradient,
// by the gait rule: see Slope.Choose. The error is NewSlope's.
func Move(a Athlete, gradient, power float64, s Surroundings) (Gait, Stride, error) {
	var slope Slope
	if err := slope.prepare(modelGround, &a, gradient, &s); err != nil {
		return Walk, Stride{}, err
	}
	gait, stride := slope.Choose(power)
	return gait, stride, nil
}

// Choose returns the gait of the gait rule and its stride when a power in W/kg is on
// offer. That gait is the cheaper way to buy distance with time and budget: the lower of
//
//	(1 + (ε_g/ε)^n/(n−1)) / v_g,  n = 1/k
//
// over the two gaits, ε_g/ε being the share of the power on offer that the gait uses.
//
// Derivation: a race minimises time T under a budget B = ∫ ε^n dt. With a price λ on
// the budget a metre in gait g costs (1 + λ ε_g^n)/v_g. Where speed is in proportion to
// power, v = a ε, the best ε of (1 + λ ε^n)/(a ε) is that of λ (n−1) ε^n = 1; so the ε
// that is on offer, if it is the best on such ground, implies λ = 1/((n−1) ε^n), and with
// that price the cost of a metre is the expression above. A walk at its greatest speed
// uses less than the power on offer, so it is preferred until running is up to k/(1−k)
// faster. What a gait costs in fade is not in the price. Running slower than the
// athlete's slowest run is walking; the athlete's Habit goes before everything.
//
// A power that is not positive stands still: speed and power 0. One that is NaN or
// infinite gives NaN.
func (s *Slope) Choose(power float64) (Gait, Stride) {
	if !(power > 0) || math.IsInf(power, 1) {
		return s.idle(), impossible(power)
	}
	return s.mover.choose(&s.cell, power, 0)
}

// idle is the gait of standing still.
func (s *Slope) idle() Gait {
	if s.mover.habit == RunOnly {
		return Run
	}
	return Walk
}

// impossible is the stride of a power that moves nobody.
func impossible(power float64) Stride {
	if power <= 0 {
		return Stride{}
	}
	return Stride{math.NaN(), math.NaN(), math.NaN()}
}

// Run returns the stride of running at a power in W/kg, however slow; Walk that of
// walking. Powers that are not positive or not finite are as in Choose.
func (s *Slope) Run(power float64) Stride {
	if !(power > 0) || math.IsInf(power, 1) {
		return impossible(power)
	}
	return s.mover.run(&s.cell, power)
}

// Walk is documented with Run.
func (s *Slope) Walk(power float64) Stride {
	if !(power > 0) || math.IsInf(power, 1) {
		return impossible(power)
	}
	return s.mover.walk(&s.cell, power)
}

// Power returns the effort power in W/kg of a gait at a speed in m/s along the slope,
// fastest walk and slowest run aside. It is NaN for a speed that is negative or not
// finite. With a strong wind from behind it may be negative: the runner is carried.
func (s *Slope) Power(g Gait, speed float64) float64 {
	if !(speed >= 0) || math.IsInf(speed, 1) {
		return math.NaN()
	}
	if speed == 0 {
		return 0
	}
	w := s.mover.runWay(&s.cell)
	if g == Walk {
		w = s.mover.walkWay(&s.cell)
	}
	power, _ := s.mover.powerAt(&w, speed)
	return power
}

// Metabolic returns the metabolic part, air included, of what Power returns: all but
// braking, which uses no oxygen.
func (s *Slope) Metabolic(g Gait, speed float64) float64 {
	return s.Power(g, speed) - s.mover.braking*s.cell.brake*speed
}
