package elevation

import (
	"math"
	"testing"
)

// What a terrain model makes of a bridge, of a tunnel and of switchbacks.
func TestFlags(t *testing.T) {
	t.Parallel()
	bump := func(x float64) float64 { return 60 * math.Exp(-math.Pow((x-10_000)/60, 2)) }
	for _, tt := range []struct {
		name string
		add  func(x float64) float64
		form Form
	}{
		{"bridge", func(x float64) float64 { return -bump(x) }, Dip},
		{"tunnel", bump, Hump},
		{"switchbacks", func(x float64) float64 { return 60 * math.Tanh((x-10_000)/60) }, Slope},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			_, p := faulty(t, 0.5, func(x, z []float64) {
				for i := range x {
					z[i] += tt.add(x[i])
				}
			})
			if len(p.Flags) != 1 {
				t.Fatalf("%v", p.Flags)
			}
			f := p.Flags[0]
			if f.Form != tt.form || f.From < 9800 || f.To > 10_200 || math.Abs(f.Gradient) < DefaultMaxGradient || f.Text == "" {
				t.Errorf("%+v %v %v", f, p.Changes, p.Noise)
			}
		})
	}
}

func TestFlagBound(t *testing.T) {
	t.Parallel()
	m := madeProfiles()[0]
	x, z := m.record(fault{}, 1)
	if p := clean(t, x, z, Options{}); len(p.Flags) != 0 {
		t.Errorf("%v", p.Flags)
	}
	if p := clean(t, x, z, Options{MaxGradient: 0.06}); len(p.Flags) == 0 {
		t.Error("8 % are not flagged beyond 6 %")
	}
}
