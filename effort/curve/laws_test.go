package curve_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"isoeffort.example/effort"
	"isoeffort.example/effort/curve"
	"isoeffort.example/effort/efforttest"
)

type described interface {
	effort.Curve
	About() effort.About
}

// stated is the domain that a curve states in its About.
func stated(c described) efforttest.Domain {
	return efforttest.Domain{Gradient: c.About().Gradient, Speed: c.About().Speed}
}

// Every curve obeys the laws over the range that it states, light or laden. Not parallel,
// because of Check.
func TestLaws(t *testing.T) {
	for _, c := range []described{
		curve.ACSMRunning{},
		curve.ACSMWalking{},
		curve.Pandolf{},
		curve.Pandolf{Mass: 50, Load: 40, Terrain: 2.1},
		curve.PandolfSantee{},
		curve.PandolfSantee{Mass: 30},
		curve.PandolfSantee{Mass: 50, Load: 40, Terrain: 2.1},
		curve.PandolfSantee{Mass: 250, Load: 250, Terrain: 10},
	} {
		efforttest.Check(t, c, stated(c))
	}
}

// Beyond their stated ranges, from standing to fast and as steep as the model's curves,
// they are no more than held or extrapolated, but a plan can be made by them.
func TestLawsBeyond(t *testing.T) {
	t.Parallel()
	wide := efforttest.Domain{Gradient: [2]float64{-0.45, 0.45}, Speed: [2]float64{0, 4}}
	for _, c := range []effort.Curve{
		curve.ACSMRunning{},
		curve.ACSMWalking{},
		curve.PandolfSantee{},
		curve.PandolfSantee{Mass: 30},
		curve.PandolfSantee{Mass: 50, Load: 40, Terrain: 2.1},
	} {
		for _, v := range efforttest.Violations(c, wide) {
			t.Errorf("%T: %v", c, v)
		}
	}
}

// broken returns the names of the laws that a curve breaks over a domain.
func broken(c effort.Curve, d efforttest.Domain) (laws []efforttest.Law) {
	for _, v := range efforttest.Violations(c, d) {
		laws = append(laws, v.Law)
	}
	return laws
}

// Pandolf downhill is negative and falls with speed, as its comment says.
func TestPandolfFailsDownhill(t *testing.T) {
	t.Parallel()
	down := efforttest.Domain{Gradient: [2]float64{-0.12, 0.25}, Speed: [2]float64{0, 2.2}}
	if got := broken(curve.Pandolf{}, down); !slices.Equal(got, []efforttest.Law{efforttest.Positive, efforttest.Increasing}) {
		t.Errorf("it breaks %q", got)
	}
	c := curve.Pandolf{}
	if !(c.Power(1.34, -0.057) > 0 && c.Power(1.34, -0.058) < 0) {
		t.Error("at 1.34 m/s it does not become negative at −5.7 %")
	}
	if !(c.Published(1.34, -0.08) > 0 && c.Published(1.34, -0.10) < 0) {
		t.Error("the whole of walking is not negative at 1.34 m/s and −10 %")
	}
}

// published is the downhill correction with nothing done about its faults, net.
type published struct{ curve.PandolfSantee }

func (p published) Power(speed, gradient float64) float64 {
	return p.Published(speed, gradient) - p.Published(0, 0)
}

// The correction as published jumps at the level and is negative at slow speeds, as the
// comment of PandolfSantee says; Power is neither.
func TestPublishedCorrectionFails(t *testing.T) {
	t.Parallel()
	all := efforttest.Domain{Gradient: [2]float64{-0.12, 0.25}, Speed: [2]float64{0, 2.2}}
	want := []efforttest.Law{efforttest.Positive, efforttest.Increasing, efforttest.Continuous, efforttest.Outside}
	if got := broken(published{}, all); !slices.Equal(got, want) {
		t.Errorf("it breaks %q, want %q", got, want)
	}
	if got := broken(published{}, stated(curve.PandolfSantee{})); !slices.Equal(got, want[2:]) {
		t.Errorf("at 1 m/s and above it breaks %q, want %q", got, want[2:])
	}
	for _, c := range []struct{ load, jump, heldTo float64 }{{0, 0.18, -0.007}, {70, 0.70, -0.015}} {
		p := curve.PandolfSantee{Load: c.load}
		near(t, "jump, W/kg", p.Published(1.34, -1e-12)-p.Published(1.34, 0), c.jump, 0.005)
		if p.Power(1.34, c.heldTo+0.0005) != p.Power(1.34, 0) || !(p.Power(1.34, c.heldTo-0.0005) < p.Power(1.34, 0)) {
			t.Errorf("load %g kg: not held down to about %g", c.load, c.heldTo)
		}
	}
	n := published{}
	if !(n.Power(0.62, -0.09) < 0 && n.Power(0.63, -0.09) > 0) {
		t.Error("at −9 % it does not become negative at 0.62 m/s")
	}
}

