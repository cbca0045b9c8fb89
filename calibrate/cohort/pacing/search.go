package pacing

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/optimize"
)

// search moves a shape downhill from a centre that holds it.
func (f *fitting) search(centre Shape, z []float64, groups func(Shape) []Group) (Shape, float64) {
	value := func(z []float64) float64 {
		sum := f.loss(groups(shapeAt(centre, z)))
		for _, v := range z {
			sum += v * v / 2
		}
		return sum
	}
	problem := optimize.Problem{Func: value, Status: func() (optimize.Status, error) {
		if f.ctx.Err() != nil {
			return optimize.Failure, f.ctx.Err()
		}
		return optimize.NotTerminated, nil
	}}
	settings := &optimize.Settings{FuncEvaluations: 160, Converger: &optimize.FunctionConverge{Absolute: 0.02, Iterations: 25}}
	result, _ := optimize.Minimize(problem, z, settings, &optimize.NelderMead{SimplexSize: 0.7})
	if result == nil || f.ctx.Err() != nil {
		return centre, math.Inf(1)
	}
	return shapeAt(centre, result.X), result.F
}

// group cuts the runners by hour power and gives each group a shape of its own, one after
// the other, held by the shared one.
func (f *fitting) group(shared Shape) []Group {
	var powers []float64
	for i := range f.fields {
		for _, r := range f.fields[i].runners {
			powers = append(powers, r.logPower)
		}
	}
	sort.Float64s(powers)
	n := f.o.Groups
	if len(powers) < 20*n {
		n = 1
	}
	groups := make([]Group, n)
	for k := range groups {
		groups[k] = Group{HourPower: math.Exp(powers[(2*k+1)*len(powers)/(2*n)]), Shape: shared, Runners: (k+1)*len(powers)/n - k*len(powers)/n}
	}
	if n == 1 {
		return groups
	}
	for k := range groups {
		groups[k].Shape, _ = f.search(shared, make([]float64, shapeNumbers), func(s Shape) []Group {
			tried := append([]Group(nil), groups...)
			tried[k].Shape = s
			return tried
		})
	}
	return groups
}
