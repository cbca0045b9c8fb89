package effort

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// Riegel's exponent b and the endurance exponent: 1.06 stands for 0.0566, and 0.1 for
// 1.11.
func TestRiegel(t *testing.T) {
	t.Parallel()
	near(t, "1.06", RiegelEndurance(1.06), 0.0566, 0.00005)
	near(t, "0.1", Riegel(0.1), 1.11, 0.005)
	near(t, "1.11", RiegelEndurance(1.11), 0.0991, 0.00005)
	// Blythe & Király 2016, PLoS ONE 11:e0157257 (from memory): individual exponents of
	// about 1.10 to 1.15 are those of ordinary runners here, 0.05 the best and 0.15.
	near(t, "1.10", RiegelEndurance(1.10), 0.0909, 0.00005)
	near(t, "1.15", RiegelEndurance(1.15), 0.1304, 0.00005)
	// Vickers & Vertosick 2016, BMC Sports Sci Med Rehabil 8:26 (from memory): 1.06 from
	// the half marathon is too fast for recreational marathons; the usual 0.10 says 3.6 %
	// more.
	near(t, "usual over 1.06", math.Pow(2, Riegel(0.10)-1.06), 1.036, 0.0005)
	for _, impossible := range []float64{Riegel(1), Riegel(-0.1), Riegel(math.NaN()), RiegelEndurance(0.9), RiegelEndurance(0)} {
		if !math.IsNaN(impossible) {
			t.Errorf("an impossible exponent gives %g", impossible)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0, 0.4).Draw(t, "k")
		near(t, "and back", RiegelEndurance(Riegel(k)), k, 1e-15)
	})
}

// Without fade the model is Riegel's law T2 = T1 (D2/D1)^b on level ground.
func TestPowerLaw(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		a.Fade = 0
		ratio := rapid.Float64Range(1, 20).Draw(t, "ratio")
		got := a.UniformTime(36_000*ratio).Hours() / a.UniformTime(36_000).Hours()
		want := math.Pow(ratio, Riegel(a.Endurance))
		near(t, "T2/T1", got, want, 1e-9*want)
	})
}

// Constant intensity spends the whole budget in the time that Intensity is for.
func TestIntensitySpendsBudget(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		in := integrator(t, drawGround(t), a, Surroundings{})
		s, err := in.Fastest(allRun(in.ground))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "intensity", s.Intensity, a.Intensity(s.Moving/3600), 2e-9)
	})
}

// The slope of capability at the start is −φ for every fade shape, so hour power keeps
// its meaning.
func TestCapabilityAtTheStart(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		near(t, "fresh", a.Capability(0), a.HourPower, 0)
		const h = 1e-5
		slope := math.Log(a.Capability(h)/a.Capability(0)) / h
		near(t, "slope", slope, -a.Fade, 1e-5*a.Fade+1e-10)
		w := rapid.Float64Range(0, 30).Draw(t, "work")
		if a.Capability(w+1) > a.Capability(w) {
			t.Fatal("capability grows")
		}
	})
	if c := Usual(12).Capability(-1); !math.IsNaN(c) {
		t.Errorf("capability after negative work: %g", c)
	}
}

// A later fade keeps more at first than a steady one and less in the end.
func TestFadeShape(t *testing.T) {
	t.Parallel()
	steady, early, late := Usual(12), Usual(12), Usual(12)
	early.FadeShape, late.FadeShape = 0.5, 1.3
	for _, work := range []float64{0.5, 2, 10, 25} {
		if !(early.Capability(work) > steady.Capability(work) && steady.Capability(work) > late.Capability(work)) {
			t.Errorf("after %g: %.3f, %.3f, %.3f", work, early.Capability(work), steady.Capability(work), late.Capability(work))
		}
	}
	// The same loss over a day: the late one has lost less halfway.
	share := func(shape float64) float64 { return fadeTime(10, shape) / fadeTime(20, shape) }
	if !(share(0.5) > share(1) && share(1) > share(1.3)) {
		t.Errorf("lost halfway: %.3f, %.3f, %.3f", share(0.5), share(1), share(1.3))
	}
}

func TestUniformInverse(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		if rapid.Bool().Draw(t, "no fade") {
			a.Fade = 0
		}
		work := rapid.Float64Range(1e3, 8e5).Draw(t, "work")
		near(t, "work", a.UniformWork(a.UniformTime(work)), work, 1e-9*work)
	})
}

