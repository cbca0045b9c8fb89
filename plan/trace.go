package plan

import (
	"sort"

	"isoeffort.example/effort"
)

// at returns the state at a distance, straight within a cell.
func (p *Plan) at(distance float64) effort.State {
	n := len(p.trace)
	i := sort.Search(n, func(i int) bool { return p.trace[i].Distance >= distance })
	switch i {
	case 0:
		return p.trace[0]
	case n:
		return p.trace[n-1]
	}
	a, b := p.trace[i-1], p.trace[i]
	share := (distance - a.Distance) / (b.Distance - a.Distance)
	return effort.State{
		Distance: distance,
		Moving:   a.Moving + share*(b.Moving-a.Moving),
		Work:     a.Work + share*(b.Work-a.Work),
		Spent:    a.Spent + share*(b.Spent-a.Spent),
	}
}

// walking is the seconds walked between two distances.
func (p *Plan) walking(from, to float64) float64 {
	sum := 0.0
	for _, b := range p.bouts(from, to) {
		if b.Gait == Walk {
			sum += p.at(b.To).Moving - p.at(b.From).Moving
		}
	}
	return sum
}

// A Bout is a stretch of one gait.
type Bout struct {
	Gait     Gait
	From, To float64 // m from the start
}

// Bouts returns the stretches of one gait between two distances in order.
func (p *Plan) Bouts(from, to float64) []Bout { return p.bouts(from, to) }

func (p *Plan) bouts(from, to float64) []Bout {
	var out []Bout
	first := sort.Search(len(p.walks), func(j int) bool { return p.trace[j+1].Distance > from })
	for j := first; j < len(p.walks) && p.trace[j].Distance < to; j++ {
		gait := Run
		if p.walks[j] {
			gait = Walk
		}
		start, end := max(from, p.trace[j].Distance), min(to, p.trace[j+1].Distance)
		if n := len(out); n > 0 && out[n-1].Gait == gait {
			out[n-1].To = end
		} else {
			out = append(out, Bout{gait, start, end})
		}
	}
	return out
}

// Gait is how a stretch of a plan is covered.
type Gait int

// The gaits of a stretch. Mixed is more than a twentieth of the time in either.
const (
	Run Gait = iota
	Walk
	Mixed
)

func (g Gait) String() string { return [...]string{"run", "walk", "mixed"}[g] }

// mostly is the share of the time in one gait from which a stretch is named for it.
const mostly = 0.95

func gaitOf(walkingShare float64) Gait {
	switch {
	case walkingShare >= mostly:
		return Walk
	case walkingShare <= 1-mostly:
		return Run
	}
	return Mixed
}
