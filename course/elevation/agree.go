package elevation

import (
	"errors"
	"fmt"
	"math"
)

// ErrOtherGround is wrapped by the error for two profiles that are not of the same ground.
var ErrOtherGround = errors.New("profiles differ too much to be of the same ground")

// An Agreement is what two recordings of the same ground say about each other. Noise that
// wanders over 50 to 200 m looks like ground in either; in the other it lies elsewhere.
type Agreement struct {
	// Gradient is the SD of the error of one profile's gradient over 100 m, rise over run:
	// that of the difference of the two over √2. It holds the errors of all kinds that the
	// two do not share, those of place among them: ground that is steep comes out less
	// exactly where the distances of the two do not match.
	Gradient float64

	// Ascent and Descent in metres are free of what noise adds, to first order: twice those
	// of the mean of the two profiles less the mean of the two. Noise adds to ascent by its
	// variance while it is small, and the mean of the two has half of that. Where it is
	// large they are still off, by up to 5 % on the profiles of the tests, where one
	// recording alone is 50 % off. AscentSD and DescentSD are taken to be half of what
	// this took away, with what the two profiles claim; NaN where one of those is. [Our own]
	Ascent, Descent     float64
	AscentSD, DescentSD float64

	Warnings []string
}

// agreeLength is by how much of their length two profiles of the same ground may differ,
// and agreeShare how much of the heights' variance may be in their differences. [Our own]
const (
	agreeLength = 0.03
	agreeShare  = 0.25
)

// Agree compares two cleaned profiles of the same ground in the same direction, such as of
// two runs or, the second one turned round before it was cleaned, of the way out and the
// way back. The distances of the second are stretched to the length of the first. What
// both share, such as the errors of one terrain model, does not show. The error wraps
// ErrOtherGround. Both profiles must come from Clean.
func Agree(a, b *Profile) (Agreement, error) {
	first, second := a.Elevation, b.along(a)
	length := a.Distance[len(a.Distance)-1] - a.Distance[0]
	other := b.Distance[len(b.Distance)-1] - b.Distance[0]
	if math.Abs(other/length-1) > agreeLength {
		return Agreement{}, fmt.Errorf("elevation: %w: lengths of %.2f and %.2f km", ErrOtherGround, length/1000, other/1000)
	}
	both, apart := make([]float64, len(first)), make([]float64, len(first))
	for i, z := range first {
		both[i], apart[i] = (z+second[i])/2, z-second[i]
	}
	if v, w := variance(apart), variance(both); v > agreeShare*w+1 {
		return Agreement{}, fmt.Errorf("elevation: %w: heights differ by an SD of %.0f m", ErrOtherGround, math.Sqrt(v))
	}
	g := Agreement{Gradient: gradientSD(a.Distance, apart) / math.Sqrt2}
	var tooMuch float64
	up, down := climbOf(both)
	g.Ascent, g.AscentSD, tooMuch = lessNoise(up, a.Ascent, b.Ascent, a.AscentSD, b.AscentSD)
	g.Descent, g.DescentSD, _ = lessNoise(down, a.Descent, b.Descent, a.DescentSD, b.DescentSD)
	if claimed := math.Hypot(a.AscentSD, b.AscentSD); tooMuch > 2*claimed {
		g.Warnings = append(g.Warnings, fmt.Sprintf("two recordings of the same ground climb %.0f and %.0f m, "+
			"of which about %.0f m are undulations that the other does not have: noise that looks like ground", a.Ascent, b.Ascent, tooMuch))
	}
	return g, nil
}

// lessNoise extrapolates an ascent to no noise from that of the mean of two profiles and
// those of the two.
func lessNoise(both, a, b, sdA, sdB float64) (ascent, sd, tooMuch float64) {
	tooMuch = 2 * max((a+b)/2-both, 0)
	return (a+b)/2 - tooMuch, math.Sqrt((sdA*sdA+sdB*sdB)/4 + tooMuch*tooMuch/4), tooMuch
}

// along returns a profile's heights at the places of another, stretched to its length.
func (p *Profile) along(o *Profile) []float64 {
	n := len(p.Distance) - 1
	stretch := (p.Distance[n] - p.Distance[0]) / (o.Distance[len(o.Distance)-1] - o.Distance[0])
	out := make([]float64, len(o.Distance))
	for i, d := range o.Distance {
		out[i] = p.at(p.Distance[0] + (d-o.Distance[0])*stretch)
	}
	return out
}

// gradientSD is the RMS gradient of heights over 100 m, or as near as the grid has it.
func gradientSD(x, z []float64) float64 {
	spacing := (x[len(x)-1] - x[0]) / float64(len(x)-1)
	reach := min(max(1, int(math.Round(100/spacing))), len(x)-1)
	sum, n := 0.0, 0.0
	for i := reach; i < len(x); i++ {
		g := (z[i] - z[i-reach]) / (x[i] - x[i-reach])
		sum += g * g
		n++
	}
	return math.Sqrt(sum / n)
}

func variance(v []float64) float64 {
	m, sum := mean(v), 0.0
	for _, x := range v {
		sum += (x - m) * (x - m)
	}
	return sum / float64(len(v))
}
