package elevation

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// A drawing is a profile drawn by chance from a family. The families are of other making
// than the five profiles of madeProfiles, which constants here were chosen on.
type drawing struct {
	made
	family string
}

// families make ground by chance, of a length in metres. All but the exactly flat parts
// of terraces undulate by ±3 % over 200 to 400 m, somewhere or everywhere.
var families = []struct {
	name string
	draw func(r *rand.Rand, length float64) []part
}{
	{"sines", sines},
	{"bumps", bumps},
	{"corners", corners},
	{terraced, terraces},
	{"one climb", oneClimb},
	{"mountain", mountain},
	{"many waves", manyWaves},
	{"stretches", stretches},
}

const terraced = "terraces"

// drawings returns count profiles of 20 to 50 km, of each family in turn.
func drawings(count int, seed uint64) []drawing {
	var d []drawing
	for i := range count {
		f := families[i%len(families)]
		r := rand.New(rand.NewPCG(uint64(i), seed))
		length := 1000 * math.Round(20+30*r.Float64())
		d = append(d, drawing{sumOf(fmt.Sprintf("%s %d", f.name, i/len(families)+1), length, f.draw(r, length)), f.name})
	}
	return d
}

// A part of a profile: height in metres and gradient, both in closed form.
type part interface {
	height(x float64) float64
	gradient(x float64) float64
}

// sumOf adds parts up, the lowest point at 50 m.
func sumOf(name string, length float64, parts []part) made {
	add := func(of func(part, float64) float64) func(float64) float64 {
		return func(x float64) (s float64) {
			for _, p := range parts {
				s += of(p, x)
			}
			return s
		}
	}
	height := add(part.height)
	low := math.Inf(1)
	for x := 0.0; x <= length; x += 10 {
		low = min(low, height(x))
	}
	return made{name, length, func(x float64) float64 { return height(x) - low + 50 }, add(part.gradient)}
}

func evenlyFrom(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

// lengthFrom draws evenly on a logarithmic scale.
func lengthFrom(r *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, r.Float64())
}

func either(r *rand.Rand) float64 { return float64(1 - 2*r.IntN(2)) }

func undulation(r *rand.Rand) wave {
	return wave{0.03, evenlyFrom(r, 200, 400), 2 * math.Pi * r.Float64()}
}

// A bump is a Gaussian hill or hollow.
type bump struct{ top, place, width float64 }

func (b bump) height(x float64) float64 {
	t := (x - b.place) / b.width
	return b.top * math.Exp(-t*t/2)
}

func (b bump) gradient(x float64) float64 { return -(x - b.place) / (b.width * b.width) * b.height(x) }

// A bend is a change of gradient, rounded over some widths.
type bend struct{ by, place, width float64 }

func (b bend) height(x float64) float64 {
	t := (x - b.place) / b.width
	// log(1 + e^2t)/2, without overflow
	return b.by * b.width * (math.Max(t, 0) + math.Log1p(math.Exp(-2*math.Abs(t)))/2)
}

func (b bend) gradient(x float64) float64 { return b.by * (1 + math.Tanh((x-b.place)/b.width)) / 2 }

// A rise goes up by top from one place to another and is exactly flat elsewhere; its
// gradient is 1 − cos.
type rise struct{ top, from, to float64 }

func (s rise) at(x float64) float64 { return min(max((x-s.from)/(s.to-s.from), 0), 1) }

func (s rise) height(x float64) float64 {
	t := s.at(x)
	return s.top * (t - math.Sin(2*math.Pi*t)/(2*math.Pi))
}

func (s rise) gradient(x float64) float64 {
	return s.top / (s.to - s.from) * (1 - math.Cos(2*math.Pi*s.at(x)))
}

// A train of waves swells and ends within a stretch, and is nothing elsewhere.
type train struct {
	wave
	from, to float64
}

func (t train) height(x float64) float64 {
	if x <= t.from || x >= t.to {
		return 0
	}
	s := math.Sin(math.Pi * (x - t.from) / (t.to - t.from))
	return s * s * t.wave.height(x)
}

