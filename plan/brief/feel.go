package brief

import (
	"math"

	"isoeffort.example/plan"
)

// Talk is how much a runner can say at an effort.
type Talk int

// The steps of the talk test.
const (
	WholeSentences Talk = iota
	ShortSentences
	FewWords
)

func (t Talk) String() string {
	names := [...]string{"whole sentences", "short sentences", "a few words"}
	if t < 0 || int(t) >= len(names) {
		return "no step of the talk test"
	}
	return names[t]
}

// MarshalText writes the step.
func (t Talk) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// Feel is how a plan's effort should feel.
type Feel struct {
	Talk  Talk `json:"talk"`
	First int  `json:"first"` // perceived exertion at the start, 0 to 10
	Last  int  `json:"last"`  // and at the finish
}

// At is the perceived exertion when a share of the race is done, 0 to 1; even from First
// to Last, rounded.
func (f Feel) At(share float64) int {
	return f.First + int(math.Round(float64(f.Last-f.First)*min(max(share, 0), 1)))
}

// Bounds of relative intensity, that of one hour being 1. Those of the talk are the ones
// that plans are printed with; common practice, no source.
const (
	wholeBelow = 0.87
	shortBelow = 0.97
)

// feelSteps are the perceived exertion of a start at up to a relative intensity. [Our own]
var feelSteps = [...]struct {
	below float64
	first int
}{{0.75, 2}, {wholeBelow, 3}, {shortBelow, 4}, {1.03, 5}, {math.Inf(1), 6}}

// allOut is the perceived exertion at the finish of a race that spends the whole budget:
// just under the top of the scale. [Our own]
const allOut = 9

// feel is that of a plan: what is spent of the budget is what it has risen by at the end.
func feel(p *plan.Plan) Feel {
	e := p.Effort()
	f := Feel{Talk: FewWords}
	switch {
	case e < wholeBelow:
		f.Talk = WholeSentences
	case e < shortBelow:
		f.Talk = ShortSentences
	}
	for _, s := range feelSteps {
		if f.First = s.first; e < s.below {
			break
		}
	}
	f.Last = f.First + int(math.Round((allOut-float64(f.First))*min(p.Budget, 1)))
	return f
}
