package energy_test

import (
	"math"
	"testing"

	"isoeffort.example/effort/energy"
)

// Every argument that can only be positive gives NaN when it is not, or not a number.
func TestImpossibleIsNaN(t *testing.T) {
	t.Parallel()
	var c energy.Crossover
	var s energy.Store
	use := energy.Bounds{1, 2}
	for name, f := range map[string]func(float64) float64{
		"Weir oxygen":       func(x float64) float64 { return energy.Weir(x, 1) },
		"Weir carbon":       func(x float64) float64 { return energy.Weir(1, x) },
		"OxygenEnergyAt":    energy.OxygenEnergyAt,
		"Power":             func(x float64) float64 { return energy.Power(x, 0.9) },
		"Power RER":         func(x float64) float64 { return energy.Power(1, x) },
		"Oxygen":            func(x float64) float64 { return energy.Oxygen(x, 0.9) },
		"Oxygen RER":        func(x float64) float64 { return energy.Oxygen(1, x) },
		"Gross":             energy.Gross,
		"Net":               energy.Net,
		"Oxidation":         func(x float64) float64 { _, fat := energy.Oxidation(x, 0.9); return fat },
		"CarbohydrateShare": energy.CarbohydrateShare,
		"RER":               energy.RER,
		"ByShare":           func(x float64) float64 { return energy.ByShare(x, 0.5).Fat },
		"ByShare share":     func(x float64) float64 { return energy.ByShare(1, x).Carbohydrate },
		"ByRER":             func(x float64) float64 { return energy.ByRER(1, x).FatShare },
		"Share":             c.Share,
		"Range":             func(x float64) float64 { return c.Range(x).High },
		"Uptake":            func(x float64) float64 { return c.Uptake(x, 14) },
		"Uptake hour":       func(x float64) float64 { return c.Uptake(1, x) },
		"Substrates":        func(x float64) float64 { return c.Substrates(x, 14).CarbohydrateShare },
		"Carbohydrate":      func(x float64) float64 { return c.Carbohydrate(x, 14).Low },
		"Half":              func(x float64) float64 { return energy.Crossover{Half: x}.Share(0.5) },
		"Width":             func(x float64) float64 { return energy.Crossover{Width: x}.Share(0.5) },
		"SD":                func(x float64) float64 { return energy.Crossover{SD: x}.Range(0.5).Low },
		"HourShare":         func(x float64) float64 { return energy.Crossover{HourShare: x}.Uptake(1, 14) },
		"use low":           func(x float64) float64 { return s.Lasts(energy.Bounds{x, 2}, 0, 70).High },
		"use high":          func(x float64) float64 { return s.Lasts(energy.Bounds{1, x}, 0, 70).Low },
		"intake":            func(x float64) float64 { return s.Lasts(use, x, 70).Low },
		"mass":              func(x float64) float64 { return s.Lasts(use, 60, x).High },
		"eaten":             func(x float64) float64 { return s.Balance(use, x, 70).Low },
		"Balance mass":      func(x float64) float64 { return s.Balance(use, 0, x).High },
		"muscle":            func(x float64) float64 { return energy.Store{Muscle: energy.Bounds{1, x}}.Grams().Low },
		"liver":             func(x float64) float64 { return energy.Store{Liver: energy.Bounds{x, 1}}.Energy().High },
		"store":             func(x float64) float64 { return energy.Store{Liver: energy.Bounds{x, 1}}.Lasts(use, 90, 10).Low },
	} {
		for _, x := range []float64{-1, -1e-300, math.Inf(1), math.Inf(-1), math.NaN()} {
			if y := f(x); !math.IsNaN(y) {
				t.Errorf("%s of %g is %g", name, x, y)
			}
		}
	}
}

// Zero is impossible for a mass, an hour power and a respiratory exchange ratio; bounds must
// not be the wrong way round, nor a share above 1.
func TestOtherImpossible(t *testing.T) {
	t.Parallel()
	var c energy.Crossover
	for name, y := range map[string]float64{
		"mass":      energy.Store{}.Lasts(energy.Bounds{1, 2}, 0, 0).Low,
		"hour":      c.Uptake(1, 0),
		"ratio":     energy.CarbohydrateShare(0),
		"no gas":    func() float64 { c, _ := energy.Oxidation(0, 0); return c }(),
		"use":       energy.Store{}.Lasts(energy.Bounds{2, 1}, 0, 70).High,
		"liver":     energy.Store{Liver: energy.Bounds{2, 1}}.Grams().Low,
		"share":     energy.ByShare(1, 1.001).Fat,
		"RER":       energy.RER(1.001),
		"HourShare": energy.Crossover{HourShare: 1.001}.Uptake(1, 14),
	} {
		if !math.IsNaN(y) {
			t.Errorf("%s: %v", name, y)
		}
	}
}

// Differences of energy keep their sign, and NaN stays NaN.
func TestUnitsKeepSign(t *testing.T) {
	t.Parallel()
	if x := energy.Kilocalories(-4184); x != -1 {
		t.Errorf("%v", x)
	}
	if !math.IsNaN(energy.Kilocalories(math.NaN())) || !math.IsNaN(energy.Joules(math.NaN())) {
		t.Error("NaN became a number")
	}
}
