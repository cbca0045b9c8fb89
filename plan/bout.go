package plan

import "isoeffort.example/effort"

// A Bout is a stretch of one gait.
type Bout struct {
	Gait     Gait
	From, To float64 // m from the start
}

// Bouts returns the stretches of one gait between two distances in order.
func (p *Plan) Bouts(from, to float64) []Bout {
	var out []Bout
	start := 0.0
	for j, end := range p.trace.End {
		low, top := max(from, start), min(to, end.Distance)
		start = end.Distance
		if low >= top {
			continue
		}
		gait := Run
		if p.trace.Gait[j] == effort.Walk {
			gait = Walk
		}
		if n := len(out); n > 0 && out[n-1].Gait == gait {
			out[n-1].To = top
		} else {
			out = append(out, Bout{gait, low, top})
		}
	}
	return out
}

// Gait is how a stretch of a plan is covered.
type Gait int

// The gaits of a stretch. Mixed is more than a twentieth of the time in either, or a whole
// bout of one within the other.
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
