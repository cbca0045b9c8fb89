package follow

import (
	"fmt"
	"math"

	"isoeffort.example/internal/say"
)

// warn says what is doubtful.
func (v *review) warn() {
	d := v.out
	if off := d.Scale - 1; math.Abs(off) > doubtfulScale {
		v.say("The recording is %.1f %% %s than the course: places in it are rough.", math.Abs(100*off), map[bool]string{true: "shorter", false: "longer"}[off > 0])
	}
	for _, s := range v.done {
		if s.tooFast {
			v.say("From %.1f to %.1f km you were faster than any effort of this runner would be: the numbers that the plan rests on, or the times, are not right.", s.from.Distance/1000, s.to.Distance/1000)
			break
		}
	}
	if d.Budget > fits {
		v.say("%s", v.overspent())
	}
	if v.run.legs != nil {
		v.say("Splits alone do not show halts: planned stops are taken for taken, and any other halt for slow going.")
	}
}

// overspent says what a budget above all of it teaches.
func (v *review) overspent() string {
	d := v.out
	even := d.Pacing.Verdict == Even || d.Pacing.Verdict == TooShort && d.Pacing.Opening <= clearOpening
	switch {
	case even && d.Late <= 0:
		return fmt.Sprintf("By the numbers that the plan rests on this took %s of what one race allows. More likely they underrate you: take this race into your results.", say.Percent(d.Budget))
	case v.stateAt(v.plan.Course.Length()/2).Spent > d.Budget/2 && d.Pacing.Opening > 1:
		return "You spent more than you had in the first half, and paid for it in the second."
	}
	return fmt.Sprintf("By the numbers that the plan rests on this took %s of what one race allows: the numbers, the day or the times are not quite what the plan takes them for.", say.Percent(d.Budget))
}
