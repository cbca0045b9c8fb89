package pacing

import (
	"math"
	"sort"

	"isoeffort.example/course"
	"isoeffort.example/effort"
	"isoeffort.example/effort/record"
)

// A trail is the ground of a race, its length and the race's as results and splits have
// it, and its running work at a braking of 0 and of 1.
type trail struct {
	ground           *effort.Ground
	length, official float64
	work             [2]float64
}

// newTrail is the ground of a race by its profile or, without one, by the splits of the
// result that tells most of it.
func newTrail(race []record.Result, profile record.Profile) (*trail, error) {
	c, err := trailCourse(race, profile)
	if err != nil {
		return nil, err
	}
	step := math.Max(50, math.Min(600, c.Length()/300))
	g, err := effort.NewGround(c, step)
	if err != nil {
		return nil, err
	}
	t := &trail{ground: g, length: c.Length(), official: race[0].Distance}
	if t.official == 0 {
		t.official = t.length
	}
	a := effort.Usual(10)
	for k := range t.work {
		a.Braking = float64(k)
		t.work[k] = g.RunningWork(a)
	}
	return t, nil
}

func trailCourse(race []record.Result, profile record.Profile) (*course.Course, error) {
	if len(profile.Distance) > 1 {
		return course.New(profile.Distance, profile.Elevation, course.Options{})
	}
	if race[0].Ground != nil {
		return race[0].Ground, nil
	}
	best := race[0]
	for _, r := range race {
		if told(r) > told(best) {
			best = r
		}
	}
	x, z := []float64{0}, []float64{0}
	at := record.Split{}
	finish := record.Split{Distance: best.Distance, Ascent: best.Ascent, Descent: best.Descent}
	for _, s := range append(knownSplits(best), finish) {
		x, z = addSection(x, z, at, s)
		at = s
	}
	return course.New(x, z, course.Options{})
}

func told(r record.Result) int { return len(knownSplits(r)) }

// knownSplits are those with their ascent and descent.
func knownSplits(r record.Result) (known []record.Split) {
	for _, s := range r.Splits {
		if !math.IsNaN(s.Ascent) && !math.IsNaN(s.Descent) && s.Ascent <= r.Ascent && s.Descent <= r.Descent {
			known = append(known, s)
		}
	}
	return known
}

// sectionHills is how many hills a section stands for. Their steepness is spread as
// package effort spreads that of a summary: a Weibull distribution of shape 1.25.
const sectionHills = 6

// addSection adds the ground between two splits: hills of a climb and a descent each, of
// the section's ascent and descent together. More metres of height than of distance are
// cut to the distance.
func addSection(x, z []float64, from, to record.Split) ([]float64, []float64) {
	length := to.Distance - from.Distance
	up, down := math.Max(0, to.Ascent-from.Ascent), math.Max(0, to.Descent-from.Descent)
	if scale := length / (up + down); scale < 1 {
		up, down = up*scale, down*scale
	}
	upShare := 0.5
	if up+down > 0 {
		upShare = up / (up + down)
	}
	sum := 0.0
	var steep [sectionHills]float64
	for j := range steep {
		rank := (float64(j*5%sectionHills) + 0.5) / sectionHills
		steep[j] = math.Pow(-math.Log1p(-rank), 1/1.25)
		sum += steep[j]
	}
	at, height := from.Distance, z[len(z)-1]
	for _, s := range steep {
		height += up * s / sum
		x, z = append(x, at+length/sectionHills*upShare), append(z, height)
		height -= down * s / sum
		at += length / sectionHills
		x, z = append(x, at), append(z, height)
	}
	return x, z
}

// hourPower is the hour power that makes a time the best over the trail.
func (t *trail) hourPower(s Shape, endurance, seconds float64) float64 {
	fresh := math.Pow(seconds/3600, 1-endurance)
	h := fresh
	if s.Fade > 0 {
		h = math.Log1p(s.Fade*fresh) / s.Fade
	}
	return (t.work[0] + s.Braking*(t.work[1]-t.work[0])) / 3600 / h
}

// distances are the splits of a race, each once.
func distances(race []record.Result) (list []float64) {
	for _, r := range race {
		for _, s := range r.Splits {
			list = append(list, s.Distance)
		}
	}
	sort.Float64s(list)
	kept := list[:0]
	for i, d := range list {
		if i == 0 || d != list[i-1] {
			kept = append(kept, d)
		}
	}
	return kept
}

// curve is the share of the finish time at each distance; even is true where the model
// has no pace for it, and the shares are those of the distance.
func (t *trail) curve(in *effort.Integrator, s Shape, endurance, seconds float64, at []float64) (share []float64, even bool) {
	a := effort.Athlete{
		HourPower: t.hourPower(s, endurance, seconds), Endurance: endurance,
		Fade: s.Fade, FadeShape: s.FadeShape, Braking: s.Braking, Habit: s.Habit,
	}
	share = make([]float64, len(at))
	solved, err := effort.Solution{}, in.Reset(t.ground, a, effort.Surroundings{})
	if err == nil {
		solved, err = in.Solve(effort.State{}, effort.Demand{Moving: seconds, Tilt: s.Tilt})
	}
	for i, d := range at {
		// A profile may be somewhat longer or shorter than the race is said to be.
		d = math.Max(0, math.Min(d/t.official, 1)) * t.length
		if err != nil {
			share[i] = d / t.length
		} else {
			share[i] = solved.At(d).Moving / seconds
		}
	}
	return share, err != nil
}
