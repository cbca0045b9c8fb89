package effort

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// drawHot draws a day between 16 and 30 °C WBGT.
func drawHot(t *rapid.T) *Day {
	var hours []Hour
	for i := range 6 {
		h := Hour{Clock: 4 * time.Duration(i) * time.Hour, Temperature: 20, Humidity: 50}
		h.WBGT = rapid.Float64Range(16, 30).Draw(t, "WBGT")
		hours = append(hours, h)
	}
	return day(t, hours, Night{})
}

// A hotter day is never faster above 15 °C, at one intensity or on one budget, run or by
// the rule; with more loss, with less used to it, and with more growth neither.
func TestHotterIsNotFaster(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawGround(t), drawAthlete(t)
		cool := Surroundings{
			Day: drawHot(t), Start: drawClock(t, "start", 0, 24),
			Heat: Heat{
				Loss: rapid.Float64Range(0.001, 0.01).Draw(t, "loss"), Growth: rapid.Float64Range(0.1, 1).Draw(t, "growth"),
				Expected: drawClock(t, "expected", 2.3, 12), Acclimatised: rapid.Float64Range(0.1, 0.9).Draw(t, "acclimatised"),
			},
		}
		hot := cool
		change := rapid.SampledFrom([]string{"hotter", "more loss", "less acclimatised", "more growth", "longer", "from lower on"}).Draw(t, "change")
		switch change {
		case "hotter":
			hot.Day = shifted(t, hot.Day, Shift{WBGT: 2})
		case "more loss":
			hot.Heat.Loss *= 1.5
		case "less acclimatised":
			hot.Heat.Acclimatised /= 2
		case "more growth":
			hot.Heat.Growth *= 1.5
		case "longer":
			hot.Heat.Expected *= 2
		case "from lower on":
			hot.Heat.Above = 13
		}
		for _, race := range []struct {
			name string
			time func(s Surroundings) float64
		}{
			{"running", func(s Surroundings) float64 { return at(t, g, a, s, 0.8, allRun(g)) }},
			{"by rule", func(s Surroundings) float64 { return at(t, g, a, s, 0.8, nil) }},
			{"running on a budget", func(s Surroundings) float64 { return fastestTime(t, g, a, s, allRun(g)) }},
			{"by rule on a budget", func(s Surroundings) float64 { return fastestTime(t, g, a, s, nil) }},
		} {
			if before, now := race.time(cool), race.time(hot); now < before*(1-1e-9) {
				t.Errorf("%s, %s: %.4f s, before %.4f s", race.name, change, now, before)
			}
		}
	})
}

// at is the time over a ground at an intensity.
func at(t rapid.TB, g *Ground, a Athlete, s Surroundings, intensity float64, gaits []Gait) float64 {
	t.Helper()
	return integrator(t, g, a, s).Traverse(State{}, Pace{Intensity: intensity, Gaits: gaits}).Finish().Moving
}

func shifted(t rapid.TB, d *Day, s Shift) *Day {
	t.Helper()
	d, err := d.Shifted(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func fastestTime(t rapid.TB, g *Ground, a Athlete, s Surroundings, gaits []Gait) float64 {
	t.Helper()
	f, err := integrator(t, g, a, s).Fastest(gaits)
	if err != nil {
		t.Fatal(err)
	}
	return f.Moving
}

// The heat grows with the time that the race will take only beyond 2.25 h, and then by
// the formula of Heat.
func TestGrowth(t *testing.T) {
	t.Parallel()
	h := Heat{Loss: 0.004, Growth: 0.5}
	plain := Heat{Loss: 0.004}
	for _, hours := range []float64{0, 0.5, 2, 2.25} {
		if h.Expected = Seconds(3600 * hours); h.Factor(25) != plain.Factor(25) {
			t.Errorf("%g h: %g, without growth %g", hours, h.Factor(25), plain.Factor(25))
		}
	}
	h.Expected = 9 * time.Hour // four times as long, twice the loss
	near(t, "9 h", h.Factor(25), 1-0.08, 1e-12)
	for _, c := range []struct {
		heat       Heat
		wbgt, want float64
	}{
		{Heat{Loss: 0.004, Growth: 2, Expected: 9 * time.Hour, Acclimatised: 1}, 40, 1},
		{Heat{Loss: 0.004}, 15, 1},
		{Heat{Loss: 0.004, ColdLoss: 0.01}, 7.5, 1},
		{Heat{Loss: 0.004, ColdLoss: 0.01}, 2.5, 0.95},
		{Heat{Loss: 0.05}, 50, 0.3}, // no less
		{Heat{}, -30, 1},
	} {
		near(t, "factor", c.heat.Factor(c.wbgt), c.want, 1e-12)
	}
	if got := plain.Factor(math.NaN()); !math.IsNaN(got) {
		t.Errorf("factor of NaN: %g", got)
	}
	if got := (Altitude{Loss: AltitudeLoss}).Factor(math.NaN()); !math.IsNaN(got) {
		t.Errorf("altitude's factor of NaN: %g", got)
	}
}

// A race may start on any day: a day that repeats is the same a day later, and before
// midnight what it was after. A halt at the start is a later start, one at the finish
// nothing, and cells before a halt do not see it.
func TestRaceByTheClock(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a, s := drawFullGround(t), drawFullAthlete(t), drawFullSurroundings(t, 10_000)
		s.Day = day(t, []Hour{{Temperature: 12, Humidity: 80, Shade: true}, {Clock: 14 * time.Hour, Temperature: 29, Humidity: 40}},
			Night{From: 21 * time.Hour, To: 5 * time.Hour, Factor: 0.9})
		s.Heat.Loss, s.Stops = HeatLoss, nil
		p := Pace{Intensity: rapid.Float64Range(0.5, 1).Draw(t, "intensity")}
		at := func(later time.Duration, stops ...Stop) *Traverse {
			s := s
			s.Start, s.Stops = s.Start+later, stops
			return integrator(t, g, a, s).Traverse(State{}, p)
		}
		plain, finish := at(0).Clone(), at(0).Finish().Moving
		near(t, "a day later", at(24*time.Hour).Finish().Moving, finish, 1e-9*finish)
		near(t, "a day earlier", at(-24*time.Hour).Finish().Moving, finish, 1e-9*finish)
		halt := drawClock(t, "halt", 0, 8)
		late := at(halt).Clone()
		for j, end := range at(0, Stop{0, halt}).End {
			near(t, "halted at the start", end.Moving, late.End[j].Moving, 1e-9*finish)
		}
		sameTraverse(t, "halted at the finish", at(0, Stop{g.length, halt}), plain)
		sameTraverse(t, "no halt", at(0, Stop{g.length / 3, 0}), plain)
		j := rapid.IntRange(0, g.Len()-1).Draw(t, "cell")
		for i, end := range at(0, Stop{g.cells[j].end, halt}).End[:j+1] {
			if end != plain.End[i] {
				t.Errorf("cell %d before a halt: %+v, without %+v", i, end, plain.End[i])
			}
		}
		two := at(0, Stop{g.length / 3, halt / 2}, Stop{g.length / 3, halt - halt/2}).Finish().Moving
		near(t, "two halts in one place", two, at(0, Stop{g.length / 3, halt}).Finish().Moving, 1e-9*finish)
	})
}
