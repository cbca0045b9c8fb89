package effort

import "math"

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
	names := [...]string{"hour power", "endurance exponent", "fade", "fade shape", "braking"}
	if n < 0 || int(n) >= len(names) {
		return "no number of an athlete"
	}
	return names[n]
}

// Get returns a number of the athlete. Like Set it panics for anything but the constants.
func (a Athlete) Get(n Number) float64 { return *a.number(n) }

// Set returns the athlete with one number changed.
func (a Athlete) Set(n Number, value float64) Athlete {
	*a.number(n) = value
	return a
}

func (a *Athlete) number(n Number) *float64 {
	return [...]*float64{&a.HourPower, &a.Endurance, &a.Fade, &a.FadeShape, &a.Braking}[n]
}

// A Fastest is the fastest time that the whole budget allows.
type Fastest struct {
	Moving    float64 // s
	Intensity float64

	// Slope is the relative change of Moving per relative change of each number of the
	// athlete, ∂ ln T/∂ ln θ, at one budget and with the gaits held. Gaits that change
	// along with the number matter little, since the rule changes them where the time
	// hardly depends on them: on a rolling course that is half walked, the slopes with
	// the gaits chosen anew differ by less than 2 %.
	Slope [Numbers]float64

	// ByLever is the change of Moving in seconds for one unit of each lever, at one
	// budget and with the gaits held.
	ByLever Sensitivity
}

// Fastest covers the whole ground on the whole budget. Given gaits, one for each cell,
// hold; nil leaves them to the rule, and Gaits then returns them. With gaits held the
// time is a smooth function of the athlete.
//
// Where all is at its greatest speed and does not spend the budget, as walking all the
// way may be, the time is that. Where no pace at all spends just the budget with the gaits
// given, as of a runner who fades away, the error wraps ErrDemand, and the time returned
// beside it is that of the pace that came nearest, for a fit that has strayed. It panics if gaits are given but not one for each cell.
func (in *Integrator) Fastest(gaits []Gait) (Fastest, error) {
	s := solver{in: in}
	var unmet error
	if gaits == nil {
		base, err := in.Solve(State{}, Demand{})
		if err != nil {
			return Fastest{}, err
		}
		s.x = math.Log(base.Intensity)
	} else {
		if len(gaits) != len(in.gaits) {
			panic("effort: not one gait for each cell")
		}
		copy(in.gaits, gaits)
		unmet = s.settled()
	}
	f := Fastest{Moving: in.out.Finish().Moving, Intensity: math.Exp(s.x)}
	f.ByLever = in.sensitivity(s.x)
	for n := range Number(Numbers) {
		f.Slope[n] = f.ByLever[n] * in.athlete.Get(n) / f.Moving
	}
	return f, unmet
}

// Gaits returns the gait of each cell that the last solve settled on. The slice belongs
// to the integrator.
func (in *Integrator) Gaits() []Gait { return in.gaits }
