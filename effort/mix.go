package effort

import (
	"math"
	"slices"
)

const (
	// mixCycle is the length in metres of one turn of running and walking where both are
	// as good; longer turns are used where either part would otherwise be shorter than
	// mixPart or than the shortest bout.
	mixCycle = 3000.0
	mixPart  = 300.0

	// mixSpeed is a speed in m/s that is not exceeded where running and walking are as
	// good, so that a part is never shorter in time than asked.
	mixSpeed = 2.4
)

// bracketAround sets low and top to the nearest intensities around x at which settled
// gaits miss the demand on either side.
func (s *solver) bracketAround() {
	s.low, s.top = s.x, s.x
	for step := 0.01; step < 4; step *= 2 {
		if value := s.settledMiss(s.low); value < 0 {
			break
		}
		s.low = s.x - step
	}
	for step := 0.01; step < 4; step *= 2 {
		if value := s.settledMiss(s.top); value > 0 {
			break
		}
		s.top = s.x + step
	}
	for s.top-s.low > noJump {
		middle := (s.low + s.top) / 2
		s.narrow(middle, s.settledMiss(middle))
	}
}

// settledMiss chooses the gaits at x, settles them and returns the miss.
func (s *solver) settledMiss(x float64) float64 {
	s.miss(x, nil)
	s.settle()
	return s.miss(x, s.in.gaits).value
}

// mix meets the demand across a jump between low and top: of the cells whose gait differs
// between the two, a share is run and the rest walked, by turns, and the intensity
// then follows exactly. It is the one place where a solve takes more than a few sweeps.
func (s *solver) mix() error {
	s.turning = true
	s.settledMiss(s.low)
	slow := slices.Clone(s.in.gaits)
	s.settledMiss(s.top)
	fast := slices.Clone(s.in.gaits)
	s.x = (s.low + s.top) / 2
	low, top := 0.0, 1.0
	for range 30 {
		share := (low + top) / 2
		s.in.turns(slow, fast, share, s.part())
		if s.miss(s.x, s.in.gaits).value < 0 {
			low = share
		} else {
			top = share
		}
	}
	s.in.turns(slow, fast, top, s.part())
	x, ok := s.exact(s.miss(s.x, s.in.gaits), solveTolerance, farthest)
	if !ok {
		return s.unmet()
	}
	s.x = x
	return nil
}

// part is the least length in metres of running or walking in a turn.
func (s *solver) part() float64 {
	if !s.joining {
		return mixPart
	}
	return math.Max(mixPart, s.demand.ShortestBout*mixSpeed)
}

// turns sets the gaits to slow, but for a share of the ground where fast differs from
// it, in whole turns with parts no shorter than part.
func (in *Integrator) turns(slow, fast []Gait, share, part float64) {
	total := 0.0
	for j := range slow {
		if slow[j] != fast[j] {
			total += in.ground.cells[j].length
		}
	}
	cycle := math.Max(mixCycle, part/math.Max(1e-6, math.Min(share, 1-share)))
	cycle = total / math.Max(1, math.Floor(total/cycle))
	share = wholePart(share, part/cycle)
	along := 0.0
	for j := range slow {
		in.gaits[j] = slow[j]
		if slow[j] == fast[j] {
			continue
		}
		length := in.ground.cells[j].length
		if place := (along + length/2) / cycle; place-math.Floor(place) < share {
			in.gaits[j] = fast[j]
		}
		along += length
	}
}

// wholePart moves a share, or what is left of it, that is less than least to the nearer
// of nothing and least.
func wholePart(share, least float64) float64 {
	switch {
	case least >= 0.5:
		return math.Round(share)
	case share < least:
		return least * math.Round(share/least)
	case 1-share < least:
		return 1 - least*math.Round((1-share)/least)
	}
	return share
}

// shortestBout is the time in seconds of the shortest bout of the traverse held, or of
// all of it if it is of one gait.
func (in *Integrator) shortestBout() float64 {
	t := &in.out
	shortest, start := math.Inf(1), t.From.Moving
	for j := t.First; j < len(t.End); j++ {
		if j+1 == len(t.End) || t.Gait[j+1] != t.Gait[j] {
			shortest = math.Min(shortest, t.End[j].Moving-start)
			start = t.End[j].Moving
		}
	}
	return shortest
}
