package plan

import (
	"math"
	"time"

	"isoeffort.example/effort"
)

// Figures are what a coach looks at first to see whether a plan can be believed.
type Figures struct {
	// Opening is the level pace, per kilometre, over the first 5 km or the first tenth of
	// the course, whichever is shorter, and Marathon that of the runner's own marathon on
	// level ground, the best that the budget allows.
	Opening, Marathon time.Duration

	ChangesPerHour float64       // of gait
	LongestRun     time.Duration // the longest stretch without a walk, moving time

	// Speeds along the slope in m/s, over cells of the plan; 0 where there is nothing of
	// the kind.
	FastestDescent           float64 // running down 2 % or more
	FastestRun, SlowestRun   float64
	FastestWalk, SlowestWalk float64
}

// marathon is the length of a marathon, m.
const marathon = 42_195

// Figures returns those of the plan.
func (p *Plan) Figures() Figures {
	f := Figures{ChangesPerHour: float64(p.GaitChanges) / p.Moving.Hours()}
	f.Opening = p.split(0, math.Min(5000, p.Course.Length()/10)).LevelPace
	level := p.Athlete.UniformTime(marathon * p.levelCost())
	f.Marathon = time.Duration(float64(level) / (marathon / 1000.0))
	for _, b := range p.Bouts(0, p.Course.Length()) {
		if b.Gait == Run {
			f.LongestRun = max(f.LongestRun, millis(p.trace.At(b.To).Moving-p.trace.At(b.From).Moving))
		}
	}
	f.speeds(p)
	return f
}

// levelCost is the effort in J/kg of running a metre on level ground in still air.
func (p *Plan) levelCost() float64 {
	const power = 10 // any
	return power / p.Athlete.LevelSpeed(power, effort.Surroundings{})
}

// speeds fills in the fastest and the slowest.
func (f *Figures) speeds(p *Plan) {
	before := p.trace.From
	for j, end := range p.trace.End {
		run := end.Distance - before.Distance
		rise := p.Course.Elevation(end.Distance) - p.Course.Elevation(before.Distance)
		speed := math.Hypot(run, rise) / (end.Moving - before.Moving)
		before = end
		if p.trace.Gait[j] == effort.Walk {
			f.FastestWalk, f.SlowestWalk = math.Max(f.FastestWalk, speed), lesser(f.SlowestWalk, speed)
			continue
		}
		f.FastestRun, f.SlowestRun = math.Max(f.FastestRun, speed), lesser(f.SlowestRun, speed)
		if rise < -0.02*run {
			f.FastestDescent = math.Max(f.FastestDescent, speed)
		}
	}
}

// lesser is the lesser of two numbers above 0, 0 being none yet.
func lesser(a, b float64) float64 {
	if a == 0 || b < a {
		return b
	}
	return a
}
