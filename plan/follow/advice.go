package follow

import (
	"fmt"
	"time"
)

// Advice is what to do with the effort. It never asks for none, and never for more than is
// left.
type Advice int

// The advice, from the best case to the worst.
const (
	// Hold goes on at the planned effort; under an aim that asks for it, at up to MostMore of
	// it.
	Hold Advice = iota

	// Ease eases: back to the planned effort first, after having given more than that, and
	// below it where the budget no longer allows as much.
	Ease

	// WalkOn walks at an effort at which the runner can talk: the budget is spent, or so
	// nearly that running on it would be slower than a walk's effort.
	WalkOn

	// Stop walks to the next people on the course and asks the officials: the budget is
	// spent, and walking does not make a cutoff that is to come.
	Stop
)

func (a Advice) String() string {
	names := [...]string{"hold", "ease", "walk on", "stop"}
	if a < 0 || int(a) >= len(names) {
		return "no advice"
	}
	return names[a]
}

// asPlanned is how far an effort, and clearlyLate how far a time, may lie from the planned
// one, relative, before words are made of it; a time of sometimeLate is none either. [Our own.]
const (
	asPlanned    = 0.01
	clearlyLate  = 0.005
	spentMore    = 0.05 // of the budget that the plan has spent
	sometimeLate = time.Minute
)

// advise says what to do.
func (r *Rest) advise() {
	s := r.Standing
	switch {
	case s.walking && s.next(OutOfReach) != nil:
		r.Advice = Stop
	case s.walking:
		r.Advice = WalkOn
	case !s.holds && r.Share < (1-asPlanned)*s.Today || s.above() && change(r.Share) <= 0:
		r.Advice = Ease
	default:
		r.Advice = Hold
	}
	r.say("%s", r.effortWords())
	if r.Advice == Hold || r.Advice == Ease {
		r.say("You finish at about %s.", about(s.Plan, r.Gun))
		if r.Late > 0 && s.clearly(r.Late) {
			r.say("Slower than planned is all right.")
		}
	} else {
		r.say("Walking on, you would finish at about %s.", about(s.Plan, r.Gun))
	}
	r.sayCutoffs()
}

func (r *Rest) say(format string, args ...any) {
	r.Words = append(r.Words, fmt.Sprintf(format, args...))
}

// above reports whether the runner has given more than the plan so far: by the mean effort
// on offer, or, where that does not show it, by being early on more of the budget.
func (s *Standing) above() bool {
	if s.soFar*s.Today > (1+asPlanned)*s.Plan.Intensity {
		return true
	}
	return s.Late < 0 && s.clearly(s.Late) && s.State.Spent > (1+spentMore)*s.PlannedBudget
}

// clearly reports whether a difference of time is worth words.
func (s *Standing) clearly(d time.Duration) bool {
	return d.Abs() >= max(sometimeLate, time.Duration(clearlyLate*float64(s.Gun)))
}

// effortWords says what to give.
func (r *Rest) effortWords() string {
	less := -change(r.Share)
	switch r.Advice {
	case Stop:
		return r.Standing.stopWords()
	case WalkOn:
		return r.Standing.walkOnWords()
	case Ease:
		return r.easeWords(less)
	}
	switch {
	case !r.Kept && r.Aim != HoldEffort && less == 0:
		return fmt.Sprintf("That would take more than %d %% above the planned effort: let it go. Hold the planned effort, no more.", change(1+MostMore))
	case less < 0:
		return fmt.Sprintf("If you feel good and ask for it: up to %d %% more effort than planned, on every climb, flat and descent. Otherwise hold the planned effort.", -less)
	case less > 0:
		return fmt.Sprintf("Hold %d %% less effort than planned, no more.", less)
	}
	return "Hold the planned effort, no more."
}

// easeWords eases back to the planned effort first, and below it where that is needed.
func (r *Rest) easeWords(less int) string {
	s := r.Standing
	switch {
	case s.above() && less <= 0:
		return s.tooFast() + "Ease back to the planned effort now."
	case s.above() && less > mostPercent:
		return s.tooFast() + "Ease back to the planned effort now, and then further, until you can speak whole sentences with ease: more would not last."
	case s.above():
		return fmt.Sprintf("%sEase back to the planned effort now, and then on to %d %% less than planned: more would not last.", s.tooFast(), less)
	}
	if less > mostPercent {
		return "The planned effort would not last to the finish. Ease now, until you can speak whole sentences with ease."
	}
	return fmt.Sprintf("The planned effort would not last to the finish. Ease now, to %d %% less than planned.", less)
}

// tooFast says how the runner has given more than planned.
func (s *Standing) tooFast() string {
	if s.Late < 0 && s.clearly(s.Late) {
		return fmt.Sprintf("You are %s ahead: too fast. ", spell(-s.Late))
	}
	return "You have given more effort than planned. "
}

const (
	// mostPercent is how much less effort is asked for in per cent; nobody feels more than
	// that as a figure. [Our own.]
	mostPercent = 10

	// Of one who has spent too much by being fast, the numbers may be wrong.
	byYourTimes = "By your times you have nothing left to run on"
	ifWell      = " If you feel well you may run, never above the planned effort."
)

// walkOnWords walk.
func (s *Standing) walkOnWords() string {
	const talking = " Walk, all the way, easy enough to speak whole sentences."
	if s.above() {
		return s.tooFast() + byYourTimes + "." + talking + ifWell + " Stop at the next aid station if walking is too much."
	}
	return "You have nothing left to run on." + talking + " Stop at the next aid station if that is too much."
}

// stopWords walk to those who decide.
func (s *Standing) stopWords() string {
	const ask = ", and walking does not make every cutoff. Walk to the next marshal or aid station and say so: the race's officials decide how you go on, and its medical team if you are unwell."
	if s.above() {
		return s.tooFast() + byYourTimes + ask + ifWell
	}
	return "You have nothing left to run on" + ask
}

// sayCutoffs names the first cutoff that is not safe.
func (r *Rest) sayCutoffs() {
	if len(r.Cutoffs) == 0 || r.Advice == Stop {
		return
	}
	for _, c := range r.Cutoffs {
		switch {
		case c.InHand < 0:
			r.say("Like this you miss the cutoff %s by %s. Do not race it: tell the marshal at the next place, the officials decide.", where(c), spell(max(-c.InHand, time.Second)))
			return
		case c.Reach == Tight:
			r.say("The cutoff %s is tight: %s in hand. Keep stops short, and do not race for it.", where(c), margin(c.InHand))
			return
		}
	}
	r.say("Every cutoff to come is safe.")
}
