package energy

import "math"

// A Crossover is how the share of energy from carbohydrate grows with intensity, as a
// logistic curve of the share of maximal oxygen uptake x, 0 to 1:
//
//	share(x) = 1 / (1 + exp(−(x − Half)/Width))
//
// x is gross: oxygen used over maximal oxygen uptake, standing in both; see Uptake. The
// form and the fit are [Our own]; the idea of a crossover is that of Brooks & Mercier
// 1994, J Appl Physiol 76:2253, from memory. The zero value is the usual curve.
//
// It was fitted by least squares to six group means, all of endurance-trained men who
// cycled after a night's fast, none remembered to better than 0.03 (from memory):
//
//	Romijn et al. 1993, Am J Physiol 265:E380:  0.25: 0.10, 0.65: 0.50, 0.85: 0.73
//	van Loon et al. 2001, J Physiol 536:295:    0.44: 0.45, 0.57: 0.51, 0.72: 0.76
//
// It misses them by 0.08 (root mean square) and 0.10 at worst; the two studies disagree
// by as much. Left out of the fit, as a check: the curve burns most fat at 0.51; Venables,
// Achten & Jeukendrup 2005 (J Appl Physiol 98:160, treadmill, 300 men and women) have
// 0.48, Achten, Gleeson & Jeukendrup 2002 (Med Sci Sports Exerc 34:92, trained cyclists)
// 0.64 (both from memory).
//
// Training and a diet low in carbohydrate lower the share, and so do hours of exercise,
// as glycogen runs down; food before and on the way, heat and altitude raise it. A fed
// runner is more likely above the curve than below. None of this is modelled, except
// that a person's own Half may be set.
type Crossover struct {
	// Half is the share of maximal oxygen uptake at which carbohydrate gives half of the
	// energy. 0 means 0.57.
	Half float64

	// Width is the change of x near Half that changes the share by nearly a quarter.
	// 0 means 0.22.
	Width float64

	// SD is the standard deviation of Half between people. 0 means 0.12, which near Half
	// is an SD of 0.14 in the share and of 0.04 in the respiratory exchange ratio; that
	// is what Goedecke et al. 2000 (Am J Physiol 279:E1325, 61 trained cyclists, from
	// memory, to one digit) found. For somebody who was measured it is less.
	SD float64

	// HourShare is the share of maximal oxygen uptake that the runner holds for an hour,
	// gross: 0.80 to 0.90 in trained runners, less in novices. 0 means 0.85.
	//
	// Sources, from memory: Costill, Thomason & Roberts 1973, Med Sci Sports 5:248; Joyner
	// 1991, J Appl Physiol 70:683. They agree with Péronnet & Thibault 1989 (J Appl
	// Physiol 67:453), 1 − 0.06 ln(60/7) = 0.87, and with Davies & Thompson 1979 (Eur J
	// Appl Physiol 41:233), 0.94 over 5 km and 0.82 over a marathon.
	HourShare float64
}

// leastUptake is the lowest intensity that Crossover was fitted to.
const leastUptake = 0.25

// Share returns the share of energy from carbohydrate, 0 to 1, at a share of maximal
// oxygen uptake. It was fitted for 0.25 to 0.85; below, it is held constant (people at
// rest are higher, about 0.4 with a wide spread, from memory), above it is extrapolated,
// beyond 1 too, where part of the energy does not come from oxygen. An uptake that is negative or
// infinite and a Half or Width that is not positive give NaN.
func (c Crossover) Share(uptake float64) float64 { return c.filled().at(uptake, 0) }

// Range returns Share at the ends of the range that holds 90 % of people, Half 1.645 SD
// higher and lower, if Half is normally distributed. It is NaN where Share is, and for a
// negative SD.
func (c Crossover) Range(uptake float64) Bounds {
	c = c.filled()
	if !possible(c.SD) {
		return nowhere()
	}
	return Bounds{c.at(uptake, 1.645*c.SD), c.at(uptake, -1.645*c.SD)}
}

// Uptake returns the share of maximal oxygen uptake at a net metabolic power, for a
// runner who holds the net power hour for an hour, both in W/kg without braking:
//
//	HourShare Gross(power) / Gross(hour)
//
// For hour take the fresh runner's hour power on level ground: there relative intensity
// 1 is HourShare. Fade lowers capability and leaves maximal uptake as it is [Our own], so
// power, not relative intensity, is the argument. Above 1 the power is more than oxygen
// can give. Powers that are negative or infinite, an hour power of 0 and an HourShare
// outside (0, 1] give NaN.
func (c Crossover) Uptake(power, hour float64) float64 {
	c = c.filled()
	if !positive(hour) || !(c.HourShare > 0 && c.HourShare <= 1) {
		return math.NaN()
	}
	return c.HourShare * Gross(power) / Gross(hour)
}

// Substrates returns what a net metabolic power burns, standing included, at the usual
// share: ByShare of Gross(power) and Share of Uptake. NaN where those are.
func (c Crossover) Substrates(power, hour float64) Substrates {
	return ByShare(Gross(power), c.Share(c.Uptake(power, hour)))
}

// Carbohydrate returns the range of carbohydrate, in g/(kg h), that 90 % of people burn at
// a net metabolic power: Substrates at the ends of Range. NaN where those are.
func (c Crossover) Carbohydrate(power, hour float64) Bounds {
	r, gross := c.Range(c.Uptake(power, hour)), Gross(power)
	return Bounds{ByShare(gross, r.Low).Carbohydrate, ByShare(gross, r.High).Carbohydrate}
}

// at is the logistic with Half moved by so much.
func (c Crossover) at(uptake, move float64) float64 {
	if !possible(uptake) || !positive(c.Half) || !positive(c.Width) {
		return math.NaN()
	}
	return 1 / (1 + math.Exp((c.Half+move-math.Max(uptake, leastUptake))/c.Width))
}

// filled replaces the zeros by the usual values.
func (c Crossover) filled() Crossover {
	c.Half = or(c.Half, 0.57)
	c.Width = or(c.Width, 0.22)
	c.SD = or(c.SD, 0.12)
	c.HourShare = or(c.HourShare, 0.85)
	return c
}

// or is x, or the usual value if x is 0.
func or(x, usual float64) float64 {
	if x == 0 {
		return usual
	}
	return x
}
