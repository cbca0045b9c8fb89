package elevation

import (
	"math"
	"math/rand/v2"
)

// A made profile is analytic: heights and gradient are sums of waves that are known
// exactly, so that its ascent is known to any accuracy.
type made struct {
	name     string
	length   float64 // m
	height   func(x float64) float64
	gradient func(x float64) float64
}

// A wave has a gradient of size cos(2π x/length + phase).
type wave struct{ size, length, phase float64 }

func (w wave) height(x float64) float64 {
	k := 2 * math.Pi / w.length
	return w.size / k * math.Sin(k*x+w.phase)
}

func (w wave) gradient(x float64) float64 {
	return w.size * math.Cos(2*math.Pi/w.length*x+w.phase)
}

func waves(name string, length float64, w ...wave) made {
	sum := func(f func(wave, float64) float64) func(float64) float64 {
		return func(x float64) (s float64) {
			for _, w := range w {
				s += f(w, x)
			}
			return s
		}
	}
	return made{name, length, sum(wave.height), sum(wave.gradient)}
}

// The five profiles of the noise test. All have undulations of ±3 % and 200 to 400 m.
func madeProfiles() []made {
	mountain := made{
		name: "one mountain", length: 30_000,
		// 1200 m up and down again, rounded at the top over some 600 m, with undulations
		// whose length swings between 240 and 360 m: their height is a sine of a phase.
		height: func(x float64) float64 {
			return 1500 - 60*math.Log(math.Cosh((x-15_000)/600))*0.8 + 1.35*math.Sin(swing(x))
		},
		gradient: func(x float64) float64 {
			return -0.08*math.Tanh((x-15_000)/600) + 1.35*swingRate(x)*math.Cos(swing(x))
		},
	}
	return []made{
		waves("rolling road", 42_000, wave{0.05, 6000, 0}, wave{0.03, 300, 1}),
		mountain,
		waves("short hills", 25_000, wave{0.10, 2500, 0}, wave{0.015, 230, 0}, wave{0.015, 250, 2}),
		waves("all lengths", 50_000, wave{0.04, 20_000, 0}, wave{0.04, 7000, 1}, wave{0.04, 2300, 2}, wave{0.03, 900, 3}, wave{0.03, 310, 0}),
		waves("valley", 35_000, wave{0.035, 70_000, 0}, wave{0.04, 4000, 1}, wave{0.03, 400, 0}),
	}
}

// flatProfiles climb so little beside the noise that the bars are out of reach.
func flatProfiles() []made {
	return []made{
		waves("flat, undulating", 20_000, wave{0.03, 300, 0}),
		waves("flat, two beats", 30_000, wave{0.015, 340, 0}, wave{0.015, 360, 1}, wave{0.01, 3000, 0}),
	}
}

func swing(x float64) float64 {
	return 2*math.Pi/288*x + 5000*(1.0/240-1.0/360)/2*math.Sin(2*math.Pi*x/5000)
}

func swingRate(x float64) float64 {
	return 2*math.Pi/288 + 2*math.Pi*(1.0/240-1.0/360)/2*math.Cos(2*math.Pi*x/5000)
}

// ascent integrates the positive gradient by Simpson's rule over half metres.
func (m made) ascent() float64 {
	const step = 0.5
	n := int(m.length / step)
	sum := 0.0
	for i := range n {
		x := float64(i) * step
		up := func(x float64) float64 { return max(0, m.gradient(x)) }
		sum += step / 6 * (up(x) + 4*up(x+step/2) + up(x+step))
	}
	return sum
}

// A fault is what a recording adds to the ground.
type fault struct {
	apart    float64 // m from one height to the next; 0: 10
	noise    float64 // SD, m
	posts    float64 // SD in m of the errors of a terrain model's posts, 30 m apart
	drift    float64 // m, the size of a slow swing, on top of a trend of twice as much
	spikes   float64 // per km, of 15 to 80 m
	rounding float64 // m
}

// record returns distances and heights of a recording.
func (m made) record(f fault, seed uint64) (x, z []float64) {
	r := rand.New(rand.NewPCG(seed, 77))
	if f.apart == 0 {
		f.apart = 10
	}
	n := int(math.Round(m.length/f.apart)) + 1
	x, z = make([]float64, n), make([]float64, n)
	model := newPosts(f.posts, r)
	start := r.Float64() * 2 * math.Pi
	for i := range x {
		x[i] = m.length * float64(i) / float64(n-1)
		z[i] = m.height(x[i]) + f.noise*r.NormFloat64() + model.error(x[i])
		z[i] += f.drift * (math.Sin(2*math.Pi*x[i]/18_000+start) + 2*x[i]/m.length)
	}
	for range int(f.spikes * m.length / 1000) {
		z[r.IntN(n)] += (15 + 65*r.Float64()) * float64(1-2*r.IntN(2))
	}
	if f.rounding > 0 {
		for i := range z {
			z[i] = f.rounding * math.Round(z[i]/f.rounding)
		}
	}
	return x, z
}

// posts are the errors of a terrain model, bilinear between posts 30 m apart, along a
// winding path.
type posts struct {
	sd      float64
	r       *rand.Rand
	at      map[[2]int]float64
	last    float64
	east    float64
	north   float64
	heading float64
	turn    float64
}

func newPosts(sd float64, r *rand.Rand) *posts {
	return &posts{sd: sd, r: r, at: map[[2]int]float64{}, heading: 0.4}
}

func (p *posts) post(a, b int) float64 {
	v, ok := p.at[[2]int{a, b}]
	if !ok {
		v = p.sd * p.r.NormFloat64()
		p.at[[2]int{a, b}] = v
	}
	return v
}

// error is the model's at a distance, asked for in ascending order.
func (p *posts) error(x float64) float64 {
	if p.sd == 0 {
		return 0
	}
	step := x - p.last
	p.last = x
	p.turn = 0.95*p.turn + 0.03*p.r.NormFloat64()
	p.heading += p.turn
	p.east += step * math.Cos(p.heading)
	p.north += step * math.Sin(p.heading)
	a, b := math.Floor(p.east/30), math.Floor(p.north/30)
	s, t := p.east/30-a, p.north/30-b
	i, j := int(a), int(b)
	return (1-s)*(1-t)*p.post(i, j) + s*(1-t)*p.post(i+1, j) + (1-s)*t*p.post(i, j+1) + s*t*p.post(i+1, j+1)
}

// known are known heights of the ground every 7 km or so, off by SD 1 m.
func (m made) known(seed uint64) []Height {
	r := rand.New(rand.NewPCG(seed, 78))
	var h []Height
	n := int(m.length/7000) + 1
	for i := range n + 1 {
		x := m.length * float64(i) / float64(n)
		h = append(h, Height{x, m.height(x) + r.NormFloat64(), 1})
	}
	return h
}

// gradientError is the RMS error in percentage points of the gradient over 100 m.
func (m made) gradientError(p *Profile) float64 {
	step := p.Distance[1] - p.Distance[0]
	reach := int(math.Round(100 / step))
	sum, n := 0.0, 0.0
	for i := reach; i < len(p.Distance); i++ {
		a, b := p.Distance[i-reach], p.Distance[i]
		off := (p.Elevation[i] - p.Elevation[i-reach] - m.height(b) + m.height(a)) / (b - a)
		sum += off * off
		n++
	}
	return 100 * math.Sqrt(sum/n)
}
