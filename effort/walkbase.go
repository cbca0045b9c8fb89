package effort

import (
	"math"
	"sync"
)

// walkingBase is the part of WalkingPower that depends on speed alone.
func walkingBase(v float64) float64 {
	value, _ := walkingBaseAndSlope(v)
	return value
}

// walkingBaseAndSlope returns walkingBase and its derivative; at 0 that is infinite.
func walkingBaseAndSlope(v float64) (value, slope float64) {
	if v == 0 {
		return 0, math.Inf(1)
	}
	root, cube := 1.94*math.Pow(v, 0.43), 0.24*v*v*v
	return root + cube*v, 0.43*root/v + 4*cube
}

// A walk is solved for thousands of times in a plan, and the power of v in walkingBase
// would take most of that time. So it is tabulated once, with its derivative, at
// baseNodes a metre per second from baseLow to baseTop, and interpolated by cubics that
// meet both: within 3e-9 of the function, relative, and within 1e-6 in its derivative.
const (
	baseNodes = 256
	baseLow   = 0.125
	baseTop   = 4.0 + 1.0/baseNodes
)

type node struct{ value, slope float64 }

var baseTable = sync.OnceValue(func() []node {
	table := make([]node, int((baseTop-baseLow)*baseNodes)+2)
	for i := range table {
		value, slope := walkingBaseAndSlope(baseLow + float64(i)/baseNodes)
		table[i] = node{value, slope}
	}
	return table
})

// hermite is the cubic through two nodes a step apart, and its derivative, at a share u
// of the step.
func hermite(a, b node, u, step float64) (value, slope float64) {
	rise := (b.value - a.value) / step
	// Newton's form: a + u s (a' + u (c2 + (u-1) c3)).
	c2 := rise - a.slope
	c3 := a.slope + b.slope - 2*rise
	value = a.value + u*step*(a.slope+u*(c2+(u-1)*c3))
	slope = a.slope + u*(2*c2+(3*u-2)*c3)
	return value, slope
}
