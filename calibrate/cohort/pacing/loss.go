package pacing

import (
	"math"
	"sort"
	"sync"
	"sync/atomic"

	"isoeffort.example/effort"
)

// each calls do for every i below n on several goroutines, each with an integrator of its
// own.
func (f *fitting) each(n int, do func(in *effort.Integrator, i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(f.o.Workers, n) {
		all.Go(func() {
			in, err := effort.NewIntegrator(f.fields[0].trail.ground, effort.Usual(10), effort.Surroundings{})
			for err == nil && f.ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(in, i)
			}
		})
	}
	all.Wait()
}

// curves are those of every field at its nodes.
func (f *fitting) curves(groups []Group) [][nodes][]float64 {
	out := make([][nodes][]float64, len(f.fields))
	f.each(len(f.fields)*nodes, func(in *effort.Integrator, i int) {
		v, k := &f.fields[i/nodes], i%nodes
		seconds := math.Exp(v.logTime[k])
		s := shapeOf(groups, v.trail.hourPower(Usual(), f.o.Endurance, seconds))
		out[i/nodes][k], _ = v.trail.curve(in, s, f.o.Endurance, seconds, v.at)
	})
	return out
}

// shapeOf is the shape at an hour power, straight between the groups' middles.
func shapeOf(groups []Group, hourPower float64) Shape {
	i := sort.Search(len(groups), func(i int) bool { return groups[i].HourPower >= hourPower })
	switch {
	case i == 0:
		return groups[0].Shape
	case i == len(groups):
		return groups[i-1].Shape
	}
	a, b := groups[i-1], groups[i]
	return between(a.Shape, b.Shape, math.Log(hourPower/a.HourPower)/math.Log(b.HourPower/a.HourPower))
}

// shareAt is a field's share at one of its splits for a time, straight between nodes.
func (v *field) shareAt(curves *[nodes][]float64, logTime float64, split int) float64 {
	k := sort.SearchFloat64s(v.logTime[:], logTime)
	switch {
	case k == 0:
		return curves[0][split]
	case k == nodes:
		return curves[nodes-1][split]
	}
	w := (logTime - v.logTime[k-1]) / (v.logTime[k] - v.logTime[k-1])
	return curves[k-1][split] + w*(curves[k][split]-curves[k-1][split])
}

// fullWeight is how many runners count in full: what the model misses of the ground is the
// same for all, so that thousands do not say more about fade and tilt than some hundreds. [Our
// own.]
const fullWeight = 200.0

// loss is the negative log likelihood of all splits, of at most fullWeight runners.
func (f *fitting) loss(groups []Group) float64 {
	curves := f.curves(groups)
	if f.ctx.Err() != nil {
		return math.Inf(1)
	}
	sum, n := 0.0, 0.0
	for i := range f.fields {
		v := &f.fields[i]
		n += float64(len(v.runners))
		for _, r := range v.runners {
			own := 0.0
			for j, k := range r.split {
				own += math.Hypot(r.share[j]-v.shareAt(&curves[i], r.logTime, k), rounded) - rounded
			}
			sum += own / float64(len(r.split)) / likely
		}
	}
	return sum * math.Min(1, fullWeight/n)
}

// errors are the mean absolute errors of the shares, and of those by distance.
func (f *fitting) errors(groups []Group) (fitted, even float64) {
	curves := f.curves(groups)
	if f.ctx.Err() != nil {
		return 0, 0
	}
	n := 0.0
	for i := range f.fields {
		v := &f.fields[i]
		for _, r := range v.runners {
			for j, k := range r.split {
				fitted += math.Abs(r.share[j] - v.shareAt(&curves[i], r.logTime, k))
				even += math.Abs(r.share[j] - v.at[k]/v.trail.official)
				n++
			}
		}
	}
	return fitted / n, even / n
}
