package curve

import (
	"math"

	"isoeffort.example/effort"
)

// Pandolf is the equation of Pandolf, Givoni and Goldman for walking with a load, as net
// power per kg of body mass. The zero value is a walker of 70 kg without load on a firm
// road. Gross and in watts it is
//
//	M = 1.5 W + 2.0 (W+L)(L/W)² + η (W+L)(1.5 V² + 0.35 V G)
//
// with W the body mass and L the load in kg, η the terrain, V the speed in m/s along the
// slope and G the gradient in per cent. The first two terms are standing, the last is
// what Power returns, over W. It is Separable.
//
// It is for walking up to about 2.2 m/s, level and up to about 25 %. Above 45 % it is
// held constant. Downhill it is left as published and is wrong: Power is 0 at
// V = −0.233 G, negative at slower speeds and falling with speed below half of it. At
// 1.34 m/s that begins at −5.7 %, and at −10 % the whole of walking is negative. So no
// plan can go downhill by it: take PandolfSantee. It is also too low for heavy loads at
// some speeds, by 12 to 33 % (Drain, Aisbett, Lewis & Billing 2017, J Sci Med Sport
// 20:S78, from memory).
//
// Source: Pandolf, Givoni & Goldman 1977, J Appl Physiol 43:577,
// doi:10.1152/jappl.1977.43.4.577, from memory, ranges included; a few young men, some
// of them soldiers. Without load its gross power is within 0.25 W/kg
// of that of the newer effort.WalkingPower at 1.34 m/s, on the level and on +10 %; net, it
// is 0.28 lower on the level.
type Pandolf struct {
	// Mass is the body mass in kg, without load: 30 to 250. 0 means 70.
	Mass float64

	// Load is what is carried on the back in kg: 0 to the body mass. 0 is none.
	Load float64

	// Terrain is the factor η of the ground: 1 to 10. 0 means 1, a firm road or a
	// treadmill; the surface factors of package effort are of this kind. Leave it at 0
	// where the stretches of a course carry such factors, or they count twice.
	Terrain float64
}

// usualMass stands for a Mass of 0, in kg. [Our own.]
const usualMass = 70

// filled replaces what 0 stands for.
func (p Pandolf) filled() Pandolf {
	if p.Mass == 0 {
		p.Mass = usualMass
	}
	if p.Terrain == 0 {
		p.Terrain = 1
	}
	return p
}

// Published returns the gross power in W/kg of body mass by the equation, held nowhere.
// It is NaN where Check objects.
func (p Pandolf) Published(speed, gradient float64) float64 {
	return p.standing() + p.factor()*moving(speed)*(1.5*speed+35*gradient)
}

// Power returns the net power in W/kg of body mass, NaN where Check objects. See Pandolf
// for where it is negative.
func (p Pandolf) Power(speed, gradient float64) float64 {
	return p.Base(speed) + speed*p.PerMetre(gradient)
}

// Base returns what speed costs on the level, in W/kg.
func (p Pandolf) Base(speed float64) float64 { return p.factor() * 1.5 * moving(speed) * speed }

// PerMetre returns what gradient adds for each metre, in J/(kg m); it is negative
// downhill.
func (p Pandolf) PerMetre(gradient float64) float64 {
	return p.factor() * 35 * held(gradient, -steepest, steepest)
}

// factor is η (W+L)/W, NaN where Check objects.
func (p Pandolf) factor() float64 {
	if p.Check() != nil {
		return math.NaN()
	}
	p = p.filled()
	return p.Terrain * (1 + p.Load/p.Mass)
}

// standing is the gross power of standing with the load, W/kg.
func (p Pandolf) standing() float64 {
	p = p.filled()
	share := p.Load / p.Mass
	return 1.5 + 2*(1+share)*share*share
}

// About describes the curve.
func (Pandolf) About() effort.About {
	return effort.About{
		Name:       "Pandolf et al. 1977, walking with a load",
		Source:     "J Appl Physiol 43:577, doi:10.1152/jappl.1977.43.4.577; from memory",
		Population: "a few young men, some of them soldiers",
		Gradient:   [2]float64{0, 0.25},
		Speed:      [2]float64{0, 2.2},
		Gross:      true,
		Outside:    "downhill as published, down to negative power; held above 0.45; speed extrapolated",
	}
}
