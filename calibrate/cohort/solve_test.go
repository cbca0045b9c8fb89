package cohort

import (
	"context"
	"math"
	"testing"

	"isoeffort.example/calibrate/cohort/invented"
	"isoeffort.example/effort"
)

// ready is an iteration after some rounds, with residuals and weights of its own.
func ready(t *testing.T, seed uint64, f invented.Field, rounds int) *iteration {
	t.Helper()
	results, _ := field(seed, f)
	tab, _, err := newTable(results)
	if err != nil {
		t.Fatal(err)
	}
	o, err := Options{}.filled()
	if err != nil {
		t.Fatal(err)
	}
	it := newIteration(tab, o, func(*row) bool { return true }, usualSpreads())
	for range rounds {
		if err := it.round(context.Background(), false); err != nil {
			t.Fatal(err)
		}
	}
	return it
}

// The slope that the search goes down by is that of central differences.
func TestSearchSlope(t *testing.T) {
	t.Parallel()
	p := ready(t, 1, invented.Field{Runners: 20, Courses: 15, Results: 200}, 2).p
	on := p.spreads.active()
	e := &expected{p: p, ctx: context.Background(), workers: 1, on: on, whole: p.spreads.vector(), unit: p.units()}
	x := make([]float64, spreadCount)
	for i, v := range e.whole {
		x[i] = v / e.unit[i]
	}
	e.at(x)
	slope := append([]float64(nil), e.slope...)
	for i := range x {
		const step = 1e-4
		kept := x[i]
		x[i] = kept + step
		above := e.at(x)
		x[i] = kept - step
		below := e.at(x)
		x[i] = kept
		if d := (above - below) / (2 * step); math.Abs(d-slope[i]) > 1e-5*(1+math.Abs(d)) {
			t.Errorf("slope %d: %.8g, by differences %.8g", i, slope[i], d)
		}
	}
}

// Conjugate gradients reach what one dense factor gives; the spreads by draws and blocks
// are within a tenth of the exact ones: 4 draws of 60 courses are worth some 6 %.
func TestStepsReachTheExactSolution(t *testing.T) {
	t.Parallel()
	p := ready(t, 2, invented.Field{Runners: 100, Courses: 60, Results: 900}, 2).p
	if err := p.solveExactly(context.Background(), 1); err != nil {
		t.Fatal(err)
	}
	exact, spread := append([]float64(nil), p.effects...), append([]float64(nil), p.spread...)
	clear(p.effects)
	if err := p.solveBySteps(context.Background(), 2, 1); err != nil {
		t.Fatal(err)
	}
	nx := p.nx()
	for i := nx; i < len(exact); i++ {
		if math.Abs(p.effects[i]-exact[i]) > 1e-4 {
			t.Errorf("effect %d: %.6f, exactly %.6f", i, p.effects[i], exact[i])
		}
	}
	got, want := 0.0, 0.0
	for c := range spread {
		got += p.spread[c]
		want += spread[c]
	}
	if math.Abs(got/want-1) > 0.15 {
		t.Errorf("mean variance of courses %.3g, exactly %.3g", got, want)
	}
}

// The closed form is package effort's, and its slopes those of differences.
func TestClosedForm(t *testing.T) {
	t.Parallel()
	o, _ := Options{}.filled()
	c := closedOf(o.Prior)
	w := work{200_000, 15_000}
	at, slope := c.at(w, math.Log(11))
	a := c.athlete(11)
	if want := math.Log(a.UniformTime(w.level + c.braking*w.braking).Seconds()); math.Abs(at-want) > 1e-9 {
		t.Errorf("ln T %.12f, package effort's %.12f", at, want)
	}
	const step = 1e-5
	up, down := c, c
	high, _ := c.at(w, math.Log(11)+step)
	low, _ := c.at(w, math.Log(11)-step)
	diff := [numbers]float64{high - low}
	up.endurance, down.endurance = c.endurance*math.Exp(step), c.endurance*math.Exp(-step)
	high, _ = up.at(w, math.Log(11))
	low, _ = down.at(w, math.Log(11))
	diff[1] = high - low
	up, down = c, c
	up.braking, down.braking = c.braking*math.Exp(step), c.braking*math.Exp(-step)
	high, _ = up.at(w, math.Log(11))
	low, _ = down.at(w, math.Log(11))
	diff[2] = high - low
	for k := range diff {
		if math.Abs(diff[k]/(2*step)-slope[k]) > 1e-7 {
			t.Errorf("slope %d: %.9f, by differences %.9f", k, slope[k], diff[k]/(2*step))
		}
	}
}

// athlete is one of the medians with an hour power of their own.
func (c closed) athlete(hourPower float64) effort.Athlete {
	return effort.Athlete{
		HourPower: hourPower, Endurance: c.endurance, Fade: c.fade, FadeShape: 1, Braking: c.braking, Habit: effort.RunOnly,
	}
}

// The half width of a mixture holds its share of Student's t alone, and of the normal.
func TestMixture(t *testing.T) {
	t.Parallel()
	// The 0.95 quantile of Student's t with 5 degrees, from any table.
	m := newMixture(5)
	if got := m.half(0.9, 0, 1); math.Abs(got-2.015) > 0.02 {
		t.Errorf("t: %.4f", got)
	}
	if got := m.half(0.9, 4, 1e-9); math.Abs(got-2*1.6449) > 1e-3 {
		t.Errorf("normal: %.4f", got)
	}
}