// Where PandolfSantee has no reason to depart from what is published, it does not.
func TestSanteeIsThePublished(t *testing.T) {
	t.Parallel()
	for _, p := range []curve.PandolfSantee{{}, {Load: 20}, {Mass: 60, Load: 20, Terrain: 1.2}} {
		for v := 1.0; v < 2.2; v += 0.1 {
			for i := -0.12; i < 0.25; i += 0.01 {
				if i > -0.02 && i < 0 {
					continue
				}
				near(t, "net of standing", p.Power(v, i), p.Published(v, i)-p.Published(0, 0), 1e-12)
			}
		}
	}
}

// A mass, load or terrain that cannot be gives an error and NaN, never a number.
func TestImpossibleWalkers(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, p := range []curve.Pandolf{
		{Mass: -70},
		{Mass: nan},
		{Mass: 29},
		{Mass: 251},
		{Mass: math.Inf(1)},
		{Load: -1},
		{Load: nan},
		{Load: 71},
		{Mass: 50, Load: 51},
		{Load: math.Inf(1)},
		{Terrain: -1},
		{Terrain: nan},
		{Terrain: 0.9},
		{Terrain: 11},
	} {
		s := curve.PandolfSantee(p)
		for _, err := range []error{p.Check(), s.Check()} {
			if !errors.Is(err, curve.ErrParameter) {
				t.Errorf("%+v: error %v", p, err)
			}
		}
		for _, i := range []float64{0.1, 0, -0.1} {
			for _, got := range []float64{p.Power(1, i), p.Published(1, i), p.PerMetre(i), p.Base(1), s.Power(1, i), s.Published(1, i)} {
				if !math.IsNaN(got) {
					t.Errorf("%+v: %g", p, got)
				}
			}
		}
	}
	if err := (curve.Pandolf{}).Check(); err != nil {
		t.Error(err)
	}
	if err := (curve.PandolfSantee{Mass: 30, Load: 30, Terrain: 10}).Check(); err != nil {
		t.Error(err)
	}
}

// Speeds that cannot be give NaN.
func TestImpossibleSpeeds(t *testing.T) {
	t.Parallel()
	for _, c := range []effort.Curve{curve.ACSMRunning{}, curve.ACSMWalking{}, curve.Pandolf{}, curve.PandolfSantee{}} {
		for _, v := range []float64{-1, math.Inf(1), math.Inf(-1), math.NaN()} {
			for _, i := range []float64{-0.1, 0, 0.1} {
				if p := c.Power(v, i); !math.IsNaN(p) {
					t.Errorf("%T at %g m/s: %g", c, v, p)
				}
			}
		}
		if p := c.Power(0, 0.1); p != 0 {
			t.Errorf("%T standing: %g", c, p)
		}
	}
	if !math.IsNaN(curve.ACSMRunningOxygen(-1, 0)) || !math.IsNaN(curve.ACSMWalkingOxygen(1, math.NaN())) {
		t.Error("oxygen of nothing")
	}
}

// Held where the comments say.
func TestHeld(t *testing.T) {
	t.Parallel()
	for _, h := range []struct {
		curve    effort.Curve
		low, top float64
	}{
		{curve.ACSMRunning{}, 0, 0.45},
		{curve.ACSMWalking{}, 0, 0.45},
		{curve.Pandolf{}, -0.45, 0.45},
		{curve.PandolfSantee{}, -0.12, 0.45},
	} {
		at := func(i float64) float64 { return h.curve.Power(1.5, i) }
		for _, beyond := range []float64{0.01, 1, math.Inf(1)} {
			if at(h.low-beyond) != at(h.low) || at(h.top+beyond) != at(h.top) {
				t.Errorf("%T is not held %g beyond", h.curve, beyond)
			}
		}
		if at(h.top-0.01) >= at(h.top) {
			t.Errorf("%T is held too early", h.curve)
		}
	}
}

func near(t *testing.T, what string, got, want, bound float64) {
	t.Helper()
	if !(math.Abs(got-want) <= bound) {
		t.Errorf("%s: %g, want %g ± %g", what, got, want, bound)
	}
}
