package energy_test

import (
	"math"
	"testing"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/energy"
)

// Bergström et al. 1967, from memory: 17.5 g per kg of muscle on a mixed diet, 33 loaded;
// a fifth of body mass, and a liver of 80 to 110 g in 70 kg.
func TestStoresHoldMeasured(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		store  energy.Store
		muscle float64
	}{{energy.UsualStore(), 17.5}, {energy.LoadedStore(), 33}} {
		if m := c.muscle / 5; !(c.store.Muscle.Low < m && m < c.store.Muscle.High) {
			t.Errorf("muscle %v outside of %v", m, c.store.Muscle)
		}
		if l := c.store.Liver; !(l.Low < 80./70 && math.Abs(l.High-110./70) < 0.2) {
			t.Errorf("liver %v", l)
		}
	}
	// Usable at the most, less than all there is: 600 g in 70 kg.
	if g := energy.UsualStore().Grams(); g.High > 600./70 || g.Low < 200./70 {
		t.Errorf("usual store %v", g)
	}
}

// A marathon at hard effort without food may empty the usual store and need not: common
// practice, no source, has runners fade from 30 km.
func TestMarathonIsNearTheEdge(t *testing.T) {
	t.Parallel()
	use := energy.Crossover{}.Carbohydrate(0.9*14.5, 14.5)
	h := energy.UsualStore().Lasts(use, 0, 70)
	speed := 3.6 * 0.9 * 14.5 / effort.RunningCost(0) // km/h
	if low, high := h.Low*speed, h.High*speed; !(low < 30 && 30 < high && high > 42.195) {
		t.Errorf("empty between %.0f and %.0f km", low, high)
	}
}

// Worked by hand: 3 to 5 and 0.5 to 1.4 g/kg, 2 to 3 g/(kg h) burnt, 35 g/h at 70 kg, of
// which 0.3 to 0.45 g/(kg h) is burnt: 3.5/2.7 and 6.4/1.55 hours.
func TestLastsByHand(t *testing.T) {
	t.Parallel()
	h := energy.Store{}.Lasts(energy.Bounds{2, 3}, 35, 70)
	if math.Abs(h.Low-1.2963) > 5e-5 || math.Abs(h.High-4.1290) > 5e-5 {
		t.Errorf("%v", h)
	}
	b := energy.Store{}.Balance(energy.Bounds{2, 3}, 35, 70) // after one hour
	if math.Abs(b.Low-0.8) > 1e-12 || math.Abs(b.High-4.85) > 1e-12 {
		t.Errorf("%v", b)
	}
	if e := (energy.Store{}).Energy(); math.Abs(e.Low-54_460) > 1e-6 || math.Abs(e.High-99_584) > 1e-6 {
		t.Errorf("%v J/kg", e)
	}
}

// Eating more never shortens the time; the balance is 0 when Lasts says so, and never
// outside of the store.
func TestStoreLaws(t *testing.T) {
	t.Parallel()
	use := energy.Bounds{1.2, 2.5}
	last := energy.Bounds{}
	for intake := 0.0; intake <= 120; intake += 10 {
		h := energy.LoadedStore().Lasts(use, intake, 70)
		if h.Low < last.Low || h.High < last.High || h.Low > h.High {
			t.Errorf("%g g/h: %v after %v", intake, h, last)
		}
		last = h
		b := energy.LoadedStore().Balance(energy.Bounds{use.Low * h.Low, use.High * h.Low}, intake*h.Low, 70)
		if math.Abs(b.Low) > 1e-12 || b.High > 9 {
			t.Errorf("%g g/h: %v left after %v h", intake, b, h.Low)
		}
	}
	if !math.IsInf(last.High, 1) {
		t.Errorf("120 g/h: at the latest %v", last.High)
	}
	if b := energy.LoadedStore().Balance(energy.Bounds{}, 500, 70); b != (energy.Bounds{6, 9}) {
		t.Errorf("eaten at rest: %v", b)
	}
}

func TestIntakeRange(t *testing.T) {
	t.Parallel()
	for _, d := range []time.Duration{0, -time.Hour} {
		if r := energy.IntakeRange(d, true); !math.IsNaN(r.Low) || !math.IsNaN(r.High) {
			t.Errorf("%v: %v", d, r)
		}
	}
	for d := time.Minute; d < 40*time.Hour; d += time.Minute {
		novice, rehearsed := energy.IntakeRange(d, false), energy.IntakeRange(d, true)
		next := energy.IntakeRange(d+time.Minute, true)
		if novice.High > rehearsed.High || novice.High > 60 || rehearsed.High > 90 ||
			next.Low < rehearsed.Low || next.High < rehearsed.High {
			t.Fatalf("%v: %v %v %v", d, novice, rehearsed, next)
		}
	}
}
