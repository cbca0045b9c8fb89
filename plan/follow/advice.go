package follow

import (
	"fmt"
	"math"
	"time"

	"isoeffort.example/internal/page"
	"isoeffort.example/internal/say"
)

// Advice is what to do with the effort. It never asks for none, and never for more than is
// left.
type Advice int

// The advice, from the best case to the worst.
const (
	// Hold goes on at the effort of the rest's plan, which its aim allows.
	Hold Advice = iota

	// Ease eases: to what the budget still allows, where the aim would need more; or to what
	// the aim asks for, where going on as so far would spend the budget before the finish.
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

// advise says what to do.
func (r *Rest) advise() {
	s := r.Standing
	switch {
	case r.Kept && s.Forecast.SpentAt > 0 && r.Intensity < s.soFar:
		r.Advice = Ease
	case r.Kept:
		r.Advice = Hold
	case !s.walking:
		r.Advice = Ease
	case s.next(OutOfReach) == nil:
		r.Advice = WalkOn
	default:
		r.Advice = Stop
	}
	r.say("%s", r.effortWords())
	if r.Advice == Hold || r.Advice == Ease {
		r.say("You finish at %s, %s.", say.HMS(r.Gun), lateness(r.Late))
	} else {
		r.say("Walking on, you would finish at about %s.", say.HMS(r.Gun))
	}
	r.sayCutoffs()
}

func (r *Rest) say(format string, args ...any) {
	r.Words = append(r.Words, fmt.Sprintf(format, args...))
}

// effortWords says what to give.
func (r *Rest) effortWords() string {
	change := 100 * (r.Share - 1)
	switch {
	case r.Advice == Stop:
		return "Your effort budget is spent, and walking does not make every cutoff. Walk to the next marshal or aid station and say so: the race's officials decide how you go on, and its medical team if you are unwell."
	case r.Advice == WalkOn:
		return "Your effort budget is spent. Walk on, at an effort at which you can talk in whole sentences. Stop at the next aid station if that is too much."
	case r.Advice == Ease && r.Kept:
		return fmt.Sprintf("You have given more than you can hold: going on like that, your budget is spent by %.1f km. Ease now, and give %s.", r.Standing.Forecast.SpentAt/1000, compared(change))
	case r.Advice == Ease && r.Aim == MakeCutoffs:
		return fmt.Sprintf("Not every cutoff can be made on what you have left. Do not chase them: give %s, which is what you have.", compared(change))
	case r.Advice == Ease:
		return fmt.Sprintf("The aim would need more than you have left. Let it go, and give %s: that is what the budget allows.", compared(change))
	case math.Abs(change) < 0.5:
		return "Hold the effort that was planned."
	case change > 0:
		return fmt.Sprintf("Give %s, on every climb, flat and descent. If that does not feel right, hold the planned effort instead.", compared(change))
	}
	return fmt.Sprintf("Give %s.", compared(change))
}

// compared is an effort beside the planned one, in per cent.
func compared(change float64) string {
	switch {
	case math.Abs(change) < 0.5:
		return "the effort that was planned"
	case change > 0:
		return fmt.Sprintf("%.0f %% more effort than planned", change)
	}
	return fmt.Sprintf("%.0f %% less effort than planned", -change)
}

// sayCutoffs names the first cutoff that is not safe.
func (r *Rest) sayCutoffs() {
	if len(r.Cutoffs) == 0 {
		return
	}
	for _, c := range r.Cutoffs {
		switch {
		case c.Reach == OutOfReach:
			r.say("The cutoff %s is out of reach by %s. Tell the marshal at the next place: the officials decide. Do not race it.", where(c), say.HMS(-c.InHand))
			return
		case c.InHand < 0:
			r.say("Like this you miss the cutoff %s by %s. There is budget to make it; no cutoff is worth your health.", where(c), say.HMS(-c.InHand))
			return
		case c.Reach == Tight:
			r.say("The cutoff %s is tight: %s in hand. Keep stops short, and do not sprint for it.", where(c), say.HMS(c.InHand))
			return
		}
	}
	r.say("Every cutoff to come is safe.")
}

// where is a cutoff's place in words.
func where(c Cutoff) string {
	if c.Name == "" {
		return fmt.Sprintf("at %.1f km", c.Distance/1000)
	}
	return fmt.Sprintf("at %s (%.1f km)", page.Plain(c.Name), c.Distance/1000)
}

// lateness is how late in words.
func lateness(d time.Duration) string {
	switch d = d.Round(time.Second); {
	case d == 0:
		return "as planned"
	case d > 0:
		return say.HMS(d) + " later than planned"
	}
	return say.HMS(-d) + " earlier than planned"
}
