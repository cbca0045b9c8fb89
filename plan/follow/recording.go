package follow

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/plan"
)

// byFixes finds the halts of a recording, takes out the ground that it wanders during
// them, and lays the rest over the course in proportion.
func (a Actual) byFixes(p *plan.Plan) (*run, error) {
	if err := checkFixes(a.Fixes); err != nil {
		return nil, err
	}
	t := track{at: make([]float64, len(a.Fixes)), time: make([]float64, len(a.Fixes))}
	gun := a.gun(p.Race)
	for i, f := range a.Fixes {
		t.at[i], t.time[i] = f.Distance-a.Fixes[0].Distance, f.Time.Sub(gun).Seconds()
	}
	if t.time[0] < -1 {
		return nil, fmt.Errorf("follow: %w: the recording starts %.0f s before the gun: cut it there", ErrTime, -t.time[0])
	}
	if t.time[0] > latestLine.Seconds() {
		return nil, fmt.Errorf("follow: %w: the recording starts %.1f h after the gun: is that of another day", ErrTime, t.time[0]/3600)
	}
	measured, length := t.at[len(t.at)-1], p.Course.Length()
	scale := length / measured
	if !(math.Abs(math.Log(scale)) <= mostScale) {
		return nil, fmt.Errorf("follow: %w: the recording is %.2f km long, the course %.2f km", ErrActual, measured/1000, length/1000)
	}
	t.slowest(p, scale)
	stops := t.stops(p, scale)
	return t.without(stops, p)
}

// latestLine is how long after the gun a recording may start: waves and delays take hours at
// most.
const latestLine = 24 * time.Hour

// gun is when it went.
func (a Actual) gun(r plan.Race) time.Time {
	switch {
	case !a.Gun.IsZero():
		return a.Gun
	case !r.Start.IsZero():
		return r.Start
	}
	return a.Fixes[0].Time.Add(-r.StartDelay)
}

// fewestFixes is what a recording needs at least.
const fewestFixes = 10

func checkFixes(fixes []Fix) error {
	if len(fixes) < fewestFixes {
		return fmt.Errorf("follow: %w: %d fixes", ErrActual, len(fixes))
	}
	for i, f := range fixes {
		switch {
		case math.IsNaN(f.Distance) || math.IsInf(f.Distance, 0):
			return fmt.Errorf("follow: fix %d: %w: at %g m", i+1, ErrActual, f.Distance)
		case f.Time.IsZero():
			return fmt.Errorf("follow: fix %d: %w: it has no time", i+1, ErrActual)
		case i == 0:
		case f.Distance < fixes[i-1].Distance:
			return fmt.Errorf("follow: fix %d: %w: the distance goes back to %.1f m", i+1, ErrOrder, f.Distance)
		case !f.Time.After(fixes[i-1].Time):
			return fmt.Errorf("follow: fix %d: %w: %s is not after the fix before", i+1, ErrOrder, f.Time.Format(time.RFC3339Nano))
		case f.Time.Sub(fixes[0].Time) > longest:
			return fmt.Errorf("follow: fix %d: %w: over %v", i+1, ErrTime, longest)
		}
	}
	return nil
}

// track is a recording: metres from its first fix, seconds from the gun, and the speed in
// m/s below which each fix stands still.
type track struct{ at, time, halt []float64 }

// slow reports whether the runner stands still from one fix to another.
func (t *track) slow(from, to int) bool {
	return t.at[to]-t.at[from] < t.halt[from]*(t.time[to]-t.time[from])
}

// slowest finds the speeds of halts: less where the plan itself is slow, as on steep
// climbs.
func (t *track) slowest(p *plan.Plan, scale float64) {
	length := p.Course.Length()
	for _, at := range t.at {
		from, to := math.Max(0, at*scale-haltReach), math.Min(length, at*scale+haltReach)
		planned := (to - from) / (p.State(to).Moving - p.State(from).Moving)
		t.halt = append(t.halt, math.Min(haltSpeed, haltShare*planned))
	}
}

