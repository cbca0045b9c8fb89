package elevation

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// wandering adds noise that is correlated as exp(−d/length) to heights every 10 m.
func wandering(z []float64, sd, length float64, seed uint64) {
	r := rand.New(rand.NewPCG(seed, 79))
	keep := math.Exp(-10 / length)
	e := sd * r.NormFloat64()
	for i := range z {
		z[i] += e
		e = keep*e + sd*math.Sqrt(1-keep*keep)*r.NormFloat64()
	}
}

// TestAgree holds that two recordings with noise that looks like ground give the ascent
// within 5 %, where one alone is up to 50 % off, and the error of a gradient within a third.
func TestAgree(t *testing.T) {
	t.Parallel()
	table := newTable("wandering noise: largest error of ascent by one recording and by two, in per cent")
	for _, length := range []float64{40, 100} {
		for _, sd := range []float64{1, 2, 4} {
			var one, two float64
			for _, m := range madeProfiles() {
				truth := m.ascent()
				p := m.passes(t, sd, length)
				g, err := Agree(p[0], p[1])
				if err != nil {
					t.Fatal(err)
				}
				one = max(one, 100*math.Abs(p[0].Ascent/truth-1))
				two = max(two, 100*math.Abs(g.Ascent/truth-1))
				if is := m.gradientError(p[0]) / 100; math.Abs(g.Gradient/is-1) > 0.33 {
					t.Errorf("%s, %g m over %g m: gradient off by %.4f, found %.4f", m.name, sd, length, is, g.Gradient)
				}
				if off := math.Abs(g.Ascent - truth); off > 2*g.AscentSD+0.01*truth {
					t.Errorf("%s, %g m over %g m: ascent %.0f ± %.0f m, is %.0f m", m.name, sd, length, g.Ascent, g.AscentSD, truth)
				}
			}
			table.line("%g m over %3.0f m: %4.1f, %4.1f", sd, length, one, two)
			if two > 5 {
				t.Errorf("%g m over %g m: ascent off by up to %.1f %%", sd, length, two)
			}
		}
	}
	t.Log(table)
}

// passes are two cleaned recordings of a profile with wandering noise.
func (m made) passes(t *testing.T, sd, length float64) (p [2]*Profile) {
	t.Helper()
	for k := range p {
		x, z := m.record(fault{}, 0)
		wandering(z, sd, length, uint64(k))
		p[k] = clean(t, x, z, Options{})
	}
	return p
}

// Where noise is independent from point to point nothing is taken away that was right, and
// no warning is given.
func TestAgreeOnPlainNoise(t *testing.T) {
	t.Parallel()
	for _, m := range madeProfiles() {
		for _, noise := range []float64{0.5, 1, 2, 4} {
			var p [2]*Profile
			for k := range p {
				x, z := m.record(fault{noise: noise}, uint64(k))
				p[k] = clean(t, x, z, Options{})
			}
			g, err := Agree(p[0], p[1])
			if err != nil {
				t.Fatal(err)
			}
			if off := 100 * math.Abs(g.Ascent/m.ascent()-1); off > 3 || len(g.Warnings) > 0 {
				t.Errorf("%s, %g m: ascent off by %.1f %%, %q", m.name, noise, off, g.Warnings)
			}
		}
	}
}

// Other ground is refused.
func TestAgreeRefuses(t *testing.T) {
	t.Parallel()
	m := madeProfiles()
	var p []*Profile
	for _, m := range m[2:4] {
		m.length = 20_000
		x, z := m.record(fault{noise: 1}, 1)
		p = append(p, clean(t, x, z, Options{}))
	}
	if _, err := Agree(p[0], p[1]); !errors.Is(err, ErrOtherGround) {
		t.Error(err)
	}
	x, z := m[2].record(fault{noise: 1}, 1)
	if _, err := Agree(p[0], clean(t, x, z, Options{})); !errors.Is(err, ErrOtherGround) {
		t.Error(err)
	}
}
