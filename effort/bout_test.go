package effort

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// joinCase is a small course for the joiner: the price and the time of each cell in
// either gait.
type joinCase struct {
	price, time   [][2]float64
	least, change float64
}

func drawJoinCase(t *rapid.T) (c joinCase) {
	pair := func(name string, low, top float64) [2]float64 {
		return [2]float64{rapid.Float64Range(low, top).Draw(t, name), rapid.Float64Range(low, top).Draw(t, name)}
	}
	for range rapid.IntRange(1, 11).Draw(t, "cells") {
		c.price = append(c.price, pair("price", 1, 40))
		c.time = append(c.time, pair("time", 1, rapid.SampledFrom([]float64{2, 30}).Draw(t, "longest")))
	}
	c.least = rapid.Float64Range(0.5, 60).Draw(t, "least")
	c.change = rapid.SampledFrom([]float64{0, 5}).Draw(t, "change")
	return c
}

// of returns the price of a sequence of gaits, and whether all its bouts last. A single
// bout, the whole course, may be of any length.
func (c *joinCase) of(gaits []Gait) (price float64, lasts bool) {
	lasts = true
	changes, bout := 0, 0.0
	for j, g := range gaits {
		price += c.price[j][g]
		bout += c.time[j][g]
		if j+1 == len(gaits) || gaits[j+1] != g {
			price += c.change
			lasts = lasts && (bout >= c.least || changes == 0 && j+1 == len(gaits))
			changes++
			bout = 0
		}
	}
	return price, lasts
}

// cheapest tries every sequence.
func (c *joinCase) cheapest() float64 {
	n := len(c.price)
	gaits := make([]Gait, n)
	best := math.Inf(1)
	for bits := range 1 << n {
		for j := range gaits {
			gaits[j] = Gait(bits >> j & 1)
		}
		if price, lasts := c.of(gaits); lasts {
			best = math.Min(best, price)
		}
	}
	return best
}

// The joiner's programme finds what trying every sequence of gaits finds.
func TestJoinAgainstAllSequences(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		c := drawJoinCase(t)
		gaits := make([]Gait, len(c.price))
		b := joiner{change: c.change}
		b.join(gaits, 0, c.least, func(j int) (price, time [2]float64) { return c.price[j], c.time[j] })
		got, _ := c.of(gaits)
		near(t, "price", got, c.cheapest(), 1e-9)
	})
}

// shortestBout is the least time in seconds that a bout of a traverse lasts, and the
// number of bouts.
func shortestBout(t *Traverse) (shortest float64, bouts int) {
	shortest = math.Inf(1)
	start := t.From.Moving
	for j := t.First; j < len(t.End); j++ {
		if j+1 == len(t.End) || t.Gait[j+1] != t.Gait[j] {
			shortest, bouts = math.Min(shortest, t.End[j].Moving-start), bouts+1
			start = t.End[j].Moving
		}
	}
	return shortest, bouts
}

// With a shortest bout, every bout lasts that long, the first and the last too, at the
// intensity that the bouts were joined at: the final one differs by 2 % at most, and
// times by hardly more. A course shorter than one bout is of one gait.
func TestShortestBout(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		in := integrator(t, drawGround(t), drawAthlete(t), drawSurroundings(t))
		least := rapid.Float64Range(10, 600).Draw(t, "shortest bout")
		goal := rapid.SampledFrom([]float64{0, 1.05, 1.3}).Draw(t, "goal")
		moving := goal * solve(t, in, State{}, Demand{}).Finish().Moving
		before := in.Sweeps()
		s := solve(t, in, State{}, Demand{Moving: moving, ShortestBout: least})
		if in.Sweeps()-before > 30 {
			return // by turns, which TestShortestBoutAcrossJump looks at
		}
		if got, bouts := shortestBout(s.Traverse); bouts > 1 && got < 0.97*least {
			t.Errorf("a bout of %.1f s, least %.1f s", got, least)
		}
		if moving > 0 {
			near(t, "moving time", s.Finish().Moving, moving, 1e-9*moving)
		} else {
			near(t, "budget", s.Finish().Spent, 1, 1e-9)
		}
	})
}

// Ground that is all alike is run and walked by turns; turns are bouts.
func TestShortestBoutAcrossJump(t *testing.T) {
	t.Parallel()
	g := ground(t, profile(t, 50_000, 50_000, slope(0)), 100)
	a := Usual(9)
	a.Fade = 0
	in := integrator(t, g, a, Surroundings{})
	for goal := 6.5 * 3600; goal <= 8*3600; goal += 600 {
		s := solve(t, in, State{}, Demand{Moving: goal, ShortestBout: 600})
		near(t, "goal", s.Finish().Moving, goal, 1e-9*goal)
		if got, bouts := shortestBout(s.Traverse); bouts > 1 && got < 0.97*600 {
			t.Errorf("goal %.0f s: one of %d bouts lasts %.1f s", goal, bouts, got)
		}
	}
}

// Joining costs time, and the cost reported is the difference from the plan without it to
// the accuracy of the rule, 0.03 %. On level ground all is one bout and the cost nothing.
func TestBoutCost(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{8, 9, 10, 11, 12} {
		for _, height := range []func(float64) float64{waves, slope(0)} {
			in := integrator(t, ground(t, profile(t, 60_000, 10, height), 0), Usual(power), Surroundings{})
			free := solve(t, in, State{}, Demand{}).Finish().Moving
			for _, least := range []float64{60, 300, 900, 3600} {
				s := solve(t, in, State{}, Demand{ShortestBout: least})
				moving, cost := s.Finish().Moving, s.BoutCost
				t.Logf("hour power %g, bouts of %g s: %+.1f s, reported %+.1f s", power, least, moving-free, cost)
				near(t, "cost", cost, moving-free, ruleTolerance*free)
				if cost < -ruleTolerance*free {
					t.Errorf("hour power %g, bouts of %g s: %.2f s", power, least, cost)
				}
			}
		}
	}
}

// The same where all cells turn at one intensity.
func TestBoutCostAcrossJump(t *testing.T) {
	t.Parallel()
	for _, power := range []float64{8, 8.5} {
		a := Usual(power)
		a.Fade = 0
		in := integrator(t, level(t, 50_000), a, Surroundings{})
		free := solve(t, in, State{}, Demand{}).Finish().Moving
		s := solve(t, in, State{}, Demand{ShortestBout: 300})
		near(t, "cost", s.BoutCost, s.Finish().Moving-free, ruleTolerance*free)
	}
}
