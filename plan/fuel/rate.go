package fuel

import (
	"math"
	"time"

	"isoeffort.example/effort/energy"
)

// Range is the two ends of a range; what lies between is for the runner.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// MostRate is the highest carbohydrate intake that is ever advised, in g/h: of glucose and
// fructose mixed, rehearsed, beyond two and a half hours. Source as for Rate.
const MostRate = 90

// Rate returns the range of carbohydrate in g/h for a race of a duration, for a runner who has
// rehearsed so many g/h (0: a novice) and burns so many g/h at the effort of the race:
//
//	under 45 min      nothing
//	up to 2 h         0 to 30
//	up to 2 h 30      30 to 60
//	longer            30 to 60, or up to what was rehearsed, 90 at most
//
// The steps of the high end are those of energy.IntakeRange; the low end stays at 30, as it is no
// fault to eat less than was rehearsed. The high end is never above what was rehearsed, if anything was, nor above what is burnt,
// rounded down to 5 g/h; then the low end is at most half of it. It is 0 to 0 for a duration
// that is not positive, and where burnt or rehearsed is negative or NaN.
//
// Source: Jeukendrup 2014, Sports Med 44 Suppl 1:S25, doi:10.1007/s40279-014-0148-z, from
// memory: none under 45 minutes, a rinse or small amounts to 75, 30 g/h to two hours, 60 to
// three, 90 beyond two and a half; less for a slower runner, without a figure. That the bound
// is what is burnt is [Our own].
func Rate(duration time.Duration, rehearsed, burnt float64) Range {
	if duration < 45*time.Minute || !(burnt >= 0) || !(rehearsed >= 0) {
		return Range{}
	}
	r := Range{30, 60}
	switch {
	case duration <= 2*time.Hour:
		r = Range{0, 30}
	case duration > 150*time.Minute && rehearsed > 60:
		r.High = min(rehearsed, MostRate)
	}
	most := 5 * math.Floor(burnt/5)
	if rehearsed > 0 {
		most = min(most, rehearsed)
	}
	if most < r.High {
		r = Range{min(r.Low, most/2), most}
	}
	return r
}

// shortRace is the longest race in which nothing need be eaten: a rinse of the mouth does as
// well (Jeukendrup 2014, as above). That nothing need be drunk, but by thirst, is [Our own].
const shortRace = 75 * time.Minute

// suggest is the rate planned with, g/h: what was rehearsed, and the middle for a novice
// [Our own]; none in a short race.
func suggest(r Range, duration time.Duration, rehearsed float64) float64 {
	switch {
	case duration <= shortRace:
		return 0
	case rehearsed > 0:
		return min(rehearsed, r.High)
	}
	return (r.Low + r.High) / 2
}

// burnt is the carbohydrate of a runner of usual metabolism, g/h, at a mean net power.
func burnt(net, hour, mass float64) float64 {
	return energy.Crossover{}.Substrates(net, hour).Carbohydrate * mass
}
