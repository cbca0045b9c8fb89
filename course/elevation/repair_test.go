package elevation

import (
	"math"
	"strings"
	"testing"
)

// faulty records 20 km of hills and lets a function spoil the heights.
func faulty(t *testing.T, noise float64, spoil func(x, z []float64)) (made, *Profile) {
	t.Helper()
	m := madeProfiles()[2]
	m.length = 20_000
	bare := m.height
	m.height = func(x float64) float64 { return 300 + bare(x) }
	x, z := m.record(fault{noise: noise, rounding: 0.1}, 5)
	spoil(x, z)
	return m, clean(t, x, z, Options{})
}

// farthest is how far heights are from the ground at most.
func (m made) farthest(p *Profile) float64 {
	off := 0.0
	for i, x := range p.Distance {
		off = max(off, math.Abs(p.Elevation[i]-m.height(x)))
	}
	return off
}

func TestRepairs(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		name     string
		noise    float64
		spoil    func(x, z []float64)
		from, to float64
		kind     Kind
		shift    float64 // to 1.5 m
		farthest float64 // from the ground: 4 SDs of the noise, and what a gap hides
	}{
		{"one spike", 0.5, func(_, z []float64) { z[700] += 60 }, 7000, 7000, Spike, 0, 2},
		{"a spike at the start", 0.5, func(_, z []float64) { z[0] -= 80 }, 0, 0, Spike, 0, 2},
		{"a spike at the end", 0.5, func(_, z []float64) { z[len(z)-1] += 80 }, 20_000, 20_000, Spike, 0, 2},
		{"a code for no height", 0.5, func(_, z []float64) { z[700] = -9999 }, 7000, 7000, Void, 0, 2},
		{"zeros at the start", 0.5, func(_, z []float64) { clear(z[:8]) }, 0, 70, Zeros, 0, 8},
		{"zeros inside", 0.5, func(_, z []float64) { clear(z[900:905]) }, 9000, 9040, Zeros, 0, 3},
		{"a short stretch displaced", 0.5, func(_, z []float64) {
			for i := 600; i < 605; i++ {
				z[i] -= 40
			}
		}, 6000, 6040, Displaced, 0, 3},
		{"a long stretch displaced", 0.5, func(_, z []float64) {
			for i := 600; i < 750; i++ {
				z[i] += 40
			}
		}, 6000, 7490, Displaced, -40, 2.5},
		{"a step up late", 0.5, func(_, z []float64) {
			for i := 1500; i < len(z); i++ {
				z[i] += 35
			}
		}, 15_000, 20_000, Step, -35, 3},
		{"a step early, the start shifted", 0.5, func(_, z []float64) {
			for i := range 400 {
				z[i] -= 35
			}
		}, 0, 3990, Step, 35, 3},
		{"a gap", 0.5, func(_, z []float64) {
			for i := 300; i < 310; i++ {
				z[i] = math.NaN()
			}
		}, 3000, 3090, Gap, 0, 2},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			m, p := faulty(t, tt.noise, tt.spoil)
			if len(p.Changes) != 1 {
				t.Fatalf("%d changes: %v", len(p.Changes), p.Changes)
			}
			c := p.Changes[0]
			if c.From != tt.from || c.To != tt.to || c.Kind != tt.kind || math.Abs(c.Shift-tt.shift) > 1.5 {
				t.Errorf("%v from %g to %g by %.1f m, want %v from %g to %g by %g m", c.Kind, c.From, c.To, c.Shift, tt.kind, tt.from, tt.to, tt.shift)
			}
			if c.Text == "" || math.Abs(c.New-p.at(c.From)) > 1e-9 {
				t.Errorf("%+v, height now %g", c, p.at(c.From))
			}
			if off := m.farthest(p); off > tt.farthest {
				t.Errorf("%.1f m off the ground, want up to %g", off, tt.farthest)
			}
		})
	}
}

// Sound ground with noise of its own is left alone: no change in 600 km of it but for
// what chance makes of Gaussian noise, one height in two million beyond 5 SD.
func TestSoundGroundIsLeftAlone(t *testing.T) {
	t.Parallel()
	changes := 0
	for _, m := range madeProfiles() {
		for _, noise := range []float64{0, 0.3, 1, 4} {
			x, z := m.record(fault{noise: noise, rounding: 0.1}, 9)
			changes += len(clean(t, x, z, Options{}).Changes)
		}
	}
	if changes > 3 {
		t.Errorf("%d changes", changes)
	}
}

// A cliff of 30 m in a stride is a jump, but the hill beyond it is no error: the ground
// on either side does not carry on across, so it is told and stays.
func TestDoubtfulStepStays(t *testing.T) {
	t.Parallel()
	_, p := faulty(t, 0.5, func(_, z []float64) {
		for i := range 6 {
			z[i] += 60
		}
	})
	if len(p.Warnings) != 1 || !strings.Contains(p.Warnings[0], "jump") || len(p.Flags) == 0 {
		t.Errorf("warnings %q, flags %v, changes %v", p.Warnings, p.Flags, p.Changes)
	}
}

// Sea level is no missing height.
func TestSeaLevel(t *testing.T) {
	t.Parallel()
	x, z := make([]float64, 600), make([]float64, 600)
	for i := range x {
		x[i] = 10 * float64(i)
		z[i] = math.Round(max(0, 6*math.Sin(x[i]/400)))
	}
	if p := clean(t, x, z, Options{}); len(p.Changes) > 0 {
		t.Errorf("%v", p.Changes)
	}
}

func TestDriftAgainstKnownHeights(t *testing.T) {
	t.Parallel()
	m := madeProfiles()[0]
	x, z := m.record(fault{noise: 0.3, drift: 8}, 4)
	before := clean(t, x, z, Options{})
	after := clean(t, x, z, Options{Known: m.known(4)})
	// Known heights are out by 1 m, and a swing of 8 m over 18 km bends by up to 4 m
	// between two of them that are 6 km apart.
	if a, b := m.farthest(before), m.farthest(after); a < 12 || b > 7 {
		t.Errorf("off by up to %.1f m, against known heights by up to %.1f m", a, b)
	}
	if c := after.Changes; len(c) != 1 || c[0].Kind != Drift || c[0].From != 0 || c[0].To != m.length {
		t.Errorf("%v", c)
	}
}

func TestKnownHeights(t *testing.T) {
	t.Parallel()
	m := madeProfiles()[0]
	x, z := m.record(fault{noise: 0.3}, 4)
	for i := range z {
		z[i] += 20
	}
	t.Run("one shifts all", func(t *testing.T) {
		p := clean(t, x, z, Options{Known: []Height{{Distance: 20_000, Elevation: m.height(20_000), SD: 0.1}}})
		if off := m.farthest(p); off > 1.5 {
			t.Errorf("%.1f m off", off)
		}
	})
	t.Run("one off the course is told", func(t *testing.T) {
		p := clean(t, x, z, Options{Known: []Height{{Distance: 50_000, Elevation: 100}}})
		if len(p.Warnings) != 1 || len(p.Changes) != 0 {
			t.Errorf("%q, %v", p.Warnings, p.Changes)
		}
	})
	t.Run("two that disagree are told", func(t *testing.T) {
		p := clean(t, x, z, Options{Known: []Height{{Distance: 1000, Elevation: m.height(1000)}, {Distance: 2000, Elevation: m.height(2000) + 60}}})
		if len(p.Warnings) != 1 {
			t.Errorf("%q", p.Warnings)
		}
	})
}
