package course

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Every choice, the slow way: the most landmarks that ascend strictly in their order.
func mostInOrder(ways [][]float64, chosen []float64) int {
	best := 0
	var walk func(i, count int, last float64)
	walk = func(i, count int, last float64) {
		best = max(best, count)
		if i == len(ways) {
			return
		}
		walk(i+1, count, last)
		for _, way := range ways[i] {
			if chosen != nil && way != chosen[i] {
				continue
			}
			if way > last {
				walk(i+1, count+1, way)
			}
		}
	}
	walk(0, 0, math.Inf(-1))
	return best
}

func TestChoosePassesByBruteForce(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(15, 16))
	for k := range 1000 {
		sightings := make([]Sighting, 1+random.IntN(6))
		ways := make([][]float64, len(sightings))
		for i := range sightings {
			s := &sightings[i]
			for range 1 + random.IntN(3) {
				s.Passes = append(s.Passes, float64(random.IntN(20)))
			}
			slices.Sort(s.Passes)
			s.Passes = slices.Compact(s.Passes)
			ways[i] = s.Passes
			if random.IntN(3) == 0 {
				s.Stated = 20 * random.Float64()
				off := func(a, b float64) int { return int(math.Copysign(1, math.Abs(a-s.Stated)-math.Abs(b-s.Stated))) }
				ways[i] = []float64{slices.MinFunc(s.Passes, off)}
			}
		}
		got := ChoosePasses(sightings)
		for i := range got {
			if !slices.Contains(ways[i], got[i]) {
				t.Fatalf("%d: %g is no pass of %+v", k, got[i], sightings[i])
			}
		}
		if in, most := mostInOrder(ways, got), mostInOrder(ways, nil); in != most {
			t.Fatalf("%d: %v has %d of %d in order: %+v", k, got, in, most, sightings)
		}
	}
}

func TestChoosePasses(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		name      string
		landmarks []Sighting
		want      []float64
	}{
		{"out and back by order", []Sighting{{Passes: []float64{2, 8}}, {Passes: []float64{5}}, {Passes: []float64{3, 7}}}, []float64{2, 5, 7}},
		{"as early as can be", []Sighting{{Passes: []float64{2, 8}}, {Passes: []float64{3, 7}}}, []float64{2, 3}},
		{"the way back is stated", []Sighting{{Passes: []float64{2, 8}, Stated: 7.5}, {Passes: []float64{1, 9}}}, []float64{8, 9}},
		{"stated halfway", []Sighting{{Passes: []float64{2, 8}, Stated: 5}}, []float64{2}},
		{"stated at the start says nothing", []Sighting{{Passes: []float64{4}}, {Passes: []float64{0, 10}}}, []float64{4, 10}},
		{"stated NaN says nothing", []Sighting{{Passes: []float64{0, 10}, Stated: math.NaN()}}, []float64{0}},
		{"only stated", []Sighting{{Stated: 3}}, []float64{3}},
		{"none", nil, []float64{}},
	} {
		if got := ChoosePasses(tt.landmarks); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
	if got := ChoosePasses([]Sighting{{}}); len(got) != 1 || !math.IsNaN(got[0]) {
		t.Errorf("neither passes nor stated: %v", got)
	}
}
