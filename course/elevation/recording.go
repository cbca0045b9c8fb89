package elevation

import (
	"fmt"
	"math"
)

// A recording is a profile as it was given, being repaired.
type recording struct {
	distance  []float64 // increasing
	elevation []float64 // NaN where missing
	void      []float64 // a number that was given and is no height, else NaN
	rounding  float64   // variance of rounding, m²
	held      held      // where a drift was held against known heights
	changes   []Change
	warnings  []string
}

// newRecording checks a profile, merges points at one distance and takes heights that
// are none for missing.
func newRecording(distance, elevation []float64) (*recording, error) {
	r := &recording{
		distance:  make([]float64, 0, len(distance)),
		elevation: make([]float64, 0, len(distance)),
		void:      make([]float64, 0, len(distance)),
	}
	merged := 0.0 // heights in the last point
	for i, x := range distance {
		if err := checkPoint(distance, elevation, i); err != nil {
			return nil, &PointError{i, err}
		}
		if n := len(r.distance); n == 0 || x > r.distance[n-1] {
			r.distance, r.elevation, r.void = append(r.distance, x), append(r.elevation, math.NaN()), append(r.void, math.NaN())
			merged = 0
		}
		last := len(r.distance) - 1
		switch z := elevation[i]; {
		case math.IsNaN(z):
		case z < MinElevation || z > MaxElevation:
			r.void[last] = z
		case merged == 0:
			r.elevation[last], merged = z, 1
		default:
			merged++
			r.elevation[last] += (z - r.elevation[last]) / merged
		}
	}
	if err := r.check(); err != nil {
		return nil, err
	}
	r.rounding = rounding(r.elevation)
	return r, nil
}

func checkPoint(distance, elevation []float64, i int) error {
	x, z := distance[i], elevation[i]
	switch {
	case math.IsNaN(x-x) || math.IsInf(z, 0):
		return fmt.Errorf("%w: %g m at %g m", ErrNotFinite, z, x)
	case i > 0 && x < distance[i-1]:
		return fmt.Errorf("%w: from %g to %g m", ErrDistanceBack, distance[i-1], x)
	}
	return nil
}

// leastLength keeps the arithmetic away from overflow.
const leastLength = 1e-3 // m

func (r *recording) check() error {
	n := len(r.distance)
	switch {
	case n < 2 || !(r.distance[n-1]-r.distance[0] >= leastLength):
		return fmt.Errorf("elevation: %w", ErrTooFewPoints)
	case r.distance[n-1]-r.distance[0] > MaxLength:
		return fmt.Errorf("elevation: %w: %.1f km", ErrTooLong, (r.distance[n-1]-r.distance[0])/1000)
	case len(r.known()) == 0:
		return fmt.Errorf("elevation: %w", ErrNoElevation)
	}
	return nil
}

// rounding returns the variance of rounding, step²/12, if all heights are multiples of a
// step that is usual, and 0 if not.
func rounding(elevation []float64) float64 {
	for _, step := range []float64{5, 2, 1, 0.5, 0.2, 0.1} {
		if multiples(elevation, step) {
			return step * step / 12
		}
	}
	return 0
}

func multiples(elevation []float64, step float64) bool {
	for _, z := range elevation {
		if q := z / step; math.Abs(q-math.Round(q)) > 1e-6 { // false at NaN
			return false
		}
	}
	return true
}

func (r *recording) change(from, to float64, kind Kind, old, shift float64) {
	r.changes = append(r.changes, Change{From: from, To: to, Kind: kind, Old: old, Shift: shift})
}

func (r *recording) warn(format string, args ...any) {
	r.warnings = append(r.warnings, fmt.Sprintf(format, args...))
}

// ascent is the sum of all rises.
func (r *recording) ascent() float64 {
	sum, last := 0.0, math.NaN()
	for _, z := range r.elevation {
		if z > last {
			sum += z - last
		}
		if !math.IsNaN(z) {
			last = z
		}
	}
	return sum
}

// interpolate returns the heights at ascending places, straight between the known points
// and level beyond them.
func (r *recording) interpolate(x []float64) []float64 {
	at := r.known()
	out := make([]float64, len(x))
	k := 0
	for i, d := range x {
		for k+1 < len(at) && r.distance[at[k+1]] <= d {
			k++
		}
		a := at[k]
		out[i] = r.elevation[a]
		if k+1 < len(at) && d > r.distance[a] {
			b := at[k+1]
			out[i] += (d - r.distance[a]) / (r.distance[b] - r.distance[a]) * (r.elevation[b] - r.elevation[a])
		}
	}
	return out
}

// known returns the indices of the points that have a height.
func (r *recording) known() []int {
	at := make([]int, 0, len(r.elevation))
	for i, z := range r.elevation {
		if !math.IsNaN(z) {
			at = append(at, i)
		}
	}
	return at
}

// drop takes the heights of points from to before to for missing.
func (r *recording) drop(from, to int, kind Kind) {
	r.change(r.distance[from], r.distance[to-1], kind, r.elevation[from], 0)
	for i := from; i < to; i++ {
		r.elevation[i] = math.NaN()
	}
}

// repair mends what is no ground, in an order in which no fault hides another: gaps as
// they were given, zeros, displaced stretches and steps, spikes.
func (r *recording) repair() {
	r.noteGaps()
	r.dropZeros()
	r.level()
	r.dropSpikes()
}

// noteGaps lists the runs of missing heights, and numbers that are none.
func (r *recording) noteGaps() {
	for i := 0; i < len(r.elevation); i++ {
		from, void := i, math.NaN()
		for ; i < len(r.elevation) && math.IsNaN(r.elevation[i]); i++ {
			if math.IsNaN(void) {
				void = r.void[i]
			}
		}
		switch {
		case i > from && math.IsNaN(void):
			r.change(r.distance[from], r.distance[i-1], Gap, void, 0)
		case i > from:
			r.change(r.distance[from], r.distance[i-1], Void, void, 0)
		case !math.IsNaN(r.void[i]): // beside a height at the same place
			r.change(r.distance[i], r.distance[i], Void, r.void[i], 0)
		}
	}
}

// Zeros stand for missing heights where the ground beside them lies this much off and
// the way to it would be this steep. [Our own]
const (
	zeroJump     = 10 // m
	zeroGradient = 1
)

// dropZeros takes runs of exact zeros for missing where they stand apart on each side
// that has a height; a recording of nothing but zeros stays.
func (r *recording) dropZeros() {
	at := r.known()
	for i := 0; i < len(at); i++ {
		from := i
		for i < len(at) && r.elevation[at[i]] == 0 {
			i++
		}
		if i == from || i-from == len(at) {
			continue
		}
		apart := func(zero, other int) bool {
			jump, run := math.Abs(r.elevation[other]), math.Abs(r.distance[other]-r.distance[zero])
			return jump > zeroJump && jump > zeroGradient*run
		}
		if (from == 0 || apart(at[from], at[from-1])) && (i == len(at) || apart(at[i-1], at[i])) {
			r.drop(at[from], at[i-1]+1, Zeros)
		}
	}
}
