package follow

import (
	"fmt"
	"math"
	"sort"
	"time"

	"isoeffort.example/internal/say"
	"isoeffort.example/plan"
)

// Actual is what was run, by its splits or by a recording: one of the two.
type Actual struct {
	// Splits are passages, the last one at the finish.
	Splits []Passage

	// Fixes are the points of a recording from the start line to the finish, or from the
	// wait before the line.
	Fixes []Fix

	// Gun is when the runner's gun went. The zero time is the race's Start or, without
	// one, the first fix less the planned start delay.
	Gun time.Time
}

// A Fix is one point of a recording: how far it is along the recording from its first
// point in metres, as measured there, and when.
type Fix struct {
	Distance float64
	Time     time.Time
}

// A Halt is a stop that was found.
type Halt struct {
	Distance float64       // m from the start of the course
	Gun      time.Duration // when it began
	Took     time.Duration
	Planned  time.Duration // the plan's stop that it is taken for, 0 for none
	Place    string
}

// A halt is a stretch of a recording of at least shortestHalt below haltSpeed, or below
// haltShare of the plan's speed about there, where that is less; within nearPlanned metres of
// a planned stop, shortestPlanned is enough. [Our own: a slow walk is 0.8 m/s, and a
// recording of somebody who stands wanders by 0.1 to 0.2.]
const (
	haltSpeed       = 0.3 // m/s
	haltShare       = 1.0 / 3
	haltReach       = 50 // m
	shortestHalt    = 60 * time.Second
	shortestPlanned = 20 * time.Second
	nearPlanned     = 100 // m
)

// A recording's length may differ from the course's by mostScale before it is refused, and
// by doubtfulScale before that is said. [Our own: recordings read some per cent long.]
const (
	mostScale     = 0.15
	doubtfulScale = 0.03
)

// run is a race along the course, without its halts.
type run struct {
	at     []float64 // m from the start, increasing
	moving []float64 // s of moving since the line, halts left out
	line   float64   // s from the gun to the line
	halts  []Halt
	legs   []leg // by splits; nil by a recording
	scale  float64
}

// movingAt is the moving time at a distance, straight between points.
func (r *run) movingAt(distance float64) float64 {
	return between(r.at, r.moving, distance)
}

// placeOf is the distance at a moving time.
func (r *run) placeOf(moving float64) float64 { return between(r.moving, r.at, moving) }

// between is y at x, straight between points.
func between(xs, ys []float64, x float64) float64 {
	i := min(max(sort.SearchFloat64s(xs, x), 1), len(xs)-1)
	return ys[i-1] + (x-xs[i-1])/(xs[i]-xs[i-1])*(ys[i]-ys[i-1])
}

// halted is the time of the halts before a place, in seconds.
func (r *run) halted(distance float64) (sum float64) {
	for _, h := range r.halts {
		if h.Distance < distance {
			sum += h.Took.Seconds()
		}
	}
	return sum
}

// run makes a run of what was recorded.
func (a Actual) run(p *plan.Plan) (*run, error) {
	switch {
	case len(a.Splits) > 0 && len(a.Fixes) > 0:
		return nil, fmt.Errorf("follow: %w: splits and a recording: give one", ErrActual)
	case len(a.Splits) > 0:
		return a.bySplits(p)
	case len(a.Fixes) > 0:
		return a.byFixes(p)
	}
	return nil, fmt.Errorf("follow: %w: nothing was recorded", ErrActual)
}

// bySplits takes the planned stops for taken, and what was Halted beside them.
func (a Actual) bySplits(p *plan.Plan) (*run, error) {
	all, err := legs(p, a.Splits)
	if err != nil {
		return nil, err
	}
	last := all[len(all)-1]
	if last.to < p.Course.Length()-samePlace {
		return nil, fmt.Errorf("follow: %w: the last split is at %.2f km, the finish at %.2f km", ErrActual, last.to/1000, p.Course.Length()/1000)
	}
	all[len(all)-1].to = p.Course.Length()
	r := &run{at: []float64{0}, moving: []float64{0}, line: p.Race.StartDelay.Seconds() + all[0].halted, legs: all, scale: 1}
	moving, from := 0.0, 0.0
	for _, s := range p.Stops {
		r.halts = append(r.halts, Halt{Distance: s.Distance, Took: s.Duration, Planned: s.Duration})
	}
	for _, l := range all[1:] {
		moving += l.seconds
		r.at, r.moving = append(r.at, l.to), append(r.moving, moving)
		if l.halted != 0 { // somewhere on the way; halfway is as good as any place
			r.halts = append(r.halts, Halt{Distance: (from + l.to) / 2, Took: millis(l.halted)})
		}
		from = l.to
	}
	r.finishHalts(p)
	return r, nil
}

// finishHalts orders halts and says where and when they were.
func (r *run) finishHalts(p *plan.Plan) {
	sortHalts(r.halts)
	for i := range r.halts {
		h := &r.halts[i]
		if h.Place = placeAt(p, h.Distance); h.Place == "" {
			h.Place = stopName(near(p, h.Distance))
		}
		h.Gun = millis(r.line + r.movingAt(h.Distance) + r.halted(h.Distance))
	}
}

// stopName is what a planned stop is for, where it is not an aid station with a name of its
// own; "" for nil.
func stopName(s *plan.Stop) string {
	if s == nil || s.Kind == plan.Halt {
		return ""
	}
	return say.Capital(s.Kind.String())
}

// near returns the planned stop that a halt at a distance may be, or nil.
func near(p *plan.Plan, distance float64) *plan.Stop {
	var best *plan.Stop
	for i := range p.Stops {
		s := &p.Stops[i]
		off := math.Abs(s.Distance - distance)
		if off < nearPlanned && (best == nil || off < math.Abs(best.Distance-distance)) {
			best = s
		}
	}
	return best
}
