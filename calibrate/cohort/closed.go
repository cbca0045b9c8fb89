package cohort

import (
	"math"

	"isoeffort.example/calibrate"
	"isoeffort.example/effort"
)

// numbers is how many of an athlete's numbers vary over the cohort.
const numbers = 3

// varying are they.
var varying = [numbers]effort.Number{effort.HourPower, effort.Endurance, effort.Braking}

// A work is the running work of a ground in J/kg: without braking, and for a braking of 1.
type work struct{ level, braking float64 }

func workOf(g *effort.Ground) work {
	a := effort.Usual(10)
	a.Braking = 0
	level := g.RunningWork(a)
	a.Braking = 1
	return work{level, g.RunningWork(a) - level}
}

// A closed form gives the logarithm of a time for athletes about a prior's medians.
type closed struct{ logPower, endurance, fade, braking float64 }

func closedOf(p calibrate.Prior) closed {
	return closed{math.Log(p[effort.HourPower].Median), p[effort.Endurance].Median, p[effort.Fade].Median, p[effort.Braking].Median}
}

// at returns ln T in seconds at an hour power given by its logarithm, the other numbers
// at their medians, and its slopes by the logarithms of the varying numbers: with
// h = W/(3600 P60) and L = ln T/h
//
//	L = ln((e^(φh) − 1)/φ)/(1−k),  ∂L/∂ln P60 = −φh/(1 − e^(−φh))/(1−k)
//	∂L/∂ln k = k L/(1−k),          ∂L/∂ln κ = −∂L/∂ln P60 · κ W_b/W
func (c closed) at(w work, logPower float64) (logTime float64, slope [numbers]float64) {
	total := w.level + c.braking*w.braking
	h := total / 3600 * math.Exp(-logPower)
	fresh, growth := h, 1.0
	if x := c.fade * h; x > 0 {
		fresh, growth = math.Expm1(x)/c.fade, -x/math.Expm1(-x)
	}
	free := 1 - c.endurance
	hours := math.Log(fresh) / free
	slope[0] = -growth / free
	slope[1] = c.endurance * hours / free
	slope[2] = growth / free * c.braking * w.braking / total
	return hours + math.Log(3600), slope
}
