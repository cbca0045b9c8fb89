package energy_test

import (
	"math"
	"testing"

	"isoeffort.example/effort/energy"
)

// Molar volumes at 0 °C and 1 atm in l, real gases, and molar masses in g (tables of
// physical chemistry, from memory).
const (
	molarOxygen, molarCarbonDioxide = 22.39, 22.26
	carbon, hydrogen, oxygen        = 12.011, 1.008, 15.999
)

// burnt is a compound CcHhOo.
type burnt struct {
	c, h, o float64
}

func (b burnt) mass() float64 { return b.c*carbon + b.h*hydrogen + b.o*oxygen }

// gases returns litres of oxygen used and of carbon dioxide given off per gram.
func (b burnt) gases() (o2, co2 float64) {
	moles := b.c + b.h/4 - b.o/2
	return moles * molarOxygen / b.mass(), b.c * molarCarbonDioxide / b.mass()
}

var (
	glucose     = burnt{6, 12, 6}
	tripalmitin = burnt{51, 98, 6}  // of the saturated fatty acid that is commonest in human fat
	triolein    = burnt{57, 104, 6} // of the unsaturated one
)

// perGram returns the litres of a gas that a gram of carbohydrate and a gram of fat take
// or give by the equations: Oxidation at two ratios, inverted. Of the gas a litre of oxygen
// goes with at(r) litres.
func perGram(at func(r float64) float64) (carbohydrate, fat float64) {
	const r1, r2 = 0.75, 0.95
	c1, f1 := energy.Oxidation(1, r1)
	c2, f2 := energy.Oxidation(1, r2)
	det := c1*f2 - c2*f1
	return (at(r1)*f2 - at(r2)*f1) / det, (c1*at(r2) - c2*at(r1)) / det
}

// Stoichiometry, independent of the equations: the gases of a gram of glucose are the
// equations' within 0.3 %, which is what their printed digits leave open, and those of fat
// lie between the two pure fats, widened by as much.
func TestOxidationByChemistry(t *testing.T) {
	t.Parallel()
	const digits = 0.003
	oc, of := perGram(func(float64) float64 { return 1 })
	cc, cf := perGram(func(r float64) float64 { return r })
	if o, c := glucose.gases(); math.Abs(oc/o-1) > digits || math.Abs(cc/c-1) > digits {
		t.Errorf("glucose takes %.4f, gives %.4f l/g; the equations %.4f, %.4f", o, c, oc, cc)
	}
	o1, c1 := tripalmitin.gases()
	o2, c2 := triolein.gases()
	if of < o1*(1-digits) || of > o2*(1+digits) || cf < c1*(1-digits) || cf > c2*(1+digits) {
		t.Errorf("fats take %.4f to %.4f, give %.4f to %.4f l/g; the equations %.4f, %.4f", o1, o2, c1, c2, of, cf)
	}
}

// Human fat lies between the two: so must the quotient at which no carbohydrate burns. The
// one at which no fat burns is the ratio of the gases' molar volumes, to their 0.3 %.
func TestQuotientsByChemistry(t *testing.T) {
	t.Parallel()
	rq := func(b burnt) float64 {
		o2, co2 := b.gases()
		return co2 / o2
	}
	if !(rq(tripalmitin) < energy.FatRQ && energy.FatRQ < rq(triolein)) {
		t.Errorf("FatRQ %.4f is not within %.4f to %.4f", energy.FatRQ, rq(tripalmitin), rq(triolein))
	}
	if math.Abs(energy.CarbohydrateRQ/rq(glucose)-1) > 0.003 {
		t.Errorf("CarbohydrateRQ %.4f, glucose %.4f", energy.CarbohydrateRQ, rq(glucose))
	}
	if math.Abs(energy.CarbohydrateEnergy*glucose.mass()/2803e3-1) > 0.0005 {
		t.Errorf("glucose gives %.0f J/mol", energy.CarbohydrateEnergy*glucose.mass())
	}
}

// Weir against Péronnet & Massicotte with the energies of glucose and fat: 0.6 to 1.0 %
// apart, Weir above, as Oxidation says. Garby & Astrup 1987 (Acta Physiol Scand 129:443,
// from memory), 16.04 + 4.94 RQ kJ/l, a third source, within 0.6 %.
func TestWeirAgainstOxidation(t *testing.T) {
	t.Parallel()
	for rer := 0.71; rer < 0.995; rer += 0.01 {
		c, f := energy.Oxidation(1, rer)
		got := (c*energy.CarbohydrateEnergy + f*energy.FatEnergy) / 1000
		if d := energy.OxygenEnergyAt(rer)/got - 1; d < 0.0055 || d > 0.0105 {
			t.Errorf("RER %.2f: Weir %+.2f %%", rer, 100*d)
		}
		if d := (16.04+4.94*rer)/got - 1; math.Abs(d) > 0.006 {
			t.Errorf("RER %.2f: Garby & Astrup %+.2f %%", rer, 100*d)
		}
	}
}

// Brockway 1987, from memory: 16.58 V̇O₂ + 4.51 V̇CO₂ kJ, within 0.2 % of Weir. The constant
// for running is Weir's to half its last digit.
func TestOxygenEnergy(t *testing.T) {
	t.Parallel()
	for rer := 0.71; rer < 1.001; rer += 0.01 {
		if d := (16.58+4.51*rer)/energy.OxygenEnergyAt(rer) - 1; math.Abs(d) > 0.002 {
			t.Errorf("RER %.2f: Brockway %+.2f %%", rer, 100*d)
		}
	}
	if d := energy.OxygenEnergyAt(0.96) - energy.OxygenEnergy; math.Abs(d) > 0.05 {
		t.Errorf("off by %v", d)
	}
}

// ByRER is Oxidation of the oxygen that the power needs, 0.6 to 1.0 % higher.
func TestByRERAgainstOxidation(t *testing.T) {
	t.Parallel()
	for rer := 0.71; rer < 0.995; rer += 0.02 {
		s := energy.ByRER(12, rer)
		litres := energy.Oxygen(12, rer) * 60 / 1000
		c, f := energy.Oxidation(litres, litres*rer)
		for _, ratio := range []float64{s.Carbohydrate / c, s.Fat / f} {
			if ratio < 1.0055 || ratio > 1.0105 {
				t.Errorf("RER %.2f: %.4f", rer, ratio)
			}
		}
	}
}

// Beyond the quotients of the substrates the answer is held; beyond what is possible it is
// none.
func TestOxidationHeld(t *testing.T) {
	t.Parallel()
	for _, rer := range []float64{energy.LeastRER, 0.70, 0.7036, 1.0, energy.MostRER} {
		c, f := energy.Oxidation(2, 2*rer)
		if rer < 0.8 && !(c >= 0 && c < 1e-3 && math.Abs(f-2*0.498) < 0.001) {
			t.Errorf("RER %g: %v %v", rer, c, f)
		}
		if rer > 0.8 && !(f == 0 && math.Abs(c-2*1.343) < 0.001) {
			t.Errorf("RER %g: %v %v", rer, c, f)
		}
	}
	for _, rer := range []float64{-1, 0, 0.64, 1.31, math.Inf(1), math.NaN()} {
		c, f := energy.Oxidation(1, rer)
		if !math.IsNaN(c) || !math.IsNaN(f) || !math.IsNaN(energy.OxygenEnergyAt(rer)) {
			t.Errorf("RER %g: %v %v %v", rer, c, f, energy.OxygenEnergyAt(rer))
		}
	}
}