// The closed form and the integrator are two ways to one number wherever the whole course
// is run, the fade is steady and there is no air: on uniform ground and on any other.
func TestUniformTimeAgainstIntegrator(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAthlete(t)
		a.FadeShape = 1
		g := drawGround(t)
		in := integrator(t, g, a, Surroundings{})
		s, err := in.Fastest(allRun(g))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "time", s.Moving, a.UniformTime(g.RunningWork(a)).Seconds(), 1e-6*s.Moving)
	})
}

// 40:00 for 10 km stands for an hour power of about 14.5.
func TestHourPowerOfTenKilometres(t *testing.T) {
	t.Parallel()
	low := Usual(14).UniformTime(10_000 * RunningCost(0))
	top := Usual(15).UniformTime(10_000 * RunningCost(0))
	if !(top < 40*time.Minute && 40*time.Minute < low) {
		t.Errorf("%v for 14, %v for 15 W/kg", low, top)
	}
	near(t, "14.5 W/kg, s", Usual(14.5).UniformTime(10_000*RunningCost(0)).Seconds(), 2400, 2)
}

// The fade lets the exponent grow with distance, as records do: about 1.06 below the
// marathon and 1.28 beyond (from memory). Up to 250 km the usual fade alone, 0.02, makes
// 1.11 of the second, and the top of its range, 0.05, 1.21: the records of the longest
// races, run through nights and with stops, grow by more than the model's fade.
func TestExponentGrows(t *testing.T) {
	t.Parallel()
	exponent := func(a Athlete, from, to float64) float64 {
		return math.Log(a.UniformTime(3.6*to).Hours()/a.UniformTime(3.6*from).Hours()) / math.Log(to/from)
	}
	a := Athlete{HourPower: 20, Endurance: RiegelEndurance(1.05), Fade: 0.02}
	near(t, "below the marathon", exponent(a, 5000, 42_195), 1.06, 0.01)
	usual := exponent(a, 42_195, 250_000)
	a.Fade = 0.05
	most := exponent(a, 42_195, 250_000)
	near(t, "beyond the marathon, fade 0.02", usual, 1.11, 0.01)
	near(t, "beyond the marathon, fade 0.05", most, 1.21, 0.01)
	for d := 5000.0; d < 200_000; d *= 1.5 {
		if exponent(a, d, 1.5*d) >= exponent(a, 1.5*d, 2.25*d) {
			t.Errorf("exponent falls at %.0f m", d)
		}
	}
}

// An even three-hour marathon by the usual numbers is hardly slower in its second half:
// the larger slowing of fields is mispacing and no part of a plan.
func TestMarathonHalves(t *testing.T) {
	t.Parallel()
	in := integrator(t, level(t, 42_195), Usual(16.12), Surroundings{})
	s := solve(t, in, State{}, Demand{})
	near(t, "time, s", s.Finish().Moving, 3*3600, 60)
	first := s.At(42_195.0 / 2).Moving
	slower := (s.Finish().Moving-first)/first - 1
	t.Logf("second half %.2f %% slower", 100*slower)
	if !(slower > 0 && slower < 0.03) {
		t.Errorf("second half %.2f %% slower", 100*slower)
	}
}

// Noise of 10 % about one mean intensity fills the budget 1.5 times as fast for an
// endurance exponent of 0.1 and 3.2 times for 0.06: computed from the moments of the
// normal distribution, E(1+σZ)^n = Σ C(n,2j) σ^2j (2j−1)!!.
func TestNoiseFillsBudget(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ order, want float64 }{{10, 1.516}, {16.7, 3.157}} {
		sum, weight := 0.0, 0.0
		for z := -8.0; z <= 8; z += 0.001 {
			w := math.Exp(-z * z / 2)
			sum += w * math.Pow(math.Max(0, 1+0.1*z), c.order)
			weight += w
		}
		near(t, "factor", sum/weight, c.want, 0.0005)
		moments, term := 1.0, 1.0
		for j := 1.0; j <= 4; j++ {
			term *= (c.order - 2*j + 2) * (c.order - 2*j + 1) / (2 * j) * 0.01
			moments += term
		}
		near(t, "moments", moments, c.want, 0.003)
	}
}
