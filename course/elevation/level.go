package elevation

import (
	"math"
	"slices"
)

// A jump is a rise between two neighbouring heights that no ground has. What makes one:
// it is this large, this steep, this many times the usual scatter of rises, and the
// heights on either side stay apart by half of it at least. [Our own]
const (
	jumpLeast    = 5 // m
	jumpGradient = 1
	jumpScatter  = 6
	jumpStays    = 5 // heights on either side whose medians are compared
)

// A displaced stretch returns within displacedReach by what it left with, to
// displacedMatch of it; shorter ones than shortStretch are left out, as their heights
// may be anything. A step that does not return is undone only if it is evident: larger
// and steeper than a jump by these, between points that are near, with lines through
// the heights on either side that miss each other by as much. [Our own]
const (
	displacedReach = 3000 // m
	displacedMatch = 0.3
	shortStretch   = 50 // m
	stepLeast      = 10 // m
	stepGradient   = 2
	stepScatter    = 8
	stepReach      = 100 // m
	stepStays      = 10  // heights on either side
	stepMatch      = 0.4
)

// jump is a rise from one known height to the next, by index into the known ones.
type jump struct {
	after int
	rise  float64
}

// level undoes displaced stretches and steps.
func (r *recording) level() {
	at := r.known()
	jumps, scatter := r.jumps(at)
	for len(jumps) > 0 {
		j := jumps[0]
		jumps = jumps[1:]
		if back := r.comesBack(at, j, jumps, scatter); back >= 0 {
			r.bringBack(at, j, jumps[back])
			jumps = jumps[back+1:]
			continue
		}
		r.undo(at, j, scatter)
	}
}

// jumps returns those of a recording and the scatter of its rises.
func (r *recording) jumps(at []int) ([]jump, float64) {
	if len(at) < 2*jumpStays {
		return nil, 0
	}
	rises := make([]float64, len(at)-1)
	for i := range rises {
		rises[i] = r.elevation[at[i+1]] - r.elevation[at[i]]
	}
	scatter := spread(some(rises))
	var jumps []jump
	for i, rise := range rises {
		run := r.distance[at[i+1]] - r.distance[at[i]]
		if math.Abs(rise) < max(jumpLeast, jumpGradient*run, jumpScatter*scatter) {
			continue
		}
		before := r.middle(at[max(0, i+1-jumpStays) : i+1])
		after := r.middle(at[i+1 : min(len(at), i+1+jumpStays)])
		if math.Abs(after-before) >= math.Abs(rise)/2 && (after > before) == (rise > 0) {
			jumps = append(jumps, jump{i, rise})
		}
	}
	return jumps, scatter
}

// middle is the median height of some points.
func (r *recording) middle(at []int) float64 {
	var z [jumpStays]float64
	for i, k := range at {
		z[i] = r.elevation[k]
	}
	return median(z[:len(at)])
}

// comesBack returns which of the later jumps undoes j, or −1.
func (r *recording) comesBack(at []int, j jump, later []jump, scatter float64) int {
	for k, b := range later {
		if r.distance[at[b.after]]-r.distance[at[j.after+1]] > displacedReach {
			break
		}
		slack := displacedMatch*max(math.Abs(j.rise), math.Abs(b.rise)) + 3*scatter
		if (b.rise > 0) != (j.rise > 0) && math.Abs(b.rise+j.rise) <= slack {
			return k
		}
	}
	return -1
}

// bringBack shifts a displaced stretch, or leaves it out if it is short.
func (r *recording) bringBack(at []int, j, back jump) {
	from, to := at[j.after+1], at[back.after]
	if r.distance[to]-r.distance[from] <= shortStretch || back.after-j.after <= jumpStays {
		r.drop(from, to+1, Displaced)
		return
	}
	r.shift(from, to+1, (back.rise-j.rise)/2, Displaced)
}

func (r *recording) shift(from, to int, by float64, kind Kind) {
	r.change(r.distance[from], r.distance[to-1], kind, r.elevation[from], by)
	for i := from; i < to; i++ {
		r.elevation[i] += by
	}
}

// undo shifts the shorter side of an evident step; of others it warns.
func (r *recording) undo(at []int, j jump, scatter float64) {
	n := len(r.distance)
	i, k := at[j.after], at[j.after+1]
	run := r.distance[k] - r.distance[i]
	size := math.Abs(j.rise)
	evident := size >= max(stepLeast, stepGradient*run, stepScatter*scatter) && run <= stepReach &&
		j.after+1 >= stepStays && len(at)-1-j.after >= stepStays
	if evident {
		middle := (r.distance[i] + r.distance[k]) / 2
		step := r.line(at[j.after+1:j.after+1+stepStays]).at(middle) - r.line(at[j.after+1-stepStays:j.after+1]).at(middle)
		if evident = math.Abs(step-j.rise) <= stepMatch*size; evident {
			if 2*(r.distance[i]-r.distance[0]) < r.distance[n-1]-r.distance[0] {
				r.shift(0, i+1, step, Step)
			} else {
				r.shift(k, n, -step, Step)
			}
			return
		}
	}
	r.warn("%.2f km: the heights jump by %+.0f m within %.0f m: left as they are", r.distance[i]/1000, j.rise, run)
}

// spread is 1.4826 times the median of the absolute deviations from the median: the SD,
// for Gaussian values, whatever the outliers. v is put in disorder.
func spread(v []float64) float64 {
	middle := median(v)
	for i, x := range v {
		v[i] = math.Abs(x - middle)
	}
	return 1.4826 * median(v)
}

// enoughToSpread is how many values tell a spread to 2 %.
const enoughToSpread = 4096

// some returns evenly spread values of v, enough to tell its spread, in a slice of their
// own.
func some(v []float64) []float64 {
	step := 1 + len(v)/enoughToSpread
	out := make([]float64, 0, len(v)/step+1)
	for i := 0; i < len(v); i += step {
		out = append(out, v[i])
	}
	return out
}

// median returns the middle value, the upper one of two, and puts v in order.
func median(v []float64) float64 {
	if len(v) < 16 {
		for i := 1; i < len(v); i++ { // the usual case: a handful
			for k := i; k > 0 && v[k] < v[k-1]; k-- {
				v[k], v[k-1] = v[k-1], v[k]
			}
		}
	} else {
		slices.Sort(v)
	}
	return v[len(v)/2]
}
