package follow

import (
	"math"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/plan"
)

// sections fills in the race between places.
func (v *review) sections(every plan.Spacing) {
	from := 0.0
	for _, to := range v.cuts(every) {
		v.out.Sections = append(v.out.Sections, v.section(from, to))
		from = to
	}
}

// cuts are where sections end.
func (v *review) cuts(every plan.Spacing) (out []float64) {
	if v.run.legs != nil {
		for _, l := range v.run.legs[1:] {
			out = append(out, l.to)
		}
		return out
	}
	for _, s := range v.plan.Splits(every) {
		out = append(out, s.Distance)
	}
	return out
}

func (v *review) section(from, to float64) Section {
	p, r := v.plan, v.run
	a, b := p.State(from), p.State(to)
	seconds := r.movingAt(to) - r.movingAt(from)
	s := Section{
		Name: placeAt(p, to), From: from, To: to,
		Took: millis(r.movingAt(to)) - millis(r.movingAt(from)), Planned: millis(b.Moving) - millis(a.Moving),
		Halted: millis(r.halted(to) - r.halted(from)), PlannedHalted: taken(p, to, false) - taken(p, from, false),
		Pace:             millis(1000 * seconds / (to - from)),
		PlannedIntensity: v.planned(from, to), PlannedBudget: b.Spent - a.Spent,
	}
	if to >= p.Course.Length() && s.Name == "" {
		s.Name = "Finish"
	}
	s.Lost = s.Took - s.Planned
	s.Gun = v.out.Line + millis(r.movingAt(to)) + millis(r.halted(to))
	s.Late = s.Gun - (p.Race.StartDelay + millis(b.Moving) + taken(p, to, false))
	start, end := v.stateAt(from), v.stateAt(to)
	s.Budget = end.Spent - start.Spent
	alone := v.stretch(start, to, seconds)
	s.Intensity = alone.used
	if !v.mostlyWalked(v.at(start, alone.intensity, alone.gaits), to) {
		s.LevelPace = v.levelPace(alone.to.Work-start.Work, seconds)
	}
	if !v.mostlyWalked(v.at(a, p.Intensity, v.gaits), to) {
		s.PlannedLevelPace = v.levelPace(b.Work-a.Work, b.Moving-a.Moving)
	}
	return s
}

// mostlyWalked reports whether more than half of the time of a traverse to a place is
// walked: running on the level is no measure for it then.
func (v *review) mostlyWalked(t *effort.Traverse, to float64) bool {
	walked, before := 0.0, t.From
	for j := t.First; j < len(t.End) && before.Distance < to; j++ {
		end := t.End[j]
		if end.Distance > to {
			end = t.At(to)
		}
		if t.Gait[j] == effort.Walk {
			walked += end.Moving - before.Moving
		}
		before = end
	}
	return walked > (before.Moving-t.From.Moving)/2
}

// levelPace is the time per kilometre of running on the level on so much work, in
// hour-equivalents, in so many seconds.
func (v *review) levelPace(work, seconds float64) time.Duration {
	a := v.plan.Athlete
	speed := a.LevelSpeed(work*3600*a.HourPower/seconds, v.plan.Race.Surroundings)
	if !(speed > 0) || math.IsInf(speed, 0) {
		return 0
	}
	return millis(1000 / speed)
}
