package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/effort"
)

// Walks asks for planned walks. The zero value asks for none.
//
// They are placed where they cost least, on the steepest ground within a window before
// the time they are due, and left out where even effort has a walk as long by then of
// itself; so that no stretch without a walk is longer than asked, but for the last one by
// as much as a walk takes. For a group that keeps together they come by its leader's watch instead, Fixed.
type Walks struct {
	// Every is the moving time from the end of one walk to the start of the next or, Fixed,
	// from one start to the next. 0 plans no walks.
	Every time.Duration

	// Length is that of a walk in whole minutes. 0 means 3 minutes.
	Length time.Duration

	// First is when the first walk is due. 0 means Every, and an hour at most.
	First time.Duration

	// Window is how much earlier than due a walk may come. 0 means a third of Every.
	Window time.Duration

	// Fixed starts walks at fixed moving times, whatever the ground.
	Fixed bool
}

const defaultWalk = 3 * time.Minute

// PlannedWalk is a walk that was asked for.
type PlannedWalk struct {
	From, To float64       // m from the start
	Start    time.Duration // gun time
	Took     time.Duration
}

func (w Walks) filled() Walks {
	if w.Length == 0 {
		w.Length = defaultWalk
	}
	if w.First == 0 {
		w.First = min(w.Every, time.Hour)
	}
	if w.Window == 0 {
		w.Window = w.Every / 3
	}
	return w
}

func (w Walks) check() error {
	if w.Every == 0 {
		if w != (Walks{}) {
			return fmt.Errorf("plan: %w: planned walks without saying how often", ErrOption)
		}
		return nil
	}
	w = w.filled()
	switch {
	case w.Every < 2*time.Minute || w.Every > 24*time.Hour:
		return fmt.Errorf("plan: %w: a walk every %v is not within 2 min to 24 h", ErrOption, w.Every)
	case w.Length < time.Minute || w.Length%time.Minute != 0 || w.Length >= w.Every:
		return fmt.Errorf("plan: %w: walks of %v every %v: whole minutes, and less than from one to the next", ErrOption, w.Length, w.Every)
	case w.First < 0 || w.First > 24*time.Hour:
		return fmt.Errorf("plan: %w: the first walk after %v is not within 0 to 24 h", ErrOption, w.First)
	case w.Window < 0 || w.Window > w.Every:
		return fmt.Errorf("plan: %w: a window of %v for walks every %v", ErrOption, w.Window, w.Every)
	}
	return nil
}

// placeWalks says where the race's planned walks go, by the plan that was just made.
// Those placed by cost stay where they were first put, and more are added where the plan,
// made anew with them, has lost walks of its own.
func (m *maker) placeWalks() []effort.Limit {
	w := m.plan.Race.Walks
	if w.Every == 0 {
		return m.walks
	}
	w = w.filled()
	as := effort.Pace{Intensity: m.plan.Intensity, Tilt: -m.plan.HoldBack.Share, Ease: m.plan.Race.Ease, Gaits: m.plan.trace.Gait}
	t := m.in.Traverse(effort.State{}, as)
	if m.own == nil {
		m.own = slices.Clone(t.Gait)
	}
	r := route{choices: m.in.Choices(nil), gaits: slices.Clone(t.Gait), at: []float64{0}, time: []float64{0}}
	for j, end := range t.End {
		planned := m.planned((r.at[j] + end.Distance) / 2)
		switch {
		case !planned:
			m.own[j] = t.Gait[j]
		case w.Fixed: // by the watch they are all placed anew
			r.gaits[j] = m.own[j]
		}
		r.at, r.time = append(r.at, end.Distance), append(r.time, end.Moving)
	}
	if w.Fixed {
		return r.fixed(w)
	}
	walks := slices.Concat(m.walks, r.cheap(w))
	slices.SortFunc(walks, func(a, b effort.Limit) int { return cmp.Compare(a.From, b.From) })
	return walks
}

// planned reports whether a planned walk lies over a place.
func (m *maker) planned(distance float64) bool {
	return slices.ContainsFunc(m.walks, func(w effort.Limit) bool { return distance >= w.From && distance < w.To })
}

