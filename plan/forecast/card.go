package forecast

import (
	"fmt"
	"math"

	"isoeffort.example/plan"
)

// LeastProbability is the probability below which a goal gets no split card. [Our own.]
const LeastProbability = 0.10

// Allowed reports whether a goal may have a split card: its forecast probability is at
// least LeastProbability, and its plan spends no more than the whole effort budget
// (plan.Plan.Budget, at most plan.BeyondBudget). Otherwise the reason says why not, in one line; who
// overrides it has to be asked for explicitly, and has Warning on every page. What is not
// a probability, or not a budget, is not allowed.
func Allowed(probability, budget float64) (ok bool, reason string) {
	switch {
	case !(probability >= 0 && probability <= 1):
		return false, fmt.Sprintf("%g is no probability", probability)
	case !(budget >= 0) || math.IsInf(budget, 1):
		return false, fmt.Sprintf("%g is no share of the effort budget", budget)
	case budget > plan.BeyondBudget:
		return false, "the goal needs " + over(budget)
	case probability < LeastProbability:
		return false, fmt.Sprintf("the forecast gives the goal %s", percent(probability))
	}
	return true, ""
}

// Warning returns the text for every page of a card that is made for a goal in spite of
// Allowed, or "" where it is allowed.
func Warning(probability, budget float64) string {
	ok, reason := Allowed(probability, budget)
	if ok {
		return ""
	}
	return "NOT ADVISED: " + reason + ". Whoever follows these splits will most likely slow down " +
		"badly or not finish. Give them up early rather than late; do not chase a cutoff. Local rules, the race's " +
		"medical team and doctors come first."
}

// over is a budget above 1 in words. It grows with a high power of the effort, so that a
// figure of it would only puzzle.
func over(budget float64) string {
	if budget > 2 {
		return "far more effort than the runner can hold for so long"
	}
	return "more effort than the runner can hold for so long"
}

// percent is a probability in words: none and all are not certain. Below
// LeastProbability it is not rounded up to it.
func percent(p float64) string {
	switch {
	case p < 0.01:
		return "less than 1 %"
	case p > 0.99:
		return "more than 99 %"
	case p < LeastProbability && p >= LeastProbability-0.005:
		return "just under 10 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}
