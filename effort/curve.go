package effort

import "math"

// A Curve is what one gait costs: the published ones are values of this interface, and
// users bring their own.
//
// Power returns the net metabolic power in W/kg, above standing, of moving at a speed
// in m/s along the slope on a gradient. It must be finite, positive and increasing in
// speed over the range that the curve states; outside that range its documentation says
// whether it is held constant or NaN; NaN in either argument gives NaN.
// Package effort/efforttest checks these laws.
type Curve interface {
	Power(speed, gradient float64) float64
}

// A Separable curve is the sum of a part that depends on speed alone and of a cost per
// metre that depends on gradient alone:
//
//	Power(v, i) = Base(v) + v · PerMetre(i)
//
// Its mean over uneven ground is exact, and the integrator moves by it several times
// faster than by a Curve that is not separable.
type Separable interface {
	Curve

	// Base returns the part of the power, W/kg, that depends on speed alone; 0 at 0.
	Base(speed float64) float64

	// PerMetre returns the cost in J/(kg m) that depends on gradient alone.
	PerMetre(gradient float64) float64
}

// An About says what a published curve rests on, in words and numbers, for a report or a
// choice by program.
type About struct {
	Name       string
	Source     string     // citation, and how far it was read
	Population string     // who was measured
	Gradient   [2]float64 // the range fitted, rise over run
	Speed      [2]float64 // the range fitted, m/s
	Gross      bool       // whether the source counts standing, which Power then subtracts
	Outside    string     // what Power does outside the ranges
}

// MinettiRunning is the curve that the model runs by: RunningCost times speed. It is
// Separable with a Base of 0.
type MinettiRunning struct{}

// Power returns speed · RunningCost(gradient).
func (MinettiRunning) Power(speed, gradient float64) float64 { return speed * RunningCost(gradient) }

// Base returns 0, NaN at NaN.
func (MinettiRunning) Base(speed float64) float64 { return 0 * speed }

// PerMetre is RunningCost.
func (MinettiRunning) PerMetre(gradient float64) float64 { return RunningCost(gradient) }

// About describes the curve.
func (MinettiRunning) About() About {
	return About{
		Name:       "Minetti et al. 2002, running",
		Source:     "J Appl Physiol 93:1039, doi:10.1152/japplphysiol.01177.2001; coefficients from memory",
		Population: "ten elite mountain runners, men, on a treadmill",
		Gradient:   [2]float64{-0.45, 0.45},
		Speed:      [2]float64{0, 6},
		Outside:    "gradient held constant, speed proportional",
	}
}

// LooneyWalking is the curve that the model walks by: WalkingPower. It is Separable.
type LooneyWalking struct{}

// Power is WalkingPower.
func (LooneyWalking) Power(speed, gradient float64) float64 { return WalkingPower(speed, gradient) }

// Base is the part of WalkingPower that depends on speed.
func (LooneyWalking) Base(speed float64) float64 { return walkingBase(speed) }

// PerMetre is what gradient adds to WalkingPower, per metre walked.
func (LooneyWalking) PerMetre(gradient float64) float64 { return walkingGrade(gradient) }

// About describes the curve.
func (LooneyWalking) About() About {
	return About{
		Name:       "Looney et al. 2019, walking",
		Source:     "Med Sci Sports Exerc 51:1954, doi:10.1249/MSS.0000000000002002; second-hand",
		Population: "healthy adults, mostly men and soldiers, on a treadmill",
		Gradient:   [2]float64{-0.40, 0.45},
		Speed:      [2]float64{0, 1.96},
		Gross:      true,
		Outside:    "gradient held constant, speed extrapolated",
	}
}

// MinettiWalking is WalkingLeastCost as a curve: the cost at the most economical speed,
// taken to hold at every speed. It stands for comparison.
type MinettiWalking struct{}

// Power returns speed · WalkingLeastCost(gradient).
func (MinettiWalking) Power(speed, gradient float64) float64 {
	return speed * WalkingLeastCost(gradient)
}

// Base returns 0, NaN at NaN.
func (MinettiWalking) Base(speed float64) float64 { return 0 * speed }

// PerMetre is WalkingLeastCost.
func (MinettiWalking) PerMetre(gradient float64) float64 { return WalkingLeastCost(gradient) }

// About describes the curve.
func (MinettiWalking) About() About {
	a := MinettiRunning{}.About()
	a.Name, a.Speed = "Minetti et al. 2002, walking at the most economical speed", [2]float64{0, 2}
	return a
}

// Curves are the curves of the two gaits. A nil one is the model's: MinettiRunning and
// LooneyWalking.
type Curves struct {
	Run, Walk Curve
}

// filled replaces the nil ones.
func (c Curves) filled() Curves {
	if c.Run == nil {
		c.Run = MinettiRunning{}
	}
	if c.Walk == nil {
		c.Walk = LooneyWalking{}
	}
	return c
}

// finite reports whether x is neither NaN nor infinite.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
