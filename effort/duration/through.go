package duration

import (
	"math"
	"time"
)

// An Effort is a mean power in W/kg held for a time to exhaustion: a race run evenly, or
// a trial. An effort that was not to exhaustion makes a curve that promises too little.
type Effort struct {
	Time  time.Duration
	Power float64
}

// EffortOf returns what a curve says of a time as an Effort, to put another curve
// through.
func EffortOf(c Curve, t time.Duration) Effort { return Effort{t, c.Power(t)} }

// PowerLawThrough returns the power law through two efforts. The error wraps ErrInput
// unless the longer effort was held at less power and did more work, as the two of any
// curve do.
func PowerLawThrough(a, b Effort) (PowerLaw, error) {
	a, b, err := ordered(a, b)
	if err != nil {
		return PowerLaw{}, err
	}
	k := math.Log(a.Power/b.Power) / logRatio(b.Time, a.Time)
	return checked(PowerLaw{HourPower: a.Power * math.Pow(a.Time.Hours(), k), Endurance: k})
}

// ToPowerLaw returns the power law that meets a curve at two times: what the curve says
// of races between them, as an athlete's two numbers. The error is PowerLawThrough's.
func ToPowerLaw(c Curve, t1, t2 time.Duration) (PowerLaw, error) {
	return PowerLawThrough(EffortOf(c, t1), EffortOf(c, t2))
}

// HyperbolicThrough returns the critical power and reserve of two efforts, which should
// lie well apart within 2 to 30 min: from shorter or longer ones both come out wrong. The
// error is as PowerLawThrough's.
func HyperbolicThrough(a, b Effort) (Hyperbolic, error) {
	a, b, err := ordered(a, b)
	if err != nil {
		return Hyperbolic{}, err
	}
	ta, tb := a.Time.Seconds(), b.Time.Seconds()
	return checked(Hyperbolic{
		Critical: (b.Power*tb - a.Power*ta) / (tb - ta),
		Reserve:  (a.Power - b.Power) * ta / (tb - ta) * tb,
	})
}

// LogarithmicThrough returns the logarithmic curve with its break at a time, 0 for 6 min,
// through two efforts at or beyond it, and through a third one before it. Without the
// third, the zero Effort, both sides have one slope.
//
// The error wraps ErrInput as PowerLawThrough's, also between the third effort and the
// power at the break, and if an effort is on the wrong side of the break or beyond the
// curve's span.
func LogarithmicThrough(at time.Duration, a, b, short Effort) (Logarithmic, error) {
	l := Logarithmic{Time: at}.filled() // for the break
	a, b, err := ordered(a, b)
	if err != nil {
		return Logarithmic{}, err
	}
	if l.Time < 0 || a.Time < l.Time {
		return Logarithmic{}, inputError("an effort of %v with the break at %v", a.Time, l.Time)
	}
	fall := (a.Power - b.Power) / logRatio(b.Time, a.Time)
	l.Nominal = a.Power + fall*logRatio(a.Time, l.Time)
	l.Long = fall / l.Nominal
	l.Short = l.Long
	if short != (Effort{}) {
		if err := l.through(short); err != nil {
			return Logarithmic{}, err
		}
	}
	if _, longest := l.Span(); b.Time > longest {
		return Logarithmic{}, inputError("work grows up to %v only, and an effort is of %v", longest, b.Time)
	}
	return checked(l)
}

// through sets the slope below the break by an effort there.
func (l *Logarithmic) through(short Effort) error {
	short, _, err := ordered(short, Effort{l.Time, l.Nominal})
	if err != nil {
		return err
	}
	if short.Time >= l.Time {
		return inputError("an effort of %v is not before the break at %v", short.Time, l.Time)
	}
	l.Short = (short.Power/l.Nominal - 1) / -logRatio(short.Time, l.Time)
	return nil
}

// ordered puts the shorter of two efforts first and checks that a curve can be through
// them.
func ordered(a, b Effort) (shorter, longer Effort, err error) {
	if a.Time > b.Time {
		a, b = b, a
	}
	if !(a.Time > 0 && a.Time < b.Time && positive(a.Power) && positive(b.Power)) {
		return a, b, inputError("efforts of %v at %g W/kg and %v at %g W/kg", a.Time, a.Power, b.Time, b.Power)
	}
	if !(a.Power > b.Power && a.Power*a.Time.Seconds() < b.Power*b.Time.Seconds()) {
		return a, b, inputError("from %v at %g W/kg to %v at %g W/kg power must fall and work grow", a.Time, a.Power, b.Time, b.Power)
	}
	return a, b, nil
}

// checked is a curve, or an error if rounding or overflow has made its parameters
// impossible.
func checked[C interface{ possible() bool }](c C) (C, error) {
	if !c.possible() {
		var none C
		return none, inputError("the efforts give %+v", c)
	}
	return c, nil
}
