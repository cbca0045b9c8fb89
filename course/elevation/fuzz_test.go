package elevation

import (
	"encoding/binary"
	"math"
	"slices"
	"testing"
)

// FuzzClean cleans whatever bytes make: of each four, the first two are a step in
// decimetres and the others a height in decimetres, with some that mean NaN and the like.
// It must not panic, and what it returns must hold together.
func FuzzClean(f *testing.F) {
	m := madeProfiles()[2]
	for _, fault := range []fault{{noise: 2, spikes: 2}, {noise: 0.2, apart: 40}, {posts: 2}} {
		x, z := m.record(fault, 1)
		var data []byte
		for i := 1; i < 120; i++ {
			data = binary.BigEndian.AppendUint16(data, uint16(10*(x[i]-x[i-1])))
			data = binary.BigEndian.AppendUint16(data, uint16(int16(10*z[i])))
		}
		f.Add(data, 0.0, 0.0, 1000.0)
	}
	f.Add([]byte{0, 1, 2, 3, 0, 1, 2, 3}, 1.0, -1.0, math.NaN())
	f.Fuzz(func(t *testing.T, data []byte, noise, smoothing, known float64) {
		x, z := fuzzed(data)
		given := slices.Clone(z)
		o := Options{Noise: noise, Smoothing: smoothing}
		if known != 0 {
			o.Known = []Height{{Distance: known, Elevation: 100}, {Distance: known / 2, Elevation: 200, SD: 1}}
		}
		p, err := Clean(x, z, o)
		for i, v := range z {
			if v != given[i] && !(math.IsNaN(v) && math.IsNaN(given[i])) {
				t.Fatalf("height %d was changed", i)
			}
		}
		if err != nil {
			return
		}
		p.check(t, x)
	})
}

// check holds a profile against what its doc comment says.
func (p *Profile) check(t *testing.T, x []float64) {
	t.Helper()
	n := len(p.Distance)
	if n < 2 || len(p.Elevation) != n || p.Distance[0] != x[0] || p.Distance[n-1] != x[len(x)-1] {
		t.Fatalf("%d distances from %g to %g m, %d heights", n, p.Distance[0], p.Distance[n-1], len(p.Elevation))
	}
	for i, z := range p.Elevation {
		if math.IsNaN(z-z) || i > 0 && !(p.Distance[i] > p.Distance[i-1]) {
			t.Fatalf("point %d: %g m at %g m", i, z, p.Distance[i])
		}
	}
	net := p.Elevation[n-1] - p.Elevation[0]
	if math.Abs(p.Ascent-p.Descent-net) > 1e-6*(1+p.Ascent) || p.Ascent < 0 || p.Descent < 0 || p.AscentSD < 0 {
		t.Fatalf("ascent %g ± %g, descent %g, net %g m", p.Ascent, p.AscentSD, p.Descent, net)
	}
	for _, c := range p.Changes {
		if c.Text == "" || !(c.From <= c.To) {
			t.Fatalf("%+v", c)
		}
	}
	if p.Smoothing.Text == "" {
		t.Fatal("nothing said of smoothing")
	}
}

func fuzzed(data []byte) (x, z []float64) {
	at := 0.0
	for ; len(data) >= 4; data = data[4:] {
		at += float64(binary.BigEndian.Uint16(data)) / 10
		height := float64(int16(binary.BigEndian.Uint16(data[2:]))) / 10
		switch height {
		case -1:
			height = math.NaN()
		case -1.1:
			height = math.Inf(1)
		case -1.2:
			height = -9999
		}
		x, z = append(x, at), append(z, height)
	}
	return x, z
}