func (t train) gradient(x float64) float64 {
	if x <= t.from || x >= t.to {
		return 0
	}
	a := math.Pi / (t.to - t.from)
	s, c := math.Sincos(a * (x - t.from))
	return s*s*t.wave.gradient(x) + 2*a*s*c*t.wave.height(x)
}

// sines: two to five waves of 500 m to 10 km and an undulation.
func sines(r *rand.Rand, _ float64) []part {
	p := []part{undulation(r)}
	for range 2 + r.IntN(4) {
		p = append(p, wave{evenlyFrom(r, 0.01, 0.06), lengthFrom(r, 500, 10_000), 2 * math.Pi * r.Float64()})
	}
	return p
}

// bumps: hills of 300 m to 3 km across, on rolling ground.
func bumps(r *rand.Rand, length float64) []part {
	p := []part{undulation(r)}
	for range int(length / 1500) {
		w := lengthFrom(r, 150, 1500)
		p = append(p, bump{either(r) * w * evenlyFrom(r, 0.05, 0.2), length * r.Float64(), w})
	}
	return p
}

// corners: straight pieces of 0.4 to 4 km, rounded over 50 to 200 m.
func corners(r *rand.Rand, length float64) []part {
	p := []part{undulation(r)}
	gradient := 0.0
	for x := 0.0; x < length; x += lengthFrom(r, 400, 4000) {
		next := -math.Copysign(evenlyFrom(r, 0, 0.12), gradient)
		if r.IntN(4) == 0 {
			next = -next
		}
		p = append(p, bend{next - gradient, x, evenlyFrom(r, 25, 100)})
		gradient = next
	}
	return p
}

// terraces: climbs and descents between parts that are exactly flat, and undulations on
// some of those.
func terraces(r *rand.Rand, length float64) []part {
	var p []part
	for x := 0.0; x < length; {
		flat, slope := lengthFrom(r, 500, 4000), lengthFrom(r, 500, 3000)
		if r.IntN(2) == 0 {
			p = append(p, train{undulation(r), x, x + flat})
		}
		p = append(p, rise{either(r) * slope * evenlyFrom(r, 0.03, 0.12), x + flat, x + flat + slope})
		x += flat + slope
	}
	return p
}

// one climb: up all the way but for a level start and end, with an undulation.
func oneClimb(r *rand.Rand, length float64) []part {
	from := length * evenlyFrom(r, 0.05, 0.4)
	to := length * evenlyFrom(r, 0.6, 0.95)
	return []part{undulation(r), rise{(to - from) * evenlyFrom(r, 0.02, 0.06), from, to}}
}

// mountain: a few passes with slopes of 6 to 15 % and undulations of two lengths.
func mountain(r *rand.Rand, length float64) []part {
	p := []part{wave{0.02, evenlyFrom(r, 200, 400), 0}, wave{0.01, evenlyFrom(r, 200, 400), 1}}
	n := 2 + r.IntN(4)
	for i := range 2 * n {
		from, to := length*float64(i)/float64(2*n), length*float64(i+1)/float64(2*n)
		top := evenlyFrom(r, 0.06, 0.15) * (to - from)
		if i%2 == 1 {
			top = -top
		}
		p = append(p, rise{top / 1.5, from, to})
	}
	return p
}

// many waves: forty waves by chance from 200 m to 10 km, near to Gaussian ground.
func manyWaves(r *rand.Rand, _ float64) []part {
	p := []part{wave{0.015, evenlyFrom(r, 200, 400), 0}, wave{0.015, evenlyFrom(r, 200, 400), 2}}
	for range 38 {
		l := lengthFrom(r, 200, 10_000)
		p = append(p, wave{0.012 * math.Pow(l/2000, 0.25), l, 2 * math.Pi * r.Float64()})
	}
	return p
}

// stretches: long waves throughout, undulations on a half of the way only.
func stretches(r *rand.Rand, length float64) []part {
	p := []part{wave{0.05, lengthFrom(r, 3000, 10_000), 2 * math.Pi * r.Float64()}}
	for x := 0.0; x < length; {
		long := lengthFrom(r, 1000, 5000)
		if r.IntN(2) == 0 {
			u := undulation(r)
			u.size *= 1.3 // the train swells to it
			p = append(p, train{u, x, x + long})
		}
		x += long
	}
	return p
}
