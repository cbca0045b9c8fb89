package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"isoeffort.example/course"
)

// A Stop is a planned halt.
type Stop struct {
	Distance float64 // m from the start, before the finish
	Duration time.Duration

	Kind StopKind
	Note string // "drop bag: dry socks, second lamp"
}

// StopKind says what a halt is for. The model gives nothing back for any of them: rest,
// food and sleep are outside of it.
type StopKind int

// The kinds of stop.
const (
	Halt StopKind = iota
	AidStation
	DropBag
	Sleep
)

func (k StopKind) String() string {
	names := [...]string{"halt", "aid station", "drop bag", "sleep"}
	if k < 0 || int(k) >= len(names) {
		return "no kind of stop"
	}
	return names[k]
}

// Stations says how long a runner halts at the aid stations of a course (its landmarks
// of kind course.Station), by what the way to the next one asks for:
//
//	Each + PerHour · (hours of moving to the next station or the finish) + Crowd · max(0, 1 − x/CrowdOver)
//
// rounded to ten seconds, x metres from the start. The zero value adds none. [Our own
// form; bottles take longer to fill for a longer way, and stations are full while
// the field is.]
type Stations struct {
	Each      time.Duration
	PerHour   time.Duration
	Crowd     time.Duration // of queueing at the start of the course
	CrowdOver float64       // m after which nobody queues
}

func (s Stations) check() error {
	for _, d := range []time.Duration{s.Each, s.PerHour, s.Crowd} {
		if d < 0 || d > 24*time.Hour {
			return fmt.Errorf("plan: %w: %v at each station is not within 0 to 24 h", ErrStop, d)
		}
	}
	if s.Crowd > 0 && !(s.CrowdOver > 0 && s.CrowdOver <= course.MaxLength) {
		return fmt.Errorf("plan: %w: queues at stations over %g m", ErrStop, s.CrowdOver)
	}
	return nil
}

// stopRounding is what halts at stations are rounded to: nobody keeps them better.
const stopRounding = 10 * time.Second

// halts are the stops of the race in order, those at stations among them, given the
// moving time in seconds to a distance.
func (r Race) halts(c *course.Course, moving func(distance float64) float64) []Stop {
	stops := slices.Clone(r.Stops)
	var stations []float64
	for _, l := range c.Landmarks() {
		if l.Kind == course.Station && l.Distance < c.Length() && !slices.Contains(stations, l.Distance) {
			stations = append(stations, l.Distance)
		}
	}
	for i, at := range stations {
		next := c.Length()
		if i+1 < len(stations) {
			next = stations[i+1]
		}
		halt := r.Stations.halt(at, moving(next)-moving(at))
		if halt > 0 && !slices.ContainsFunc(r.Stops, func(s Stop) bool { return s.Distance == at }) {
			stops = append(stops, Stop{Distance: at, Duration: halt, Kind: AidStation})
		}
	}
	slices.SortStableFunc(stops, func(a, b Stop) int { return cmp.Compare(a.Distance, b.Distance) })
	return stops
}

// samePlace is how near a stop or a cutoff lies to a landmark, in metres, to be the one
// there.
const samePlace = 25

// atLandmarks is the race with its stops and cutoffs moved to the landmarks that they are
// at.
func (r Race) atLandmarks(c *course.Course) Race {
	r.Stops, r.Cutoffs = slices.Clone(r.Stops), slices.Clone(r.Cutoffs)
	landmarks := c.Landmarks()
	move := func(distance *float64) {
		nearest := samePlace + 1e-9
		given := *distance
		for _, l := range landmarks {
			if off := math.Abs(l.Distance - given); off < nearest && l.Distance > 0 && l.Distance < c.Length() {
				*distance, nearest = l.Distance, off
			}
		}
	}
	for i := range r.Stops {
		move(&r.Stops[i].Distance)
	}
	for i := range r.Cutoffs {
		k := &r.Cutoffs[i]
		move(&k.Distance)
		if c.Length()-k.Distance <= samePlace {
			k.Distance = c.Length()
		}
		k.Name = nameAt(c, *k)
	}
	return r
}

// nameAt is a cutoff's name or, failing that, that of the landmark where it is.
func nameAt(c *course.Course, k Cutoff) string {
	if k.Name != "" {
		return k.Name
	}
	for _, l := range c.Landmarks() {
		if l.Distance == k.Distance {
			return l.Name
		}
	}
	if k.Distance == c.Length() {
		return "Finish"
	}
	return ""
}

// halt is how long a runner halts at a station, seconds of moving before the next one.
func (s Stations) halt(at, ahead float64) time.Duration {
	d := s.Each + time.Duration(ahead/3600*float64(s.PerHour))
	if s.Crowd > 0 {
		d += time.Duration(float64(s.Crowd) * math.Max(0, 1-at/s.CrowdOver))
	}
	return d.Round(stopRounding)
}

// total is the time of all stops.
func total(stops []Stop) (sum time.Duration) {
	for _, s := range stops {
		sum += s.Duration
	}
	return sum
}

// stopped is the planned stops before the arrival at a place.
func (p *Plan) stopped(distance float64) (sum time.Duration) {
	for _, s := range p.Stops {
		if s.Distance < distance {
			sum += s.Duration
		}
	}
	return sum
}

// stoppedAt is the planned stop at a place.
func (p *Plan) stoppedAt(distance float64) (sum time.Duration) {
	for _, s := range p.Stops {
		if s.Distance == distance {
			sum += s.Duration
		}
	}
	return sum
}
