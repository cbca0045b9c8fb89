package effort

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawLimits(t *rapid.T, length float64) Surroundings {
	s := Surroundings{Crowd: Crowd{
		Speed: rapid.Float64Range(0.8, 4).Draw(t, "crowd"), Over: length * rapid.Float64Range(0.01, 0.3).Draw(t, "over"),
	}}
	for range rapid.IntRange(1, 4).Draw(t, "limits") {
		from := length * rapid.Float64Range(0, 0.9).Draw(t, "from")
		l := Limit{From: from, To: from + length*rapid.Float64Range(0.02, 0.3).Draw(t, "limited")}
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 0:
			l.Intensity = rapid.Float64Range(0.4, 1).Draw(t, "ceiling")
		case 1:
			l.Speed = rapid.Float64Range(0.8, 5).Draw(t, "speed")
		default:
			l.Walk = true
		}
		s.Limits = append(s.Limits, l)
	}
	return s
}

// What is limited keeps to it, cell by cell, what is not goes on as before, and all of it
// spends the budget asked for.
func TestLimits(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawGround(t), drawAthlete(t)
		s := drawLimits(t, g.length)
		in := integrator(t, g, a, s)
		bout := rapid.SampledFrom([]float64{0, 180}).Draw(t, "bout")
		got, err := in.Solve(State{}, Demand{ShortestBout: bout})
		if errors.Is(err, ErrDemand) {
			t.Skip("limits leave a jump that no pace fills")
		}
		if err != nil {
			t.Fatal(err)
		}
		start, before := 0.0, State{}
		for j, end := range got.End {
			middle := (start + g.cells[j].end) / 2
			most, ceiling, walk := s.Crowd.at(middle), got.Intensity, false
			if most == 0 {
				most = math.Inf(1)
			}
			for _, l := range s.Limits {
				if middle < l.From || middle >= l.To {
					continue
				}
				if l.Speed > 0 {
					most = math.Min(most, l.Speed)
				}
				if l.Intensity > 0 {
					ceiling = math.Min(ceiling, l.Intensity)
				}
				walk = walk || l.Walk
			}
			speed := g.cells[j].length / (end.Moving - before.Moving)
			used := got.Power[j] / in.offer[j] * ceiling
			spent := math.Pow(used, 1/a.Endurance) * (end.Moving - before.Moving) / 3600
			near(t, "spent", end.Spent-before.Spent, spent, 1e-9*(spent+end.Spent))
			if speed > most*(1+1e-9) {
				t.Fatalf("cell %d: %.3f m/s where %.3f is the most", j, speed, most)
			}
			if got.Power[j] > ceiling*a.Capability(before.Work)*(1+1e-9) {
				t.Fatalf("cell %d: more than a relative intensity of %.3f", j, ceiling)
			}
			if walk && got.Gait[j] != Walk {
				t.Fatalf("cell %d: run where a walk was asked for", j)
			}
			start, before = g.cells[j].end, end
		}
		if got.Finish().Spent > 1+metTolerance {
			t.Fatalf("%.8f of the budget", got.Finish().Spent)
		}
	})
}

// Limits that bind nowhere change nothing, to the last bit; on its way a solve may meet them.
func TestIdleLimits(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		g, a := drawGround(t), drawAthlete(t)
		s := Surroundings{
			Crowd:  Crowd{Speed: 9.99, Over: 1},
			Limits: []Limit{{From: 0, To: g.length, Intensity: 2}, {From: g.length, To: g.length + 10, Walk: true}},
		}
		pace := Pace{Intensity: rapid.Float64Range(0.3, 1.9).Draw(t, "intensity")}
		free, idle := integrator(t, g, a, Surroundings{}), integrator(t, g, a, s)
		want := free.Traverse(State{}, pace).Finish()
		if got := idle.Traverse(State{}, pace).Finish(); got != want {
			t.Fatalf("got  %v\nwant %v", got, want)
		}
		best := solve(t, free, State{}, Demand{})
		if best.Intensity > 1.9 {
			t.Skip("a sprint, which the ceiling holds")
		}
		near(t, "best", solve(t, idle, State{}, Demand{}).Finish().Moving, best.Finish().Moving, 1e-8*best.Finish().Moving)
	})
}

// A runner who may not run faster over a whole flat course takes the length over the
// speed, and less than the budget: by hand.
func TestSpeedLimitByHand(t *testing.T) {
	t.Parallel()
	g := level(t, 10_000)
	s := Surroundings{Limits: []Limit{{From: 0, To: 4000, Speed: 2.5}}}
	in := integrator(t, g, Usual(14), s)
	got := in.Traverse(State{}, Pace{Intensity: 1})
	near(t, "held", got.At(4000).Moving, 1600, 1e-9)
	s.Limits[0].To = 10_000
	in = integrator(t, g, Usual(14), s)
	all := solve(t, in, State{}, Demand{})
	near(t, "all held", all.Finish().Moving, 4000, 1e-9)
	if spent := all.Finish().Spent; !(spent < 0.1) {
		t.Errorf("%.4f of the budget for a run at 2.5 m/s", spent)
	}
}

// The crowd lets a runner of 4 m/s go after the time that a hand integration gives:
// ∫ (1 − x/X)/u dx up to where the limit reaches the runner's own speed.
func TestCrowdByHand(t *testing.T) {
	t.Parallel()
	g := ground(t, profile(t, 6000, 1, func(float64) float64 { return 0 }), 1)
	a := Athlete{HourPower: 3.6 * 4, Endurance: 0.1} // level: 4 m/s at intensity 1
	const u, over = 2.0, 1500.0
	in := integrator(t, g, a, Surroundings{Crowd: Crowd{Speed: u, Over: over}})
	got := in.Traverse(State{}, Pace{Intensity: 1}).At(1000).Moving
	free := over * (1 - u/4) // where u/(1 − x/X) = 4
	want := (free-free*free/(2*over))/u + (1000-free)/4
	near(t, "time to 1 km", got, want, 1e-3)
}

func TestBadLimits(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, s := range []Surroundings{
		{Crowd: Crowd{Speed: 1}},
		{Crowd: Crowd{Over: 100}},
		{Crowd: Crowd{Speed: -1, Over: 100}},
		{Crowd: Crowd{Speed: nan, Over: 100}},
		{Crowd: Crowd{Speed: 2, Over: nan}},
		{Crowd: Crowd{Speed: 2, Over: math.Inf(1)}},
		{Limits: []Limit{{}}},
		{Limits: []Limit{{From: 0, To: 100}}},
		{Limits: []Limit{{From: 100, To: 100, Walk: true}}},
		{Limits: []Limit{{From: -1, To: 100, Walk: true}}},
		{Limits: []Limit{{From: nan, To: 100, Walk: true}}},
		{Limits: []Limit{{From: 0, To: 100, Speed: -2}}},
		{Limits: []Limit{{From: 0, To: 100, Speed: nan}}},
		{Limits: []Limit{{From: 0, To: 100, Intensity: nan}}},
		{Limits: []Limit{{From: 0, To: 100, Intensity: 3}}},
	} {
		if err := s.Check(); !errors.Is(err, ErrSurroundings) {
			t.Errorf("%+v: %v", s, err)
		}
	}
}
