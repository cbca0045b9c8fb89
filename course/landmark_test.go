package course

import (
	"testing"
)

func TestLandmarksAreOrdered(t *testing.T) {
	c := asGiven(t, []float64{0, 1000}, []float64{0, 0},
		Landmark{Name: "Bridge", Distance: 700}, Landmark{Name: "Well", Distance: 300, Kind: Station},
		Landmark{Name: "Arch", Distance: 700}, Landmark{Name: "Square", Distance: 1000.4})
	want := []string{"Well", "Arch", "Bridge", "Square"}
	for i, l := range c.Landmarks() {
		if l.Name != want[i] || l.Distance > 1000 {
			t.Errorf("landmark %d is %+v, want %s", i, l, want[i])
		}
	}
}

func TestSections(t *testing.T) {
	x, z := []float64{0, 500, 1000}, []float64{0, 50, 20}
	for _, tt := range []struct {
		name      string
		landmarks []Landmark
		want      []string
	}{
		{"none", nil, []string{"Start", "Finish"}},
		{"one between", []Landmark{{Name: "Well", Distance: 300}}, []string{"Start", "Well", "Finish"}},
		{"both ends named", []Landmark{{Name: "Market", Distance: 0}, {Name: "Square", Distance: 1000}}, []string{"Market", "Square"}},
		{"near the ends", []Landmark{{Name: "Market", Distance: 0.4}, {Name: "Square", Distance: 999.8}}, []string{"Market", "Square"}},
		{"two at one place", []Landmark{{Name: "Well", Distance: 300}, {Name: "Arch", Distance: 300}}, []string{"Start", "Arch", "Finish"}},
	} {
		sections := asGiven(t, x, z, tt.landmarks...).Sections()
		if len(sections) != len(tt.want)-1 {
			t.Errorf("%s: %d sections, want %d", tt.name, len(sections), len(tt.want)-1)
			continue
		}
		ascent, at := 0.0, 0.0
		for i, s := range sections {
			if s.From.Name != tt.want[i] || s.To.Name != tt.want[i+1] || s.From.Distance != at {
				t.Errorf("%s: section %d from %+v to %+v", tt.name, i, s.From, s.To)
			}
			ascent, at = ascent+s.Ascent, s.To.Distance
		}
		if ascent != 50 || at != 1000 {
			t.Errorf("%s: ascent %g up to %g m", tt.name, ascent, at)
		}
	}
}

func TestGround(t *testing.T) {
	c, err := New([]float64{0, 1000}, []float64{0, 0}, Options{Stretches: []Stretch{
		{From: 100, To: 500, Surface: 1.1, Braking: 2},
		{From: 400, To: 600, Surface: 1.3},
	}})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ at, surface, braking float64 }{
		{0, 1, 1}, {100, 1.1, 2}, {399, 1.1, 2}, {400, 1.3, 1}, {599, 1.3, 1}, {600, 1, 1},
	} {
		if s, b := c.Ground(tt.at); s != tt.surface || b != tt.braking {
			t.Errorf("Ground(%g) = %g, %g, want %g, %g", tt.at, s, b, tt.surface, tt.braking)
		}
	}
}

func TestKindString(t *testing.T) {
	for kind, want := range map[Kind]string{Place: "place", Station: "station", Top: "top"} {
		if got := kind.String(); got != want {
			t.Errorf("%d: %q, want %q", kind, got, want)
		}
	}
}
