package plan

import (
	"errors"
	"slices"
	"time"

	"isoeffort.example/effort"
)

// A Race is what the runner wants of the day and what the day adds.
type Race struct {
	// Goal is the finish time to plan for: gun time, from the gun to the finish, or net
	// time, from the start line, if Net is set. 0 plans the fastest time that the
	// effort budget allows.
	Goal time.Duration
	Net  bool

	// Share, above 0, plans for this share of the effort budget instead of a time: 0.5 is
	// an easy day, 1 the fastest.
	Share float64

	// Standards, if any, plans for a place on a list of standard times: for the fastest of
	// them that the budget allows.
	Standards []Standard

	// MakeCutoffs plans for the least effort that is InHand early at every cutoff.
	MakeCutoffs bool
	InHand      time.Duration

	// Start is when the runner's own gun goes: in a race with waves that of the runner's wave.
	// The zero time leaves clock times out. The clock runs on from it: a change of summer
	// time on the way is not seen by the weather and the dark.
	Start time.Time

	// StartDelay is the time from the gun to the start line.
	StartDelay time.Duration

	// Wave is how long after the first gun of the race the runner's own, at Start, goes. All times of
	// a plan count from the runner's own gun; cutoffs mostly from the first.
	Wave time.Duration

	// Cutoffs are the race's, in any order. Like Stops they are moved to a landmark within
	// 25 m.
	Cutoffs []Cutoff

	// Stops are planned halts, in any order.
	Stops []Stop

	// Stations adds a halt at every aid station of the course that has none in Stops.
	Stations Stations

	// Walks are planned walks, and WalkClimbs the names of climbs to be walked whole.
	Walks      Walks
	WalkClimbs []string

	// HoldBack is the share of relative intensity held back at the start and returned
	// by the end, evenly over the work: 0.02 starts 2 % below the mean and ends 2 %
	// above it. 0 means DefaultHoldBack where more than four hours of moving are
	// planned; Off is none.
	HoldBack float64

	// ShortestBout is the least duration of running or walking between two changes of
	// gait. 0 means DefaultBout; Off leaves the gait to the effort rule, however short.
	// Unless it is Off, a change must also save effort.DefaultChangeSaving, and up to eight
	// times that where a plan would otherwise change gait more than five times an hour, as
	// long as that costs no more than 2 % of the time.
	ShortestBout time.Duration

	// Surroundings are the air, altitude, weather and night, the crowd at the start, and
	// limits on stretches of the course. Where they have a Day, the
	// race fills in their Start from its own, if it has one, with the delay, and their
	// Stops; and Heat.Expected, if Heat.Growth asks for it, from the goal or else from
	// the closed form for running all the way.
	Surroundings effort.Surroundings

	// Ease lets walks be walked at the power that pays best, as effort.Pace has it.
	Ease bool

	// Step is the length in metres of the cells that are computed. 0 means DefaultStep:
	// a change of gait falls between cells, and each is then within a second of where
	// finer cells would put it.
	Step float64

	// Basis is what the athlete's numbers rest on. Its zero value takes them as known.
	Basis effort.Basis
}

// Off, as Race.HoldBack or Race.ShortestBout, switches the piece off.
const Off = -1

// Defaults that a zero Race stands for.
const (
	DefaultHoldBack = 0.02
	DefaultBout     = 3 * time.Minute
	DefaultStep     = 10 // m

	holdBackBeyond = 4 * time.Hour // of moving time
)

// The causes for which a race cannot be planned.
var (
	ErrGoal   = errors.New("goal out of range")
	ErrOption = errors.New("option out of range")
	ErrStop   = errors.New("stop off the course or of no duration")
	ErrCutoff = errors.New("cutoff off the course or out of order")
	ErrName   = errors.New("no such place, or several")
	ErrStart  = errors.New("no such clock time")
)

// longest is the longest race that is planned.
const longest = 1000 * time.Hour

// bout is the shortest bout in seconds, 0 for none.
func (r Race) bout() float64 {
	switch r.ShortestBout {
	case Off:
		return 0
	case 0:
		return DefaultBout.Seconds()
	}
	return r.ShortestBout.Seconds()
}

// tilt is the pace's tilt for a planned moving time in seconds.
func (r Race) tilt(moving float64) float64 {
	switch {
	case r.HoldBack == Off, r.HoldBack == 0 && moving <= holdBackBeyond.Seconds():
		return 0
	case r.HoldBack == 0:
		return -DefaultHoldBack
	}
	return -r.HoldBack
}

// surroundings are the race's with what it knows of the clock filled in.
func (r Race) surroundings(stops []Stop, g *effort.Ground, a effort.Athlete) effort.Surroundings {
	s := r.Surroundings
	s.Limits = slices.Clone(s.Limits)
	if s.Day == nil {
		return s
	}
	if !r.Start.IsZero() {
		s.Start = sinceMidnight(r.Start) + r.StartDelay
	}
	s.Stops = nil
	for _, stop := range stops {
		s.Stops = append(s.Stops, effort.Stop{Distance: stop.Distance, Time: stop.Duration})
	}
	if s.Heat.Growth > 0 && s.Heat.Expected == 0 {
		if s.Heat.Expected = r.Goal; r.Goal == 0 && a.Check() == nil {
			s.Heat.Expected = min(a.UniformTime(g.RunningWork(a)), longest)
		}
	}
	return s
}

// sinceMidnight is the time of day by the clock on the wall.
func sinceMidnight(t time.Time) time.Duration {
	h, m, s := t.Clock()
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(s)*time.Second
}
