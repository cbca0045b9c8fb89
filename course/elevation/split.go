package elevation

import (
	"math"
	"slices"
)

// A split is a periodogram told apart into ground and noise. For each band it has the
// logarithms of the spectrum of the ground's rises and of the spectrum of the noise of
// the heights; the periodogram is expected to show
//
//	T = exp(ground) + u (exp(noise) + rounding),  u = 2 − 2 cos ω
//
// u being what taking differences does to noise.
type split struct {
	periodogram
	u        []float64
	spacing  float64 // m from node to node
	rounding float64 // variance of rounding, m²
	given    float64 // variance of noise that is given and not estimated, m²; 0: none
	shape    shape
	wander   float64 // of the ground's spectrum, see expectations

	ground, noise []float64

	// What cost last computed of each band: the shares of the two in the total.
	share [][2]float64
	total []float64

	expected  []expectation
	step      []float64
	curvature band
}

// newSplit tells a periodogram apart, by the shape of noise and then the wander of the
// ground that have the most evidence.
func newSplit(g periodogram, spacing, rounding, given float64) *split {
	best := startSplit(g, spacing, rounding, given)
	least := best.fit() // less the price of the shape, here 0
	try := func(shape shape, wander float64) {
		s := startSplit(g, spacing, rounding, given)
		s.shape, s.wander = shape, wander
		if shape == best.shape {
			copy(s.ground, best.ground)
			copy(s.noise, best.noise)
		} else {
			s.start()
		}
		if cost := s.fit() + shape.price(); cost < least {
			best, least = s, cost
		}
	}
	shapes := func() {
		for _, shape := range shapes {
			if given == 0 && shape != best.shape {
				try(shape, best.wander)
			}
		}
	}
	shapes()
	for _, wander := range wanders[1:] {
		try(best.shape, wander)
	}
	if best.wander != wanders[0] {
		shapes()
	}
	best.minimise(exact)
	return best
}

func startSplit(g periodogram, spacing, rounding, given float64) *split {
	n := len(g.omega)
	s := &split{
		periodogram: g, spacing: spacing, rounding: rounding, given: given, wander: wanders[0],
		u: make([]float64, n), ground: make([]float64, n), noise: make([]float64, n),
		step: make([]float64, 2*n), curvature: newBand(2*n, 2), share: make([][2]float64, n), total: make([]float64, n),
	}
	for j, omega := range g.omega {
		s.u[j] = u(omega)
	}
	s.start()
	return s
}

// u is what taking differences does to a spectrum.
func u(omega float64) float64 { return 2 - 2*math.Cos(omega) }

func (s *split) wavelength(j int) float64 { return 2 * math.Pi / s.omega[j] * s.spacing }

// tiny is a variance in m² below which nothing is told apart: (0.1 mm)².
const tiny = 1e-8

// start takes short waves for noise of the split's shape and the rest for ground.
func (s *split) start() {
	level, count := 0.0, 0.0
	last := len(s.omega) - 1
	for j, p := range s.power {
		if s.wavelength(j) < noiseSeen || j == last {
			level += s.count[j] * (math.Log(max(p, tiny)/s.u[j]) - s.shape.log(s.omega[j]/s.spacing))
			count += s.count[j]
		}
	}
	level /= count
	if s.given > 0 {
		level = math.Log(s.given)
	}
	for j, p := range s.power {
		s.noise[j] = max(level+s.shape.log(s.omega[j]/s.spacing), math.Log(tiny))
		s.ground[j] = math.Log(max(p-s.u[j]*math.Exp(s.noise[j]), 0.05*p, tiny))
	}
}

// cost is minus the logarithm of Whittle's likelihood of the periodogram (Whittle 1953,
// Ark Mat 2:423, from memory) and of what is expected beforehand.
func (s *split) cost() float64 {
	sum := 0.0
	for j, n := range s.count {
		g, e := math.Exp(s.ground[j]), s.u[j]*math.Exp(s.noise[j])
		total := g + e + s.u[j]*s.rounding
		s.total[j], s.share[j] = total, [2]float64{g / total, e / total}
		sum += n * (math.Log(total) + s.power[j]/total)
	}
	for _, e := range s.expected {
		off, _ := s.off(e)
		sum += e.weight * off * off / 2
	}
	off := s.ground[0] - s.longest()
	return sum + longestWeight*off*off/2
}

