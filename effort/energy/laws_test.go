package energy_test

import (
	"math"
	"testing"

	"isoeffort.example/effort/energy"
)

// The shares add to 1, and the energies of carbohydrate and fat to the power.
func TestSubstratesAddUp(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{0, 1e-6, 1.44, 12, 25} {
		for rer := energy.LeastRER; rer <= energy.MostRER; rer += 0.01 {
			s := energy.ByRER(power, rer)
			if s.CarbohydrateShare+s.FatShare != 1 || !(s.Carbohydrate >= 0 && s.Fat >= 0) {
				t.Errorf("%g W/kg at %.2f: %+v", power, rer, s)
			}
			sum := (s.Carbohydrate*energy.CarbohydrateEnergy + s.Fat*energy.FatEnergy) / 3600
			if math.Abs(sum-power) > 1e-14*power {
				t.Errorf("%g W/kg at %.2f: substrates give %g", power, rer, sum)
			}
		}
	}
}

// RER and CarbohydrateShare, Oxygen and Power, Net and Gross, Joules and Kilocalories undo
// each other.
func TestInverses(t *testing.T) {
	t.Parallel()
	for x := 0.0; x <= 1; x += 1. / 64 {
		for name, got := range map[string]float64{
			"share":  energy.CarbohydrateShare(energy.RER(x)),
			"oxygen": energy.Power(energy.Oxygen(x, 0.9), 0.9),
			"gross":  energy.Net(energy.Gross(x)),
			"kcal":   energy.Joules(energy.Kilocalories(x)),
		} {
			if math.Abs(got-x) > 1e-13 {
				t.Errorf("%s: %v became %v", name, x, got)
			}
		}
	}
	if a, b := energy.RER(0), energy.RER(1); math.Abs(a-energy.FatRQ) > 1e-15 || math.Abs(b-energy.CarbohydrateRQ) > 1e-15 {
		t.Errorf("ends at %v, %v", a, b)
	}
}

// More carbohydrate burns with more intensity, as a share and in grams.
func TestMonotone(t *testing.T) {
	t.Parallel()
	var c energy.Crossover
	was, grams := -1.0, -1.0
	for power := 0.0; power <= 20; power += 0.25 {
		x := c.Uptake(power, 14.5)
		share, s := c.Share(x), c.Substrates(power, 14.5)
		if share < was || (x > 0.25 && share == was) || s.Carbohydrate <= grams {
			t.Errorf("%g W/kg: share %v after %v, %v g after %v", power, share, was, s.Carbohydrate, grams)
		}
		if r := c.Range(x); !(0 < r.Low && r.Low < share && share < r.High && r.High < 1) {
			t.Errorf("%g W/kg: %v is not inside of %v", power, share, r)
		}
		was, grams = share, s.Carbohydrate
	}
	for rer := 0.71; rer < 0.99; rer += 0.01 {
		if energy.CarbohydrateShare(rer) >= energy.CarbohydrateShare(rer+0.005) ||
			energy.OxygenEnergyAt(rer) >= energy.OxygenEnergyAt(rer+0.005) {
			t.Errorf("RER %.2f: no more carbohydrate, or energy, just above", rer)
		}
	}
}

// Nothing of what is pure arithmetic allocates. Not parallel: AllocsPerRun counts for the
// whole process.
func TestNoAllocation(t *testing.T) {
	var c energy.Crossover
	var sum float64
	n := testing.AllocsPerRun(10, func() {
		s := c.Substrates(11, 14.5)
		h := energy.Store{}.Lasts(c.Carbohydrate(11, 14.5), 60, 70)
		a, b := energy.Oxidation(2, 1.8)
		sum += s.Carbohydrate + h.Low + a + b + energy.RER(0.5) + energy.Oxygen(12, 0.9) +
			energy.Store{}.Balance(energy.Bounds{1, 2}, 60, 70).High + energy.IntakeRange(9e12, true).Low
	})
	if n != 0 || math.IsNaN(sum) {
		t.Errorf("%v allocations, sum %v", n, sum)
	}
}
