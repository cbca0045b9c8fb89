package effort

import (
	"errors"
	"fmt"
	"math"
)

// An Athlete is what the model knows of a runner.
type Athlete struct {
	// HourPower is the effort power in W/kg that the fresh runner can hold for an hour:
	// 8 to 20; 40:00 for 10 km is about 14.5.
	HourPower float64

	// Endurance is the exponent k with which sustainable relative intensity falls with
	// the duration, (T/3600 s)^−k: 0.05 for the best, 0.10 usual, 0.15.
	Endurance float64

	// Fade is the share of capability lost per hour-equivalent of work at the start:
	// 0.01 to 0.05, 0.02 usual. 0 is no fade.
	Fade float64

	// FadeShape is 1 for a steady fade, more for a later and less for an earlier one:
	// usually 0.4 to 1.3, accepted from 0.1 to 2. 0 means 1.
	FadeShape float64

	// Braking multiplies BrakingCost on good ground: 1 for a practised runner, more for
	// a novice. 0 is no braking.
	Braking float64

	// Economy multiplies the metabolic cost of both gaits. 0 means 1.
	Economy float64

	// FastestWalk is the greatest walking speed in m/s. 0 means 1.8.
	FastestWalk float64

	// SlowestRun is the running speed in m/s below which the runner walks instead.
	// 0 means 1.5.
	SlowestRun float64

	// WalkFall lets the fastest walk fall on climbs: on gradient i it is
	// FastestWalk/(1 + WalkFall i). 2 turns 1.8 m/s into 1.29 on 20 %. 0 is no fall.
	// [Our own form.]
	WalkFall float64

	// FastestDescent is a greatest speed in m/s, along the slope, on ground that falls by
	// more than 2 %. What the runner does not use there is not spent. 0 is none.
	FastestDescent float64

	// Habit is which gaits the runner uses.
	Habit Habit

	// Mass is the runner's body mass in kg, which only matters beside Load. 0 means 70.
	Mass float64

	// Load is the mass carried in kg. All metabolic cost, and braking, is taken to be in
	// proportion to the whole mass, 1 + Load/Mass: so measured for loads near the trunk
	// (Taylor, Heglund, McMahon & Looney 1980, J Exp Biol 86:9, from memory).
	Load float64

	// Eagerness is the exponent m by which the fade counts haste: work fades as
	// ε^m times itself, ε being the relative intensity used. 0 charges work alone;
	// nothing published fixes it. Above 0 even effort is no longer quite the best: an
	// easier opening is, in the first quarter by 0.4 to 1.6 % of intensity for m 2 to 4, a
	// fade of 0.02 and 3 to 20 hours, by 1 to 5 % for a fade of 0.05; it gains up to
	// 2.5 s/h (19).
	Eagerness float64
}

// Usual returns an athlete of the given hour power in W/kg with the usual values of
// everything else: endurance exponent 0.10, fade 0.02, fade shape 1, braking 1.
func Usual(hourPower float64) Athlete {
	return Athlete{HourPower: hourPower, Endurance: 0.10, Fade: 0.02, FadeShape: 1, Braking: 1}
}

// ErrAthlete is wrapped by the error for an athlete's number out of range.
var ErrAthlete = errors.New("athlete out of range")

// bound is the range of a number, for an error that names it.
type bound struct {
	name, unit string
	low, top   float64
}

// misfit returns the index of the first value out of its bounds, or -1.
func misfit(values []float64, bounds []bound) int {
	for i, v := range values {
		if !(v >= bounds[i].low && v <= bounds[i].top) {
			return i
		}
	}
	return -1
}

// refusal is the error for a value out of its bounds.
func (b bound) refusal(cause error, value float64) error {
	return fmt.Errorf("effort: %w: %s %g%s is not within %g to %g%s", cause, b.name, value, b.unit, b.low, b.top, b.unit)
}

var athleteBounds = []bound{
	{"hour power", "", 1, 40},
	{"endurance exponent", "", 0.01, 0.4},
	{"fade", "", 0, 0.5},
	{"fade shape", "", 0.1, 2},
	{"braking", "", 0, 10},
	{"economy", "", 0.2, 5},
	{"fastest walk", "", 0.5, 4},
	{"slowest run", "", 0.5, 4},
	{"walk fall", "", 0, 10},
	{"fastest descent", "", 0, 20},
	{"mass", " kg", 20, 300},
	{"load", " kg", 0, 100},
	{"eagerness", "", 0, 10},
}

