package plan

import (
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/course"
)

// BeyondBudget is the share of the budget from which a goal is called beyond the runner:
// a tenth of a per cent of effort over it, as near as a best time with its bouts is known.
const BeyondBudget = 1.02

// beyondLongest is how many times the longest result a plan may last before its times
// are called rough.
const beyondLongest = 2

// farBelow is the share of the budget below which a goal is called far below the runner.
const farBelow = 0.01

func (p *Plan) warn() {
	say := func(format string, args ...any) { p.Warnings = append(p.Warnings, fmt.Sprintf(format, args...)) }
	if p.Budget > BeyondBudget {
		say("The goal is beyond this runner: it needs %.0f %% more effort than can be held. The fastest sensible gun time is %s.",
			100*(p.Intensity/p.Best.Intensity-1), clock(p.Best.Gun))
		if p.Needs.HourPower > 0 {
			say("A runner who can make it has about %.0f %% more hour power.", 100*(p.Needs.HourPower/p.Athlete.HourPower-1))
		}
	}
	if p.Unmet {
		say("No pace of this runner makes the goal on this course. The plan is for the fastest sensible gun time, %s.", clock(p.Best.Gun))
	}
	if r := p.Race; r.Share > 0 && p.Budget < 0.99*r.Share {
		say("Only %.2g of the effort budget can be spent at this runner's greatest speeds, not the %.2g asked for.", p.Budget, r.Share)
	}
	if p.Race.Stations != (Stations{}) && !slices.ContainsFunc(p.Course.Landmarks(), func(l course.Landmark) bool { return l.Kind == course.Station }) {
		say("The course has no aid stations: the halts asked for at each are not in the plan.")
	}
	p.warnOfCutoffs(say)
	b := p.Race.Basis
	if planned := max(p.Moving, p.Best.Moving); b.Results > 0 && planned > beyondLongest*b.Longest {
		say("This race is %.1f times as long as the longest result it rests on (%s): take every time as rough. 90 %% interval of the best time: %s to %s.",
			float64(planned)/float64(b.Longest), clock(b.Longest), clock(p.Best.Low), clock(p.Best.High))
	}
	if p.aimed() && p.Budget < farBelow {
		say("The goal is far below this runner, who could finish in %s.", clock(p.Best.Gun))
	}
	p.warnOfLongWalk(say)
	if rate := float64(p.GaitChanges) / p.Moving.Hours(); rate > calm {
		say("The plan changes between running and walking %.1f times an hour: a longer shortest bout would make it calmer, and slower.", rate)
	}
}

// aimed reports whether the plan is for less than the best.
func (p *Plan) aimed() bool {
	return p.timed() || p.Race.MakeCutoffs
}

// warnOfCutoffs names every cutoff that the plan misses, and the first that is at risk.
func (p *Plan) warnOfCutoffs(say func(string, ...any)) {
	for _, m := range p.Cutoffs {
		if m.InHand < 0 {
			say("This plan misses the cutoff %s by %s. Do not chase it at any price: the race's officials and medical team decide who goes on.", m.place(), clock(-m.InHand))
		}
	}
	if m := p.FirstAtRisk(); m != nil && m.InHand >= 0 {
		say("The first cutoff at risk is that %s, with %s in hand.", m.place(), clock(m.InHand))
	}
}

// A last walk is worth a word from longWalk on, where the ground is as level as
// levelGround and the runner has run before.
const (
	longWalk    = time.Hour
	levelGround = 0.015
)

// warnOfLongWalk says what a coach would do where the plan runs first and walks the rest:
// on level ground the two cost about the same then, so that short walks from early on do too.
func (p *Plan) warnOfLongWalk(say func(string, ...any)) {
	length := p.Course.Length()
	bouts := p.Bouts(0, length)
	last := bouts[len(bouts)-1]
	relief := p.Course.ReliefBetween(last.From, last.To)
	took := p.Elapsed(last.To) - p.Elapsed(last.From)
	if len(bouts) == 1 || last.Gait != Walk || took < longWalk || relief.Ascent+relief.Descent > levelGround*(last.To-last.From) {
		return
	}
	say("The plan runs to %.0f km and walks the rest, %s. On level ground short walks from the first hour on cost about as little: ask for planned walks.",
		last.From/1000, clock(took))
}

// place is the cutoff's in words.
func (c Cutoff) place() string {
	at := fmt.Sprintf("at %.1f km", c.Distance/1000)
	if c.Name != "" {
		at = "at " + c.Name + ", " + fmt.Sprintf("%.1f km", c.Distance/1000)
	}
	return at
}

// clock writes a duration as H:MM:SS.
func clock(d time.Duration) string {
	s := int64(math.Round(d.Seconds()))
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}