// route is a plan cell by cell, with what each cell takes in either gait.
type route struct {
	choices  []effort.Choice
	gaits    []effort.Gait
	at, time []float64 // at the start of each cell, and at the finish
}

// walk goes so many seconds walking from cell j, a cell at least: the cell after, what the
// walk takes, and what it costs over the gaits planned.
func (r *route) walk(j int, seconds float64) (end int, took, cost float64) {
	for end = j; end < len(r.choices); end++ {
		c := &r.choices[end]
		if end > j && took+c.Time[effort.Walk]/2 > seconds {
			break
		}
		took += c.Time[effort.Walk]
		cost += c.Price[effort.Walk] - c.Price[r.gaits[end]]
	}
	return end, took, cost
}

// cellAt is the first cell that starts at a time or later.
func (r *route) cellAt(seconds float64) int {
	j := 0
	for j < len(r.choices) && r.time[j] < seconds {
		j++
	}
	return j
}

// cheap places walks where they cost least.
func (r *route) cheap(w Walks) []effort.Limit {
	walks := []effort.Limit{}
	length, window := w.Length.Seconds(), w.Window.Seconds()
	due := w.First.Seconds()
	for {
		last := r.time[len(r.choices)] - length
		if due > last {
			return walks
		}
		if end, ok := r.walksItself(due-w.Every.Seconds(), due, length); ok {
			due = end + w.Every.Seconds()
			continue
		}
		best, least := -1, math.Inf(1)
		for j := r.cellAt(due - window); j < len(r.choices) && r.time[j] <= math.Min(due, last); j++ {
			if _, _, cost := r.walk(j, length); cost < least {
				best, least = j, cost
			}
		}
		if best < 0 {
			return walks
		}
		end, took, _ := r.walk(best, length)
		walks = append(walks, effort.Limit{From: r.at[best], To: r.at[end], Walk: true})
		due = r.time[best] + took + w.Every.Seconds()
		r.delay(end, took-(r.time[end]-r.time[best]))
	}
}

// delay makes everything from a cell on so much later.
func (r *route) delay(from int, seconds float64) {
	for j := from; j < len(r.time); j++ {
		r.time[j] += seconds
	}
}

// nearlyWhole is by how many seconds a walk may fall short of a whole one: a cell.
const nearlyWhole = 10

// walksItself looks for a walk of the plan's own that is as long and starts between two
// times, and returns the time at which the first ends.
func (r *route) walksItself(from, to, length float64) (end float64, ok bool) {
	for j := r.cellAt(from); j < len(r.gaits) && r.time[j] <= to; j++ {
		if r.gaits[j] != effort.Walk {
			continue
		}
		start := r.time[j]
		for j < len(r.gaits) && r.gaits[j] == effort.Walk {
			j++
		}
		if r.time[j]-start >= length-nearlyWhole && r.time[j] > from {
			return r.time[j], true
		}
	}
	return 0, false
}

// fixed places walks by the watch.
func (r *route) fixed(w Walks) []effort.Limit {
	walks := []effort.Limit{}
	next, now := w.First.Seconds(), 0.0
	for j := 0; j < len(r.choices); {
		step := r.choices[j].Time[r.gaits[j]]
		if now+step/2 < next {
			now += step
			j++
			continue
		}
		end, took, _ := r.walk(j, w.Length.Seconds())
		walks = append(walks, effort.Limit{From: r.at[j], To: r.at[end], Walk: true})
		now, j = now+took, end
		next += w.Every.Seconds()
	}
	return walks
}

// describeWalks times the planned walks.
func (p *Plan) describeWalks(walks []effort.Limit) {
	for _, w := range walks {
		from, to := p.split(0, math.Max(w.From, 1e-9)), p.trace.At(w.To)
		p.Walks = append(p.Walks, PlannedWalk{
			From: w.From, To: w.To, Start: from.Elapsed, Took: millis(to.Moving) - from.Moving,
		})
	}
}
