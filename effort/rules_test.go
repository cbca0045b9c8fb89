package effort

import (
	"math"
	"testing"
)

// climbAsFlat is how many metres of flat one metre of climb is worth, out and back along
// one gradient, where speed along a gradient is as given.
func climbAsFlat(speed func(i float64) float64, i float64) float64 {
	along := math.Hypot(1, i)
	return (along*speed(0)/speed(i) + along*speed(0)/speed(-i) - 2) / i
}

// runs is the speed of running at one effort power, of any unit; without air its ratios
// depend on no power.
func runs(i float64) float64 { return 1 / (RunningCost(i) + BrakingCost(i)) }

// walks is the speed in m/s of walking at an effort power in W/kg without a fastest walk.
func walks(power float64) func(i float64) float64 {
	a := Usual(12)
	a.FastestWalk = 4
	m := newMover(a, Surroundings{})
	return func(i float64) float64 {
		return m.walk(&cell{walk: walkingGrade(i), surface: 1, brake: BrakingCost(i)}, power).Speed
	}
}

// Old rules of what a metre of climb is worth, out and back, against running at even
// effort. They come out at the gradients that such courses have: on a road's 3 to 5 %
// the treadmill's 3.3 and the mountain road relay's 4.4, on a hill's 20 % Naismith's
// 7.92 (1892: an hour for 3 miles and another for 2000 ft, from memory) and the men's
// 8, and the women's 10 at 28 % (Scarf 2007, J Sports Sci 25:719). No one number is
// the model's: gentle descents give back most of a climb, and steep ones cost again.
func TestClimbAsFlatRunning(t *testing.T) {
	t.Parallel()
	for _, i := range []float64{0.03, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30} {
		t.Logf("%2.0f %%: %.2f m", 100*i, climbAsFlat(runs, i))
		if climbAsFlat(runs, i) >= climbAsFlat(runs, i+0.01) {
			t.Errorf("a climb of %g is worth more than a steeper one", i)
		}
	}
	const naismith = 3 * 1609.344 / (2000 * 0.3048)
	near(t, "3 miles over 2000 ft", naismith, 7.92, 1e-12)
	near(t, "naismith, 20 %", climbAsFlat(runs, 0.20), naismith, 0.15)
	near(t, "men, 20 %", climbAsFlat(runs, 0.20), 8, 0.15)
	near(t, "women, 28 %", climbAsFlat(runs, 0.28), 10, 0.15)
	near(t, "treadmill, 3 %", climbAsFlat(runs, 0.03), 3.3, 0.3)
	near(t, "road relay, 6 %", climbAsFlat(runs, 0.06), 4.4, 0.3)
}

// Walking, the rule comes out near 10 % for someone who gives 6 W/kg, who would walk
// 1.94 m/s on the level. At the 3.0 W/kg that 3 miles an hour take, one metre of climb
// is worth more than twice Naismith's: his walkers work harder uphill than on the flat,
// and the model does not say otherwise of anyone who paces by even effort.
func TestClimbAsFlatWalking(t *testing.T) {
	t.Parallel()
	near(t, "6 W/kg", climbAsFlat(walks(6), 0.10), 7.92, 0.5)
	strolling := walks(WalkingPower(3*1609.344/3600, 0))
	near(t, "3 miles an hour", climbAsFlat(strolling, 0.10), 18, 0.5)
}

// Tobler 1993, second-hand: walkers go 6 exp(−3.5 |i + 0.05|) km/h, 5.04 on the level,
// and are fastest down 5 %. At the effort power of 5.04 km/h on the level the model
// agrees to 7 % from the level down to −20 %, and to 16 % down to −30 %. Uphill it is at
// less than half the speed by +20 %: there 6 W/kg, twice the power, gives Tobler's speed
// to 11 % from +10 to +40 %. His walkers do not pace by even effort.
func TestWalkingAgainstTobler(t *testing.T) {
	t.Parallel()
	tobler := func(i float64) float64 { return 6 * math.Exp(-3.5*math.Abs(i+0.05)) }
	near(t, "level", tobler(0), 5.04, 0.005)
	power := WalkingPower(tobler(0)/3.6, 0)
	near(t, "its power", power, 3.16, 0.01)
	ratio := func(power, i float64) float64 { return walks(power)(i) * 3.6 / tobler(i) }
	for _, c := range []struct{ power, from, to, bound float64 }{
		{power, -0.20, 0, 0.07},
		{power, -0.30, -0.20, 0.16},
		{6, 0.10, 0.40, 0.115},
	} {
		for i := c.from; i < c.to+0.001; i += 0.05 {
			near(t, "model to rule", ratio(c.power, i), 1, c.bound)
			t.Logf("%.2f W/kg, %+.0f %%: %.2f", c.power, 100*i, ratio(c.power, i))
		}
	}
	near(t, "uphill at even effort", ratio(power, 0.20), 0.43, 0.01)
	fastest, at := 0.0, 0.0
	for i := -0.2; i < 0.1; i += 0.005 {
		if v := walks(power)(i); v > fastest {
			fastest, at = v, i
		}
	}
	near(t, "fastest down", at, -0.05, 0.02)
}
