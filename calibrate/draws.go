package calibrate

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"isoeffort.example/effort"
)

// A Draw is one runner of those who the results and the prior leave possible, on one day.
type Draw struct {
	Athlete effort.Athlete
	Tilt    float64 // the pacing tilt
	Noise   float64 // scatter of races, as Options.Noise
	Error   float64 // the logarithm of the factor on the day's time, drawn from that scatter
}

// Draws returns n draws about the mode, each from its own generator: in the unknowns of the
// prior normal, stretched by √(ν/χ²) together with the noise, ν being Freedom. That is the
// posterior where it is near normal, and the same draws for the same seed. Where Warnings
// say that it is not, Sample draws from the posterior itself.
func (e *Estimate) Draws(seed uint64, n int) []Draw {
	root, freedom := e.p.root(), e.Freedom()
	out := make([]Draw, n)
	for i := range out {
		rng := rand.New(rand.NewPCG(seed, uint64(i)))
		stretch := math.Sqrt(freedom / distuv.ChiSquared{K: freedom, Src: rng}.Rand())
		z := e.p.scattered(root, stretch, rng)
		out[i] = e.p.draw(z, e.p.scale*stretch, rng)
	}
	return out
}

// scattered is a point about the mode.
func (p *problem) scattered(root *mat.TriDense, stretch float64, rng *rand.Rand) []float64 {
	n := p.dims()
	x := make([]float64, n)
	for i := range x {
		x[i] = rng.NormFloat64()
	}
	z := append([]float64(nil), p.z...)
	for i := range z {
		sum := 0.0
		for j := range i + 1 {
			sum += float64(root.At(i, j) * x[j])
		}
		z[i] += stretch * sum
	}
	return z
}

// draw is the runner at z with races of a scale, and an error for the day.
func (p *problem) draw(z []float64, scale float64, rng *rand.Rand) Draw {
	a, _, lean := p.athlete(z)
	if !p.tilted {
		lean = math.Max(-0.5, math.Min(0.5, p.o.Tilt.Mean+p.o.Tilt.SD*rng.NormFloat64()))
	}
	long := rng.NormFloat64()
	if !math.IsInf(p.o.Tails, 1) {
		long = distuv.StudentsT{Sigma: 1, Nu: p.o.Tails, Src: rng}.Rand()
	}
	return Draw{a, lean, scale * p.o.widen, math.Max(-2, math.Min(2, scale*long))}
}