// fit lowers the cost to its least and returns minus the logarithm of the evidence for
// shape and wander, by Laplace's method.
func (s *split) fit() float64 {
	s.expect()
	cost := s.minimise(coarse)
	s.curve(true)
	with := s.curvature.logDeterminant()
	s.curve(false)
	return cost + (with-s.curvature.logDeterminant())/2
}

const (
	mostSteps   = 200
	longestStep = 2    // of a logarithm
	coarse      = 0.02 // decrease of the cost that is not worth a step, to compare
	exact       = 1e-5 // and to use
)

// minimise lowers the cost by Fisher's scoring, the steps halved while they do not help.
func (s *split) minimise(enough float64) float64 {
	cost := s.cost()
	for range mostSteps {
		s.curve(true)
		if !s.curvature.factorise() {
			return cost
		}
		s.curvature.solve(s.step)
		size, longest := 1.0, 0.0
		for _, v := range s.step {
			longest = max(longest, math.Abs(v))
		}
		if longest > longestStep {
			size = longestStep / longest
		}
		s.move(size)
		now := s.cost()
		for ; !(now < cost) && size > 1e-6; now = s.cost() {
			s.move(-size / 2)
			size /= 2
		}
		if !(now < cost) {
			s.move(-size)
			return s.cost()
		}
		before := cost
		if cost = now; before-cost < enough {
			return cost
		}
	}
	return cost
}

func (s *split) move(size float64) {
	for j := range s.ground {
		s.ground[j] += size * s.step[2*j]
		if s.given == 0 {
			s.noise[j] += size * s.step[2*j+1]
		}
	}
}

// curve puts the expected curvature of the cost, with the data's part or without, and
// minus the gradient into curvature and step, by what cost last computed.
func (s *split) curve(data bool) {
	clear(s.curvature.at)
	clear(s.step)
	for j, count := range s.count {
		share := s.share[j]
		if s.given > 0 {
			share[1] = 0
		}
		// What neither data nor expectations hold is held by a ridge.
		s.curvature.row(2 * j)[0] += 1e-6
		s.curvature.row(2*j + 1)[0] += 1e-6
		if data {
			s.curvature.addSquare(2*j, share[:], count)
		}
		for k, v := range share {
			s.step[2*j+k] += count * v * (s.power[j]/s.total[j] - 1)
		}
	}
	s.curvature.row(0)[0] += longestWeight
	s.step[0] -= longestWeight * (s.ground[0] - s.longest())
	for _, e := range s.expected {
		off, at := s.off(e)
		s.curvature.addSquare(at, []float64{-1, 0, 1}, e.weight)
		s.step[at] += e.weight * off
		s.step[at+2] -= e.weight * off
	}
}

// bandFlat is how much steeper than straight the way from band to band is: a band's value
// holds over three quarters of its width. A wave that stands out has its power anywhere in
// its band; read off straight between the bands' middles it would be found too small, and
// be taken for noise in part, unless it lay in the middle. [Our own; of 1, 4 and 1000 it
// erred least on profiles by chance]
const bandFlat = 4

// spectra returns the spectra of the ground's rises and of the noise of the heights at
// frequencies in radians per node: level in the bands with straight ways between them on
// logarithmic scales, and constant beyond the outermost.
func (s *split) spectra() (ground, noise func(omega float64) float64) {
	read := func(v []float64) func(float64) float64 {
		return func(omega float64) float64 {
			j, _ := slices.BinarySearch(s.omega, omega)
			if j == 0 || j == len(s.omega) {
				return math.Exp(v[min(j, len(v)-1)])
			}
			share := math.Log(omega/s.omega[j-1]) / math.Log(s.omega[j]/s.omega[j-1])
			share = min(max((share-0.5)*bandFlat+0.5, 0), 1)
			return math.Exp(v[j-1] + share*(v[j]-v[j-1]))
		}
	}
	raw := read(s.noise)
	return read(s.ground), func(omega float64) float64 { return raw(omega) + s.rounding }
}
