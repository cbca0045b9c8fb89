package effort

import (
	"math"
	"slices"
)

// mixCycle is the length in metres of one turn of running and walking where both are as
// good; longer turns are used where either part would otherwise be shorter than
// mixPart.
const (
	mixCycle = 3000.0
	mixPart  = 300.0
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
func (s *solver) mix() {
	s.settledMiss(s.low)
	slow := slices.Clone(s.in.gaits)
	s.settledMiss(s.top)
	fast := slices.Clone(s.in.gaits)
	s.x = (s.low + s.top) / 2
	low, top := 0.0, 1.0
	for range 30 {
		share := (low + top) / 2
		s.in.turns(slow, fast, share)
		if s.miss(s.x, s.in.gaits).value < 0 {
			low = share
		} else {
			top = share
		}
	}
	s.in.turns(slow, fast, top)
	if x, ok := s.exact(s.miss(s.x, s.in.gaits)); ok {
		s.x = x
	}
}

// turns sets the gaits to slow, but for a share of the ground where fast differs from it.
func (in *Integrator) turns(slow, fast []Gait, share float64) {
	cycle := math.Max(mixCycle, mixPart/math.Max(1e-6, math.Min(share, 1-share)))
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
