package curve

import "isoeffort.example/effort"

// OxygenEnergy is the energy in J that a millilitre of oxygen gives at a respiratory
// exchange ratio of 0.96, where most of it comes from carbohydrate. At 0.70 it would be
// 19.7, at 1.00 21.1.
//
// Source: Weir 1949, J Physiol 109:1, and Brockway 1987, Hum Nutr Clin Nutr 41C:463, both
// from memory: they give 20.94 and 20.91.
const OxygenEnergy = 20.9

// RestingOxygen is the oxygen uptake of rest in ml/(kg min) that gross figures of the
// ACSM equations contain. Source: as ACSMRunning.
const RestingOxygen = 3.5

// acsm is a metabolic equation of the American College of Sports Medicine, in ml of
// oxygen per kg and metre: on the level, and for each metre of climb.
type acsm struct{ level, climb float64 }

var (
	acsmRunning = acsm{level: 0.2, climb: 0.9}
	acsmWalking = acsm{level: 0.1, climb: 1.8}
)

// net is the oxygen of a metre in ml/kg, held at the level's below 0.
func (e acsm) net(gradient float64) float64 {
	return e.level + e.climb*held(gradient, 0, steepest)
}

// gross is the oxygen of moving in ml/(kg min).
func (e acsm) gross(speed, gradient float64) float64 {
	return 60*moving(speed)*e.net(gradient) + RestingOxygen
}

// ACSMRunning is the metabolic equation for running of the American College of Sports
// Medicine, as net power: oxygen above rest at OxygenEnergy a millilitre. Gross, it is
//
//	VO₂ = 0.2 S + 0.9 S G + 3.5  ml/(kg min)
//
// with S the speed of the treadmill's belt in m/min, that is along the slope, and G the
// gradient. Net, a metre costs 4.18 + 18.8 G J/kg. It is Separable with a Base of 0.
//
// It is for steady running above 2.23 m/s (134 m/min), level and uphill; a top speed is
// not remembered, and About says 6 m/s. It says nothing of descents: below a gradient of
// 0 it is held at its level value, so it takes a descent for level ground, which is too
// dear: effort.RunningCost is 40 % lower at −10 % than on the level. [Our own: a straight
// line cannot turn, and would be 0 at −22 %.] A highest gradient is not remembered
// either: exercise tests on treadmills go to some 25 %, and that stands in About. The
// line goes on to 45 %, where it is 35 % below effort.RunningCost, and is held from there.
//
// Source: ACSM's Guidelines for Exercise Testing and Prescription, from memory; measured
// uptake scatters about the equations by some 7 % (the same, from memory). The term for
// climb is said to go back to Margaria et al. 1963, J Appl Physiol 18:367.
type ACSMRunning struct{}

// Power returns the net power in W/kg.
func (c ACSMRunning) Power(speed, gradient float64) float64 {
	return moving(speed) * c.PerMetre(gradient)
}

// Base returns 0, NaN where the speed is none.
func (ACSMRunning) Base(speed float64) float64 { return 0 * moving(speed) }

// PerMetre returns the net cost in J/(kg m).
func (ACSMRunning) PerMetre(gradient float64) float64 {
	return OxygenEnergy * acsmRunning.net(gradient)
}

// About describes the curve.
func (ACSMRunning) About() effort.About {
	return effort.About{
		Name:       "ACSM metabolic equation, running",
		Source:     "ACSM's Guidelines for Exercise Testing and Prescription; from memory",
		Population: "healthy adults, mostly young men, on a treadmill",
		Gradient:   [2]float64{0, 0.25},
		Speed:      [2]float64{134.0 / 60, 6},
		Gross:      true,
		Outside:    "downhill held at level; uphill the line goes on to 0.45 and is held; speed proportional",
	}
}

// ACSMRunningOxygen returns the gross oxygen uptake of ACSMRunning in ml/(kg min), the
// speed being in m/s along the slope. It is held as that is.
func ACSMRunningOxygen(speed, gradient float64) float64 { return acsmRunning.gross(speed, gradient) }

// ACSMWalking is the metabolic equation for walking of the American College of Sports
// Medicine, as net power. Gross, it is
//
//	VO₂ = 0.1 S + 1.8 S G + 3.5  ml/(kg min)
//
// in the terms of ACSMRunning. Net, a metre costs 2.09 + 37.6 G J/kg. It is Separable
// with a Base of 0.
//
// It is for walking at 0.83 to 1.67 m/s (50 to 100 m/min), level and uphill. Downhill and
// above 45 % it is held as ACSMRunning is; its own line would be 0 at −5.6 %. A cost per
// metre that does not depend on speed is too low for fast walks.
//
// Source: as ACSMRunning. The terms are said to go back to Dill 1965, J Appl Physiol
// 20:19, from memory.
type ACSMWalking struct{}

// Power returns the net power in W/kg.
func (c ACSMWalking) Power(speed, gradient float64) float64 {
	return moving(speed) * c.PerMetre(gradient)
}

// Base returns 0, NaN where the speed is none.
func (ACSMWalking) Base(speed float64) float64 { return 0 * moving(speed) }

// PerMetre returns the net cost in J/(kg m).
func (ACSMWalking) PerMetre(gradient float64) float64 {
	return OxygenEnergy * acsmWalking.net(gradient)
}

// About describes the curve.
func (ACSMWalking) About() effort.About {
	a := ACSMRunning{}.About()
	a.Name, a.Speed = "ACSM metabolic equation, walking", [2]float64{50.0 / 60, 100.0 / 60}
	return a
}

// ACSMWalkingOxygen returns the gross oxygen uptake of ACSMWalking in ml/(kg min), the
// speed being in m/s along the slope. It is held as that is.
func ACSMWalkingOxygen(speed, gradient float64) float64 { return acsmWalking.gross(speed, gradient) }

var (
	_ effort.Separable = ACSMRunning{}
	_ effort.Separable = ACSMWalking{}
	_ effort.Separable = Pandolf{}
	_ effort.Curve     = PandolfSantee{}
)
