package elevation

import (
	"fmt"
	"math"
)

// smooth fills the profile's heights, ascent and what is told of noise and smoothing.
func (p *Profile) smooth(r *recording, g *nodes, steep []Flag, o Options) {
	switch {
	case o.Smoothing == AsGiven:
		p.asGiven(r, g, o, "none, as asked for")
	case g.spacing > coarsest:
		p.asGiven(r, g, o, fmt.Sprintf("none: the heights are over %d m apart, which does not tell noise from ground", coarsest))
		p.warn(p.Smoothing.Text)
	case len(g.height) <= leastSegment:
		p.asGiven(r, g, o, fmt.Sprintf("none: fewer than %d places with heights do not tell noise from ground", leastSegment+1))
		p.warn(p.Smoothing.Text)
	case g.straight():
		p.asGiven(r, g, o, "none: the ground is straight")
		p.Noise.SD, p.AscentSD, p.DescentSD = 0, 0, 0
	default:
		p.choose(r, g, steep, o)
	}
}

func (p *Profile) warn(text string) { p.Warnings = append(p.Warnings, text) }

// asGiven takes the heights at the points of the grid as they are, straight between
// those known and level beyond the outermost.
func (p *Profile) asGiven(r *recording, g *nodes, o Options, why string) {
	p.Distance = evenly(g.start, g.end, int(max(1, math.Round((g.end-g.start)/o.Grid))))
	p.Elevation = r.interpolate(p.Distance)
	p.Smoothing = Smoothing{0, "smoothing: " + why}
	p.Noise.SD, p.AscentSD, p.DescentSD = math.NaN(), math.NaN(), math.NaN()
	p.Ascent, p.Descent = climbOf(p.Elevation)
}

// climbOf sums rises and falls.
func climbOf(z []float64) (ascent, descent float64) {
	for i := 1; i < len(z); i++ {
		ascent += max(z[i]-z[i-1], 0)
		descent += max(z[i-1]-z[i], 0)
	}
	return ascent, descent
}

// choose estimates noise and ground and smooths by them.
func (p *Profile) choose(r *recording, g *nodes, steep []Flag, o Options) {
	given := 0.0
	if o.Noise > 0 {
		given = max(o.Noise*o.Noise/g.per-g.rounding, tiny)
	}
	rise := g.rises(steep)
	split := newSplit(newPeriodogram(rise), g.spacing, g.rounding, given)
	ground, noise := split.spectra()
	if o.Smoothing > 0 {
		ground = cutAt(noise, min(math.Pi, 2*math.Pi*g.spacing/o.Smoothing))
	}
	correlations := autocovariance(noise, noiseOrder)
	law := autoregress(correlations)
	if correlations[1] < 0.05*correlations[0] {
		law = autoregress(correlations[:1]) // independent
	}
	rises := evenGround(ground, g.spacing)
	rises.slope = longSlopes(rise, g.spacing)
	if o.Smoothing == 0 {
		rises = rises.uneven(rise, g.seenRises(steep), g.spacing, ground, noise)
	}
	best, ok := newGround(g.height, rises, law)
	if !ok {
		p.asGiven(r, g, o, "none: noise and ground could not be told apart")
		p.warn(p.Smoothing.Text)
		return
	}
	p.told(g, correlations, halfWay(ground, noise, g.spacing), o)
	p.draw(g, best, best.twice(), r.held)
}

// longWaves is from how many cut-off wavelengths on all of the ground is as good as kept.
const longWaves = 20

// cutAt is the spectrum of ground of whose undulations at one frequency noise takes half
// away: the third-order smoothing spline.
func cutAt(noise func(float64) float64, omega float64) func(float64) float64 {
	level, least := noise(omega), u(omega/longWaves)
	return func(w float64) float64 {
		w2 := max(u(w), least)
		return w2 * level * math.Pow(u(omega)/w2, 3)
	}
}

// halfWay is the wavelength in metres below which half of all undulations or more is
// taken away.
func halfWay(ground, noise func(float64) float64, spacing float64) float64 {
	for j := spectrumPoints - 1; j > 0; j-- {
		omega := math.Pi * float64(j) / spectrumPoints
		if ground(omega) >= u(omega)*noise(omega) {
			return 2 * math.Pi * spacing / omega
		}
	}
	return math.Inf(1)
}

