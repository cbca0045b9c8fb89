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
}

// Fastest covers the whole ground on the whole budget. Given gaits, one for each cell,
// hold; nil leaves them to the rule, and Gaits then returns them. With gaits held the
// time is a smooth function of the athlete.
//
// If the gaits are all walking and the fastest walk does not spend the budget, the time
// is that of the fastest walk. It panics if gaits are given but not one for each cell.
func (in *Integrator) Fastest(gaits []Gait) (Fastest, error) {
	s := solver{in: in}
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
		x := s.guess()
		s.x, _ = s.exact(s.miss(x, in.gaits), solveTolerance)
	}
	f := Fastest{Moving: in.out.Finish().Moving, Intensity: math.Exp(s.x)}
	f.Slope = s.slopes()
	return f, nil
}

// Gaits returns the gait of each cell that the last solve settled on. The slice belongs
// to the integrator.
func (in *Integrator) Gaits() []Gait { return in.gaits }

// slopes differentiates the time at equal budget, from the traverse just made:
// dT/dθ = ∂T/∂θ − (∂T/∂ε)/(∂B/∂ε) ∂B/∂θ, at the finish.
func (s *solver) slopes() (slope [Numbers]float64) {
	in := s.in
	d := in.derivatives(math.Exp(s.x))
	finish := in.out.Finish()
	exchange := 0.0
	if in.out.spentSlope > 1e-9 {
		exchange = d.moving[byIntensity] / d.spent[byIntensity]
	}
	for n := range Number(Numbers) {
		total := d.moving[n] - exchange*d.spent[n]
		slope[n] = total * in.athlete.Get(n) / finish.Moving
	}
	return slope
}

// A tangent is the derivative of a value by each number of the athlete and by ln ε.
type tangent [Numbers + 1]float64

const byIntensity = Numbers

// add returns t + f u.
func (t tangent) add(f float64, u *tangent) tangent {
	for i := range t {
		t[i] += f * u[i]
	}
	return t
}

// derivative carries the tangents of a State through a traverse.
type derivative struct{ moving, work, spent tangent }

// derivatives differentiates the whole traverse that the integrator holds, made at a
// relative intensity without tilt, with the gaits held.
func (in *Integrator) derivatives(intensity float64) derivative {
	var d derivative
	before := in.out.From
	for j := in.out.First; j < len(in.ground.cells); j++ {
		in.carry(&d, j, before, math.Log(intensity))
		before = in.out.End[j]
	}
	return d
}

// carry takes the derivative over cell j. Each line is the differential of the line of
// the same meaning in sweep.step.
func (in *Integrator) carry(d *derivative, j int, before State, lnIntensity float64) {
	c, m, a := &in.ground.cells[j], &in.mover, &in.athlete
	dt := in.out.End[j].Moving - before.Moving
	power, offer := in.out.Power[j], in.offer[j]
	length := c.length * in.ground.remaining(j, before.Distance)
	v := length / dt

	// half = work + length cost/(7200 P60)
	ahead := length * m.runCost(c) / (7200 * a.HourPower)
	half := d.work
	half[HourPower] -= ahead / a.HourPower
	half[Braking] += length * c.brake / (7200 * a.HourPower)

	// ln p = ln ε + ln P60 − φ F(half, q)
	f, byWork, byShape := fadeTimeSlopes(before.Work+ahead, a.FadeShape)
	lnCap := tangent{}.add(-a.Fade*byWork, &half)
	lnCap[HourPower] += 1 / a.HourPower
	lnCap[Fade] -= f
	lnCap[FadeShape] -= a.Fade * byShape
	lnOffer := lnCap
	lnOffer[byIntensity]++

	// v and the power used
	var lnSpeed, lnPower tangent
	if power == offer {
		e := in.elasticity(j, v)
		lnPower, lnSpeed = lnOffer, tangent{}.add(e, &lnOffer)
		lnSpeed[Braking] -= e * v * c.brake / offer
	} else {
		lnPower[Braking] = v * c.brake / power
	}

	// t += length/v, h += power dt/(3600 P60), B += ε_g^n dt/3600
	lnUsed := lnPower.add(-1, &lnCap)
	spend := (in.out.End[j].Spent - before.Spent)
	work := power * dt / (3600 * a.HourPower)
	lnEpsilon := lnIntensity + math.Log(power/offer)
	d.moving = d.moving.add(-dt, &lnSpeed)
	d.work = d.work.add(work, &lnPower).add(-work, &lnSpeed)
	d.work[HourPower] -= work / a.HourPower
	d.spent = d.spent.add(spend*m.order, &lnUsed).add(-spend, &lnSpeed)
	d.spent[Endurance] -= spend * lnEpsilon * m.order * m.order
}

// elasticity is that of the stride at speed v in cell j, whose power is all on offer.
func (in *Integrator) elasticity(j int, v float64) float64 {
	c, m := &in.ground.cells[j], &in.mover
	base, perMetre := 0.0, m.runCost(c)
	if in.out.Gait[j] == Walk {
		base, perMetre = m.economy*c.surface, m.economy*c.walk+m.braking*c.brake
	}
	_, slope := m.powerAt(base, perMetre, v)
	return in.offer[j] / (v * slope)
}
