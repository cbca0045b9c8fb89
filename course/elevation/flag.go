package elevation

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// A Flag marks ground whose gradient is beyond the bound: more likely a fault of the
// heights than ground. It is not repaired.
type Flag struct {
	From, To float64 // m
	Gradient float64 // the steepest over flagRun, rise over run
	Form     Form
	Text     string

	first, last float64 // gradients at its ends
}

// Form is the shape of what was flagged.
type Form int

// The forms of flagged ground.
const (
	Slope Form = iota // up or down only: a cliff, or switchbacks on a coarse terrain model
	Dip               // down and up again: a bridge, its valley in the heights
	Hump              // up and down again: a tunnel or a cutting, its hill in the heights
)

func (f Form) String() string { return [...]string{"slope", "dip", "hump"}[f] }

func (f Form) reason() string {
	switch f {
	case Dip:
		return "a dip, as of a bridge over a valley that a terrain model has"
	case Hump:
		return "a hump, as of a tunnel or cutting through a hill that a terrain model has"
	}
	return "a cliff, or switchbacks on a coarse terrain model"
}

// Gradients are looked at over this run. Flagged places that are no farther apart
// than flagJoin are one. Heights that are not smoothed must be beyond the bound by this
// many SDs of what they scatter by. [Our own]
const (
	flagRun  = 30  // m
	flagJoin = 300 // m
	flagSure = 4
)

// steep returns the flags of heights at the nodes, as seen. They tell what smoothing may
// hide, and what is left out when noise and ground are told apart: a fault of 60 m is
// neither.
func (g *nodes) steep(bound float64) []Flag {
	x, z := g.seen()
	reach := max(1, int(math.Round(flagRun/g.spacing)))
	if len(z) <= 2*reach {
		return nil
	}
	bends := make([]float64, 0, len(z))
	for i := reach; i+reach < len(z); i++ {
		bends = append(bends, z[i+reach]-2*z[i]+z[i-reach])
	}
	// The variance of a bend is 6 times that of independent noise, that of a rise twice.
	scatter := spread(some(bends)) / math.Sqrt(3)
	return join(find(nil, x, z, bound+flagSure*scatter/flagRun))
}

// flag adds those of the cleaned heights to the flags of those that were seen.
func (p *Profile) flag(seen []Flag, bound float64) {
	p.Flags = join(find(seen, p.Distance, p.Elevation, bound))
}

// find appends a flag for each place at which a run is too steep.
func find(flags []Flag, x, z []float64, bound float64) []Flag {
	j := 0
	for i := range x {
		for j < i-1 && x[i]-x[j+1] >= flagRun-1e-9 {
			j++
		}
		if i == 0 || x[i]-x[j] < math.Min(flagRun-1e-9, x[len(x)-1]-x[0]) {
			continue
		}
		if g := (z[i] - z[j]) / (x[i] - x[j]); math.Abs(g) > bound {
			flags = append(flags, Flag{From: x[j], To: x[i], Gradient: g, first: g, last: g})
		}
	}
	return flags
}

// join makes one flag of those that are near each other, with the form that the first
// and the last of its gradients make.
func join(flags []Flag) []Flag {
	slices.SortStableFunc(flags, func(a, b Flag) int {
		return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To))
	})
	var joined []Flag
	for _, f := range flags {
		n := len(joined)
		if n == 0 || f.From > joined[n-1].To+flagJoin {
			joined = append(joined, f)
			continue
		}
		j := &joined[n-1]
		if f.To >= j.To {
			j.To, j.last = f.To, f.last
		}
		if math.Abs(f.Gradient) > math.Abs(j.Gradient) {
			j.Gradient = f.Gradient
		}
	}
	for i := range joined {
		f := &joined[i]
		f.Form = formOf(f.first, f.last)
		f.Text = fmt.Sprintf("%.2f to %.2f km: gradient of %+.0f %%: %s", f.From/1000, f.To/1000, 100*f.Gradient, f.Form.reason())
	}
	return joined
}

func formOf(first, last float64) Form {
	switch {
	case first < 0 && last > 0:
		return Dip
	case first > 0 && last < 0:
		return Hump
	}
	return Slope
}