// hiding is the wavelength in metres from which on so much is hidden that the ascent is
// in doubt. [Our own]
const hiding = 500

// told fills what is told of noise and smoothing.
func (p *Profile) told(g *nodes, correlations []float64, wavelength float64, o Options) {
	p.Noise.SD = math.Sqrt(correlations[0] + g.within)
	if c := correlations[1] / correlations[0]; c > 0.05 {
		p.Noise.Correlation = -g.spacing / math.Log(min(c, 0.99))
	}
	source := "estimated"
	if o.Noise > 0 {
		source, p.Noise = "given", Noise{SD: o.Noise}
	}
	how := "independent from point to point"
	if p.Noise.Correlation > 0 {
		how = fmt.Sprintf("correlated over %.0f m", p.Noise.Correlation)
	}
	wavelength = min(wavelength, g.end-g.start)
	p.Smoothing = Smoothing{wavelength, fmt.Sprintf(
		"smoothing: noise of %.2g m (%s), %s; undulations shorter than %.0f m lose half or more", p.Noise.SD, source, how, wavelength)}
	if wavelength > hiding && o.Smoothing == 0 {
		p.warn(fmt.Sprintf("noise of %.2g m hides undulations as long as %.0f m: the ascent may be off by more than is said", p.Noise.SD, wavelength))
	}
}

// draw puts the heights: the best estimate, with as much of the way to the closer curve
// as makes it climb and fall what the ground does in the mean, or all of the way.
func (p *Profile) draw(g *nodes, best ground, closer []float64, drift held) {
	climb := best.climb(g.trend, g.unseen())
	n := len(closer) - 1
	mix := mixture{best.height, closer, g.trend}
	want := 2*climb.mean - (best.height[n] - best.height[0] + float64(n)*g.trend)
	share := mix.thatMoves(want)
	z := make([]float64, n+1)
	for i := range z {
		z[i] = mix.at(i, share) + g.base + float64(i)*g.trend
	}
	p.Distance, p.Elevation = g.grid(), between(z, g.stride)
	p.Ascent, p.Descent = climbOf(z)
	noise := climb.variance + mix.doubt(want)
	p.AscentSD = math.Sqrt(noise + drift.left(climb.form, g.start, g.spacing))
	// The descent is the ascent less the net rise.
	climb.form[0]++
	climb.form[n]--
	p.DescentSD = math.Sqrt(noise + drift.left(climb.form, g.start, g.spacing))
}

// A mixture is of two curves on a trend, by the share of the second.
type mixture struct {
	one, other []float64
	trend      float64
}

func (m mixture) at(i int, share float64) float64 {
	return m.one[i] + share*(m.other[i]-m.one[i])
}

// upAndDown is the ascent plus the descent.
func (m mixture) upAndDown(share float64) (sum float64) {
	last := m.at(0, share)
	for i := 1; i < len(m.one); i++ {
		next := m.at(i, share)
		sum += math.Abs(next - last + m.trend)
		last = next
	}
	return sum
}

// doubt is the variance of an ascent that stands for what was chosen and supposed: 0.6 of
// what following twice as closely adds to the best estimate, and half of what the mean
// adds to it, which is what climbs unseen and was put where the ground may be flat. An
// ascent changes by half of the up and down. [Our own: by these the profiles by chance of
// the tests are covered, see Profile.AscentSD]
func (m mixture) doubt(want float64) float64 {
	first := m.upAndDown(0)
	closer, unseen := 0.6*(m.upAndDown(1)-first)/2, 0.5*max(want-first, 0)/2
	return closer*closer + unseen*unseen
}

// thatMoves is the share from 0 to 1 that goes up and down as much as is wanted, by
// halving: to 2⁻¹².
func (m mixture) thatMoves(want float64) float64 {
	low, high := 0.0, 1.0
	for range 12 {
		if middle := (low + high) / 2; m.upAndDown(middle) < want {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// between puts points evenly between the nodes.
func between(z []float64, stride int) []float64 {
	out := make([]float64, 0, (len(z)-1)*stride+1)
	for i := 1; i < len(z); i++ {
		for k := range stride {
			out = append(out, z[i-1]+float64(k)/float64(stride)*(z[i]-z[i-1]))
		}
	}
	return append(out, z[len(z)-1])
}
