package duration

import (
	"math"
	"time"
)

// A Logarithmic curve is power falling with the logarithm of time, steeper or less so
// on either side of a time tc near that for which maximal oxygen uptake can be held:
//
//	P = Nominal (1 − γ ln(t/Time)),  γ = Short up to Time, Long beyond
//
// Nominal must be positive and both slopes between 0 and 1, or Power is NaN.
//
// Its work grows up to Time · e^(1/Long − 1) and would shrink from there on, which cannot
// be: whoever does more in less time can do it and rest. That is the end of the span, 29 h
// for a Long of 0.15 and 34 days for 0.10, and beyond it Power is NaN. The formula itself
// reaches a power of 0 at ZeroPower, e times later.
//
// Use it from 1.5 min to 3 h, the 800 m to the marathon, where the source has records
// and personal bests within 1 % on average. Beyond it extrapolates: through the men's best
// times at 3000 m and the marathon it makes the best distance in 24 h 1.34 times what it
// is.
//
// Source: Mulligan, Adam & Emig 2018, PLoS ONE 13(11):e0206645, from memory: form, break
// and accuracy. They write it for power relative to maximal oxygen uptake, net of a base
// as effort power is; with a cost per metre that does not change it holds for speed too.
type Logarithmic struct {
	Nominal float64       // W/kg, the power that can be held for Time
	Time    time.Duration // the break tc. 0 means 6 min
	Short   float64       // γ below the break. 0 means as Long
	Long    float64       // γ beyond the break: 0.05 for the best, 0.10
}

// breakTime is the source's characteristic time.
const breakTime = 6 * time.Minute

// filled replaces the zeros that stand for something else.
func (l Logarithmic) filled() Logarithmic {
	if l.Time == 0 {
		l.Time = breakTime
	}
	if l.Short == 0 {
		l.Short = l.Long
	}
	return l
}

func (l Logarithmic) possible() bool {
	return positive(l.Nominal) && l.Time > 0 && share(l.Short) && share(l.Long)
}

// Power returns the power in W/kg that can be held for a time.
func (l Logarithmic) Power(t time.Duration) float64 {
	l = l.filled()
	if _, longest := l.Span(); t <= 0 || t > longest || !l.possible() {
		return math.NaN()
	}
	return l.Nominal * (1 - l.slope(t)*logRatio(t, l.Time))
}

// slope is the γ that rules at a time; at the break the longer side's.
func (l Logarithmic) slope(t time.Duration) float64 {
	if t < l.Time {
		return l.Short
	}
	return l.Long
}

// Span returns the least that a Duration can be and Time · e^(1/Long − 1).
func (l Logarithmic) Span() (shortest, longest time.Duration) {
	l = l.filled()
	return 1, scaled(l.Time, math.Exp(1/l.Long-1))
}

// ZeroPower returns Time · e^(1/Long), at which the formula reaches a power of 0. It is
// held within what a Duration can be, 292 years, and is 0 for an impossible curve.
func (l Logarithmic) ZeroPower() time.Duration {
	if l = l.filled(); !l.possible() {
		return 0
	}
	return scaled(l.Time, math.Exp(1/l.Long))
}

// Endurance returns e^(0.1/Long), the source's measure of endurance: the multiple of
// Time for which 0.9 of the power at Time can be held. It is NaN for an impossible curve.
func (l Logarithmic) Endurance() float64 {
	if l = l.filled(); !l.possible() {
		return math.NaN()
	}
	return math.Exp(0.1 / l.Long)
}

// Exponent returns −d ln Power/d ln t, γ/(1 − γ ln(t/Time)): it grows from Long at the
// break to 1 at the end of the span. At the break it is the longer side's.
func (l Logarithmic) Exponent(t time.Duration) float64 {
	l = l.filled()
	return l.slope(t) * l.Nominal / l.Power(t)
}

// About describes the curve.
func (Logarithmic) About() About {
	return About{
		Name:       "power falling with the logarithm of time",
		Source:     "Mulligan, Adam & Emig 2018, PLoS ONE 13(11):e0206645, from memory",
		Population: "holders of world and national records in running, and single runners' bests",
		From:       90 * time.Second,
		To:         3 * time.Hour,
		Outside:    "extrapolates; NaN from where its work would shrink",
	}
}

// logRatio is ln(t/to).
func logRatio(t, to time.Duration) float64 { return math.Log(t.Seconds() / to.Seconds()) }

// scaled is a positive factor times a time, rounded down, at most longestTime.
func scaled(t time.Duration, factor float64) time.Duration {
	if f := factor * float64(t); f < math.MaxInt64 {
		return time.Duration(f)
	}
	return longestTime
}
