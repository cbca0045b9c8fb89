package effort

import (
	"math"
)

// Number names one of the five numbers of an Athlete that results can tell something of.
type Number int

// The numbers of an athlete, in the order of every vector and matrix over them.
const (
	HourPower Number = iota
	Endurance
	Fade
	FadeShape
	Braking
	Numbers = 5
)

func (n Number) String() string {
	return [...]string{"hour power", "endurance exponent", "fade", "fade shape", "braking"}[n]
}

// Get returns a number of the athlete.
func (a Athlete) Get(n Number) float64 { return *a.number(n) }

// Set returns the athlete with one number changed.
func (a Athlete) Set(n Number, value float64) Athlete {
	*a.number(n) = value
	return a
}

func (a *Athlete) number(n Number) *float64 {
	return [...]*float64{&a.HourPower, &a.Endurance, &a.Fade, &a.FadeShape, &a.Braking}[n]
}

// sensitivityStep is the relative change of a number for a central difference: with a
// solve exact to 1e-9 the quotient is good to about 1e-6.
const sensitivityStep = 1e-3

// FastestTime returns the moving time in seconds in which the athlete covers the whole
// ground on the whole budget, with the gaits left to the rule, and the relative change
// of that time per relative change of each number, ∂ ln T/∂ ln θ. The gaits are held
// while a number changes, which by the envelope theorem does not matter to first
// order: the rule chooses them where the time hardly depends on them.
//
// The derivatives are central differences of relative step 1e-3.
func (in *Integrator) FastestTime() (moving float64, slope [Numbers]float64, err error) {
	athlete := in.athlete
	base, err := in.Solve(State{}, Demand{})
	if err != nil {
		return 0, slope, err
	}
	moving = base.Finish().Moving
	s := solver{in: in, x: math.Log(base.Intensity)}
	for n := range Number(Numbers) {
		if athlete.Get(n) == 0 {
			continue
		}
		up := s.timeOf(athlete.Set(n, athlete.Get(n)*(1+sensitivityStep)))
		down := s.timeOf(athlete.Set(n, athlete.Get(n)*(1-sensitivityStep)))
		slope[n] = (math.Log(up) - math.Log(down)) / (math.Log1p(sensitivityStep) - math.Log1p(-sensitivityStep))
	}
	in.become(athlete)
	return moving, slope, nil
}

// timeOf is the fastest time of another athlete with the gaits settled before.
func (s *solver) timeOf(a Athlete) float64 {
	s.in.become(a)
	s.exact(s.miss(s.x, s.in.gaits))
	return s.in.out.Finish().Moving
}

// become changes the athlete in place; the ground, surroundings and gaits stay.
func (in *Integrator) become(a Athlete) {
	s := Surroundings{Drag: in.mover.drag, HeadWind: in.mover.wind}
	in.athlete, in.mover = a.filled(), newMover(a, s)
	in.tilt.valid = false
}
