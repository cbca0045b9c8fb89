package follow

import (
	"errors"
	"fmt"
	"math"
	"time"

	"isoeffort.example/effort/record"
	"isoeffort.example/plan"
)

// The causes for which passages, an aim or what was run cannot be used.
var (
	ErrPassage = errors.New("no such passage")
	ErrOrder   = errors.New("passages out of order")
	ErrTime    = errors.New("a time that cannot be")
	ErrAim     = errors.New("nothing to aim for")
	ErrActual  = errors.New("what was run does not fit the course")
)

// A Passage is a place that the runner has passed, and when. One at distance 0 is the
// start line.
type Passage struct {
	Distance float64 // m from the start of the course

	// Gun is the time since the runner's own gun. Clock, where Gun is 0, is the same by
	// the clock, and needs a race with a Start.
	Gun   time.Duration
	Clock time.Time

	// Leaving says that the runner leaves the place then, the planned stops there behind.
	// Otherwise it is the arrival. Both may be given, the arrival first.
	Leaving bool

	// Halted is the time stood still since the passage before, beyond the planned stops:
	// time without effort. Halts that are not told are taken for slow going.
	Halted time.Duration

	// Felt is the relative intensity that the runner says they have given since the passage
	// before: effort over what they could hold for an hour at this point of the race. 0 is
	// unknown. Only that of the last passage counts; see Standing.Today for what it does.
	Felt float64
}

// longest is the longest race there is.
const longest = record.MaxTime

// gun is the passage's time since the runner's gun.
func (a Passage) gun(r plan.Race) (time.Duration, error) {
	gun := a.Gun
	if gun == 0 && !a.Clock.IsZero() {
		if r.Start.IsZero() {
			return 0, fmt.Errorf("%w: a clock time, and the race has no start time", ErrTime)
		}
		gun = a.Clock.Sub(r.Start)
	}
	if gun < 0 || gun == 0 && a.Distance > 0 {
		return 0, fmt.Errorf("%w: %v is not after the gun", ErrTime, gun)
	}
	if gun > longest {
		return 0, fmt.Errorf("%w: %v is over %v", ErrTime, gun, longest)
	}
	return gun, nil
}

func (a Passage) check(length float64) error {
	switch {
	case !(a.Distance >= 0 && a.Distance <= length):
		return fmt.Errorf("%w: %g m is not on the course of %.0f m", ErrPassage, a.Distance, length)
	case a.Halted < 0:
		return fmt.Errorf("%w: %v halted", ErrTime, a.Halted)
	case a.Felt != 0 && !(a.Felt >= 0.1 && a.Felt <= 2):
		return fmt.Errorf("%w: a felt intensity of %g is not within 0.1 to 2", ErrPassage, a.Felt)
	}
	return nil
}

// leg is what lies between two passages.
type leg struct {
	to      float64
	seconds float64 // of moving
	halted  float64 // seconds, beyond the planned stops; below 0 where those were cut short
	at      float64 // seconds at its end since the planned start at the line, planned stops left out
}

// legs checks passages and returns what lies between them. The first leg starts at the
// line, and its halted is how much later than planned that was passed.
func legs(p *plan.Plan, passages []Passage) ([]leg, error) {
	out := []leg{{}}
	last, before := &out[0], Passage{Leaving: true}
	for i, a := range passages {
		fail := func(err error) ([]leg, error) { return nil, fmt.Errorf("follow: passage %d: %w", i+1, err) }
		if err := a.check(p.Course.Length()); err != nil {
			return fail(err)
		}
		gun, err := a.gun(p.Race)
		if err != nil {
			return fail(err)
		}
		at := (gun - p.Race.StartDelay - taken(p, a.Distance, a.Leaving)).Seconds()
		switch again := a.Distance == before.Distance && (i == 0 || a.Leaving && !before.Leaving); {
		case again:
			last.halted += at - last.at
			last.at = at
		case a.Distance <= before.Distance || i > 0 && gun <= before.Gun:
			return fail(fmt.Errorf("%w: %.2f km at %v after %.2f km at %v", ErrOrder, a.Distance/1000, gun, before.Distance/1000, before.Gun))
		default:
			next := leg{to: a.Distance, seconds: at - last.at - a.Halted.Seconds(), halted: a.Halted.Seconds(), at: at}
			if err := next.check(p, last.to); err != nil {
				return fail(err)
			}
			out = append(out, next)
			last = &out[len(out)-1]
		}
		before, before.Gun = a, gun
	}
	return out, nil
}

// check refuses a leg that nobody runs in its time.
func (l leg) check(p *plan.Plan, from float64) error {
	relief := p.Course.ReliefBetween(from, l.to)
	least := record.FastestTime(l.to-from, relief.Ascent, relief.Descent).Seconds()
	if !(l.seconds > least) {
		return fmt.Errorf("%w: %.0f s of moving for the %.2f km before, stops left out; nobody takes less than %.0f s",
			ErrTime, l.seconds, (l.to-from)/1000, least)
	}
	return nil
}

// merged joins legs so that each lasts averaging or more, the last one and those of a
// whole race that is shorter excepted. The last end stays, and halts add up.
func merged(in []leg, averaging float64) []leg {
	out := []leg{in[0]}
	sum := leg{}
	for i, l := range in[1:] {
		l.seconds += sum.seconds
		l.halted += sum.halted
		sum = l
		rest := 0.0
		for _, later := range in[i+2:] {
			rest += later.seconds
		}
		if l.seconds >= averaging && rest >= averaging || i == len(in)-2 {
			out = append(out, l)
			sum = leg{}
		}
	}
	return out
}

// samePlace is how near a stop lies to a place, in metres, to be a stop there.
const samePlace = 25

// taken is the planned stops on the way to a place, on arrival or on leaving.
func taken(p *plan.Plan, distance float64, leaving bool) (sum time.Duration) {
	for _, s := range p.Stops {
		if s.Distance < distance || leaving && math.Abs(s.Distance-distance) < samePlace {
			sum += s.Duration
		}
	}
	return sum
}
