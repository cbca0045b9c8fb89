package follow

import (
	"fmt"
	"math"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

const (
	// averaging is the time in seconds over which relative intensity is averaged before it
	// is raised to its power: at n = 10 noise of 10 % from minute to minute would multiply
	// the budget by 1.6 otherwise. [Our own.]
	averaging = 20 * 60

	// sameGaits is how far, in ln intensity, what a time tells may lie from the plan's for
	// the runner to be taken to have run and walked as planned. [Our own.]
	sameGaits = 0.1

	// Intensities between which a time is explained.
	leastIntensity, mostIntensity = 1e-3, 10.0

	// Times are good to half a second, or to a thousandth where they are short: any intensity
	// that takes the time to within that will do, and of those the plan's is taken. Where
	// all is walked at the fastest walk, many do. [Our own.]
	goodTo      = 0.5
	goodToShare = 1e-3

	stretchTolerance = 1e-8 // of time, and of ln intensity where that decides
	atItsGreatest    = 1e-9 // of time, within which more intensity brings nothing
)

// tracker moves the plan's runner over the plan's ground.
type tracker struct {
	plan  *plan.Plan
	in    *effort.Integrator
	gaits []effort.Gait // the plan's
	today float64       // factor on hour power
}

func newTracker(p *plan.Plan, today float64) (*tracker, error) {
	if p == nil || p.Course == nil {
		return nil, fmt.Errorf("follow: %w: there is no plan", ErrAim)
	}
	of := *p
	of.Athlete.HourPower *= today
	in, err := of.Integrator()
	if err != nil {
		return nil, fmt.Errorf("follow: %w", err)
	}
	return &tracker{plan: p, in: in, gaits: p.Traverse().Gait, today: today}, nil
}

func (r *tracker) tilt() float64 { return -r.plan.HoldBack.Share }

// at goes on from a state at an intensity on the scale of Plan.Intensity; gaits nil are
// the rule's.
func (r *tracker) at(from effort.State, intensity float64, gaits []effort.Gait) *effort.Traverse {
	return r.in.Traverse(from, effort.Pace{Intensity: intensity, Tilt: r.tilt(), Ease: r.plan.Race.Ease, Gaits: gaits})
}

// stretch is a part of the race at one intensity.
type stretch struct {
	from, to  effort.State
	seconds   float64
	intensity float64 // on offer, on the scale of Plan.Intensity
	used      float64 // what spends as much in this time
	tooFast   bool    // no intensity of this runner is as fast
	gaits     []effort.Gait
}

// used is the relative intensity that spends so much in so many seconds, held for all of
// them.
func (r *tracker) used(spent, seconds float64) float64 {
	return math.Pow(3600*spent/seconds, r.plan.Athlete.Endurance)
}

// planned is what the plan uses between two distances.
func (r *tracker) planned(from, to float64) float64 {
	a, b := r.plan.State(from), r.plan.State(to)
	return r.used(b.Spent-a.Spent, b.Moving-a.Moving)
}

// stretch finds the intensity that takes so many seconds from a state to a distance.
func (r *tracker) stretch(from effort.State, to, seconds float64) stretch {
	planned := math.Log(r.plan.Intensity / r.today)
	m := matcher{tracker: r, from: from, to: to, seconds: seconds, gaits: r.gaits}
	x, ok := planned, true
	if math.Abs(math.Expm1(m.miss(x)))*seconds > math.Min(goodTo, goodToShare*seconds) {
		x, ok = m.match(x)
	}
	if !ok || math.Abs(x-planned) > sameGaits {
		m.gaits = nil
		x, ok = m.match(x)
	}
	s := stretch{from: from, to: r.at(from, math.Exp(x), m.gaits).At(to), seconds: seconds, intensity: math.Exp(x), tooFast: !ok, gaits: m.gaits}
	s.to.Moving = from.Moving + seconds
	s.used = r.used(s.to.Spent-from.Spent, seconds)
	return s
}

// matcher looks for the x = ln intensity that takes a time.
type matcher struct {
	*tracker
	from        effort.State
	to, seconds float64
	gaits       []effort.Gait
}

// miss is ln of the time taken over the time wanted.
func (m *matcher) miss(x float64) float64 {
	t := m.at(m.from, math.Exp(x), m.gaits)
	return math.Log((t.At(m.to).Moving - m.from.Moving) / m.seconds)
}

// match returns x, and whether the time can be met. Where gaits change with x the time may
// jump over the one wanted; x is then where it does.
func (m *matcher) match(x float64) (float64, bool) {
	low, top := math.Log(leastIntensity), math.Log(mostIntensity)
	slope := -1.0 // of running
	var before, missed float64
	for i := range 80 {
		now := m.miss(x)
		if math.Abs(now) < stretchTolerance || top-low < stretchTolerance {
			return x, true
		}
		if s := (now - missed) / (x - before); i > 0 && s < -0.05 && s > -5 {
			slope = s
		}
		if now > 0 {
			low = x
		} else {
			top = x
		}
		if before, missed = x, now; i == 0 && now > 0 && m.miss(top) > stretchTolerance {
			return m.greatest(x, top), false
		}
		next := x - now/slope
		if !(next > low && next < top) || i > 12 && i%2 == 0 {
			next = (low + top) / 2
		}
		x = next
	}
	return x, true
}

// greatest is the least x at which more brings nothing.
func (m *matcher) greatest(low, top float64) float64 {
	fastest := m.miss(top)
	for top-low > 1e-6 {
		middle := (low + top) / 2
		if m.miss(middle) <= fastest+atItsGreatest {
			top = middle
		} else {
			low = middle
		}
	}
	return top
}

// chain goes through legs. Halts count as time and not as effort.
func (r *tracker) chain(legs []leg) (at effort.State, early float64, done []stretch) {
	clock := legs[0].halted // of State.Moving, which may not be below 0
	at.Moving = math.Max(0, clock)
	for _, l := range legs[1:] {
		s := r.stretch(at, l.to, l.seconds)
		done = append(done, s)
		clock += l.seconds + l.halted
		at = s.to
		at.Moving = math.Max(0, clock)
	}
	return at, clock - at.Moving, done
}