// Check returns an error that wraps ErrAthlete if one of the numbers is outside what the
// model can mean by it.
func (a Athlete) Check() error { return a.check() }

// check is Check without more than one copy.
func (a *Athlete) check() error {
	filled := a.filled()
	return filled.checkFilled()
}

func (a *Athlete) checkFilled() error {
	values := [...]float64{
		a.HourPower, a.Endurance, a.Fade, a.FadeShape, a.Braking, a.Economy, a.FastestWalk,
		a.SlowestRun, a.WalkFall, a.FastestDescent, a.Mass, a.Load, a.Eagerness,
	}
	if i := misfit(values[:], athleteBounds); i >= 0 {
		return athleteBounds[i].refusal(ErrAthlete, values[i])
	}
	if a.FastestDescent > 0 && a.FastestDescent < 0.5 {
		return fmt.Errorf("effort: %w: fastest descent %g is below 0.5", ErrAthlete, a.FastestDescent)
	}
	if a.Habit > WalkOnly {
		return fmt.Errorf("effort: %w: habit %d is none", ErrAthlete, a.Habit)
	}
	return nil
}

// filled replaces the zeros that stand for something else.
func (a Athlete) filled() Athlete {
	a.FadeShape = either(a.FadeShape, 1)
	a.Economy = either(a.Economy, 1)
	a.FastestWalk = either(a.FastestWalk, 1.8)
	a.SlowestRun = either(a.SlowestRun, 1.5)
	a.Mass = either(a.Mass, 70)
	return a
}

// either is value, or usual in the place of 0.
func either(value, usual float64) float64 {
	if value == 0 {
		return usual
	}
	return value
}

// Capability returns the effort power in W/kg that stands for a relative intensity of 1
// after work hour-equivalents, that is after 3600 · HourPower · work J/kg:
//
//	P60 exp(−φ h₀ ((1 + h/h₀)^q − 1)/q),  h₀ = 1.5
//
// Its relative slope at the start is −φ for every fade shape q, so the hour power keeps
// its meaning. [Our own form.] Negative work, or an athlete out of range, gives NaN.
func (a Athlete) Capability(work float64) float64 {
	if work < 0 || a.check() != nil {
		return math.NaN()
	}
	f := a.filled()
	return f.HourPower * math.Exp(-f.Fade*fadeTime(work, f.FadeShape))
}

// Intensity returns the relative intensity that spends the whole budget in a duration of
// so many hours: hours^−k.
func (a Athlete) Intensity(hours float64) float64 { return math.Pow(hours, -a.Endurance) }

// LevelSpeed returns the speed in m/s that the given effort power in W/kg buys on level
// ground without wind: running or walking, whichever is faster; air as in Surroundings.
// It is 0 for a power that is not positive, NaN for NaN, +Inf and for an athlete or
// surroundings out of range.
func (a Athlete) LevelSpeed(power float64, s Surroundings) float64 {
	return Curves{}.LevelSpeed(a, power, s)
}

// LevelSpeed is Athlete.LevelSpeed for other curves.
func (k Curves) LevelSpeed(a Athlete, power float64, s Surroundings) float64 {
	if a.check() != nil || s.check() != nil {
		return math.NaN()
	}
	if !(power > 0) {
		return math.Max(power, 0)
	}
	if math.IsInf(power, 1) {
		return math.NaN()
	}
	s.HeadWind = 0
	g := modelGround
	if k.Run != nil || k.Walk != nil {
		g = k.empty(0, 0)
	}
	m, level := g.mover(a, s), g.uniform(0)
	return math.Max(m.run(&level, power).Speed, m.walk(&level, power).Speed)
}

// Riegel returns the exponent b of T2 = T1 (D2/D1)^b that the endurance exponent stands
// for on level ground without fade: 1/(1−k), NaN unless 0 ≤ k < 1. RiegelEndurance is its
// inverse.
func Riegel(endurance float64) float64 {
	if !(endurance >= 0 && endurance < 1) {
		return math.NaN()
	}
	return 1 / (1 - endurance)
}

// RiegelEndurance returns the endurance exponent 1 − 1/b of Riegel's exponent b, NaN unless
// b is at least 1.
func RiegelEndurance(b float64) float64 {
	if !(b >= 1) {
		return math.NaN()
	}
	return 1 - 1/b
}