// span is a stop from one fix to another.
type span struct{ from, to int }

// stops are the stretches below the speed of a halt that last long enough.
func (t *track) stops(p *plan.Plan, scale float64) (out []span) {
	n := len(t.at)
	for i := 0; i < n-1; {
		least := shortestHalt.Seconds()
		if near(p, t.at[i]*scale) != nil {
			least = shortestPlanned.Seconds()
		}
		end, ok := t.stopFrom(i, least)
		if !ok {
			i++
			continue
		}
		s := t.trimmed(span{i, end})
		if t.time[s.to]-t.time[s.from] >= least {
			out = append(out, s)
		}
		i = end
	}
	return out
}

// stopFrom looks for a stop that starts at fix i: a stretch as long as least on which the
// runner is slow, and on while each further stretch as long is.
func (t *track) stopFrom(i int, least float64) (end int, ok bool) {
	if !t.slow(i, i+1) {
		return i, false
	}
	from := i
	for j := i + 1; j < len(t.at); j++ {
		for from < j-1 && t.time[j]-t.time[from+1] >= least {
			from++
		}
		if t.time[j]-t.time[from] < least {
			continue
		}
		if !t.slow(from, j) {
			break
		}
		end, ok = j, true
	}
	return end, ok
}

// trimmed takes the moving ends off a stop.
func (t *track) trimmed(s span) span {
	for s.to > s.from+1 && !t.slow(s.to-1, s.to) {
		s.to--
	}
	for s.from < s.to-1 && !t.slow(s.from, s.from+1) {
		s.from++
	}
	return s
}

// without takes the stops out. One at the very start is the wait before the line.
func (t *track) without(stops []span, p *plan.Plan) (*run, error) {
	r := &run{line: t.time[0]}
	wandered, stood := 0.0, 0.0
	for i := 0; i < len(t.at); i++ {
		if len(stops) > 0 && i > stops[0].from && i < stops[0].to {
			continue
		}
		if len(stops) > 0 && i == stops[0].to {
			from, took := stops[0].from, t.time[i]-t.time[stops[0].from]
			wandered, stood = wandered+t.at[i]-t.at[from], stood+took
			if from > 0 {
				r.halts = append(r.halts, Halt{Distance: t.at[i] - wandered, Took: millis(took)})
			} else {
				r.line += took
			}
			stops = stops[1:]
		}
		r.add(t.at[i]-wandered, t.time[i]-t.time[0]-stood)
	}
	return r, r.lay(p)
}

// lay lays what was recorded over the course, and halts near planned stops on those.
func (r *run) lay(p *plan.Plan) error {
	measured, length := r.at[len(r.at)-1], p.Course.Length()
	r.scale = length / measured
	if len(r.at) < 2 || !(math.Abs(math.Log(r.scale)) <= mostScale) {
		return fmt.Errorf("follow: %w: without its halts the recording is %.2f km long, the course %.2f km", ErrActual, measured/1000, length/1000)
	}
	for i := range r.at {
		r.at[i] *= r.scale
	}
	for i := range r.halts {
		h := &r.halts[i]
		h.Distance *= r.scale
		if s := near(p, h.Distance); s != nil {
			h.Planned, h.Distance = s.Duration, s.Distance
		}
	}
	r.finishHalts(p)
	return nil
}

// add adds a point; of several at one place the last counts, but the first point stays.
func (r *run) add(at, moving float64) {
	if n := len(r.at); n > 0 && at <= r.at[n-1] {
		if n > 1 {
			r.moving[n-1] = moving
		}
		return
	}
	r.at, r.moving = append(r.at, at), append(r.moving, moving)
}

func sortHalts(halts []Halt) {
	slices.SortStableFunc(halts, func(a, b Halt) int { return cmp.Compare(a.Distance, b.Distance) })
}
